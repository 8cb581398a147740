import type { Yard } from '@castwright/engine/yard'

/** A small yard for the tests: one of each thing that the way of a panel needs. */
export const TEST_YARD: Yard = {
  format: 'castwright.yard/1',
  name: 'Test yard',
  code: 'eu',
  timezone: 'UTC',
  beds: [{ mark: 'B1', length: 12_000, width: 4000, face: 'oiled steel', heated: false }],
  forms: [{ mark: 'R180', height: 180, modulus: 210_000, inertia: 4_000_000 }],
  stock: [{ diameter: 10, grade: 'B500B', lengths: [12_000] }],
  mixes: [
    {
      mark: 'K40',
      strength: 40,
      density: 2400,
      aggregate: 16,
      slump: [80, 130],
      curve: { form: 'hyperbolic', ultimate: 58, rate: 0.06, offset: 3 },
      scatter: 0.05,
      reference: 20,
      activation: 40_000,
      initialSet: 4.5,
      dischargeMinutes: 90,
    },
  ],
  vibrators: [{ mark: 'V56', head: 56 }],
  cranes: [
    {
      mark: 'C1',
      chart: [
        [4000, 16_000],
        [12_000, 12_000],
      ],
      due: '2099-12-31',
    },
  ],
  insertKinds: [
    {
      mark: 'F75',
      kind: 'face',
      rated: 75,
      ratedStrength: 20,
      leastStrength: 15,
      leastEdge: 300,
      leastSpacing: 600,
    },
  ],
  rigging: [
    { mark: 'R4', legs: 4, length: 6000, equalised: true, counted: 4, rated: 16_000, due: '2099-12-31' },
  ],
  racks: [{ mark: 'A', kind: 'upright', places: 20, rated: 20_000 }],
  trailers: [{ mark: 'T1', length: 13_000, width: 2500, rated: 24_000 }],
}

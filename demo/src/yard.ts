import { parseYard, type Yard } from '@castwright/engine/yard'

/** The invented yard: four beds, two mixes, plain gear. No maker, place or person in it exists. */
export function demoYard(): Yard {
  return parseYard({
    format: 'castwright.yard/1',
    name: 'Kettle Lane',
    code: 'eu',
    timezone: 'Europe/Dublin',
    beds: [
      { mark: '1', length: 14_000, width: 3800, face: 'steel' },
      { mark: '2', length: 14_000, width: 3800, face: 'steel', heated: true },
      { mark: '3', length: 9000, width: 3600, face: 'steel, tilting' },
      { mark: '4', length: 11_000, width: 3600, face: 'coated plywood' },
    ],
    forms: [
      { mark: 'rail 120', height: 120, modulus: 205_000, inertia: 310_000 },
      { mark: 'rail 160', height: 160, modulus: 205_000, inertia: 690_000 },
      { mark: 'rail 180', height: 180, modulus: 205_000, inertia: 960_000 },
      { mark: 'rail 220', height: 220, modulus: 205_000, inertia: 1_700_000 },
      { mark: 'rail 280', height: 280, modulus: 205_000, inertia: 3_400_000 },
    ],
    stock: [8, 10, 12, 16, 20].map((diameter) => ({
      diameter,
      grade: 'B500B',
      lengths: diameter === 8 ? [6000] : [6000, 12_000],
    })),
    mixes: [
      {
        mark: 'K40',
        strength: 40,
        density: 2390,
        aggregate: 16,
        slump: [80, 130],
        curve: { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 },
        scatter: 0.07,
        reference: 20,
        activation: 38_000,
        initialSet: 4.5,
      },
      {
        mark: 'K50',
        strength: 50,
        density: 2410,
        aggregate: 16,
        slump: [100, 150],
        curve: { form: 'hyperbolic', ultimate: 66, rate: 0.041, offset: 3.5 },
        scatter: 0.06,
        reference: 20,
        activation: 39_000,
        initialSet: 4,
      },
    ],
    vibrators: [
      { mark: 'V38', head: 38 },
      { mark: 'V50', head: 50 },
    ],
    cranes: [
      {
        mark: 'gantry north',
        chart: [[14_000, 16_000]],
        due: '2027-02-12',
      },
      {
        mark: 'gantry south',
        chart: [[14_000, 12_500]],
        due: '2026-12-04',
      },
    ],
    insertKinds: [
      {
        mark: 'F40',
        kind: 'face',
        rated: 40,
        ratedStrength: 25,
        leastStrength: 15,
        leastEdge: 300,
        leastSpacing: 700,
      },
      {
        mark: 'F75',
        kind: 'face',
        rated: 75,
        ratedStrength: 25,
        leastStrength: 15,
        leastEdge: 400,
        leastSpacing: 1000,
      },
      {
        mark: 'E60',
        kind: 'edge',
        rated: 60,
        ratedStrength: 25,
        leastStrength: 15,
        leastEdge: 300,
        leastSpacing: 900,
      },
      {
        mark: 'E90',
        kind: 'edge',
        rated: 90,
        ratedStrength: 25,
        leastStrength: 15,
        leastEdge: 400,
        leastSpacing: 1200,
      },
    ],
    rigging: [
      {
        mark: 'four-leg set',
        legs: 4,
        length: 5000,
        equalised: true,
        counted: 4,
        rated: 16_000,
        due: '2026-11-20',
      },
      {
        mark: 'two-leg set',
        legs: 2,
        length: 4000,
        equalised: false,
        counted: 2,
        rated: 12_000,
        due: '2026-11-20',
      },
    ],
    racks: [
      { mark: 'rack A', kind: 'upright', places: 14, rated: 120_000 },
      { mark: 'rack B', kind: 'upright', places: 14, rated: 120_000 },
      { mark: 'stack ground', kind: 'flat', places: 18, rated: 90_000 },
    ],
    trailers: [
      { mark: 'A-frame trailer', length: 10_000, width: 3500, rated: 24_000 },
      { mark: 'flat trailer', length: 13_000, width: 2500, rated: 26_000 },
    ],
  })
}

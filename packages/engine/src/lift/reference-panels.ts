import { parseDrawing } from '../panel/drawing.ts'
import { type Panel, panelOf } from '../panel/panel.ts'
import { parseYard, type Yard } from '../yard/yard.ts'

/** Factor at release of the rectangle below from oiled steel, 1 kN/m²: 85.5 / 67.5. For tests. */
export const SMOOTH_FACE = 85.5 / 67.5

/** The rectangle of the check values, 6.0 × 3.0 × 0.150 m at 2500 kg/m³, with four inserts, rigging and lifting design. For tests. */
export function casting(change: object = {}): Panel {
  return panelOf(
    parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'P6',
      revision: 'A',
      outline: [
        [0, 0],
        [6000, 0],
        [6000, 3000],
        [0, 3000],
      ],
      thickness: 150,
      concrete: { strength: 40, density: 2500 },
      rigging: 'R4',
      inserts: [
        { mark: 'A', at: [1243, 621], kind: 'face', type: 'F1' },
        { mark: 'B', at: [4757, 621], kind: 'face', type: 'F1' },
        { mark: 'C', at: [4757, 2379], kind: 'face', type: 'F1' },
        { mark: 'D', at: [1243, 2379], kind: 'face', type: 'F1' },
      ],
      lifting: { strength: 15, load: 25.5, reference: 'LD-3', by: 'Orla Finn' },
      ...change,
    }),
  )
}

/** A yard that can lift it. For tests. */
export function liftYard(change: object = {}): Yard {
  return parseYard({
    format: 'castwright.yard/1',
    name: 'Test Lane',
    code: 'eu',
    timezone: 'Europe/Dublin',
    beds: [{ mark: 'B1', length: 12_000, width: 4000, face: 'oiled steel' }],
    mixes: [{ mark: 'M40', strength: 40, scatter: 0.08 }],
    cranes: [
      {
        mark: 'C1',
        chart: [
          [6000, 12_000],
          [9000, 9000],
          [12_000, 6000],
        ],
        due: '2026-12-31',
      },
    ],
    insertKinds: [{ mark: 'F1', kind: 'face', rated: 50, ratedStrength: 15, leastStrength: 10 }],
    rigging: [{ mark: 'R4', legs: 4, length: 4000, equalised: true, rated: 8000, due: '2026-12-31' }],
    ...change,
  })
}

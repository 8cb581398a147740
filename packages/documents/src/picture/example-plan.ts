import type { Drawing, Point } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { exampleLift } from './example-lift.ts'

/**
 * The parts of a plan that pictures draw, made up for the tests of the pictures: evenly spread bars, chairs, props and
 * insertions. Not computed by the engine, so that a picture changes only when the picture changes.
 */
export function examplePlan(drawing: Drawing): Plan {
  const xs = drawing.outline.map(([x]) => x)
  const ys = drawing.outline.map(([, y]) => y)
  const [length, width] = [Math.max(...xs), Math.max(...ys)]
  const every = (step: number, end: number): number[] =>
    Array.from({ length: Math.floor((end - 200) / step) + 1 }, (_, index) => 100 + index * step)
  const grid = (step: number): Point[] =>
    every(step, length).flatMap((x, index) => {
      const column = every(step, width).map((y): Point => [x, y])
      return index % 2 === 0 ? column : column.reverse()
    })
  const parts = {
    steel: {
      placed: [
        ...every(400, width).map((y) => ({
          mark: 'M1',
          layer: 'mould',
          diameter: 12,
          path: [
            [40, y],
            [length - 40, y],
          ],
          height: 36,
        })),
        ...every(400, length).map((x) => ({
          mark: 'T1',
          layer: 'top',
          diameter: 10,
          path: [
            [x, 40],
            [x, width - 40],
          ],
          height: 110,
        })),
      ],
      laps: [{ mark: 'M1', at: [length / 2, 500], length: 900, diameter: 12, direction: 'x' }],
    },
    mould: {
      voids: [],
      ducts: [],
      form: 'F150',
      propSpacing: 1200,
      pressure: 3.75,
      thrust: 0.28125,
      overturning: 0.0140625,
      brace: 0.09375,
      weight: 25,
      plate: { held: 'both', thickness: 5, bow: 0.008, stress: 1.4 },
      sides: drawing.outline.map((corner, index) => {
        const next = drawing.outline[(index + 1) % drawing.outline.length] ?? corner
        const long = Math.hypot(next[0] - corner[0], next[1] - corner[1])
        const spans = Math.max(1, Math.ceil(long / 1200))
        const rule = 'bow'
        return {
          side: index + 1,
          length: long,
          spans,
          spacing: long / spans,
          bow: 0.4,
          push: 0.37,
          brace: 0.12,
          rule,
        }
      }),
      props: every(1200, length).flatMap((x): Point[] => [[x, 0]]),
      chairs: [
        { layer: 'mould', height: 30, spacing: 800, at: grid(800) },
        { layer: 'top', height: 104, spacing: 1000, at: grid(1000) },
      ],
    },
    pour: {
      chute: [0, width / 2],
      heads: ['V56'],
      compaction: {
        insertions: grid(450),
        radius: 260,
        reduced: [],
        zones: [
          {
            order: 1,
            outlines: [
              [
                [length / 2, 0],
                [length, 0],
                [length, width],
                [length / 2, width],
              ],
            ],
            insertions: [],
            shares: [[]],
            volume: 1,
            minutes: 1,
          },
          {
            order: 2,
            outlines: [
              [
                [0, 0],
                [length / 2, 0],
                [length / 2, width],
                [0, width],
              ],
            ],
            insertions: [],
            shares: [[]],
            volume: 1,
            minutes: 1,
          },
        ],
      },
    },
    lift: {
      stages: [
        {
          id: 'store',
          name: 'Stored',
          how: 'flat on two timbers',
          supports: exampleLift(drawing).timbers,
        },
      ],
      centre: [length * 0.51, width * 0.49],
      inserts: (drawing.inserts ?? []).map((insert, index) => ({
        ...insert,
        type: null,
        load: index === 1 ? null : 17.23,
        rated: 27,
      })),
    },
  }
  return parts as unknown as Plan // the pictures read no other part
}

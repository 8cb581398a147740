import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { replay } from '../working/replay.ts'
import { parseDrawing } from './drawing.ts'
import { ASSUMED_DENSITY, panelOf } from './panel.ts'
import type { Ring } from './point.ts'
import { area, centroid } from './polygon.ts'
import { starRing } from './random-shapes.ts'

const seed = 20261127

function panel(outline: Ring, change: object = {}) {
  return panelOf(
    parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'W1',
      outline,
      thickness: 150,
      concrete: { strength: 40, density: 2500 },
      ...change,
    }),
  )
}

describe('a panel', () => {
  it(`of any outline has its area, mass and centre (seed ${seed})`, () => {
    fc.assert(
      fc.property(starRing(), fc.integer({ min: 60, max: 400 }), (outline, thickness) => {
        const found = panel(outline, { thickness })
        const [x, y] = centroid(outline) as readonly [number, number]
        expect(found.mass).toBeCloseTo((area(outline) * thickness * 2500) / 1e9, 6)
        expect(Math.hypot(found.centre[0] - x, found.centre[1] - y)).toBeLessThan(1e-6)
        expect(found.volume).toBeCloseTo(found.faceArea * (thickness / 1000), 9)
      }),
      { seed, numRuns: 200 },
    )
  })

  it('prints steps that replay', () => {
    const steps = [
      panel([
        [0, 0],
        [6000, 0],
        [6000, 3000],
        [0, 3000],
      ]),
      panel([
        [0, 0],
        [1, 0],
        [0, 1],
      ]),
    ].flatMap(({ working }) => working)
    expect(steps.length).toBeGreaterThan(0)
    for (const step of steps) {
      const found = replay(step)
      if (found === null) continue
      expect(Math.abs(found - Number(step.result))).toBeLessThanOrEqual(1e-9 * Math.abs(Number(step.result)))
    }
  })

  it('lists the density it assumed, and only then', () => {
    const outline: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [0, 3000],
    ]
    expect(panel(outline).assumed).toEqual([])
    const plain = panel(outline, { concrete: { strength: 40 } })
    expect(plain.density).toBe(ASSUMED_DENSITY)
    expect(plain.assumed).toMatchObject([{ field: 'concrete.density', value: 2500, unit: 'kg/m³' }])
  })

  it('has the bounding sizes of what is left, not of the outline', () => {
    const cut = {
      openings: [
        {
          mark: 'N',
          outline: [
            [5000, -1],
            [6001, -1],
            [6001, 3001],
            [5000, 3001],
          ],
        },
      ],
    }
    const found = panel(
      [
        [0, 0],
        [6000, 0],
        [6000, 3000],
        [0, 3000],
      ],
      cut,
    )
    expect([found.left, found.bottom, found.length, found.width]).toEqual([0, 0, 5000, 3000])
  })
})

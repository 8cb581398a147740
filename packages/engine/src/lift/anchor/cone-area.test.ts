import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point } from '../../panel/point.ts'
import { subtract } from '../../panel/region.ts'
import { coneAngles, coneArea, nearestEdge, nearSides } from './cone-area.ts'
import { rectangle } from './testing.ts'

const seed = 20261125
const face = subtract(rectangle(0, 0, 3000, 2000), [])

/** The textbook: a rectangle round the group, cut by the edges. */
function textbook(at: readonly Point[], reach: number, length: number, width: number): number {
  const [xs, ys] = [at.map(([x]) => x), at.map(([, y]) => y)]
  const cut = (low: number, high: number, most: number) =>
    Math.min(most, high + reach) - Math.max(0, low - reach)
  return cut(Math.min(...xs), Math.max(...xs), length) * cut(Math.min(...ys), Math.max(...ys), width)
}

const areaOf = (region: typeof face, at: readonly Point[], reach: number) =>
  Math.min(...coneAngles({ region, at, reach }).map((angle) => coneArea({ region, at, reach, angle })))

describe('area of cones', () => {
  const whole = (least: number, most: number) => fc.integer({ min: least, max: most })

  it(`is the textbook's rectangle for a grid on a rectangle (seed ${seed})`, () => {
    fc.assert(
      fc.property(
        whole(30, 400),
        whole(20, 2900),
        whole(20, 1900),
        whole(10, 90),
        whole(10, 90),
        (reach, x, y, dx, dy) => {
          const [sx, sy] = [(reach * dx) / 100, (reach * dy) / 100]
          fc.pre(x + sx < 2990 && y + sy < 1990)
          const at: Point[] = [
            [x, y],
            [x + sx, y],
            [x, y + sy],
            [x + sx, y + sy],
          ]
          const expected = textbook(at, reach, 3000, 2000)
          expect(Math.abs(areaOf(face, at, reach) / expected - 1)).toBeLessThan(1e-4)
        },
      ),
      { seed, numRuns: 150 },
    )
  })

  it(`never more than the free squares, nor less with an insert more (seed ${seed})`, () => {
    const place = fc.tuple(whole(20, 2980), whole(20, 1980))
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 6 }), whole(40, 500), (at, reach) => {
        const inputs = { region: face, reach, angle: 0 }
        const all = coneArea({ ...inputs, at })
        const each = at.map((point) => coneArea({ ...inputs, at: [point] }))
        const sum = each.reduce((total, one) => total + one, 0)
        expect(all).toBeLessThanOrEqual(sum + 10)
        expect(all).toBeGreaterThanOrEqual(Math.max(...each) - 10)
        for (const one of each) expect(one).toBeLessThanOrEqual(4 * reach ** 2 + 10)
      }),
      { seed, numRuns: 100 },
    )
  })

  it('takes off an opening that reaches past the square, by hand', () => {
    const region = subtract(rectangle(0, 0, 3000, 2000), [rectangle(1100, 200, 2200, 1800)])
    expect(areaOf(region, [[1000, 1000]], 225)).toBeCloseTo((225 + 100) * 450, 0)
  })

  it('does not count concrete behind a slot', () => {
    const slot = subtract(rectangle(0, 0, 3000, 2000), [rectangle(1050, 800, 1070, 1200)])
    const area = areaOf(slot, [[1000, 1000]], 225)
    // Beyond the slot only what is seen past its ends: |y| > 4 (x − 1000) there, none within the square.
    expect(area).toBeLessThan(0.7 * 450 ** 2)
    expect(area).toBeGreaterThan(275 * 450)
  })

  it('a slot that cuts the square through leaves nothing behind it', () => {
    const slot = subtract(rectangle(0, 0, 3000, 2000), [rectangle(1050, 700, 1060, 1300)])
    expect(areaOf(slot, [[1000, 1000]], 225)).toBeCloseTo(275 * 450, 0)
  })

  it('lies along skew edges in reach, and along the pair where no edge is', () => {
    const gable = subtract(
      [
        [0, 0],
        [3000, 0],
        [3000, 2000],
        [1500, 3000],
        [0, 2000],
      ],
      [],
    )
    const slope = Math.atan2(1000, 1500)
    const near = coneAngles({ region: gable, at: [[1000, 2500]], reach: 300 })
    expect(near).toHaveLength(1)
    expect(near[0]).toBeCloseTo(slope, 9)
    const pair: Point[] = [
      [1400, 1000],
      [1500, 1100],
    ]
    expect(coneAngles({ region: gable, at: pair, reach: 300 })[0]).toBeCloseTo(Math.PI / 4, 9)
  })

  it('a notch takes its quarter, as drawn', () => {
    const notched = subtract(rectangle(0, 0, 3000, 2000), [rectangle(2000, 1000, 3001, 2001)])
    const area = coneArea({ region: notched, at: [[1900, 900]], reach: 225, angle: 0 })
    expect(area).toBeCloseTo(450 ** 2 - 125 ** 2, 0)
  })

  it('nearest edge and near sides: openings count, one side counts once', () => {
    const region = subtract(rectangle(0, 0, 3000, 2000), [rectangle(300, 50, 400, 350)])
    const at: Point[] = [[200, 200]]
    expect(nearestEdge(region, at)).toBe(100)
    const sides = nearSides({ region, at, reach: 250, angle: 0 })
    expect(sides.sort((a, b) => a - b)).toEqual([100, 200, 200])
  })
})

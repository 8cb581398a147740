import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point, Ring } from '../panel/point.ts'
import { covers, distanceToEdge, subtract } from '../panel/region.ts'
import { matLines } from './mat-lines.ts'

const RECTANGLE: Ring = [
  [0, 0],
  [6000, 0],
  [6000, 3000],
  [0, 3000],
]
const BASE = { direction: 'x', diameter: 12, spacing: 200, edgeCover: 40 } as const

describe('bars of a mat', () => {
  it('rectangle: first and last at cover + half a bar, ends at cover, evenly within the spacing', () => {
    const { lines, rows, spacing } = matLines({ ...BASE, region: subtract(RECTANGLE, []) })
    expect(rows).toBe(16)
    expect(spacing).toBeCloseTo(2908 / 15, 9)
    expect(lines.map(({ at }) => at).slice(0, 1)).toEqual([46])
    expect(lines.at(-1)).toEqual({ row: 15, at: 2954, from: 40, to: 5960 })
  })

  it('a spacing that fits exactly takes no further bar; a little less takes one more', () => {
    const region = subtract(RECTANGLE, [])
    expect(matLines({ ...BASE, region, spacing: 2908 / 10 }).rows).toBe(11)
    expect(matLines({ ...BASE, region, spacing: 2908 / 10 - 0.001 }).rows).toBe(12)
  })

  it('is cut around an opening with the same cover', () => {
    const door: Ring = [
      [900, 0],
      [1900, 0],
      [1900, 2100],
      [900, 2100],
    ]
    const { lines } = matLines({ ...BASE, region: subtract(RECTANGLE, [door]) })
    expect(lines.filter(({ row }) => row === 0)).toEqual([
      { row: 0, at: 46, from: 40, to: 860 },
      { row: 0, at: 46, from: 1940, to: 5960 },
    ])
  })

  it('a row that lies on the edge of an opening with its cover runs through', () => {
    // Rows at 46, 146, …: one at exactly 40 + 6 above an opening that ends at 1000.
    const hole: Ring = [
      [2000, 500],
      [3000, 500],
      [3000, 1000],
      [2000, 1000],
    ]
    const tall: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 3092],
      [0, 3092],
    ]
    const { lines } = matLines({ ...BASE, region: subtract(tall, [hole]), spacing: 100 })
    expect(lines.filter(({ at }) => Math.abs(at - 1046) < 1e-6)).toHaveLength(1)
    expect(lines.filter(({ at }) => Math.abs(at - 946) < 1e-6)).toHaveLength(2)
  })

  it('at a slope of 45° the corner of the bar keeps the cover', () => {
    const gable: Ring = [
      [0, 0],
      [4000, 0],
      [4000, 1000],
      [2000, 3000],
      [0, 1000],
    ]
    const region = subtract(gable, [])
    const { lines } = matLines({ ...BASE, region, spacing: 150 })
    for (const line of lines.filter(({ at }) => at > 1200)) {
      const corner = distanceToEdge(region, [line.to, line.at + 6])
      expect(corner).toBeGreaterThan(40 - 0.01)
      expect(corner).toBeLessThan(40 + 0.01)
    }
  })

  it('no room within the cover: no bars, nothing thrown', () => {
    const sliver: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 80],
      [0, 80],
    ]
    expect(matLines({ ...BASE, region: subtract(sliver, []) })).toEqual({
      lines: [],
      spacing: null,
      rows: 0,
      dropped: 0,
      even: true,
    })
  })

  it('property (seed 20261125): every bar lies in the concrete with its edge cover, in both directions', () => {
    const size = fc.integer({ min: 1500, max: 9000 })
    fc.assert(
      fc.property(
        size,
        size,
        fc.integer({ min: 0, max: 1000 }),
        fc.array(
          fc.tuple(size, size, fc.integer({ min: 200, max: 1500 }), fc.integer({ min: 200, max: 1500 })),
          {
            maxLength: 4,
          },
        ),
        fc.constantFrom('x' as const, 'y' as const),
        fc.constantFrom(8, 12, 20),
        (width, height, skew, holes, direction, diameter) => {
          const outline: Ring = [
            [0, 0],
            [width, 0],
            [width - skew / 2, height],
            [skew, height - skew / 3],
          ]
          const region = subtract(
            outline,
            holes.map(
              ([x, y, w, h]): Ring => [
                [x % width, y % height],
                [(x % width) + w, y % height],
                [(x % width) + w, (y % height) + h],
                [x % width, (y % height) + h],
              ],
            ),
          )
          const { lines, spacing } = matLines({ region, direction, diameter, spacing: 173, edgeCover: 35 })
          if (spacing !== null) expect(spacing).toBeLessThanOrEqual(173 + 1e-6)
          for (const { at, from, to } of lines) {
            for (const along of [from, (from + to) / 2, to]) {
              for (const side of [-diameter / 2, diameter / 2]) {
                const point: Point = direction === 'x' ? [along, at + side] : [at + side, along]
                expect(covers(region, point)).toBe(true)
                expect(distanceToEdge(region, point)).toBeGreaterThan(35 - 0.02)
              }
            }
          }
        },
      ),
      { seed: 20261125, numRuns: 150 },
    )
  })
})

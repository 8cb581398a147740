import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point, Ring } from '../../panel/point.ts'
import { edges } from '../../panel/polygon.ts'
import { covers, distanceToEdge, ringsOf, subtract } from '../../panel/region.ts'
import { matLines } from '../mat-lines.ts'
import { FOOT, layChairs } from './lay-chairs.ts'

const box = (x: number, y: number, w: number, h: number): Ring => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

const EDGE = 40
const DIAMETER = 12

const chairsOf = (
  region: ReturnType<typeof subtract>,
  spacing: number,
  direction: 'x' | 'y' = 'x',
  bars = 200,
) => {
  const { lines } = matLines({ region, direction, diameter: DIAMETER, spacing: bars, edgeCover: EDGE })
  return { lines, chairs: layChairs({ region, lines, direction, spacing, edge: EDGE }) }
}

describe('chairs under a mat', () => {
  it('rows and pitch by hand: 6 × 3 m, chairs at 600', () => {
    // Bars at 46 + k · 193.87. Rows from the first within 300 of the edge, 239.87, on in threes of 581.6: 821, 1403, 1985, 2566; the
    // last is 434 from the far edge, so a sixth. Along a bar 6000 / 600 = 10, in every second row 11.
    const { chairs } = chairsOf(subtract(box(0, 0, 6000, 3000), []), 600)
    const rows = [...new Set(chairs.map(([, y]) => y))].sort((a, b) => a - b)
    expect(rows).toHaveLength(6)
    expect(chairs).toHaveLength(3 * 10 + 3 * 11)
  })

  it('bars along y carry chairs in columns', () => {
    const { chairs, lines } = chairsOf(subtract(box(0, 0, 3000, 6000), []), 600, 'y')
    expect(chairs).toHaveLength(63)
    expect(chairs.every(([x]) => lines.some((line) => line.at === x))).toBe(true)
  })

  it('no bars, no chairs', () => {
    expect(layChairs({ region: [], lines: [], direction: 'x', spacing: 600, edge: 40 })).toEqual([])
  })

  it('whatever the openings: under a bar, clear in the concrete, no edge left alone', () => {
    const hole = fc.record({
      x: fc.integer({ min: 0, max: 7000 }),
      y: fc.integer({ min: 0, max: 3500 }),
      w: fc.integer({ min: 150, max: 2500 }),
      h: fc.integer({ min: 150, max: 2500 }),
    })
    fc.assert(
      fc.property(
        fc.integer({ min: 900, max: 9000 }),
        fc.integer({ min: 900, max: 4000 }),
        fc.array(hole, { maxLength: 4 }),
        fc.integer({ min: 300, max: 1000 }),
        (length, width, holes, spacing) => {
          const region = subtract(
            box(0, 0, length, width),
            holes.map(({ x, y, w, h }) => box(x, y, w, h)),
          )
          const { lines, chairs } = chairsOf(region, spacing)
          for (const chair of chairs) {
            expect(covers(region, chair)).toBe(true)
            expect(distanceToEdge(region, chair)).toBeGreaterThanOrEqual(EDGE - 0.01)
            const bar = lines.find(
              ({ at, from, to }) => at === chair[1] && from - 1e-6 <= chair[0] && chair[0] <= to + 1e-6,
            )
            expect(bar).toBeDefined()
            if (bar === undefined) continue
            const foot = Math.min(FOOT, (bar.to - bar.from) / 2)
            expect(Math.min(chair[0] - bar.from, bar.to - chair[0])).toBeGreaterThanOrEqual(foot - 1e-6)
          }
          everyEdgeHeld(region, chairs, lines, spacing)
        },
      ),
      { numRuns: 150 },
    )
  })
})

/** Within half a spacing of each place on an edge stands a chair, where a bar could hold one. */
function everyEdgeHeld(
  region: ReturnType<typeof subtract>,
  chairs: readonly Point[],
  lines: readonly { at: number; from: number; to: number }[],
  spacing: number,
): void {
  const half = spacing / 2
  for (const ring of ringsOf(region)) {
    for (const [a, b] of edges(ring)) {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1])
      const [tx, ty] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
      const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
      const near = ([x, y]: Point, along: number): boolean => {
        const [dx, dy] = [x - middle[0], y - middle[1]]
        const inward = dy * tx - dx * ty
        return inward >= 0 && inward <= half + 1e-3 && Math.abs(dx * tx + dy * ty) <= along
      }
      const could = lines.some(({ at, from, to }) => {
        const foot = Math.min(FOOT, (to - from) / 2)
        const x = Math.min(to - foot, Math.max(from + foot, middle[0] - ty * half * 0.5))
        return near([x, at], half / 2)
      })
      // A quarter more along the edge: places are looked at a quarter of the spacing apart.
      if (could) expect(chairs.some((chair) => near(chair, half * 1.5 + 1e-3))).toBe(true)
    }
  }
}

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point, Ring } from './point.ts'
import { bounds, edges } from './polygon.ts'
import { starRing } from './random-shapes.ts'
import { covers, distanceToEdge, intersect, offset, regionArea, ringsOf, subtract, unite } from './region.ts'

const seed = 20261126

/**
 * Second method: outline less openings by strips. Between two heights at which nothing begins, ends or crosses, the
 * width of concrete is linear in the height, so the width at mid-height is exact.
 */
function stripArea(outline: Ring, openings: readonly Ring[]): number {
  const rings = [outline, ...openings]
  const sides = rings.flatMap(edges)
  const heights = new Set<number>(rings.flat().map(([, y]) => y))
  for (const [i, [a, b]] of sides.entries()) {
    for (const [c, d] of sides.slice(i + 1)) {
      const [rx, ry, sx, sy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]]
      const whole = rx * sy - ry * sx
      if (whole === 0) continue
      const t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / whole
      const u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / whole
      if (t >= 0 && t <= 1 && u >= 0 && u <= 1) heights.add(a[1] + t * ry)
    }
  }
  const levels = [...heights].sort((a, b) => a - b)
  let sum = 0
  for (const [index, low] of levels.entries()) {
    const high = levels[index + 1]
    if (high !== undefined && high > low) sum += (high - low) * widthAt((low + high) / 2, outline, openings)
  }
  return sum
}

function crossings(y: number, ring: Ring): number[] {
  return edges(ring)
    .filter(([a, b]) => a[1] > y !== b[1] > y)
    .map(([a, b]) => a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
    .sort((a, b) => a - b)
}

function widthAt(y: number, outline: Ring, openings: readonly Ring[]): number {
  const all = [outline, ...openings].map((ring) => crossings(y, ring))
  const stops = [...new Set(all.flat())].sort((a, b) => a - b)
  const inside = (x: number, xs: readonly number[]) => xs.filter((at) => at < x).length % 2 === 1
  let width = 0
  for (const [index, left] of stops.entries()) {
    const right = stops[index + 1]
    if (right === undefined) continue
    const x = (left + right) / 2
    const [first, ...others] = all
    if (first && inside(x, first) && !others.some((xs) => inside(x, xs))) width += right - left
  }
  return width
}

describe(`outline less openings (seed ${seed})`, () => {
  const hole = fc
    .tuple(fc.integer({ min: -3000, max: 3000 }), fc.integer({ min: -3000, max: 3000 }))
    .chain((middle) => starRing({ middle, least: 100, most: 1500 }))

  it('has the area that strips of concrete add up to', () => {
    fc.assert(
      fc.property(starRing({ least: 1000 }), fc.array(hole, { maxLength: 4 }), (outline, openings) => {
        const expected = stripArea(outline, openings)
        // Clipping rounds crossings to micrometres: an edge of some metres moves by a few mm².
        expect(Math.abs(regionArea(subtract(outline, openings)) - expected)).toBeLessThan(100)
      }),
      { seed, numRuns: 300 },
    )
  })

  it('covers a point exactly where the outline does and no opening does', () => {
    const at = fc.tuple(fc.integer({ min: -4000, max: 4000 }), fc.integer({ min: -4000, max: 4000 }))
    fc.assert(
      fc.property(
        starRing({ least: 1000 }),
        fc.array(hole, { maxLength: 3 }),
        at,
        (outline, openings, point) => {
          const region = subtract(outline, openings)
          if (distanceToEdge(region, point) < 0.1) return
          const odd = (ring: Ring) =>
            crossings(point[1] + 1e-4, ring).filter((x) => x < point[0]).length % 2 === 1
          expect(covers(region, point)).toBe(odd(outline) && !openings.some(odd))
        },
      ),
      { seed, numRuns: 300 },
    )
  })

  it('is cut the same way as what both share', () => {
    fc.assert(
      fc.property(starRing(), hole, (outline, opening) => {
        const left = regionArea(subtract(outline, [opening]))
        const shared = regionArea(intersect([outline], [opening]))
        const whole = regionArea(subtract(outline, []))
        expect(Math.abs(left + shared - whole)).toBeLessThan(100)
        const both = regionArea(unite([outline, opening]))
        expect(both).toBeGreaterThan(whole - 100)
      }),
      { seed, numRuns: 200 },
    )
  })

  it('keeps corners as drawn where nothing is cut', () => {
    const outline: Ring = [
      [0, 0],
      [6000.0004, 0],
      [6000, 3000.0001],
      [0, 3000],
    ]
    expect(ringsOf(subtract(outline, []))).toEqual([outline])
  })

  it('an opening inside another takes off no more', () => {
    const outline: Ring = [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ]
    const outer: Ring = [
      [20, 20],
      [80, 20],
      [80, 80],
      [20, 80],
    ]
    const inner: Ring = [
      [40, 40],
      [60, 40],
      [60, 60],
      [40, 60],
    ]
    expect(regionArea(subtract(outline, [outer, inner]))).toBe(6400)
    expect(regionArea(subtract(outline, [inner, outer]))).toBe(6400)
  })

  it('an opening along a skew edge leaves no sliver', () => {
    const outline: Ring = [
      [0, 0],
      [7000, 0],
      [7000, 3000],
      [3000, 4333.333333],
      [0, 3000],
    ]
    const along: Ring = [
      [1000, 3444.4444443],
      [2000, 3888.8888887],
      [2000, 2000],
      [1000, 2000],
    ]
    expect(subtract(outline, [along])).toHaveLength(1)
  })

  it('grows and shrinks by a distance', () => {
    const square = subtract(
      [
        [0, 0],
        [1000, 0],
        [1000, 1000],
        [0, 1000],
      ],
      [],
    )
    expect(regionArea(offset(square, -100))).toBeCloseTo(640_000, 6)
    expect(regionArea(offset(square, 100))).toBeCloseTo(1_440_000, 6)
    expect(offset(square, -600)).toEqual([])
  })

  it('measures from a point to the nearest edge, openings included', () => {
    const region = subtract(
      [
        [0, 0],
        [1000, 0],
        [1000, 1000],
        [0, 1000],
      ],
      [
        [
          [400, 400],
          [600, 400],
          [600, 600],
          [400, 600],
        ],
      ],
    )
    expect(distanceToEdge(region, [350, 500] as Point)).toBe(50)
    expect(bounds(region[0]?.outline ?? []).right).toBe(1000)
  })
})

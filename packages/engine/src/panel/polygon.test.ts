import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point, Ring } from './point.ts'
import {
  area,
  bounds,
  centroid,
  counterClockwise,
  distanceToRing,
  edges,
  placeInRing,
  ringFault,
  ringsMeet,
  segmentsMeet,
  signedArea,
} from './polygon.ts'
import { starRing } from './random-shapes.ts'

const seed = 20261125
const runs = { seed, numRuns: 300 }

function close(found: number, expected: number, scale: number): boolean {
  return Math.abs(found - expected) <= 1e-9 * Math.max(1, scale)
}

describe(`area and centre of a polygon (seed ${seed})`, () => {
  it('do not change with the direction', () => {
    fc.assert(
      fc.property(starRing(), (ring) => {
        const back = [...ring].reverse()
        expect(signedArea(back)).toBe(-signedArea(ring))
        const [a, b] = [centroid(ring) as Point, centroid(back) as Point]
        expect(close(a[0], b[0], 4000) && close(a[1], b[1], 4000)).toBe(true)
        expect(signedArea(counterClockwise(back))).toBeGreaterThan(0)
      }),
      runs,
    )
  })

  it('move with the polygon', () => {
    const far = fc.integer({ min: -500_000, max: 500_000 })
    fc.assert(
      fc.property(starRing(), far, far, (ring, dx, dy) => {
        const moved = ring.map(([x, y]): Point => [x + dx, y + dy])
        expect(area(moved)).toBe(area(ring))
        const [a, b] = [centroid(ring) as Point, centroid(moved) as Point]
        expect(close(b[0] - dx, a[0], 1e6) && close(b[1] - dy, a[1], 1e6)).toBe(true)
      }),
      runs,
    )
  })

  it('turn with the polygon', () => {
    fc.assert(
      fc.property(starRing(), fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (ring, turn) => {
        const rotate = ([x, y]: Point): Point => [
          x * Math.cos(turn) - y * Math.sin(turn),
          x * Math.sin(turn) + y * Math.cos(turn),
        ]
        expect(close(area(ring.map(rotate)), area(ring), area(ring))).toBe(true)
        const [a, b] = [rotate(centroid(ring) as Point), centroid(ring.map(rotate)) as Point]
        expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(1e-5)
      }),
      runs,
    )
  })

  it('do not change with the corner that comes first', () => {
    fc.assert(
      fc.property(starRing(), fc.nat(20), (ring, by) => {
        const k = by % ring.length
        const turned = [...ring.slice(k), ...ring.slice(0, k)]
        expect(area(turned)).toBe(area(ring))
        expect(ringFault(turned)).toBeNull()
      }),
      runs,
    )
  })

  it('are null for corners on one line', () => {
    expect(
      centroid([
        [0, 0],
        [1, 0],
        [2, 0],
      ]),
    ).toBeNull()
  })
})

/** Second method, in whole numbers: do two closed segments share a point other than a common end of neighbours? */
function meetWhole(a: Point, b: Point, c: Point, d: Point): boolean {
  const turn = (p: Point, q: Point, r: Point) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
  const within = (p: Point, q: Point, r: Point) =>
    turn(p, q, r) === 0 && (r[0] - p[0]) * (r[0] - q[0]) + (r[1] - p[1]) * (r[1] - q[1]) <= 0
  if (within(a, b, c) || within(a, b, d) || within(c, d, a) || within(c, d, b)) return true
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0
}

function simpleWhole(ring: Ring): boolean {
  const sides = edges(ring)
  for (let i = 0; i < sides.length; i += 1) {
    const [a, b] = sides[i] as [Point, Point]
    if (a[0] === b[0] && a[1] === b[1]) return false
    for (let j = i + 1; j < sides.length; j += 1) {
      const [c, d] = sides[j] as [Point, Point]
      const next = j === i + 1
      const wraps = i === 0 && j === sides.length - 1
      if (!next && !wraps) {
        if (meetWhole(a, b, c, d)) return false
        continue
      }
      // Neighbours share one corner; an overlap shows at the middle of a quarter of either.
      const [corner, one, other] = next ? [b, a, d] : [a, b, c]
      const along =
        (one[0] - corner[0]) * (other[1] - corner[1]) - (one[1] - corner[1]) * (other[0] - corner[0])
      const same =
        (one[0] - corner[0]) * (other[0] - corner[0]) + (one[1] - corner[1]) * (other[1] - corner[1])
      if (along === 0 && same > 0) return false
    }
  }
  return true
}

describe(`faults of a polygon (seed ${seed})`, () => {
  it('are found as a count in whole numbers finds them', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 7 }), fc.integer({ min: 0, max: 7 }))
    let [simple, faulty] = [0, 0]
    fc.assert(
      fc.property(fc.array(corner, { minLength: 3, maxLength: 7 }), (ring) => {
        const expected = simpleWhole(ring)
        if (expected) simple += 1
        else faulty += 1
        expect(ringFault(ring) === null).toBe(expected)
      }),
      { seed, numRuns: 4000 },
    )
    expect(Math.min(simple, faulty)).toBeGreaterThan(300)
  })

  it.each<[string, Ring]>([
    [
      'crossing edges',
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
    ],
    [
      'a repeated corner',
      [
        [0, 0],
        [10, 0],
        [10, 0],
        [0, 10],
      ],
    ],
    [
      'the first corner again at the end',
      [
        [0, 0],
        [10, 0],
        [0, 10],
        [0, 0],
      ],
    ],
    [
      'a spike that folds back',
      [
        [0, 0],
        [10, 0],
        [5, 0],
        [5, 10],
      ],
    ],
    [
      'a corner that touches an edge',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 0],
        [0, 10],
      ],
    ],
    [
      'corners on one line',
      [
        [0, 0],
        [5, 0],
        [10, 0],
      ],
    ],
    [
      'a slit of no width',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 10],
        [5, 5],
        [5, 10],
        [0, 10],
      ],
    ],
  ])('%s', (_, ring) => {
    expect(ringFault(ring)).not.toBeNull()
  })

  it('are not seen in a gable, an ell or a straight corner', () => {
    expect(
      ringFault([
        [0, 0],
        [6, 0],
        [6, 3],
        [3, 4.5],
        [0, 3],
      ]),
    ).toBeNull()
    expect(
      ringFault([
        [0, 0],
        [6, 0],
        [6, 1.8],
        [4, 1.8],
        [4, 3],
        [0, 3],
      ]),
    ).toBeNull()
    expect(
      ringFault([
        [0, 0],
        [3, 0],
        [6, 0],
        [6, 3],
        [0, 3],
      ]),
    ).toBeNull()
  })

  it('are found in time for an outline of 2,000 corners', () => {
    const ring = Array.from({ length: 2000 }, (_, k): Point => {
      const turn = (2 * Math.PI * k) / 2000
      return [5000 * Math.cos(turn), 5000 * Math.sin(turn)]
    })
    expect(ringFault(ring)).toBeNull()
    expect(area(ring)).toBeCloseTo(0.5 * 2000 * 25e6 * Math.sin((2 * Math.PI) / 2000), 2)
  })
})

describe(`places and distances (seed ${seed})`, () => {
  it('a corner and the middle of an edge lie on the edge, the far outside outside', () => {
    fc.assert(
      fc.property(starRing(), (ring) => {
        const [a, b] = [ring[0] as Point, ring[1] as Point]
        expect(placeInRing(a, ring)).toBe('edge')
        expect(distanceToRing([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], ring)).toBeLessThan(1e-9)
        const box = bounds(ring)
        expect(placeInRing([box.right + 1, a[1]], ring)).toBe('outside')
      }),
      runs,
    )
  })

  it('inside and outside agree with the winding angle', () => {
    const at = fc.tuple(fc.integer({ min: -4000, max: 4000 }), fc.integer({ min: -4000, max: 4000 }))
    fc.assert(
      fc.property(starRing(), at, (ring, point) => {
        if (distanceToRing(point, ring) < 1e-6) return
        const winding = edges(ring).reduce((sum, [a, b]) => {
          const [ax, ay, bx, by] = [a[0] - point[0], a[1] - point[1], b[0] - point[0], b[1] - point[1]]
          return sum + Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
        }, 0)
        expect(placeInRing(point, ring)).toBe(Math.abs(winding) > Math.PI ? 'inside' : 'outside')
      }),
      runs,
    )
  })

  it('rings that share a corner, an edge or a crossing meet', () => {
    const square: Ring = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]
    expect(
      ringsMeet(square, [
        [10, 10],
        [20, 10],
        [20, 20],
      ]),
    ).toBe(true)
    expect(
      ringsMeet(square, [
        [10, 2],
        [20, 2],
        [20, 8],
        [10, 8],
      ]),
    ).toBe(true)
    expect(
      ringsMeet(square, [
        [5, 5],
        [20, 5],
        [20, 6],
      ]),
    ).toBe(true)
    expect(
      ringsMeet(square, [
        [2, 2],
        [4, 2],
        [4, 4],
      ]),
    ).toBe(false)
    expect(
      ringsMeet(square, [
        [11, 0],
        [20, 0],
        [20, 5],
      ]),
    ).toBe(false)
  })

  it('segments meet or not whichever is named first', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }))
    fc.assert(
      fc.property(corner, corner, corner, corner, (a, b, c, d) => {
        expect(segmentsMeet([a, b], [c, d])).toBe(segmentsMeet([d, c], [b, a]))
      }),
      runs,
    )
  })
})

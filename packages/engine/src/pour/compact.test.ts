import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point, Ring } from '../panel/point.ts'
import { area, edges, placeInRing, ringFault, segmentsMeet } from '../panel/polygon.ts'
import { covers, type Region, ringsOf, subtract } from '../panel/region.ts'
import { replay } from '../working/replay.ts'
import { type CompactInput, compact } from './compact.ts'
import { Cover } from './compaction/cover.ts'
import { Ground } from './compaction/ground.ts'
import { fillsCone } from './compaction/sector.ts'
import { uncoveredArea } from './compaction/uncovered-area.ts'
import type { CompactionPlan } from './pour-plan.ts'

const rect = (x: number, y: number, w: number, h: number): Ring => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

function planned(region: Region, change: Partial<CompactInput> = {}): CompactionPlan {
  const found = compact({ region, thickness: 150, head: 40, chute: [0, 0], ...change })
  if (!found.known) throw new Error(found.gaps.join())
  return found.value
}

/** Second method, apart from the proof: does any insertion see the point within the radius? Segment tests only. */
function seen(region: Region, insertions: readonly Point[], radius: number, point: Point): boolean {
  const sides = ringsOf(region).flatMap((ring) => edges(ring))
  return insertions.some(
    (at) =>
      Math.hypot(at[0] - point[0], at[1] - point[1]) <= radius &&
      !sides.some((side) => segmentsMeet([at, point], side)),
  )
}

function samplesIn(region: Region, count: number, random: () => number): Point[] {
  const [outline] = ringsOf(region)
  const xs = (outline ?? []).map(([x]) => x)
  const ys = (outline ?? []).map(([, y]) => y)
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const found: Point[] = []
  for (let tries = 0; found.length < count && tries < count * 50; tries += 1) {
    const point: Point = [left + random() * (right - left), low + random() * (high - low)]
    if (covers(region, point)) found.push(point)
  }
  return found
}

/** Repeatable random numbers, 0 to 1. */
function randomFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296
    return state / 4_294_967_296
  }
}

const SIX_OPENINGS = subtract(rect(0, 0, 12000, 4000), [
  rect(1000, 800, 1200, 1400),
  rect(3000, 800, 1200, 1400),
  rect(5000, 800, 1200, 1400),
  rect(7000, 0, 1000, 2200),
  rect(9000, 800, 1200, 1400),
  rect(10600, 800, 1000, 2400),
])

describe('compaction pattern', () => {
  it('12 × 4 m with six openings: proven cover, no insertion close to a face, count near the plane’s bound', () => {
    const plan = planned(SIX_OPENINGS)
    expect(plan.radius).toBeCloseTo(129.9, 9)
    expect(plan.action).toBe(150)
    expect(plan.uncovered).toBe(0)
    expect(plan.close).toEqual([])
    // 836.7 in an unbounded plane; edges of 43 m in all ask for more.
    expect(plan.insertions.length).toBeLessThan(1060)
    expect(uncoveredArea(SIX_OPENINGS, plan.insertions, plan.radius)).toBeLessThan(1e-4)
  })

  it('every insertion is listed once, in bands from the far end back to the chute', () => {
    const plan = planned(SIX_OPENINGS)
    expect(plan.zones.flatMap(({ insertions }) => insertions)).toEqual(plan.insertions.map((_, i) => i))
    const middles = plan.zones.map(
      ({ insertions }) =>
        insertions.reduce((sum, i) => sum + (plan.insertions[i]?.[0] ?? 0), 0) / insertions.length,
    )
    expect([...middles].sort((a, b) => b - a)).toEqual(middles)
    const volume = plan.zones.reduce((sum, zone) => sum + zone.volume, 0)
    expect(volume).toBeCloseTo((48e6 - 4 * 1200 * 1400 - 2200 * 1000 - 2400 * 1000) * 150e-9, 6)
    expect(plan.minutes).toBeCloseTo((plan.insertions.length * 13) / 60, 9)
  })

  it('from the other end the bands run the other way', () => {
    const plan = planned(SIX_OPENINGS, { chute: [12000, 4000], quick: true })
    const first = plan.zones[0]?.insertions[0] ?? -1
    expect(plan.insertions[first]?.[0]).toBeLessThan(1500)
  })

  it('the next insertion is near: inside a band no step is longer than five radii', () => {
    const plan = planned(subtract(rect(0, 0, 6000, 3000), []))
    for (const { insertions } of plan.zones)
      for (let i = 1; i < insertions.length; i += 1) {
        const [a, b] = [
          plan.insertions[insertions[i - 1] as number] as Point,
          plan.insertions[insertions[i] as number] as Point,
        ]
        expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(5 * plan.radius)
      }
  })

  it('taking out any one insertion of a plain panel leaves concrete that is not reached, and the proof says so', () => {
    const region = subtract(rect(0, 0, 1500, 900), [rect(500, 300, 300, 300)])
    const plan = planned(region)
    for (let out = 0; out < plan.insertions.length; out += 1) {
      const cover = new Cover(new Ground(region, plan.radius), plan.radius)
      plan.insertions.forEach(([x, y], i) => {
        if (i !== out) cover.add(x, y)
      })
      expect(cover.gaps(1)).toHaveLength(1)
    }
  })

  it('the square grid at 1.5 radii of action leaves gaps: 0.668 % of the area (geometry, computed)', () => {
    const radius = 250
    const region = subtract(rect(0, 0, 3000, 3000), [])
    const grid = Array.from(
      { length: 64 },
      (_, i): Point => [187.5 + (i % 8) * 375, 187.5 + Math.floor(i / 8) * 375],
    )
    const cover = new Cover(new Ground(region, radius), radius)
    for (const [x, y] of grid) cover.add(x, y)
    expect(cover.gaps(1)).toHaveLength(1)
    // 49 whole gaps of 375² · 0.668 %, and parts along the edges where the grid is symmetric to itself
    expect(uncoveredArea(region, grid, radius) / 9).toBeGreaterThan(0.005)
    expect(uncoveredArea(region, grid, radius) / 9).toBeLessThan(0.009)
  })

  it('does not reach across an opening: two strips beside a slot need their own insertions', () => {
    const region = subtract(rect(0, 0, 1000, 320), [rect(100, 150, 800, 20)])
    const cover = new Cover(new Ground(region, 400), 400)
    for (let x = 50; x < 1000; x += 100) cover.add(x, 75)
    expect(cover.gaps(1)).toHaveLength(1)
    expect(
      uncoveredArea(
        region,
        Array.from({ length: 10 }, (_, i): Point => [50 + i * 100, 75]),
        400,
      ),
    ).toBeGreaterThan(0.05)
    expect(planned(region, { radius: 400 }).uncovered).toBe(0)
  })

  it.each<[string, Region, number]>([
    ['a sliver of 60 mm', subtract(rect(0, 0, 4000, 60), []), 16],
    [
      'a sharp triangle',
      subtract(
        [
          [0, 0],
          [3000, 0],
          [0, 300],
        ],
        [],
      ),
      24,
    ],
    [
      'a wedge that ends in 1 mm',
      subtract(
        [
          [0, 0],
          [2000, 0],
          [2000, 1],
          [0, 200],
        ],
        [],
      ),
      16,
    ],
    [
      'a neck between two fields',
      subtract(rect(0, 0, 3000, 800), [rect(1000, 0, 1000, 380), rect(1000, 420, 1000, 380)]),
      100,
    ],
    [
      'a comb of fins',
      subtract(
        rect(0, 0, 1200, 600),
        Array.from({ length: 11 }, (_, i) => rect(60 + i * 100, 100, 60, 501)),
      ),
      100,
    ],
  ])('%s is covered, and what stands close says so', (_, region, most) => {
    const plan = planned(region)
    expect(plan.uncovered).toBe(0)
    expect(plan.insertions.length).toBeLessThanOrEqual(most)
    for (const at of plan.insertions) expect(covers(region, at)).toBe(true)
    if (plan.close.length > 0) expect(Math.max(...plan.close)).toBeLessThan(plan.insertions.length)
  })

  it('300 openings are covered', () => {
    const region = subtract(
      rect(0, 0, 12000, 4000),
      Array.from({ length: 300 }, (_, i) =>
        rect(120 + (i % 30) * 390, 120 + Math.floor(i / 30) * 385, 200, 200),
      ),
    )
    expect(planned(region, { quick: true }).uncovered).toBe(0)
  })

  it('gives up the margin only where it must: none close in a panel of right angles', () => {
    for (const margin of [0, 50, 75, 90])
      expect(planned(subtract(rect(0, 0, 2400, 1100), []), { margin }).close).toEqual([])
    // 100 √2 is over the radius: only the four corners need a nearer insertion.
    const plan = planned(subtract(rect(0, 0, 2400, 1100), []), { margin: 100 })
    expect(plan.uncovered).toBe(0)
    expect(plan.close.length).toBeGreaterThan(0)
    for (const index of plan.close) {
      const [x, y] = plan.insertions[index] as Point
      const corner = Math.min(
        Math.hypot(x, y),
        Math.hypot(2400 - x, y),
        Math.hypot(x, 1100 - y),
        Math.hypot(2400 - x, 1100 - y),
      )
      expect(corner).toBeLessThanOrEqual(129.9)
    }
  })

  it.each<[string, Partial<CompactInput>, string]>([
    ['no head and no radius', { head: undefined }, 'head'],
    ['a head outside the table', { head: 15 }, 'head'],
    ['a radius of 0', { radius: 0 }, 'radius'],
    ['a radius that is no number', { radius: Number.NaN }, 'radius'],
    ['a margin below 0', { margin: -1 }, 'margin'],
    ['a thickness of 0', { thickness: 0 }, 'thickness'],
    ['an action of 0', { head: undefined, action: 0 }, 'action'],
    ['a chute that is nowhere', { chute: [Number.NaN, 0] }, 'chute'],
    [
      'a share of reach over 1',
      { congested: [{ outline: rect(0, 0, 500, 500), share: 1.2 }] },
      'congested[0].share',
    ],
    ['a radius far too small', { radius: 1 }, 'radius'],
  ])('%s is not known and says so', (_, change, field) => {
    const found = compact({
      region: subtract(rect(0, 0, 6000, 3000), []),
      thickness: 150,
      head: 40,
      chute: [0, 0],
      ...change,
    })
    expect(found.known).toBe(false)
    if (!found.known) expect(found.gaps.join()).toContain(field)
  })

  it('every step replays', () => {
    const found = compact({ region: SIX_OPENINGS, thickness: 150, head: 55, chute: [0, 0], quick: true })
    if (!found.known) throw new Error('not known')
    for (const step of found.working) {
      const again = replay(step)
      if (again !== null) expect(Math.abs(again / (step.result as number) - 1)).toBeLessThan(1e-9)
    }
  })
})

/** A star-shaped outline: a simple polygon whatever the radii. */
const outlines = fc.array(fc.integer({ min: 300, max: 2000 }), { minLength: 3, maxLength: 11 }).map(
  (radii): Ring =>
    radii.map((radius, i): Point => {
      const angle = (2 * Math.PI * i) / radii.length
      return [Math.round(2000 + radius * Math.cos(angle)), Math.round(2000 + radius * Math.sin(angle))]
    }),
)

const holes = fc.array(
  fc.tuple(
    fc.integer({ min: 0, max: 3600 }),
    fc.integer({ min: 0, max: 3600 }),
    fc.integer({ min: 20, max: 700 }),
    fc.integer({ min: 20, max: 700 }),
    fc.integer({ min: 0, max: 300 }),
  ),
  { maxLength: 6 },
)

describe('any polygon with any openings (fast-check, seed 20262)', () => {
  it('is proven covered, and a second method agrees at 150 random points of it', () => {
    fc.assert(
      fc.property(
        outlines,
        holes,
        fc.integer({ min: 90, max: 400 }),
        fc.integer({ min: 0, max: 120 }),
        (outline, drawn, radius, margin) => {
          fc.pre(ringFault(outline) === null && area(outline) > 50_000)
          // Slanted openings: sight must work off the axes.
          const openings = drawn.map(
            ([x, y, w, h, slant]): Ring => [
              [x, y],
              [x + w, y + slant],
              [x + w - slant / 2, y + h + slant],
              [x - slant / 2, y + h],
            ],
          )
          const [piece] = subtract(outline, openings)
          fc.pre(piece !== undefined)
          if (piece === undefined) return
          const region: Region = [piece]
          const plan = planned(region, { radius, margin, quick: true })
          expect(plan.uncovered).toBe(0)
          for (const at of plan.insertions) expect(placeInRing(at, piece.outline)).not.toBe('outside')
          for (const point of samplesIn(region, 150, randomFrom(radius * 131 + margin)))
            expect(seen(region, plan.insertions, radius, point)).toBe(true)
        },
      ),
      { seed: 20262, numRuns: 60 },
    )
  })

  it('never says covered where a sampled point is not seen, whichever insertion is taken out', () => {
    fc.assert(
      fc.property(
        outlines,
        holes,
        fc.integer({ min: 150, max: 500 }),
        fc.nat(),
        (outline, drawn, radius, pick) => {
          fc.pre(ringFault(outline) === null && area(outline) > 50_000)
          const [piece] = subtract(
            outline,
            drawn.map(([x, y, w, h]) => rect(x, y, w, h)),
          )
          if (piece === undefined) return
          const region: Region = [piece]
          const { insertions } = planned(region, { radius, quick: true })
          const left = insertions.filter((_, i) => i !== pick % insertions.length)
          const cover = new Cover(new Ground(region, radius), radius)
          for (const [x, y] of left) cover.add(x, y)
          const missed = samplesIn(region, 100, randomFrom(pick)).some(
            (point) => !seen(region, left, radius, point),
          )
          if (missed) expect(cover.gaps(1)).toHaveLength(1)
        },
      ),
      { seed: 20262, numRuns: 60 },
    )
  })
})

describe('a corner that turns into the concrete', () => {
  const region = subtract(rect(0, 0, 1000, 1000), [rect(500, 500, 500, 500)])
  const ground = new Ground(region, 900)
  const corner =
    Array.from({ length: ground.count }, (_, e) => e).find(
      (e) => ground.x(e) === 500 && ground.y(e) === 500,
    ) ?? -1

  it.each<[Point[], boolean]>([
    [[[900, 100]], false],
    [[[100, 900]], false],
    [
      [
        [900, 100],
        [100, 900],
      ],
      true,
    ],
    [[[300, 300]], true],
    [[[900, 499.9999999]], false],
  ])('%o reach all directions from it: %s', (points, expected) => {
    const cover = new Cover(ground, 900)
    for (const [x, y] of points) cover.add(x, y)
    expect(cover.reached(500, 500, 'corner', corner)).toBe(expected)
  })
})

describe('sectors', () => {
  it.each<[[number, number][], [number, number], boolean]>([
    [
      [
        [0, Math.PI],
        [Math.PI, 2 * Math.PI],
      ],
      [0, 2 * Math.PI],
      true,
    ],
    [
      [
        [0, Math.PI - 1e-9],
        [Math.PI, 2 * Math.PI],
      ],
      [0, 2 * Math.PI],
      false,
    ],
    [
      [
        [-2, 2],
        [1, 5],
      ],
      [0, 2 * Math.PI],
      true,
    ],
    [[[-4, 0.5]], [Math.PI - 0.5, Math.PI], true],
    [[[7, 9]], [0.8, 2.5], true],
    [[], [0, 1], false],
  ])('%o fill %o: %s', (sectors, cone, expected) => expect(fillsCone(sectors, cone)).toBe(expected))
})

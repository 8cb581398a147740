import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point } from '../../panel/point.ts'
import { replay } from '../../working/replay.ts'
import type { Worked } from '../../working/worked.ts'
import type { YardRigging } from '../../yard/yard.ts'
import { rigged } from './rigged.ts'
import type { LegPick, Rigged, RiggedInput } from './rigging-types.ts'

function value<T>(found: Worked<T>): T {
  if (!found.known) throw new Error(found.gaps.join('; '))
  return found.value
}

function gaps(found: Worked<unknown>): string {
  return found.known ? '' : found.gaps.join('; ')
}

function rig(change: Partial<YardRigging> = {}): YardRigging {
  return { mark: 'R', legs: 4, length: 20_000, rated: 8000, ...change }
}

function face(points: readonly Point[], kind: 'face' | 'edge' = 'face'): LegPick[] {
  return points.map((at, i) => ({ mark: 'ABCDEFGHIJKLMNOP'[i]!, at, kind }))
}

const SQUARE: readonly Point[] = [
  [0, 0],
  [3000, 0],
  [3000, 2000],
  [0, 2000],
]

function flat(change: Partial<RiggedInput> = {}): RiggedInput {
  const picks = change.picks ?? face(SQUARE)
  return {
    rigging: rig({ legs: picks.length }),
    picks,
    centre: [1500, 1000],
    thickness: 150,
    load: 60,
    hang: 'flat',
    angle: 0,
    ...change,
  }
}

const coordinate = fc.integer({ min: -4000, max: 4000 })
const weight = fc.double({ min: 0.05, max: 1, noNaN: true })

/** Picks that are not in line nor near each other, and a centre of gravity among them. */
function patterns(least: number, most: number): fc.Arbitrary<{ points: Point[]; centre: Point }> {
  return fc
    .array(fc.tuple(coordinate, coordinate, weight), { minLength: least, maxLength: most })
    .filter((all) =>
      all.every(([x, y], i) =>
        all.slice(i + 1).every((other) => Math.hypot(other[0] - x, other[1] - y) > 300),
      ),
    )
    .map((all) => {
      const whole = all.reduce((sum, one) => sum + one[2], 0)
      const centre: Point = [
        all.reduce((sum, [x, , w]) => sum + w * x, 0) / whole,
        all.reduce((sum, [, y, w]) => sum + w * y, 0) / whole,
      ]
      return { points: all.map(([x, y]): Point => [x, y]), centre }
    })
    .filter(({ points }) => triangle(points) > 2e6)
}

/** Greatest area between three of the points, twice. */
function triangle(points: readonly Point[]): number {
  let most = 0
  for (const a of points) {
    for (const b of points) {
      for (const c of points)
        most = Math.max(most, (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))
    }
  }
  return most
}

function turned([x, y]: Point, degrees: number): Point {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  return [cos * x - sin * y + 731, sin * x + cos * y - 212]
}

function loads({ picks }: Rigged): number[] {
  return picks.flatMap(({ vertical, load, tension, shear, moment }) => [
    vertical,
    load,
    tension,
    shear,
    moment,
  ])
}

function expectAlike(found: readonly number[], expected: readonly number[], times = 1): void {
  expect(found.length).toBe(expected.length)
  for (const [i, one] of found.entries()) {
    expect(Math.abs(one - times * expected[i]!)).toBeLessThanOrEqual(
      1e-7 * (1 + Math.abs(times * expected[i]!)),
    )
  }
}

describe('balance', () => {
  it('three legs hold weight, both moments and their level pulls in balance (seed shown on failure)', () => {
    fc.assert(
      fc.property(patterns(3, 3), ({ points, centre }) => {
        const found = value(rigged(flat({ picks: face(points), centre })))
        expect(found.determinate).toBe(true)
        const sum = (of: (pick: Rigged['picks'][number]) => number): number =>
          found.picks.reduce((all, pick) => all + of(pick), 0)
        const level = (pick: Rigged['picks'][number], along: (angle: number) => number): number =>
          pick.bearing === null ? 0 : pick.pull * along((pick.bearing * Math.PI) / 180)
        expect(sum(({ vertical }) => vertical)).toBeCloseTo(60, 6)
        expect(sum(({ vertical, at }) => vertical * (at[0] - centre[0])) / 60).toBeCloseTo(0, 4)
        expect(sum(({ vertical, at }) => vertical * (at[1] - centre[1])) / 60).toBeCloseTo(0, 4)
        expect(sum((pick) => level(pick, Math.cos))).toBeCloseTo(0, 6)
        expect(sum((pick) => level(pick, Math.sin))).toBeCloseTo(0, 6)
      }),
    )
  })

  it('a leg pulls its insert towards the hook', () => {
    const [a] = value(rigged(flat())).picks
    expect(a!.bearing).toBeCloseTo((Math.atan2(1000, 1500) * 180) / Math.PI, 9)
  })

  it('legs are as long as they must be for the panel to hang level', () => {
    const found = value(rigged(flat({ centre: [1400, 1000], rigging: rig({ length: 5000 }) })))
    expect(Math.max(...found.picks.map(({ length }) => length))).toBeCloseTo(5000, 9)
    for (const { length, reach } of found.picks)
      expect(length ** 2 - reach ** 2).toBeCloseTo(found.hookHeight! ** 2, 3)
  })
})

describe('what does not matter', () => {
  it('how the panel lies on the drawing (seed shown on failure)', () => {
    fc.assert(
      fc.property(
        patterns(3, 6),
        fc.double({ min: 0, max: 360, noNaN: true }),
        ({ points, centre }, degrees) => {
          const rigging = rig({ legs: points.length, error: 3, stiffness: 5 })
          const one = value(rigged(flat({ picks: face(points), centre, rigging })))
          const picks = face(points.map((at) => turned(at, degrees)))
          const other = value(rigged(flat({ picks, centre: turned(centre, degrees), rigging })))
          expectAlike(loads(other), loads(one))
        },
      ),
      { numRuns: 60 },
    )
  })

  it('which leg is named first (seed shown on failure)', () => {
    fc.assert(
      fc.property(patterns(4, 5), ({ points, centre }) => {
        const rigging = rig({ legs: points.length, error: 3, stiffness: 5 })
        const one = value(rigged(flat({ picks: face(points), centre, rigging })))
        const other = value(rigged(flat({ picks: face([...points].reverse()), centre, rigging })))
        expectAlike(
          other.picks.map(({ vertical }) => vertical).reverse(),
          one.picks.map(({ vertical }) => vertical),
        )
      }),
      { numRuns: 60 },
    )
  })

  it('loads go with the load, moments with the size (seed shown on failure)', () => {
    fc.assert(
      fc.property(
        patterns(3, 6),
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        ({ points, centre }, times) => {
          const one = value(rigged(flat({ picks: face(points), centre })))
          const heavy = value(rigged(flat({ picks: face(points), centre, load: 60 * times })))
          expectAlike(loads(heavy), loads(one), times)
          const grown = value(
            rigged(
              flat({
                picks: face(points.map(([x, y]): Point => [times * x, times * y])),
                centre: [times * centre[0], times * centre[1]],
                thickness: 150 * times,
                rigging: rig({ legs: points.length, length: 20_000 * times }),
              }),
            ),
          )
          expectAlike(
            grown.picks.map(({ load }) => load),
            one.picks.map(({ load }) => load),
          )
          expectAlike(
            grown.picks.map(({ moment }) => moment),
            one.picks.map(({ moment }) => moment),
            times,
          )
        },
      ),
      { numRuns: 60 },
    )
  })

  it('a panel alike to both sides has loads alike to both sides', () => {
    const shares = [14, 16, 16, 14]
    const { picks } = value(
      rigged(flat({ centre: [1600, 1000], shares, rigging: rig({ error: 4, stiffness: 3 }) })),
    )
    for (const [a, b] of [
      [0, 3],
      [1, 2],
    ] as const) {
      expect(picks[a]!.vertical).toBeCloseTo(picks[b]!.vertical, 9)
      expect(picks[a]!.load).toBeCloseTo(picks[b]!.load, 9)
    }
  })
})

describe('legs that count', () => {
  it('never less than the share, and any two of four keep the balance (seed shown on failure)', () => {
    fc.assert(
      fc.property(patterns(4, 6), ({ points, centre }) => {
        const found = value(rigged(flat({ picks: face(points), centre })))
        expect(found.counted).toBe(2)
        for (const { vertical } of found.picks) {
          expect(vertical).toBeGreaterThanOrEqual(30 - 1e-9)
          expect(vertical).toBeLessThanOrEqual(60 + 1e-9)
        }
      }),
    )
  })

  const undetermined = 'two of 4 legs count'
  it.each<[string, Partial<YardRigging>, number, string, number]>([
    ['four single legs', {}, 2, undetermined, 30],
    ['four entered, nothing that makes them share', { counted: 4 }, 2, undetermined, 30],
    ['one entered', { counted: 1 }, 1, 'one of 4 legs count', 60],
    ['four equalised', { equalised: true }, 4, 'statics', 15],
    ['four equalised, two entered', { equalised: true, counted: 2 }, 2, undetermined, 30],
    ['four entered, legs alike to 0 mm', { counted: 4, error: 0 }, 4, 'all 4 legs count, as entered', 15],
    ['three entered, legs alike to 0 mm', { counted: 3, error: 0 }, 3, 'three of 4 legs count', 20],
    ['four entered, 1 mm, nothing gives', { counted: 4, error: 1 }, 4, 'legs uneven by 1 mm', 30],
  ])('%s', (_, change, counted, from, vertical) => {
    const found = value(rigged(flat({ rigging: rig(change) })))
    expect(found.counted).toBe(counted)
    expect(found.picks[0]!.from).toBe(from)
    expect(found.picks[0]!.vertical).toBeCloseTo(vertical, 9)
  })

  it('says where an entered count is not taken, and what it assumes of legs and panel', () => {
    const names = (change: Partial<YardRigging>): string[] => {
      const found = rigged(flat({ rigging: rig(change) }))
      return (found.assumed ?? []).map(({ field }) => field)
    }
    expect(names({ counted: 4 })).toEqual(['rigging R: counted'])
    expect(names({ error: 2 })).toEqual(['rigging R: stiffness', 'panel between the picks'])
    expect(names({ error: 2, stiffness: 3 })).toEqual(['panel between the picks'])
    expect(names({ equalised: true })).toEqual([])
  })

  it('four legs whose shares by bending are given: the greater of share and count', () => {
    const shares = [14, 16, 14, 16]
    const found = value(rigged(flat({ shares, rigging: rig({ counted: 4, error: 0 }) })))
    expect(found.picks.map(({ share }) => share)).toEqual(shares)
    expect(found.picks[1]!.vertical).toBeCloseTo(16, 9)
  })

  it('two legs, one pick under the centre of gravity: it has all', () => {
    const picks = face([
      [0, 0],
      [2000, 0],
    ])
    const found = value(rigged(flat({ picks, centre: [0, 0] })))
    expect(found.picks.map(({ vertical }) => vertical)).toEqual([60, 0])
    expect(found.picks[1]!.load).toBe(0)
  })
})

describe('rows', () => {
  const edge = face(
    [
      [500, 3000],
      [4500, 3000],
    ],
    'edge',
  )
  const upright = (change: Partial<RiggedInput> = {}): RiggedInput =>
    flat({ picks: edge, centre: [2000, 1400], hang: 'row', angle: 90, ...change })

  it('edge inserts of an upright panel: tension along them, the pull of the legs across', () => {
    const { picks, plumb, tilt, hook } = value(rigged(upright()))
    expect(plumb).toBe(0)
    expect(hook[0]).toBeCloseTo(2000, 9)
    expect(hook[1]).toBeCloseTo(3000, 9)
    expect(picks[0]!.vertical).toBeCloseTo((60 * 2500) / 4000, 9)
    expect(picks[0]!.tension).toBeCloseTo(picks[0]!.vertical, 9)
    expect(picks[0]!.shear).toBeCloseTo(picks[1]!.shear, 9)
    expect(tilt.off).toBeCloseTo(500, 9)
    expect(tilt.angle).toBeGreaterThan(0)
  })

  it.each([
    [0, 'edge', 90],
    [30, 'edge', 60],
    [90, 'edge', 0],
    [0, 'face', 0],
    [30, 'face', 30],
  ] as const)('turned to %i° on %s inserts: their axis is %i° off the vertical', (angle, kind, axis) => {
    const picks = edge.map((pick) => ({ ...pick, kind }))
    const [a] = value(rigged(upright({ picks, angle }))).picks
    const radians = (axis * Math.PI) / 180
    expect(a!.tension).toBeCloseTo(a!.vertical * Math.cos(radians), 9)
    expect(a!.shear).toBeCloseTo(Math.hypot(a!.vertical * Math.sin(radians), a!.pull), 9)
    expect(Math.hypot(a!.tension, a!.shear)).toBeCloseTo(a!.load, 9)
  })

  it('four in a row are undetermined, whatever bends', () => {
    const picks = face(
      [
        [500, 3000],
        [1500, 3000],
        [2500, 3000],
        [3500, 3000],
      ],
      'edge',
    )
    const found = value(rigged(upright({ picks, centre: [2000, 1400] })))
    expect(found.determinate).toBe(false)
    for (const { vertical } of found.picks) expect(vertical).toBeGreaterThanOrEqual(30 - 1e-9)
    const alike = value(rigged(upright({ picks, rigging: rig({ stiffness: 4, error: 0, counted: 4 }) })))
    for (const { uneven } of alike.picks) expect(uneven!.most).toBeCloseTo(15, 0)
  })
})

describe('free hang', () => {
  it('a running sling hides that the hook is off', () => {
    const centre: Point = [1550, 1000]
    const own = value(rigged(flat({ centre, rigging: rig({ length: 4000 }) }))).tilt
    expect(own.off).toBeCloseTo(50, 6)
    expect(own.angle).toBeGreaterThan(0.5)
    const running = value(rigged(flat({ centre, rigging: rig({ length: 4000, equalised: true }) }))).tilt
    expect(running.off).toBeCloseTo(50, 6)
    expect(running.angle).toBeNull()
    expect(value(rigged(flat())).tilt).toMatchObject({ angle: 0 })
  })

  it('three picks: the hook comes over the point equally far from them', () => {
    const picks = face([
      [0, 0],
      [3000, 0],
      [3000, 4000],
    ])
    expect(value(rigged(flat({ picks, centre: [2000, 1500] }))).tilt.off).toBeCloseTo(Math.hypot(500, 500), 6)
  })
})

describe('beams', () => {
  it('legs that reach inward add to the compression of a spreader', () => {
    const out = value(rigged(flat({ rigging: rig({ spreader: 3000, top: 3000, equalised: true }) })))
    expect(out.beam?.compression).toBeCloseTo(30 * Math.tan(Math.PI / 6), 9)
    const wide = value(rigged(flat({ rigging: rig({ spreader: 4000, top: 4000, equalised: true }) })))
    const height = Math.sqrt(20_000 ** 2 - 1000 ** 2 - 500 ** 2)
    expect(wide.beam?.compression).toBeCloseTo(30 * Math.tan(Math.PI / 6) + (30 * 500) / height, 9)
  })

  it('is asked for its top slings, and for its length', () => {
    const found = value(rigged(flat({ rigging: rig({ spreader: 3000 }) })))
    expect(found.hookHeight).toBeNull()
    expect(found.beam).toEqual({ length: 3000, compression: null, moment: null, topAngle: null })
    expect(found.gaps.join()).toContain('slings above the spreader')
    expect(gaps(rigged(flat({ rigging: rig({ spreader: true }) })))).toContain('length of the spreader')
    expect(gaps(rigged(flat({ rigging: rig({ spreader: 3000, top: 1500 }) })))).toContain('does not reach')
  })
})

describe('refused', () => {
  const bad: [string, Partial<RiggedInput>, string][] = [
    ['no pick', { picks: [] }, 'none drawn'],
    ['one pick', { picks: face([[0, 0]]) }, 'one insert does not hold'],
    ['legs that are not the picks', { rigging: rig({ legs: 3 }) }, '3 legs for 4 inserts'],
    ['two at one place', { picks: face([...SQUARE.slice(0, 3), [0, 0.5]]) }, 'inserts A and D: at one place'],
    [
      'three in one line',
      {
        picks: face([
          [0, 0],
          [1000, 0],
          [2000, 0],
        ]),
        centre: [1000, 0],
      },
      'one line',
    ],
    [
      'two, the centre of gravity beside their line',
      {
        picks: face([
          [0, 0],
          [2000, 0],
        ]),
        centre: [1000, 20],
      },
      'not on their line',
    ],
    [
      'three, the centre of gravity outside',
      { picks: face(SQUARE.slice(0, 3)), centre: [600, 1000] },
      'insert B: would have to push down with 18.000 kN',
    ],
    ['four, the centre of gravity outside', { centre: [3100, 1000] }, 'outside of them'],
    ['a share that pushes', { shares: [32, -2, 32, -2] }, 'insert B: would have to push down with 2.000 kN'],
    ['shares that are not the load', { shares: [10, 10, 10, 10] }, 'is not the load'],
    ['shares off the centre of gravity', { shares: [25, 5, 5, 25] }, 'off the centre of gravity'],
    ['too few shares', { shares: [30, 30] }, 'one finite number a pick'],
    ['a share that is no number', { shares: [15, 15, 15, Number.NaN] }, 'one finite number a pick'],
    ['a compliance of another size', { compliance: [[1]] }, 'picks by picks'],
    ['a short leg', { rigging: rig({ length: 1800 }) }, 'does not reach 1803 mm'],
    [
      'equalised, far off the middle',
      { centre: [1900, 1000], rigging: rig({ equalised: true }) },
      'to hang level',
    ],
    ['no load', { load: 0 }, 'load on the legs'],
    ['a load that is no number', { load: Number.NaN }, 'load on the legs'],
    ['an endless load', { load: Number.POSITIVE_INFINITY }, 'load on the legs'],
    ['no thickness', { thickness: -1 }, 'thickness'],
    ['an angle beyond upright', { angle: 91 }, '0 to 90'],
    ['a place that is no number', { centre: [Number.NaN, 0] }, 'positions of the inserts'],
    ['a row that is none', { hang: 'row', angle: 90 }, 'one row'],
  ]
  it.each(bad)('%s', (_, change, text) => {
    expect(gaps(rigged(flat(change)))).toContain(text)
  })

  it('sixteen legs with anything entered answer', () => {
    const points = Array.from({ length: 16 }, (_, i): Point => [(i % 8) * 1000, Math.floor(i / 8) * 2000])
    const rigging = rig({ legs: 16, error: 30, stiffness: 1 })
    const found = value(rigged(flat({ picks: face(points), centre: [3500, 1000], rigging })))
    for (const { uneven, vertical } of found.picks) {
      expect(uneven!.least).toBeGreaterThanOrEqual(0)
      expect(vertical).toBeLessThanOrEqual(60 + 1e-9)
    }
    expect(found.gaps.join()).toContain('mode factor of 16 legs')
  })
})

describe('working', () => {
  const rights: [string, Partial<RiggedInput>][] = [
    ['single legs', {}],
    ['legs of uneven length', { rigging: rig({ error: 4, stiffness: 3, length: 3000 }) }],
    ['a leg goes slack', { rigging: rig({ error: 400, stiffness: 3, length: 3000 }) }],
    ['nothing gives', { rigging: rig({ error: 4, length: 3000 }) }],
    ['equalised', { rigging: rig({ equalised: true, length: 3000 }), centre: [1520, 990] }],
    [
      'pairs',
      {
        rigging: rig({
          pairs: [
            [1, 2],
            [3, 4],
          ],
        }),
      },
    ],
    [
      'pairs and a single leg',
      {
        picks: face([...SQUARE, [1500, 2600]]),
        centre: [1500, 1100],
        rigging: rig({
          legs: 5,
          pairs: [
            [1, 2],
            [3, 4],
          ],
        }),
      },
    ],
    ['spreader', { rigging: rig({ spreader: 4000, top: 3000, equalised: true }) }],
    ['lifting beam', { rigging: rig({ spreader: 3000, top: 'middle', equalised: true }) }],
    ['three', { picks: face(SQUARE.slice(0, 3)), centre: [2000, 700] }],
    ['turned', { picks: face(SQUARE.slice(0, 2), 'edge'), hang: 'row', angle: 30, centre: [1400, 900] }],
    ['upright from its face', { picks: face(SQUARE.slice(2)), hang: 'row', angle: 90, centre: [1400, 900] }],
    [
      'four in a row',
      {
        picks: face(SQUARE.map(([x, y]): Point => [x + y, 0])),
        hang: 'row',
        angle: 90,
        centre: [2400, -900],
      },
    ],
  ]
  it.each(rights)('%s: every printed formula gives its printed result', (_, change) => {
    const found = rigged(flat(change))
    if (!found.known) throw new Error(found.gaps.join('; '))
    expect(found.working.length).toBeGreaterThan(8)
    let replayed = 0
    for (const step of found.working) {
      const again = replay(step)
      if (again === null) continue
      replayed += 1
      expect(typeof step.result, step.symbol).toBe('number')
      const size = Math.max(1e-9, Math.abs(step.result as number))
      expect(
        Math.abs(again - (step.result as number)) / size,
        `${step.symbol}: ${step.formula}`,
      ).toBeLessThan(1e-9)
    }
    expect(replayed).toBeGreaterThan(8)
  })
})

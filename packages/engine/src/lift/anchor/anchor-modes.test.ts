import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { replay } from '../../working/replay.ts'
import type { AnchorFound } from './anchor-modes.ts'
import { FREE, modeOf, nominalOf, rectangle, report } from './testing.ts'

const seed = 20261127
const CODES = ['us', 'eu'] as const

/** A group near a corner and an opening, with shear. */
const CLOSE = {
  at: [
    [300, 250],
    [480, 250],
    [300, 400],
  ] as [number, number][],
  outline: [
    [0, 0],
    [5000, 0],
    [5000, 2000],
    [2500, 3000],
    [0, 2000],
  ] as [number, number][],
  openings: [rectangle(700, 300, 1500, 1500)],
  thickness: 200,
  depth: 130,
  shear: { force: 12, direction: 30 },
  eccentricity: [10, 5] as [number, number],
}

const turned =
  (angle: number) =>
  ([x, y]: readonly [number, number]): [number, number] => [
    Math.cos(angle) * x - Math.sin(angle) * y,
    Math.sin(angle) * x + Math.cos(angle) * y,
  ]

function nominals(found: AnchorFound): Record<string, number> {
  return Object.fromEntries(
    found.modes.map(({ mode, action, nominal }) => [`${mode} ${action}`, nominal ?? -1]),
  )
}

function expectSame(one: AnchorFound, other: AnchorFound, within = 2e-5): void {
  const [a, b] = [nominals(one), nominals(other)]
  expect(Object.keys(b)).toEqual(Object.keys(a))
  for (const [name, value] of Object.entries(a))
    expect(Math.abs((b[name] ?? 0) / value - 1), name).toBeLessThan(within)
}

describe.each(CODES)('%s: laws that always hold', (code) => {
  it(`turning the whole case changes nothing (seed ${seed})`, () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6.28, noNaN: true }), (angle) => {
        const turn = turned(angle)
        const change = {
          at: CLOSE.at.map(turn),
          outline: CLOSE.outline.map(turn),
          openings: CLOSE.openings.map((ring) => ring.map(turn)),
          eccentricity: turn(CLOSE.eccentricity),
          shear: { force: 12, direction: (((30 + (angle * 180) / Math.PI) % 360) + 360) % 360 },
        }
        expectSame(report(code, CLOSE), report(code, { ...CLOSE, ...change }))
      }),
      { seed, numRuns: 12 },
    )
  })

  it('its mirror image is as strong', () => {
    const mirror = ([x, y]: readonly [number, number]): [number, number] => [-x, y]
    const change = {
      at: CLOSE.at.map(mirror),
      outline: CLOSE.outline.map(mirror),
      openings: CLOSE.openings.map((ring) => ring.map(mirror)),
      eccentricity: mirror(CLOSE.eccentricity),
      shear: { force: 12, direction: 150 },
    }
    expectSame(report(code, CLOSE), report(code, { ...CLOSE, ...change }))
  })

  it(`concrete modes go with √f, pull-out with f (seed ${seed})`, () => {
    fc.assert(
      fc.property(fc.double({ min: 12, max: 60, noNaN: true }), (strength) => {
        const of = (f: number) =>
          nominals(report(code, { ...CLOSE, concrete: { strength: f, cracked: true } }))
        const [a, b] = [of(20), of(strength)]
        for (const name of ['breakout tension', 'edge shear', 'pryout shear'])
          expect((b[name] ?? 0) / (a[name] ?? 1)).toBeCloseTo(Math.sqrt(strength / 20), 9)
        expect((b['pullout tension'] ?? 0) / (a['pullout tension'] ?? 1)).toBeCloseTo(strength / 20, 9)
      }),
      { seed, numRuns: 20 },
    )
  })

  it('load changes demand and verdict, never resistance', () => {
    const [small, large] = [report(code, CLOSE), report(code, { ...CLOSE, tension: 300 })]
    expectSame(small, large, 1e-12)
    expect(large.verdict).toBe('fail')
  })

  it('an edge or opening far off changes nothing', () => {
    const single = {
      at: [[0, 0]],
      shear: { force: 5, direction: 180 },
      outline: rectangle(-200, -4000, 4000, 4000),
    }
    const shorter = { ...single, outline: rectangle(-200, -3000, 3500, 3000) }
    const pierced = { ...single, openings: [rectangle(2000, -500, 2500, 500)] }
    expectSame(report(code, single), report(code, shorter), 1e-9)
    expectSame(report(code, single), report(code, pierced), 1e-9)
  })

  it('an opening in the way is an edge: never stronger for it', () => {
    const plain = report(code, { ...FREE, shear: 5 })
    const pierced = report(code, { ...FREE, shear: 5, openings: [rectangle(150, -400, 400, 400)] })
    for (const mode of ['breakout', 'edge', 'pryout'])
      expect(modeOf(pierced, mode)?.nominal).toBeLessThan(modeOf(plain, mode)?.nominal ?? 0)
  })

  it('an opening and an edge at the same place are the same', () => {
    const edge = report(code, {
      ...FREE,
      shear: { force: 5, direction: 0 },
      outline: rectangle(-4000, -4000, 180, 4000),
    })
    const opening = report(code, {
      ...FREE,
      shear: { force: 5, direction: 0 },
      openings: [rectangle(180, -2000, 900, 2000)],
    })
    expectSame(edge, opening, 1e-6)
  })

  it('inserts too far apart to touch carry as many times one; the nearer, the less', () => {
    const single = nominalOf(code, {}, 'breakout')
    const pair = (apart: number) =>
      nominalOf(
        code,
        {
          at: [
            [0, 0],
            [apart, 0],
          ],
        },
        'breakout',
      )
    expect(pair(1000) / single).toBeCloseTo(2, 9)
    expect(pair(450) / single).toBeCloseTo(2, 5)
    expect(pair(449.9) / single).toBeCloseTo(2, 3)
    expect(pair(200)).toBeGreaterThan(pair(100))
    expect(pair(1) / single).toBeCloseTo(1, 2)
  })

  it('far apart and off centre, the more loaded of two decides', () => {
    const change = {
      at: [
        [0, 0],
        [2000, 0],
      ],
      eccentricity: [500, 0],
    }
    // 0.75 on one: together 4/3 of one.
    expect(nominalOf(code, change, 'breakout') / nominalOf(code, {}, 'breakout')).toBeCloseTo(4 / 3, 9)
    expect(modeOf(report(code, change), 'pullout')?.demand).toBeCloseTo(15, 9)
  })

  it('cracked concrete is never stronger', () => {
    const [sound, cracked] = [
      report(code, CLOSE),
      report(code, { ...CLOSE, concrete: { strength: 20, cracked: true } }),
    ]
    for (const [name, value] of Object.entries(nominals(cracked)))
      expect(value).toBeLessThanOrEqual(nominals(sound)[name] ?? 0)
  })

  it(`nearer to the edge is never stronger (seed ${seed})`, () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 400 }), fc.integer({ min: 1, max: 200 }), (c, more) => {
        const at = (edge: number) =>
          report(code, { shear: { force: 5, direction: 180 }, outline: rectangle(-edge, -4000, 4000, 4000) })
        const [near, far] = [at(c), at(c + more)]
        for (const mode of ['breakout', 'edge'])
          expect(modeOf(near, mode)?.nominal ?? 0).toBeLessThanOrEqual(
            (modeOf(far, mode)?.nominal ?? 0) * (1 + 1e-6),
          )
      }),
      { seed, numRuns: 25 },
    )
  })

  it('every printed step replays, of many cases', () => {
    const cases: object[] = [
      CLOSE,
      { ...CLOSE, shear: 12, concrete: { strength: 20, cracked: true } },
      { ...CLOSE, shear: { force: 12, direction: 90 } },
      { ...CLOSE, shear: { force: 12, direction: 200 }, splitting: { edge: 400, spacing: 800 } },
      { outline: rectangle(-75, -300, 4000, 4000), thickness: 300, depth: 290, shear: 5, shaft: 30 },
      {
        at: [
          [0, 0],
          [150, 0],
          [300, 0],
        ],
        outline: rectangle(-90, -60, 4000, 60),
        thickness: 900,
        depth: 280,
        eccentricity: [10, 0],
        ductile: true,
        yieldRatio: 0.75,
        shear: 6,
      },
      {
        at: [
          [0, 0],
          [2000, 0],
          [2000, 900],
        ],
        eccentricity: [200, 50],
        shear: { force: 5, direction: 10 },
        yieldRatio: 0.9,
      },
    ]
    let replayed = 0
    for (const change of cases) {
      for (const supplementary of [false, true]) {
        for (const step of report(code, change, supplementary).working) {
          const again = replay(step)
          if (again === null) continue
          replayed += 1
          expect(
            Math.abs(again - (step.result as number)),
            `${step.symbol} = ${step.formula}`,
          ).toBeLessThanOrEqual(1e-9 * Math.abs(again))
        }
      }
    }
    expect(replayed).toBeGreaterThan(300)
  })

  it('nothing that is not finite leaves, whatever the sizes', () => {
    const size = fc.integer({ min: 1, max: 3000 })
    fc.assert(
      fc.property(size, size, size, fc.integer({ min: 1, max: 80 }), (c, depth, more, shaft) => {
        const found = report(code, {
          outline: rectangle(-c, -2 * c - 1, 3500, 3500),
          depth,
          thickness: depth + more,
          shaft,
          shear: 5,
        })
        for (const { nominal, design, demand, ratio, unknown } of found.modes) {
          if (unknown === undefined)
            for (const value of [nominal, design, demand, ratio]) expect(Number.isFinite(value)).toBe(true)
          else expect(design).toBeNull()
        }
      }),
      { seed, numRuns: 40 },
    )
  })
})

describe('what is asked and what not', () => {
  it('blow-out from 2.5 edge distances deep (us) and from half the depth (eu), both sides of each', () => {
    const at = (edge: number) => ({ outline: rectangle(-edge, -4000, 4000, 4000), depth: 150 })
    expect(modeOf(report('us', at(60)), 'blowout')).toBeUndefined()
    expect(modeOf(report('us', at(59.9)), 'blowout')).toBeDefined()
    expect(modeOf(report('eu', at(75.1)), 'blowout')).toBeUndefined()
    expect(modeOf(report('eu', at(75)), 'blowout')).toBeDefined()
  })

  it('splitting of one not from the product distance, of several from 1.2 times (eu)', () => {
    const at = (edge: number, pair: boolean) => ({
      at: pair
        ? [
            [0, 0],
            [600, 0],
          ]
        : [[0, 0]],
      outline: rectangle(-edge, -4000, 4000, 4000),
    })
    expect(modeOf(report('eu', at(200, false)), 'splitting')).toBeUndefined()
    expect(modeOf(report('eu', at(199, false)), 'splitting')).toBeDefined()
    expect(modeOf(report('eu', at(240, true)), 'splitting')).toBeUndefined()
    expect(modeOf(report('eu', at(239, true)), 'splitting')).toBeDefined()
  })

  it('us: product distances not kept: splitting and verdict are not known', () => {
    const found = report('us', { outline: rectangle(-150, -4000, 4000, 4000) })
    expect(found.verdict).toBe('unknown')
    expect(found.unknown).toEqual([expect.stringMatching(/splitting: ACI 318-19 gives distances/)])
  })

  it('shear straight away from the only edge near: no edge of that side', () => {
    const away = report('eu', {
      outline: rectangle(-150, -9000, 9000, 9000),
      shear: { force: 5, direction: 0 },
    })
    const toward = report('eu', {
      outline: rectangle(-150, -9000, 9000, 9000),
      shear: { force: 5, direction: 180 },
    })
    expect(modeOf(away, 'edge')?.nominal).toBeGreaterThan(5 * (modeOf(toward, 'edge')?.nominal ?? 0))
  })

  it('eu: strength below 12 MPa and above 90 is not known', () => {
    for (const [strength, verdict] of [
      [11.9, 'unknown'],
      [12, 'pass'],
      [90, 'pass'],
      [90.1, 'unknown'],
    ] as const)
      expect(report('eu', { concrete: { strength, cracked: false } }).verdict).toBe(verdict)
  })

  it('us: strength above 70 MPa counts as 70', () => {
    const of = (strength: number) => nominalOf('us', { concrete: { strength, cracked: false } }, 'breakout')
    expect(of(95)).toBe(of(70))
    expect(of(69)).toBeLessThan(of(70))
  })

  it('a resultant beside the inserts: no mode of the group is known', () => {
    const found = report('us', { eccentricity: [40, 0] })
    expect(found.verdict).toBe('unknown')
    expect(found.unknown.join()).toMatch(/eccentricity/)
  })

  it('us: slight shear is not joined with tension; more is', () => {
    const shear = (force: number) => report('us', { shear: { force, direction: 0 } }).interaction
    expect(shear(1)).toEqual([])
    expect(shear(30)).toHaveLength(1)
  })

  it('steel: ductile or not (us), yield ratio (eu)', () => {
    const steel = (code: 'us' | 'eu', change: object) =>
      ['tension', 'shear'].map(
        (action) => modeOf(report(code, { shear: 5, ...change }), 'steel', action)?.factor,
      )
    expect(steel('us', {})).toEqual([0.65, 0.6])
    expect(steel('us', { ductile: true })).toEqual([0.75, 0.65])
    expect(steel('eu', { yieldRatio: 0.8 })).toEqual([expect.closeTo(1 / 1.5, 12), 1 / 1.25])
    expect(steel('eu', { yieldRatio: 0.9 })).toEqual([1 / 1.4, 1 / 1.5])
    expect(report('eu', {}).assumed.map(({ field }) => field)).toContain('yieldRatio')
  })
})

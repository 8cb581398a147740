import { describe, expect, it } from 'vitest'
import { solveDense } from '../../numeric/dense.ts'
import { mixCovariance, ownAt, readAge, sharedAt } from './covariance.ts'
import { featuresOf, scaled, scaleOf } from './features.ts'
import { LEARNED } from './learned.ts'
import { openMixes } from './open-mixes.ts'
import { outOfRange } from './open-prior.ts'
import { curveLaw, openProcess } from './open-process.ts'

// Every number differs from the others, so that none can stand for another.
const BY = { ...LEARNED, reach: Array.from({ length: 9 }, () => 2) }

describe('what two mixes share', () => {
  it('reads ages from 28 days on', () => {
    expect(readAge(28)).toEqual({ growth: 0, ln: 0 })
    // 1 − √(28 / 7) = −1
    expect(readAge(7).growth).toBeCloseTo(-1, 12)
    expect(readAge(7).ln).toBeCloseTo(-Math.log(4), 12)
  })

  it('is by hand what the numbers say: features apart by one reach in one of nine', () => {
    const a = [2, 0, 0, 0, 0, 0, 0, 0, 0]
    const b = [4, 0, 0, 0, 0, 0, 0, 0, 0]
    const like = Math.exp(-1 / 2)
    const shared = mixCovariance(a, b, BY)
    expect(shared.level).toBeCloseTo(1 + BY.level ** 2 * like + BY.levelStraight ** 2 * 2, 12)
    expect(shared.slope).toBeCloseTo(
      BY.slopeCommon ** 2 + BY.slope ** 2 * like + BY.slopeStraight ** 2 * 2,
      12,
    )
    expect(shared.cross).toBeCloseTo(
      BY.turn * (BY.level * BY.slope * like + BY.levelStraight * BY.slopeStraight * 2),
      12,
    )
    // At 28 and 7 days growth is 0 and −1.
    const near = Math.exp(-((Math.log(4) / BY.bendReach) ** 2) / 2)
    expect(sharedAt(shared, readAge(28), readAge(7), BY)).toBeCloseTo(
      shared.level - shared.cross + shared.bend * near,
      12,
    )
    expect(ownAt(readAge(7), readAge(7), BY)).toBeCloseTo(
      BY.levelOwn ** 2 - 2 * BY.turnOwn * BY.levelOwn * BY.slopeOwn + BY.slopeOwn ** 2 + BY.bendOwn ** 2,
      12,
    )
  })
})

describe('the process over some mixes', () => {
  const mixes = openMixes()
    .filter(({ tests }) => tests.length > 3)
    .slice(0, 4)
  const asked = openMixes()[200]?.proportions as (typeof mixes)[number]['proportions']

  it('tells of another mix what elimination with row exchange does: second method', () => {
    const process = openProcess({ mixes, by: BY })
    const scale = scaleOf(mixes.map(({ proportions }) => featuresOf(proportions)))
    const own = scaled(featuresOf(asked), scale)
    const rows = mixes.flatMap(({ proportions, tests }, mix) =>
      tests.map(({ days, strength }) => ({
        mix,
        x: scaled(featuresOf(proportions), scale),
        days,
        value: Math.log(strength),
      })),
    )
    const centre = rows.reduce((sum, { value }) => sum + value, 0) / rows.length
    const between = (a: (typeof rows)[number], b: (typeof rows)[number]) => {
      const [s, t] = [readAge(a.days), readAge(b.days)]
      return sharedAt(mixCovariance(a.x, b.x, BY), s, t, BY) + (a.mix === b.mix ? ownAt(s, t, BY) : 0)
    }
    const matrix = rows.map((a, i) => rows.map((b, j) => between(a, b) + (i === j ? BY.test ** 2 : 0)))
    const point = { mix: -1, x: own, days: 28, value: 0 }
    const to = rows.map((row) => between(point, row))
    const weights = solveDense(matrix, to) ?? []
    const mean = rows.reduce((sum, { value }, i) => sum + (weights[i] ?? 0) * (value - centre), centre)
    const variance = to.reduce((sum, each, i) => sum - (weights[i] ?? 0) * each, between(point, point))
    const law = curveLaw(process, asked, [28])
    expect(law.mean[0]).toBeCloseTo(mean, 8)
    expect(law.covariance[0]).toBeCloseTo(variance, 8)
  })

  it('leans less on a test that was found to have slipped', () => {
    const [first] = mixes
    const [test] = first?.tests ?? []
    const slips = [
      { mark: first?.mark ?? '', days: test?.days ?? 0, strength: test?.strength ?? 0, scatter: 5 },
    ]
    const weight = (process: ReturnType<typeof openProcess>) => Math.abs(process.weights[0] ?? Number.NaN)
    expect(weight(openProcess({ mixes, by: BY, slips }))).toBeLessThan(
      0.1 * weight(openProcess({ mixes, by: BY })),
    )
  })

  it('refuses numbers that leave the covariance without a factor', () => {
    expect(() => openProcess({ mixes, by: { ...BY, turn: 40, test: 0 } })).toThrow(/not positive definite/)
  })
})

describe('proportions against the open mixes', () => {
  const inside = openMixes()[0]?.proportions as Parameters<typeof outOfRange>[0]

  it('names what lies outside, and what lies far outside', () => {
    expect(outOfRange(inside)).toEqual([])
    const most = Math.max(...openMixes().map(({ proportions }) => proportions.slag))
    expect(outOfRange({ ...inside, slag: most })).toEqual([])
    expect(outOfRange({ ...inside, slag: most * 1.2 }).map(({ field, far }) => [field, far])).toContainEqual([
      'slag',
      false,
    ])
    expect(outOfRange({ ...inside, slag: most * 1.6 }).map(({ field, far }) => [field, far])).toContainEqual([
      'slag',
      true,
    ])
  })

  it('sees water over binder where each amount for itself is inside', () => {
    const thin = { ...inside, cement: 125, slag: 0, flyAsh: 0, water: 245 }
    expect(outOfRange(thin).map(({ field }) => field)).toEqual(['water / binder'])
  })
})

import { describe, expect, it } from 'vitest'
import { HELD_OUT_FOUND } from '../held-out-found.ts'
import { normalBelow } from '../normal.ts'
import { alikeGroups, openMixes } from '../open-mixes.ts'
import {
  chance,
  type HeldOutCase,
  heldOutCases,
  restOfFolds,
  scoreOf,
  toldWithMix,
  toldWithoutMix,
} from './hold-out.ts'
import { codeCurve, logLinear } from './plain-curves.ts'

const SEED = 1
const FOLDS = 8

describe(`strength at 28 days of mixes held out (seed ${SEED}, ${FOLDS} folds)`, () => {
  const { cases, foldOf } = heldOutCases({ last: 7, late: 28, folds: FOLDS, order: chance(SEED) })
  const rest = restOfFolds(foldOf)
  const told = toldWithMix(cases, rest, 28)

  it('holds out whole mixes, and all of like proportions with them', () => {
    const groups = alikeGroups(openMixes())
    const folds = new Map<number, Set<number>>()
    for (const [at, group] of groups.entries())
      folds.set(group, new Set([...(folds.get(group) ?? []), foldOf[at] ?? -1]))
    for (const each of folds.values()) expect(each.size).toBe(1)
    expect(new Set(foldOf).size).toBe(FOLDS)
    expect(cases).toHaveLength(87)
  })

  it('leaves no row of the fold among what it is told from', () => {
    const counts = openMixes().map(
      ({ tests }) => new Set(tests.map(({ days, strength }) => `${days}:${strength}`)).size,
    )
    for (const [fold, process] of rest.entries()) {
      const kept = counts.reduce((sum, count, at) => sum + (foldOf[at] === fold ? 0 : count), 0)
      expect(process.rows).toHaveLength(kept)
    }
  })

  it('does not see the late result: another one there tells the same', () => {
    const changed = cases.slice(0, 3).map((each) => ({ ...each, late: 2 * each.late }))
    const again = toldWithMix(changed, rest, 28)
    for (const [at, each] of again.entries()) expect(each).toEqual(told[at])
  })

  it('misses by at most 0.7 of the line over ln age and 0.55 of the code curve of class N', () => {
    const error = (some: readonly HeldOutCase[], of: (each: HeldOutCase) => number | null) =>
      some.reduce((sum, each) => sum + Math.abs((of(each) ?? Number.NaN) - each.late), 0) / some.length
    const lined = (each: HeldOutCase) => logLinear(each.early, 28) !== null
    const line = error(cases.filter(lined), (each) => logLinear(each.early, 28))
    expect(scoreOf(cases, told, lined).error).toBeLessThan(0.7 * line)
    expect(scoreOf(cases, told).error).toBeLessThan(
      0.55 * error(cases, (each) => codeCurve(each.early, 28, 0.25)),
    )
  })

  it('holds 85 to 95 of 100 in the 90 % band, with the mix in at most 9 MPa to each side', () => {
    const { cover, halfWidth } = scoreOf(cases, told)
    expect(cover).toBeGreaterThanOrEqual(0.85)
    expect(cover).toBeLessThanOrEqual(0.95)
    expect(halfWidth).toBeLessThan(9)
    const alone = scoreOf(cases, toldWithoutMix(cases, 28)).cover
    expect(alone).toBeGreaterThanOrEqual(0.85)
    expect(alone).toBeLessThanOrEqual(0.95)
  })

  it('comes near what the app shows as measured', () => {
    const { cases: count, cover, halfWidth } = scoreOf(cases, told)
    expect(count).toBe(HELD_OUT_FOUND.mixes)
    expect(Math.abs(cover - HELD_OUT_FOUND.held)).toBeLessThan(0.035)
    expect(Math.abs(halfWidth - HELD_OUT_FOUND.halfWidth)).toBeLessThan(0.4)
  })

  it('tells the probability that a strength is reached as often as it is', () => {
    // Each mix against each of five wanted strengths, sorted into five classes of what was told.
    const classes = Array.from({ length: 5 }, () => ({ told: 0, reached: 0, cases: 0 }))
    for (const [at, { strength, high }] of told.entries()) {
      const deviation = Math.log(high / strength) / 1.6448536269514722
      for (const wanted of [20, 30, 40, 50, 60]) {
        const chanceTold = normalBelow(Math.log(strength / wanted) / deviation)
        const each = classes[Math.min(4, Math.floor(5 * chanceTold))]
        if (each === undefined) continue
        each.told += chanceTold
        each.reached += (cases[at]?.late ?? 0) >= wanted ? 1 : 0
        each.cases += 1
      }
    }
    for (const { told: sum, reached, cases: count } of classes) {
      // Two standard deviations of a count of chances.
      const mean = sum / count
      expect(Math.abs(reached / count - mean)).toBeLessThan(2 * Math.sqrt((mean * (1 - mean) + 0.01) / count))
    }
  })
})

describe('plain curves that it is held against', () => {
  it('draws the line through two ages, by hand', () => {
    // 20 MPa at 1 day, 30 at e days: 10 MPa for each unit of ln age.
    const early = [
      { days: 1, strength: 20 },
      { days: Math.E, strength: 30 },
    ]
    expect(logLinear(early, Math.E ** 3)).toBeCloseTo(50, 9)
    expect(logLinear(early.slice(1), 28)).toBeNull()
  })

  // EN 1992-1-1:2004, 3.1.2(6): β 0.8187 at 7 days, s 0.20; 0.7788 at s 0.25.
  it.each([
    [0.2, 0.8187],
    [0.25, 0.7788],
  ])('carries the last early test on by the code curve, s %d', (s, beta) => {
    const early = [
      { days: 7, strength: 30 },
      { days: 3, strength: 20 },
    ]
    expect(codeCurve(early, 28, s)).toBeCloseTo(30 / beta, 2)
  })
})

import type { AgedStrength } from '../aged-strength.ts'
import { type Covariance, LEARNED, SLIPS, WIDEN } from '../learned.ts'
import { alikeGroups, type OpenMix, openMixes } from '../open-mixes.ts'
import { openPrior } from '../open-prior.ts'
import { type OpenProcess, openProcess, type Slip } from '../open-process.ts'
import { POPULATION_PRIOR } from '../population.ts'
import { laterTests, takeIn } from '../posterior.ts'
import type { StrengthPrior } from '../strength-prior.ts'
import { median } from './plain-curves.ts'

/** One mix held out: its early tests, and what came at the late age, MPa. */
export interface HeldOutCase {
  readonly mix: OpenMix
  readonly fold: number
  readonly early: readonly AgedStrength[]
  /** Median of its results at the late age, MPa. */
  readonly late: number
}

export interface Told {
  readonly strength: number
  readonly low: number
  readonly high: number
}

/** Standard normal deviate of a 90 % band. */
const DEVIATE = 1.6448536269514722

/**
 * Mixes with tests up to `last` days and one at `late` days, dealt to folds by whole groups of like mixes, in strata of
 * their late strength. `order` gives numbers from 0 to 1 by chance.
 */
export function heldOutCases({
  last,
  late,
  folds,
  order,
}: {
  readonly last: number
  readonly late: number
  readonly folds: number
  readonly order: () => number
}): { cases: HeldOutCase[]; foldOf: number[] } {
  const mixes = openMixes()
  const groups = alikeGroups(mixes)
  const strength = (group: number) => {
    const at28 = mixes
      .flatMap(({ tests }, at) => (groups[at] === group ? tests : []))
      .map((test) => test.strength)
    return at28.reduce((sum, each) => sum + each, 0) / at28.length
  }
  const dealt = new Map<number, number>()
  const sorted = [...new Set(groups)].map((group) => ({ group, strength: strength(group) }))
  sorted.sort((a, b) => a.strength - b.strength)
  for (let from = 0; from < sorted.length; from += folds) {
    const stratum = sorted.slice(from, from + folds).map(({ group }) => ({ group, by: order() }))
    stratum.sort((a, b) => a.by - b.by)
    for (const [fold, { group }] of stratum.entries()) dealt.set(group, fold)
  }
  const foldOf = groups.map((group) => dealt.get(group) ?? 0)
  const cases = mixes.flatMap((mix, at): HeldOutCase[] => {
    const early = mix.tests.filter(({ days }) => days <= last)
    const results = mix.tests.filter(({ days }) => days === late).map((test) => test.strength)
    if (early.length === 0 || results.length === 0) return []
    return [{ mix, fold: foldOf[at] ?? 0, early, late: median(results) }]
  })
  return { cases, foldOf }
}

export interface Learnt {
  readonly by: Covariance
  readonly slips: readonly Slip[]
}

/** For each fold the process over all mixes but those of the fold. */
export function restOfFolds(
  foldOf: readonly number[],
  learnt: (fold: number) => Learnt = () => ({ by: LEARNED, slips: SLIPS }),
): OpenProcess[] {
  const folds = Math.max(...foldOf) + 1
  return Array.from({ length: folds }, (_, fold) => {
    const mixes = openMixes().filter((__, at) => foldOf[at] !== fold)
    return openProcess({ mixes, ...learnt(fold) })
  })
}

/** What the engine says of each case from all mixes but those of its fold. */
export function toldWithMix(
  cases: readonly HeldOutCase[],
  rest: readonly OpenProcess[],
  late: number,
  widen = WIDEN.withMix,
): Told[] {
  return cases.map(({ mix, fold, early }) =>
    toldBy({ ...openPrior(mix.proportions, rest[fold]), widen }, early, late),
  )
}

/** What the engine says from early tests alone. */
export function toldWithoutMix(
  cases: readonly HeldOutCase[],
  late: number,
  widen = WIDEN.withoutMix,
): Told[] {
  return cases.map(({ early }) => toldBy({ ...POPULATION_PRIOR, widen }, early, late))
}

function toldBy(prior: StrengthPrior, early: readonly AgedStrength[], late: number): Told {
  const [law] = laterTests(prior, takeIn(prior, early), [late])
  if (law === undefined) throw new Error('hold-out: no law found for the late age')
  const { mean, deviation } = law
  return {
    strength: Math.exp(mean),
    low: Math.exp(mean - DEVIATE * deviation),
    high: Math.exp(mean + DEVIATE * deviation),
  }
}

export interface Score {
  readonly cases: number
  /** Mean absolute error, MPa. */
  readonly error: number
  /** Share of results inside the band. */
  readonly cover: number
  readonly halfWidth: number
}

export function scoreOf(
  cases: readonly HeldOutCase[],
  told: readonly Told[],
  which = (_: HeldOutCase) => true,
): Score {
  const kept = cases.flatMap((each, at) => (which(each) ? [{ late: each.late, ...(told[at] as Told) }] : []))
  const mean = (of: (each: (typeof kept)[number]) => number) =>
    kept.reduce((sum, each) => sum + of(each), 0) / kept.length
  return {
    cases: kept.length,
    error: mean(({ strength, late }) => Math.abs(strength - late)),
    cover: mean(({ low, high, late }) => (late >= low && late <= high ? 1 : 0)),
    halfWidth: mean(({ low, high }) => (high - low) / 2),
  }
}

/** Numbers from 0 to 1 that look like chance, the same for the same seed. */
export function chance(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

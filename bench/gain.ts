import { gainOf, openMixes } from '@castwright/engine/cure/gain'
import {
  chance,
  codeCurve,
  type HeldOutCase,
  heldOutCases,
  logLinear,
  median,
  restOfFolds,
  type Score,
  scoreOf,
  type Told,
  toldWithMix,
  toldWithoutMix,
} from '@castwright/engine/cure/gain/held-out'
import { type BenchLine, seconds } from './line.ts'

const FOLDS = 10

/** Cases of several deals of the folds one after the other, with what was told of each. */
interface Deals {
  readonly cases: HeldOutCase[]
  readonly withMix: Told[]
  readonly withoutMix: Told[]
}

/**
 * Strength at 28 days from early tests on the open data: whole mixes held out, with all of like proportions, in ten folds
 * by strata of strength. Beside a line over ln age and the code's curve from the last early test, in the same run.
 */
export function gain(short: boolean): BenchLine[] {
  const seeds = short ? [1] : [1, 2, 3, 4, 5]
  const folds = seeds.map((seed) => {
    const deal = (last: number, late: number) =>
      heldOutCases({ last, late, folds: FOLDS, order: chance(seed) })
    return { deal, rest: restOfFolds(deal(7, 28).foldOf) }
  })
  const dealt = (last: number, late: number): Deals => {
    const all = folds.map(({ deal, rest }) => {
      const { cases } = deal(last, late)
      return { cases, withMix: toldWithMix(cases, rest, late), withoutMix: toldWithoutMix(cases, late) }
    })
    return {
      cases: all.flatMap(({ cases }) => cases),
      withMix: all.flatMap(({ withMix }) => withMix),
      withoutMix: all.flatMap(({ withoutMix }) => withoutMix),
    }
  }
  const week = dealt(7, 28)
  const mixes = week.cases.length / seeds.length
  return [
    ...targetLines(week, mixes, seeds.length),
    ...partLines(week),
    ...[[3, 28] as const, [14, 28] as const, [7, 56] as const, [28, 56] as const, [28, 90] as const].map(
      ([last, late]) => ageLine(last, late, dealt(last, late), seeds.length),
    ),
    ...decileLines(week),
    ...timeLines(),
  ]
}

function targetLines({ cases, withMix, withoutMix }: Deals, mixes: number, seeds: number): BenchLine[] {
  const score = scoreOf(cases, withMix)
  const lined = (each: HeldOutCase) => logLinear(each.early, 28) !== null
  const several = scoreOf(cases, withMix, lined)
  const line = plainError(cases.filter(lined), (each) => logLinear(each.early, 28) ?? Number.NaN)
  const curves = [0.2, 0.25, 0.38].map((s) => ({
    s,
    error: plainError(cases, (each) => codeCurve(each.early, 28, s)),
  }))
  return [
    {
      what: `at 28 d from tests up to 7 d, ${mixes} mixes`,
      value: `${score.error.toFixed(2)} MPa`,
      beside: `mean error, mix given, ${seeds} deals of ${FOLDS} folds; early tests alone ${scoreOf(cases, withoutMix).error.toFixed(2)} MPa`,
    },
    {
      what: 'beside a line over ln age',
      value: `× ${(several.error / line).toFixed(2)}`,
      beside: `${several.error.toFixed(2)} against ${line.toFixed(2)} MPa, the ${several.cases / seeds} mixes with two early ages; goal 0.70`,
    },
    {
      what: 'beside the EN curve from the last early test',
      value: `× ${(score.error / (curves[1]?.error ?? Number.NaN)).toFixed(2)}`,
      beside: `class N, s 0.25; goal 0.55; ${curves.map(({ s, error }) => `s ${s.toFixed(2)}: ${error.toFixed(2)} MPa, × ${(score.error / error).toFixed(2)}`).join('; ')}; cement class not in the data`,
    },
    {
      what: 'its 90 % band, mix given',
      value: `${(100 * score.cover).toFixed(1)} %`,
      beside: `held, mean half-width ${score.halfWidth.toFixed(2)} MPa; goal 85 to 95 %, 9 MPa`,
    },
    { what: 'its 90 % band, early tests alone', ...bandText(scoreOf(cases, withoutMix)) },
  ]
}

function partLines({ cases, withMix }: Deals): BenchLine[] {
  const ages = (each: HeldOutCase) => new Set(each.early.map(({ days }) => days)).size
  return [1, 2].map((count) => ({
    what: `with ${count === 1 ? 'one early age' : 'two early ages or more'}`,
    ...bandText(scoreOf(cases, withMix, (each) => (count === 1 ? ages(each) === 1 : ages(each) >= 2))),
  }))
}

function ageLine(
  last: number,
  late: number,
  { cases, withMix, withoutMix }: Deals,
  seeds: number,
): BenchLine {
  const { value, beside } = bandText(scoreOf(cases, withMix))
  const { error, cover } = scoreOf(cases, withoutMix)
  return {
    what: `at ${late} d from tests up to ${last} d, ${cases.length / seeds} mixes`,
    value,
    beside: `${beside}; early tests alone ${error.toFixed(2)} MPa, ${(100 * cover).toFixed(1)} %`,
  }
}

/** By strength at 28 days, in tenths: weak and strong mixes must be told as honestly as the middle. */
function decileLines({ cases, withMix }: Deals): BenchLine[] {
  const sorted = [...cases.map(({ late }) => late)].sort((a, b) => a - b)
  const edges = Array.from({ length: 9 }, (_, at) => sorted[Math.floor(((at + 1) * sorted.length) / 10)] ?? 0)
  const tenth = ({ late }: HeldOutCase) => edges.filter((edge) => late >= edge).length
  const scores = Array.from({ length: 10 }, (_, at) => scoreOf(cases, withMix, (each) => tenth(each) === at))
  return [
    {
      what: 'error by tenths of strength at 28 d',
      value: `${Math.max(...scores.map(({ error }) => error)).toFixed(1)} MPa`,
      beside: `worst; ${scores.map(({ error }) => error.toFixed(1)).join(', ')}; edges ${edges.map((edge) => edge.toFixed(0)).join(', ')} MPa`,
    },
    {
      what: 'band held by tenths',
      value: `${(100 * Math.min(...scores.map(({ cover }) => cover))).toFixed(0)} %`,
      beside: `worst; ${scores.map(({ cover }) => (100 * cover).toFixed(0)).join(', ')} %`,
    },
  ]
}

function timeLines(): BenchLine[] {
  const [mix] = openMixes()
  const ask = () =>
    gainOf({
      tests: [{ age: 72, strength: 12 }],
      mix: mix?.proportions as NonNullable<typeof mix>['proportions'],
      at: 672,
    })
  const first = seconds(ask)
  const after = median(Array.from({ length: 15 }, () => seconds(ask)))
  return [
    {
      what: 'one answer, mix given',
      value: `${(1000 * after).toFixed(1)} ms`,
      beside: `goal 50 ms; the first, which conditions on the data, ${(1000 * first).toFixed(0)} ms`,
    },
  ]
}

function bandText({ error, cover, halfWidth }: Score): { value: string; beside: string } {
  return {
    value: `${error.toFixed(2)} MPa`,
    beside: `mean error; band held ${(100 * cover).toFixed(1)} %, half-width ${halfWidth.toFixed(2)} MPa`,
  }
}

function plainError(cases: readonly HeldOutCase[], of: (each: HeldOutCase) => number): number {
  return cases.reduce((sum, each) => sum + Math.abs(of(each) - each.late), 0) / cases.length
}

import { type HeatProblem, runHeat, steady } from '@castwright/engine/cure/heat'
import { explicitDifferences, heatCases, methodOfLines } from '@castwright/engine/cure/heat/peer'
import { type BenchLine, seconds } from './line.ts'

/** Closeness at which the solver and the explicit scheme are timed, K. */
const ALIKE = 0.02

const COLUMNS = ['core', 'top', 'bottom'] as const
type Columns = Readonly<Record<(typeof COLUMNS)[number], readonly number[]>>

/** Heat through the thickness: against the converged method of lines, nights in a minute, and beside a plain explicit scheme. */
export function heatBench(short: boolean): BenchLine[] {
  const cases = heatCases().filter((_, index) => !short || index % 4 === 1)
  const errors: number[] = []
  let doubt = 0
  let share = 0
  let worst = { name: '', error: 0 }
  let ratio = { ours: 0, theirs: 0, cases: 0 }
  for (const { name, problem } of cases) {
    const coarse = methodOfLines(problem, 100, 30)
    const fine = short ? coarse : methodOfLines(problem, 200, 15)
    const run = runHeat(problem)
    const error = apart(run, fine)
    doubt = Math.max(doubt, apart(coarse, fine))
    share = Math.max(share, run.energy.share)
    errors.push(error)
    if (error > worst.error) worst = { name, error }
    const [ours, theirs] = [ownTime(problem, fine), explicitTime(problem, fine)]
    if (ours !== null && theirs !== null)
      ratio = { ours: ratio.ours + ours, theirs: ratio.theirs + theirs, cases: ratio.cases + 1 }
  }
  return [
    {
      what: `temperatures of ${cases.length} cases`,
      value: `${worst.error.toFixed(3)} K`,
      beside: `at worst (${worst.name}) from the method of lines, ${short ? '100 spaces, 30 s' : `200 spaces, 15 s, itself within ${doubt.toFixed(4)} K of 100 spaces, 30 s`}; goal 0.1 K; energy left over at most ${share.toExponential(0)}`,
    },
    nightsLine(short),
    {
      what: `beside a plain explicit scheme, ${ratio.cases} cases`,
      value: `× ${(ratio.theirs / ratio.ours).toFixed(1)}`,
      beside: `${(1000 * ratio.ours).toFixed(1)} ms against ${(1000 * ratio.theirs).toFixed(1)} ms, each the coarsest that comes within ${ALIKE} K of the method of lines, explicit at its longest stable step; processor time, best of three`,
    },
  ]
}

/** Different panels, each a night of 24 h with a cover that comes off, as finely as the accuracy above. */
function nightsLine(short: boolean): BenchLine {
  const base = heatCases()[0]?.problem
  if (base === undefined) throw new Error('heat: no case to vary')
  const count = short ? 200 : 2000
  const nights = Array.from(
    { length: count },
    (_, index): HeatProblem => ({
      ...base,
      concrete: { ...base.concrete, thickness: 100 + ((index * 37) % 200) },
      initial: 12 + (index % 17),
      hydration: { ...base.hydration, binder: 300 + ((index * 13) % 200), tau: 10 + (index % 9) },
      below: { ...base.below, film: steady(4 + (index % 8)) },
    }),
  )
  for (const night of nights.slice(0, 50)) runHeat(night)
  const cpu = process.cpuUsage()
  const time = seconds(() => {
    for (const night of nights) runHeat(night)
  })
  const { user, system } = process.cpuUsage(cpu)
  const steps = runHeat(base).steps
  return {
    what: `panel-nights a minute, one core, ${count} panels`,
    value: `${((60 * count) / time).toFixed(0)}`,
    beside: `by the clock; ${((60e6 * count) / (user + system)).toFixed(0)} by processor time, where other work shares the core; goal 10,000; 41 to 57 cells, some ${steps} steps a night`,
  }
}

/** Quickest of some grids and tolerances of the solver that is close enough, s; null where none is. */
function ownTime(problem: HeatProblem, fine: Columns): number | null {
  if (isLayered(problem)) return null
  const times = [11, 15, 21, 31, 41].flatMap((cells) =>
    [0.01, 0.003, 0.001].flatMap((kelvin): number[] => {
      const fineness = { cells, tolerance: { kelvin, age: kelvin / 2 } }
      return apart(runHeat(problem, fineness), fine) <= ALIKE
        ? [quickest(() => runHeat(problem, fineness))]
        : []
    }),
  )
  return times.length === 0 ? null : Math.min(...times)
}

/** The explicit scheme with the fewest even spaces that is close enough, s; null where no grid tried is. */
function explicitTime(problem: HeatProblem, fine: Columns): number | null {
  if (isLayered(problem)) return null
  for (const spaces of [4, 6, 8, 10, 12, 14, 16, 20, 24, 28, 34, 40, 48, 56])
    if (apart(explicitDifferences(problem, spaces), fine) <= ALIKE)
      return quickest(() => explicitDifferences(problem, spaces))
  return null
}

/** Thin layers and held faces would make the explicit scheme look worse than a plain one need be. */
function isLayered(problem: HeatProblem): boolean {
  return problem.under.length + problem.over.length > 0 || problem.below.held !== null
}

function apart(one: Columns, other: Columns): number {
  return Math.max(
    ...COLUMNS.flatMap((column) =>
      one[column].map((celsius, index) => Math.abs(celsius - (other[column][index] ?? Number.NaN))),
    ),
  )
}

/** Seconds of processor time, least of three: other work on the machine does not count. */
function quickest(call: () => unknown): number {
  return Math.min(
    ...[1, 2, 3].map(() => {
      const from = process.cpuUsage()
      call()
      return process.cpuUsage(from).user / 1e6
    }),
  )
}

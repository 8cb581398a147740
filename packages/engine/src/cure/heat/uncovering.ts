import type { HeatProblem, HeatRun } from './problem.ts'
import { type SeriesPoint, valueAt } from './series.ts'

/** Hours at which the top face loses resistance at once, or a layer: a cover comes off. */
export function uncoverings({ above: { resistance }, over, hours }: HeatProblem): number[] {
  const { form, points } = resistance
  const layers = over.flatMap(({ until }) => (until !== null && until <= hours ? [until] : []))
  const covers = points.flatMap(([hour, value], index): number[] => {
    const before: SeriesPoint | undefined = points[index - 1]
    if (before === undefined || !(hour > 0 && hour <= hours) || !(value < before[1])) return []
    return form === 'steps' || before[0] === hour ? [hour] : []
  })
  return [...new Set([...covers, ...layers])].sort((a, b) => a - b)
}

/** Top face over the air there, K, at an hour of the run: as it is just before anything changes at that hour. */
export function surfaceOverAir(run: HeatRun, problem: HeatProblem, hour: number): number | null {
  const { times, top } = run
  const after = times.findIndex((time) => time >= hour)
  if (after < 0) return null
  const [later, warm] = [times[after] ?? 0, top[after] ?? 0]
  const earlier = times[after - 1]
  const before = top[after - 1]
  const share = earlier === undefined || later === hour ? 1 : (hour - earlier) / (later - earlier)
  const surface = before === undefined ? warm : before + share * (warm - before)
  return surface - valueAt(problem.above.air, hour)
}

/**
 * Hour from which the top face stays within so many kelvin of the air to the end of the run, straight between the times that were
 * written down; 0 where it always does, null where it is over at the end.
 */
export function uncoveringFrom(run: HeatRun, problem: HeatProblem, limit: number): number | null {
  const over = run.times.map(
    (time, at) => (run.top[at] ?? Number.NaN) - valueAt(problem.above.air, time) - limit,
  )
  const last = over.findLastIndex((kelvin) => !(kelvin <= 0))
  if (last < 0) return 0
  const [from, to] = [run.times[last], run.times[last + 1]]
  if (from === undefined || to === undefined) return null
  const [high, low] = [over[last] ?? 0, over[last + 1] ?? 0]
  return from + ((to - from) * high) / (high - low)
}

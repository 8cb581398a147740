import type { InputIssue } from '../../working/issue.ts'

/** One point of a series: hours from mixing, value. */
export type SeriesPoint = readonly [hours: number, value: number]

/**
 * A value in time. `linear`: straight between two points; two points at one hour are a jump. `steps`: each value holds from
 * its hour until the next, the last for good.
 */
export interface Series {
  readonly form: 'linear' | 'steps'
  readonly points: readonly SeriesPoint[]
}

/** A value that never changes. */
export function steady(value: number): Series {
  return { form: 'steps', points: [[Number.NEGATIVE_INFINITY, value]] }
}

/** Hours at which the series bends or jumps. */
export function breaksOf(series: Series): number[] {
  return series.points.map(([hours]) => hours).filter((hours) => Number.isFinite(hours))
}

/** Whether the value jumps at an hour. */
export function jumpsAt(series: Series, hour: number): boolean {
  const at = series.points.filter(([hours]) => hours === hour)
  if (series.form === 'linear') return at.length > 1 && at[0]?.[1] !== at.at(-1)?.[1]
  const index = series.points.findIndex(([hours]) => hours === hour)
  return index > 0 && series.points[index - 1]?.[1] !== series.points[index]?.[1]
}

/**
 * The straight line `start + slope·t` that the series is between two neighbouring hours of break. The caller has checked
 * that the series covers them.
 */
export function lineBetween(
  series: Series,
  from: number,
  to: number,
): readonly [start: number, slope: number] {
  const middle = (from + to) / 2
  let index = 0
  for (const [at, [hours]] of series.points.entries()) if (hours <= middle) index = at
  const [hours, value] = series.points[index] as SeriesPoint
  const next = series.points[index + 1]
  if (series.form === 'steps' || next === undefined) return [value, 0]
  const slope = (next[1] - value) / (next[0] - hours)
  return [value - slope * hours, slope]
}

/** Value at an hour: before a jump that lies there, as a reading a moment earlier would be. */
export function valueAt(series: Series, hour: number): number {
  const first = series.points[0] as SeriesPoint
  let index = 0
  for (const [at, [hours]] of series.points.entries()) if (hours < hour) index = at
  const [hours, value] = series.points[index] as SeriesPoint
  const next = series.points[index + 1]
  if (hour <= first[0] || series.form === 'steps' || next === undefined) return value
  return value + ((next[1] - value) * (hour - hours)) / (next[0] - hours)
}

/** What is wrong with a series that has to hold from 0 to the end of a run; empty where nothing is. */
export function seriesIssues(series: Series, path: string, hours: number): InputIssue[] {
  const { form, points } = series
  const issues: InputIssue[] = []
  for (const [index, [at]] of points.entries()) {
    const before = points[index - 1]?.[0]
    const twoBefore = points[index - 2]?.[0]
    if (before === undefined) continue
    const sound = form === 'steps' ? at > before : at > before || (at === before && twoBefore !== at)
    if (!sound)
      issues.push({
        path: `${path}[${index}]`,
        found: `${at} h after ${before} h`,
        expected:
          form === 'steps'
            ? 'hours in order, each once'
            : 'hours in order; at most two points at one hour, which are a jump',
      })
  }
  const [first, last] = [points[0]?.[0], points.at(-1)?.[0]]
  if (first === undefined || last === undefined) return issues
  if (first > 0)
    issues.push({ path, found: `a series from ${first} h`, expected: 'a series from 0 h or before' })
  if (form === 'linear' && last < hours)
    issues.push({
      path,
      found: `a series that ends at ${last} h`,
      expected: `a series up to ${hours} h, the end of the run`,
    })
  return issues
}

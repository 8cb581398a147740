import { COLDEST_READING, HOTTEST_READING } from '../readings.ts'
import { jumps, spikes, standing, swaps } from './channel-faults.ts'
import { median } from './median.ts'
import { FAULT_KINDS, type LogFault, type LogRow, type RawLog } from './raw-log.ts'

/** A pause is a gap from so many usual intervals on, and from so many hours. Common practice, no source. */
const GAP_INTERVALS = 2.5
const GAP_LEAST = 5 / 60
/** A clock that was put by an hour, give or take one usual interval and five minutes, h. */
const HOUR = 1

/**
 * What is wrong with a log, in the order of time: gaps, a clock that was moved, values that no sensor in concrete reads, spikes, jumps that
 * stay, channels that changed places, and channels that stand still. Found, shown and left as they are: whoever brings the log decides.
 *
 * The limits are common practice, no source.
 */
export function logFaults(log: RawLog): LogFault[] {
  const sorted = inOrder(log.rows)
  const usual = usualInterval(sorted)
  const faults = [
    ...clockFaults(log.rows, usual),
    ...gapFaults(sorted, usual),
    ...log.channels.flatMap((name, channel) => [
      ...rangeFaults(sorted, channel, name),
      ...silenceFaults(sorted, channel, name, usual),
      ...spikes(sorted, channel, name),
      ...jumps(sorted, channel, name, usual),
      ...standing(sorted, channel, name),
    ]),
    ...swaps(sorted, log.channels),
  ]
  const order = (fault: LogFault): number => FAULT_KINDS.indexOf(fault.kind)
  return faults.sort((a, b) => a.hours[0] - b.hours[0] || order(a) - order(b))
}

/** Rows by time, of several with one time the first of the file. */
export function inOrder(rows: readonly LogRow[]): LogRow[] {
  const sorted = [...rows].sort((a, b) => a.hours - b.hours || a.row - b.row)
  return sorted.filter((row, index) => index === 0 || row.hours > (sorted[index - 1]?.hours ?? -Infinity))
}

/** The interval at which the logger mostly reads, h; null with fewer than two rows. */
export function usualInterval(rows: readonly LogRow[]): number | null {
  const steps = rows.slice(1).map((row, index) => row.hours - (rows[index]?.hours ?? 0))
  return steps.length === 0 ? null : median(steps)
}

function clockFaults(rows: readonly LogRow[], usual: number | null): LogFault[] {
  return rows.slice(1).flatMap((row, index): LogFault[] => {
    const before = rows[index] as LogRow
    const step = row.hours - before.hours
    if (step > 0) {
      const ahead = usual !== null && near(step - usual, HOUR, usual)
      return ahead && step > gapFrom(usual)
        ? [
            between(
              'clock',
              null,
              before,
              row,
              `The clock goes on by an hour more than a reading: was it put forward?`,
            ),
          ]
        : []
    }
    const back = -step + (usual ?? 0)
    const text = near(back, HOUR, usual ?? 0)
      ? 'The clock goes back by an hour: was it put back?'
      : step === 0
        ? 'One time stands twice.'
        : `The clock goes back by ${(-step).toFixed(2)} h.`
    return [between('clock', null, before, row, text)]
  })
}

function near(value: number, wanted: number, usual: number): boolean {
  return Math.abs(value - wanted) <= Math.max(GAP_LEAST, usual / 2)
}

function gapFrom(usual: number): number {
  return Math.max(GAP_INTERVALS * usual, usual + GAP_LEAST)
}

function gapFaults(rows: readonly LogRow[], usual: number | null): LogFault[] {
  if (usual === null) return []
  return rows.slice(1).flatMap((row, index): LogFault[] => {
    const before = rows[index] as LogRow
    const step = row.hours - before.hours
    if (step <= gapFrom(usual)) return []
    return [
      between(
        'gap',
        null,
        before,
        row,
        `No reading for ${step.toFixed(2)} h; mostly one every ${minutes(usual)} min.`,
      ),
    ]
  })
}

/** A channel that gives nothing while the others read. */
function silenceFaults(
  rows: readonly LogRow[],
  channel: number,
  name: string,
  usual: number | null,
): LogFault[] {
  const faults: LogFault[] = []
  let start: LogRow | null = null
  let last: LogRow | null = null
  const close = (): void => {
    if (start !== null && last !== null) {
      const long = last.hours - start.hours + (usual ?? 0)
      faults.push(between('gap', channel, start, last, `${name} gives nothing for ${long.toFixed(2)} h.`))
    }
    start = null
  }
  for (const row of rows) {
    if (row.celsius[channel] === null || row.celsius[channel] === undefined) {
      start ??= row
      last = row
    } else close()
  }
  close()
  return faults
}

function rangeFaults(rows: readonly LogRow[], channel: number, name: string): LogFault[] {
  return rows.flatMap((row): LogFault[] => {
    const value = row.celsius[channel]
    if (value === null || value === undefined) return []
    if (Number.isFinite(value) && value >= COLDEST_READING && value <= HOTTEST_READING) return []
    return [
      between(
        'range',
        channel,
        row,
        row,
        `${name} reads ${value} °C, which no sensor in concrete does: broken or unplugged?`,
      ),
    ]
  })
}

export function between(
  kind: LogFault['kind'],
  channel: number | null,
  from: LogRow,
  to: LogRow,
  text: string,
): LogFault {
  return {
    kind,
    channel,
    rows: [Math.min(from.row, to.row), Math.max(from.row, to.row)],
    hours: [Math.min(from.hours, to.hours), Math.max(from.hours, to.hours)],
    text,
  }
}

function minutes(hours: number): string {
  return String(Number((hours * 60).toFixed(1)))
}

import type { Reading } from '../readings.ts'
import { inOrder } from './log-faults.ts'
import type { LogFault, RawLog } from './raw-log.ts'

/** Kinds that speak against single readings, which somebody may leave out. */
const LEFT_OUT: ReadonlySet<LogFault['kind']> = new Set(['range', 'spike'])

/**
 * Readings of one channel in order of time, hours from mixing not below 0. Without `leaveOut` what is out of a sensor's range alone is left out, since
 * it is no temperature; with it the spikes too. Everything else stays as it was read.
 */
export function channelReadings(
  log: RawLog,
  channel: number,
  { faults, leaveOut }: { readonly faults: readonly LogFault[]; readonly leaveOut: boolean },
): Reading[] {
  const out = new Set(
    faults
      .filter(
        (fault) =>
          fault.channel === channel && LEFT_OUT.has(fault.kind) && (leaveOut || fault.kind === 'range'),
      )
      .map(({ rows: [row] }) => row),
  )
  return inOrder(log.rows).flatMap((row): Reading[] => {
    const value = row.celsius[channel]
    return typeof value === 'number' && row.hours >= 0 && !out.has(row.row) ? [[row.hours, value]] : []
  })
}

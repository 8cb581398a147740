import { CLOCK_TOLERANCE, type Flag } from './flags.ts'
import { type AnyEntry, compareEntries } from './order.ts'

/** The entries of one device, with the flags that were found in them; none where they must be found again. */
export interface SeenDevice {
  readonly id: string
  readonly entries: Map<string, AnyEntry>
  flags?: readonly Flag[] | undefined
}

/**
 * What a device's chain shows without hashing: counters that are missing, two entries in one place, a clock that is off.
 * That each `previous` is the hash of the entry before is checked by `checkChain`.
 */
export function deviceFlags(device: SeenDevice): Flag[] {
  const byCounter = new Map<number, AnyEntry[]>()
  let offClock: AnyEntry | null = null
  for (const entry of device.entries.values()) {
    const { counter, clockOffset } = entry.device
    const list = byCounter.get(counter)
    if (list) list.push(entry)
    else byCounter.set(counter, [entry])
    if (clockOffset !== null && Math.abs(clockOffset) > CLOCK_TOLERANCE) {
      if (offClock === null || compareEntries(entry, offClock) > 0) offClock = entry
    }
  }
  const flags: Flag[] = []
  const flag = (kind: Flag['kind'], entries: readonly AnyEntry[], text: string) =>
    flags.push({ kind, panel: null, device: device.id, entries: entries.map(({ id }) => id).sort(), text })

  for (const [counter, list] of byCounter) {
    if (list.length > 1)
      flag('fork', list, `Device ${device.id} has ${list.length} entries numbered ${counter}.`)
  }
  for (const [from, to] of gaps([...byCounter.keys()].sort((a, b) => a - b))) {
    flag(
      'gap',
      [],
      `Device ${device.id}: ${from === to ? `entry ${from} is` : `entries ${from} to ${to} are`} not here.`,
    )
  }
  if (offClock !== null) {
    const minutes = Math.round(Math.abs(offClock.device.clockOffset ?? 0) / 6000) / 10
    const side = (offClock.device.clockOffset ?? 0) > 0 ? 'fast' : 'slow'
    flag('clock', [offClock], `The clock of device ${device.id} was ${minutes} minutes ${side}.`)
  }
  return flags
}

function gaps(counters: readonly number[]): [number, number][] {
  const found: [number, number][] = []
  let next = 1
  for (const counter of counters) {
    if (counter > next) found.push([next, counter - 1])
    next = counter + 1
  }
  return found
}

import { CLOCK_TOLERANCE, type Flag } from './flags.ts'
import { type AnyEntry, compareEntries } from './order.ts'

/** What a fold keeps of a device's chain, so that one more entry costs the same whether there are ten or a hundred thousand. */
export interface SeenDevice {
  readonly id: string
  /** Ids of the entries by their number in the chain; more than one is a fork. */
  readonly places: Map<number, string | string[]>
  highest: number
  forks: number
  /** The last entry whose clock was off. */
  offClock: AnyEntry | null
}

export function newSeenDevice(id: string): SeenDevice {
  return { id, places: new Map(), highest: 0, forks: 0, offClock: null }
}

export function seeOn(device: SeenDevice, entry: AnyEntry): void {
  const { counter, clockOffset } = entry.device
  const before = device.places.get(counter)
  if (before === undefined) device.places.set(counter, entry.id)
  else {
    if (typeof before === 'string') device.forks++
    device.places.set(counter, [...(typeof before === 'string' ? [before] : before), entry.id])
  }
  if (counter > device.highest) device.highest = counter
  const { offClock } = device
  if (clockOffset !== null && Math.abs(clockOffset) > CLOCK_TOLERANCE) {
    if (offClock === null || compareEntries(entry, offClock) > 0) device.offClock = entry
  }
}

/**
 * What a device's chain shows without hashing: counters that are missing, two entries in one place, a clock that is off.
 * That each `previous` is the hash of the entry before is checked by `checkChain`.
 */
export function deviceFlags({ id: device, places, highest, forks, offClock }: SeenDevice): Flag[] {
  const flags: Flag[] = []
  const flag = (kind: Flag['kind'], entries: readonly string[], text: string) =>
    flags.push({ kind, panel: null, device, entries: [...entries].sort(), text })

  if (forks > 0) {
    for (const [counter, ids] of places) {
      if (typeof ids !== 'string')
        flag('fork', ids, `Device ${device} has ${ids.length} entries numbered ${counter}.`)
    }
  }
  if (places.size < highest) {
    for (const [from, to] of gaps([...places.keys()].sort((a, b) => a - b))) {
      const what = from === to ? `entry ${from} is` : `entries ${from} to ${to} are`
      flag('gap', [], `Device ${device}: ${what} not here.`)
    }
  }
  if (offClock !== null) {
    const offset = offClock.device.clockOffset ?? 0
    const minutes = Math.round(Math.abs(offset) / 6000) / 10
    const side = offset > 0 ? 'fast' : 'slow'
    flag('clock', [offClock.id], `The clock of device ${device} was ${minutes} minutes ${side}.`)
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

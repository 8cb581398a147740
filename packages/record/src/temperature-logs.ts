import { COLDEST_READING, HOTTEST_READING } from '@castwright/engine/cure'
import type { TemperatureLog } from '@castwright/engine/steps'
import type { Chain } from './chains.ts'
import type { Flag } from './flags.ts'
import { compareEntries } from './order.ts'
import type { ValueOf } from './values.ts'

type Reading = readonly [hours: number, celsius: number]
type TemperatureChain = Chain<ValueOf<'temperature'>>

const HOUR = 3_600_000

/**
 * Temperature entries of a panel as logs: what one person or logger recorded of one channel is one log, in however many entries
 * it came. Readings stand in order of time; of two at one time the first recorded stands, and a flag says so where they differ.
 * Hours of an entry that names its mixing time follow the pour's where that was corrected; what then lies before mixing is not of
 * this pour. What no sensor in concrete reads is kept apart.
 *
 * `mixed`: mixing time of the pour in force; null leaves the hours as they were recorded.
 */
export function temperatureLogs(
  panel: string,
  chains: readonly TemperatureChain[],
  mixed: string | null,
): { readonly logs: readonly TemperatureLog[]; readonly flags: readonly Flag[] } {
  const groups = new Map<string, TemperatureChain[]>()
  for (const chain of chains) {
    const key = `${chain.root.person.id}\u0000${chain.value.channel}`
    const group = groups.get(key)
    if (group) group.push(chain)
    else groups.set(key, [chain])
  }
  const made = [...groups.values()]
    .map((group) => ({ group: [...group].sort((a, b) => compareEntries(a.tip, b.tip)) }))
    .sort((a, b) => compareEntries(lastOf(a.group).tip, lastOf(b.group).tip))
    .map(({ group }) => ({ group, ...readingsOf(group, mixed) }))
  return {
    logs: made.map(({ group, readings }) => logOf(group, readings)),
    flags: made.flatMap(({ group, differ }) =>
      differ.length === 0 ? [] : [differFlag(panel, group, differ)],
    ),
  }
}

function logOf(group: readonly TemperatureChain[], readings: readonly Reading[]): TemperatureLog {
  const { tip, root, value } = lastOf(group)
  const broken = readings.filter(([, celsius]) => !isTemperature(celsius))
  return {
    entry: tip.id,
    entries: group.map((chain) => chain.tip.id),
    channel: value.channel,
    by: root.person,
    readings: readings.filter(([, celsius]) => isTemperature(celsius)),
    ...(broken.length === 0 ? {} : { broken }),
  }
}

function isTemperature(celsius: number): boolean {
  return celsius >= COLDEST_READING && celsius <= HOTTEST_READING
}

/** Readings of all entries by time, and the hours at which two of them differ. A corrected entry keeps its place among the others. */
function readingsOf(
  group: readonly TemperatureChain[],
  mixed: string | null,
): { readonly readings: readonly Reading[]; readonly differ: readonly number[] } {
  const byTime = new Map<number, Reading>()
  const differ: number[] = []
  for (const { value } of [...group].sort((a, b) => compareEntries(a.root, b.root))) {
    for (const reading of fromMixing(value, mixed)) {
      // To the millisecond: two ways to the same hour may differ in the last bit.
      const time = Math.round(reading[0] * HOUR)
      const before = byTime.get(time)
      if (before === undefined) byTime.set(time, reading)
      else if (before[1] !== reading[1]) differ.push(reading[0])
    }
  }
  const readings = [...byTime].sort(([a], [b]) => a - b).map(([, reading]) => reading)
  return { readings, differ: differ.sort((a, b) => a - b) }
}

function fromMixing(value: ValueOf<'temperature'>, mixed: string | null): readonly Reading[] {
  const shift = value.mixed === undefined || mixed === null ? 0 : Date.parse(value.mixed) - Date.parse(mixed)
  if (shift === 0) return value.readings
  return value.readings
    .map(([hours, celsius]): Reading => [(Math.round(hours * HOUR) + shift) / HOUR, celsius])
    .filter(([hours]) => hours >= 0)
}

function differFlag(panel: string, group: readonly TemperatureChain[], differ: readonly number[]): Flag {
  const { value, root } = lastOf(group)
  const times = differ.length === 1 ? 'One time has' : `${differ.length} times have`
  const text = `${times} two different readings of ${value.channel} by ${root.person.name}, first at ${differ[0]?.toFixed(2)} h; the first recorded stands.`
  return { kind: 'conflict', panel, device: null, entries: group.map(({ tip }) => tip.id).sort(), text }
}

function lastOf(group: readonly TemperatureChain[]): TemperatureChain {
  const chain = group.at(-1)
  if (chain === undefined) throw new Error('found a log of no entries, expected at least one')
  return chain
}

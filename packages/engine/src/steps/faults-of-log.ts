import { type LogFault, logFaults } from '../cure/logger/index.ts'
import type { TemperatureLog } from './facts.ts'

/** From so large a share of common times on, two channels are read by the same pass of one logger. */
const TOGETHER = 0.5
const HOUR = 3_600_000

/**
 * What a person must look at in a log of the record, in order of time: gaps, spikes, jumps, values that no sensor reads, a channel that
 * stands still or changed places. `logs` are the other logs of the panel: channels that the same maker read at the same times are seen beside it.
 * Rows count the times at which any of them was read, from 1. Found and shown; nothing is mended.
 */
export function faultsOfLog(log: TemperatureLog, logs: readonly TemperatureLog[] = []): LogFault[] {
  const own = byTime(log)
  const beside = logs
    .filter((other) => other.entry !== log.entry && other.by.id === log.by.id)
    .map((other) => ({ name: other.channel, read: byTime(other) }))
    .filter(({ read }) => readTogether(own, read))
  const all = [{ name: log.channel, read: own }, ...beside]
  const times = [...new Set(all.flatMap(({ read }) => [...read.keys()]))].sort((a, b) => a - b)
  const faults = logFaults({
    channels: all.map(({ name }) => name),
    rows: times.map((time, index) => ({
      row: index + 1,
      hours: time / HOUR,
      celsius: all.map(({ read }) => read.get(time) ?? null),
    })),
  })
  return faults.filter(({ channel }) => channel === null || channel === 0)
}

/** Every reading by its time from mixing, ms: the same instant of two channels may differ in the last bit of its hours. */
function byTime({ readings, broken = [] }: TemperatureLog): Map<number, number> {
  return new Map([...readings, ...broken].map(([hours, celsius]) => [Math.round(hours * HOUR), celsius]))
}

function readTogether(a: ReadonlyMap<number, number>, b: ReadonlyMap<number, number>): boolean {
  const common = [...a.keys()].filter((time) => b.has(time)).length
  return common > 0 && common >= TOGETHER * Math.min(a.size, b.size)
}

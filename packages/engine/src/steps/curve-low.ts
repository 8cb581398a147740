import { strengthNow } from '../cure/strength-from-log.ts'
import type { Step } from '../working/worked.ts'
import type { Mix } from '../yard/yard.ts'
import type { TemperatureLog } from './facts.ts'

export interface CurveLowInput {
  readonly mix: Mix
  readonly logs: readonly TemperatureLog[]
  /** Hours from mixing to now. */
  readonly hour: number
}

export interface CurveLow {
  /** MPa */
  readonly low: number
  readonly working: readonly Step[]
  /** Entries of the log that it rests on. */
  readonly rests: readonly string[]
}

/** Channels that log the air and not the concrete. */
const AIR = /air|ambient|weather/i

/** The logs of a pour that were taken in the concrete. A dead channel is left out while another one reads. */
export function concreteLogs(logs: readonly TemperatureLog[]): readonly TemperatureLog[] {
  const concrete = logs.filter(({ channel }) => !AIR.test(channel))
  const read = concrete.filter(({ readings }) => readings.length > 0)
  return read.length > 0 ? read : concrete
}

/**
 * Low edge of the mix's curve at the equivalent age of this pour's logged temperatures, MPa: the least over the logged
 * channels of the concrete. Null where there is no log, curve or scatter: then only the results themselves speak.
 */
export function curveLow({ mix, logs, hour }: CurveLowInput): CurveLow | null {
  let least: CurveLow | null = null
  for (const log of concreteLogs(logs)) {
    const { low, working } = strengthNow({ mix, readings: log.readings, hour })
    if (low !== null && (least === null || low < least.low)) least = { low, working, rests: log.entries }
  }
  return least
}

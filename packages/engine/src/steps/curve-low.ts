import type { Mix } from '../yard/yard.ts'
import type { TemperatureLog } from './facts.ts'

export interface CurveLowInput {
  readonly mix: Mix
  readonly logs: readonly TemperatureLog[]
  /** Hours from mixing to now. */
  readonly hour: number
}

/**
 * Low edge of the mix's curve at the equivalent age of this pour's logged temperatures, MPa: the least over the logs.
 * Null where there is no log, no curve or no scatter: then only the results themselves speak.
 */
export function curveLow({ mix, logs }: CurveLowInput): number | null {
  if (logs.length === 0 || mix.scatter === undefined) return null
  return null
}

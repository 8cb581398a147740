import type { Source } from '../working/source.ts'
import type { Worked } from '../working/worked.ts'

/** A limit with where it is from. */
export interface CureLimit {
  readonly value: number
  readonly source: Source
}

export interface CuringTimeInput {
  /** Curing class: the share of the strength to be reached. */
  readonly curingClass: 2 | 3 | 4
  /** Temperature of the concrete surface, °C. */
  readonly surface: number
  /** Mean strength at 2 days over that at 28 days. */
  readonly development: number
}

/** What a family says of concrete while it cures. Null or `unknown`: nothing that is confirmed. */
export interface CureRules {
  /** Highest temperature of the concrete, °C. */
  readonly peakTemperature: CureLimit | null
  /** Least temperature of the concrete while it gains strength, °C. */
  readonly leastTemperature: CureLimit | null
  /** Largest difference of the core and a face of the concrete, K. */
  readonly coreFace: CureLimit | null
  /** Largest difference of concrete surface and air when the cover comes off, °C. */
  readonly uncovering: CureLimit | null
  /** Temperature at which specimens are kept that are not cured with the panel, °C. */
  readonly standardCuring: CureLimit | null
  /** Least time of curing, days. */
  readonly curingTime: (input: CuringTimeInput) => Worked<number>
}

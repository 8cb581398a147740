import type { Source } from '../working/source.ts'
import type { Verdict } from '../working/verdict.ts'
import type { Step, Worked } from '../working/worked.ts'

/** What is measured on a finished panel. */
export const TOLERANCES = ['length', 'width', 'thickness', 'squareness', 'bow', 'warp', 'flatness'] as const
export type ToleranceWhat = (typeof TOLERANCES)[number]

export interface ToleranceInput {
  readonly what: ToleranceWhat
  /**
   * The size that the limit grows with, mm: length, width or thickness itself; for squareness the diagonal; for bow the
   * edge; for warp the distance to the nearest adjacent corner; for flatness the straightedge.
   */
  readonly size: number
}

/** Smallest and largest deviation, mm: `low` not above 0. Squareness and flatness are measured without sign. */
export interface ToleranceLimit {
  readonly low: number
  readonly high: number
  readonly source: Source
}

export interface AcceptanceInput {
  /** Specified strength, MPa, of the kind of specimen that was tested. */
  readonly specified: number
  /** Results in the order of sampling, MPa: each the mean of one test's specimens. */
  readonly tests: readonly number[]
  /** Standard deviation of the production before, MPa, where it is continuous. */
  readonly sigma?: number
}

/** One rule of acceptance: the statistic found and what it must reach. */
export interface AcceptanceRule {
  readonly rule: string
  readonly demand: number | null
  readonly limit: number | null
  readonly verdict: Verdict
  readonly source: Source
  readonly working: readonly Step[]
  readonly unknown?: readonly string[]
  readonly note?: string
}

export interface MeanWantedInput {
  /** MPa */
  readonly specified: number
  /** Standard deviation of the production's tests, MPa, and how many they are; null where there is none. */
  readonly deviation: number | null
  readonly tests: number
}

/** Mean that the family asks a mix to have, MPa. */
export interface MeanWanted {
  readonly mean: number
  readonly source: Source
}

export interface SamplingInput {
  /** Concrete of one class poured that day, m³. */
  readonly volume: number
  /** Surface of slabs or walls poured with it, m². */
  readonly area?: number
}

/** Strength tests that a day wants of one concrete. */
export interface Sampling {
  readonly tests: number
  readonly source: Source
}

/** What a family says of finished panels and of test results. `unknown`: nothing that is confirmed. */
export interface QualityRules {
  readonly tolerance: (input: ToleranceInput) => Worked<ToleranceLimit>
  readonly acceptance: (input: AcceptanceInput) => Worked<readonly AcceptanceRule[]>
  /** Mean at which acceptance is met with the usual chance. */
  readonly meanWanted: (input: MeanWantedInput) => Worked<MeanWanted>
  /** By how much a test may miss its age, h, to each side. */
  readonly testAge: (age: number) => Worked<number>
  readonly sampling: (input: SamplingInput) => Worked<Sampling>
  /** The family's sampling in words, for the card of the delivery; null where nothing is confirmed. */
  readonly samplingWords: string | null
}

import type { Source } from '../working/source.ts'

/** A limit with where it is from, or no value and why. */
export interface PourLimit {
  readonly value: number | null
  readonly source: Source
  /** Why there is no value; given exactly where `value` is null. */
  readonly gap?: string
  readonly note?: string
}

/** How a slump sample was taken: at once from the first discharge, or from several places of the load. */
export type SlumpSample = 'spot' | 'composite'

/** How far a measured slump may lie from the ordered one, mm, both not below 0. */
export interface SlumpTolerance {
  readonly below: number
  readonly above: number
  readonly source: Source
  readonly note?: string
}

/** How long a load is mixed again after water or admixture was added on site; a part that the family does not have is null. */
export interface RemixRule {
  /** Turns at mixing speed. */
  readonly turns: number | null
  /** Minutes at mixing speed for each m³ of the load, and in all at least. */
  readonly minutes: { readonly perCubicMetre: number; readonly least: number } | null
  readonly source: Source
  /** Why there is no value; given exactly where both parts are null. */
  readonly gap?: string
}

/** What a family says of concrete that arrives and is placed. */
export interface PourRules {
  /** Greatest age from batching to the end of discharge, minutes. */
  readonly dischargeMinutes: PourLimit
  /** Tolerance on an ordered slump, mm; null where the family gives none for that sample. */
  readonly slumpTolerance: (target: number, sample: SlumpSample) => SlumpTolerance | null
  /** Temperature of the concrete when placed, °C. */
  readonly concreteLow: PourLimit
  readonly concreteHigh: PourLimit
  /** Air temperature below which placing needs precautions, °C. */
  readonly airLow: PourLimit
  readonly remix: RemixRule
  /** Share that a supplier may deliver under the ordered volume; null where none is known. */
  readonly underDelivery: { readonly share: number; readonly source: Source } | null
}

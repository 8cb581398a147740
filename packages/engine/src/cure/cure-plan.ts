import type { Asked, Assumed, Check, Source, Step } from '../working/index.ts'

/** Hours from mixing, MPa: expected strength and the 90 % band; null where the mix has no scatter. */
export type CurvePoint = readonly [hour: number, strength: number, low: number | null, high: number | null]

export interface CurePlan {
  /** Strength wanted at the first lift, MPa: the greatest of what drawing, family and insert maker ask. */
  readonly wanted: { readonly strength: number; readonly from: string; readonly source: Source } | null
  /** Hour from mixing at which the expected strength reaches it, at the planned temperature. */
  readonly hour: number | null
  /** The same at the low edge of the band: the one the app uses. */
  readonly hourLow: number | null
  readonly curve: readonly CurvePoint[]
  /** Concrete temperature the curve is drawn for, °C, and whether it was measured. */
  readonly temperature: { readonly celsius: number; readonly assumed: boolean } | null
  /** Mark of the mix whose strength this is; null where the yard lists none that fits. */
  readonly mix: string | null
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly checks: readonly Check[]
  readonly toRecord: readonly Asked[]
  readonly unknown: readonly string[]
}

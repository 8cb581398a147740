import type { Source } from '../working/source.ts'

/** What a tensile test of a delivered bar must show; null: the family sets none, or it is not confirmed. */
export interface TensileLimits {
  /** MPa */
  readonly yieldLow: number
  readonly yieldHigh: number | null
  /** Tensile strength, MPa. */
  readonly strengthLow: number | null
  /** Tensile strength over yield. */
  readonly ratioLow: number | null
  readonly ratioHigh: number | null
  /** Elongation at greatest force, %. */
  readonly uniformLow: number | null
  /** Elongation after fracture over 8 in, %. */
  readonly elongationLow: number | null
  readonly source: Source
  /** What a person must know beside the numbers. */
  readonly note?: string
}

/** What a place says about bars as they are delivered. */
export interface DeliveredRules {
  /** Sizes that are rolled or stocked there, mm; a bar between them is a sign of another country's steel. */
  readonly sizes: readonly number[]
  /** Null for a grade, size or standard without confirmed limits. `standards`: those that the bar itself names, if any. */
  tensile(input: {
    readonly grade: string
    readonly diameter: number
    readonly standards?: readonly string[]
  }): TensileLimits | null
  /** Length of a bar as supplied, mm; null where no confirmed value is known. */
  lengthTolerance(input: { readonly length: number }): {
    readonly minus: number
    readonly plus: number
    readonly source: Source
  } | null
}

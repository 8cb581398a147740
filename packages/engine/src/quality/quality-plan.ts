import type { Asked, Assumed, Check, Source } from '../working/index.ts'

export interface PanelTolerance {
  /** `length`, `width`, `thickness`, `squareness`, `bow`, `warp`, `flatness`. */
  readonly what: string
  /** Size as drawn, mm; 0 for squareness, bow, warp and flatness; null where the shape gives none. */
  readonly nominal: number | null
  /** Smallest and largest deviation from nominal, mm; null where no limit is confirmed. */
  readonly low: number | null
  readonly high: number | null
  readonly unit: string
  readonly source: Source
  readonly unknown?: readonly string[]
}

export interface QualityPlan {
  readonly tolerances: readonly PanelTolerance[]
  readonly checks: readonly Check[]
  readonly toRecord: readonly Asked[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

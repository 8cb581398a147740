import type { Asked, Check, Source } from '../working/index.ts'

export interface PanelTolerance {
  /** `length`, `width`, `thickness`, `squareness`, `bow`, `warp`, `flatness`. */
  readonly what: string
  readonly nominal: number | null
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
  readonly unknown: readonly string[]
}

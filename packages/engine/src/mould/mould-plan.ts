import type { Layer, Point } from '../panel/index.ts'
import type { Asked, Assumed, Check, Step } from '../working/index.ts'
import type { HeldDuct, HeldVoid } from './held-down.ts'

export interface ChairGrid {
  readonly layer: Layer
  /** Height of the chair, mm: cover, or up to the underside of the top mat. */
  readonly height: number
  /** Largest spacing, mm. */
  readonly spacing: number
  readonly at: readonly Point[]
}

export interface MouldPlan {
  /** Largest side pressure, kPa. */
  readonly pressure: number | null
  /** Line load on the side forms, kN/m. */
  readonly thrust: number | null
  /** Mark of the yard's form that was chosen; null where the yard has none that fits. */
  readonly form: string | null
  /** Spacing of props along the side forms, mm. */
  readonly propSpacing: number | null
  /** Bow of the side form between props at that spacing, mm. */
  readonly bow: number | null
  /** Where props stand: on the outline, mm. */
  readonly props: readonly Point[]
  readonly chairs: readonly ChairGrid[]
  /** Void formers and ducts, with what holds them down. */
  readonly voids: readonly HeldVoid[]
  readonly ducts: readonly HeldDuct[]
  /** Release agent, litres; null where the rate is not known. */
  readonly releaseAgent: number | null
  /** Mould face and side forms to oil, m². */
  readonly oiledArea: number
  readonly checks: readonly Check[]
  readonly toRecord: readonly Asked[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

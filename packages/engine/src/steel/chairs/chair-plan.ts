import type { Layer, Point } from '../../panel/index.ts'
import type { Asked, Assumed, Check, Source, Step } from '../../working/index.ts'

/** Chairs or spacers under one layer. */
export interface ChairLayer {
  readonly layer: Layer
  /** Direction and size of the bars that lie on them, mm. */
  readonly direction: 'x' | 'y'
  readonly diameter: number
  /** From the mould face to the underside of those bars, mm. */
  readonly height: number
  /** How much higher than the drawn cover they stand, so that the sag stays above it, mm. */
  readonly raise: number
  /** Largest spacing both ways, mm. */
  readonly spacing: number
  readonly spacingSource: Source
  /** Sag between them under own weight and a person, mm; null where not known. */
  readonly sag: number | null
  /** Bending stress of a bar at the same time, and least yield of the bars, MPa; null where not known. Above it bars stay bent. */
  readonly stress: number | null
  readonly yield: number | null
  readonly at: readonly Point[]
  /** Void formers that stand where chairs of the pattern would: those are left out. */
  readonly formers: readonly string[]
}

export interface ChairPlan {
  readonly layers: readonly ChairLayer[]
  readonly checks: readonly Check[]
  readonly toRecord: readonly Asked[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

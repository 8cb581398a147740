import type { Source } from '../working/source.ts'

/** How far a measured cover may lie from the one drawn, mm. Null: no confirmed value on that side. */
export interface CoverTolerance {
  /** Allowed under the drawn cover, not below 0. */
  readonly below: number | null
  readonly above: number | null
  readonly source: Source
}

/** Largest distance between supports along a bar, mm. */
export interface ChairSpacing {
  readonly spacing: number
  readonly source: Source
}

/** How much less than drawn the effective depth of top steel may be, mm; null: no confirmed value. */
export interface DepthTolerance {
  readonly less: number | null
  readonly source: Source
}

/** What a family says of the filled mould before the pour. */
export interface MouldRules {
  /** Tolerance on the cover of a panel; thickness and drawn cover in mm. */
  readonly coverTolerance: (input: { readonly thickness: number; readonly cover: number }) => CoverTolerance
  /** Largest distance between chairs of a bar; null where the family has no confirmed rule. */
  readonly chairSpacing: ((input: { readonly diameter: number }) => ChairSpacing) | null
  /** Where the cover's tolerance does not say how far top steel may come down, the depth's; null where the cover's does. */
  readonly depthTolerance: ((input: { readonly depth: number }) => DepthTolerance) | null
}

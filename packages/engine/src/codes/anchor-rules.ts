import type { Source } from '../working/source.ts'
import type { Worked } from '../working/worked.ts'

/** How a cast-in insert can fail. `steel` is asked twice where there is shear: once along the axis, once across. */
export const ANCHOR_MODES = [
  'steel',
  'breakout',
  'pullout',
  'blowout',
  'splitting',
  'edge',
  'pryout',
] as const
export type AnchorMode = (typeof ANCHOR_MODES)[number]
export type AnchorAction = 'tension' | 'shear'

export interface AnchorConcrete {
  /** Cylinder strength of the hour, MPa; above 0. */
  readonly strength: number
  /** Whether the concrete may be cracked where the insert sits. */
  readonly cracked: boolean
}

/** A member with three or more edges near: the cone cannot form to its full depth. */
export interface NarrowInput {
  /** Depth of the insert, or its distance from the edge that shear breaks, mm. */
  readonly size: number
  /** Edge distances that count, mm. */
  readonly near: readonly number[]
  /** Widest step from one insert of the group to the next, mm; 0 for one insert. */
  readonly spacing: number
}

export interface BreakoutInput extends AnchorConcrete {
  /** Depth that counts, mm. */
  readonly depth: number
  /** Cones of the group on the face, cut by edges and openings, mm². */
  readonly area: number
  /** Nearest edge, mm. */
  readonly edge: number
  /** Resultant from the centroid of the inserts in tension, along two axes, mm; not below 0. */
  readonly eccentricity: readonly [number, number]
}

export interface PulloutInput extends AnchorConcrete {
  /** Bearing area of the head, mm². */
  readonly head: number
}

/** Inserts in a row along one side face. */
export interface BlowoutInput extends AnchorConcrete {
  readonly depth: number
  readonly head: number
  /** Distance to the side face, mm. */
  readonly edge: number
  /** Distance along the side face to where it ends, mm; null where it does not end near. */
  readonly side: number | null
  readonly count: number
  /** Between the outer inserts of the row, mm; 0 for one. */
  readonly length: number
  /** Concrete along the side face within two edge distances of the row, mm. */
  readonly width: number
  /** Concrete below the head, mm. */
  readonly below: number
  /** Resultant of the row from its middle, along the edge, mm. */
  readonly eccentricity: number
}

export interface SplittingInput extends BreakoutInput {
  readonly head: number
  /** Edge distance and spacing of the product for splitting, mm. */
  readonly product: { readonly edge: number; readonly spacing: number }
}

export interface NarrowEdgeInput {
  /** Distance of the row to the edge, mm. */
  readonly edge: number
  /** To the side, either way, mm; null where no edge is near. */
  readonly sides: readonly [number | null, number | null]
  readonly thickness: number
  readonly spacing: number
}

/** A row of inserts pushed toward an edge. */
export interface EdgeInput extends AnchorConcrete {
  /** Distance to the edge that counts, mm. */
  readonly edge: number
  readonly depth: number
  readonly shaft: number
  /** Concrete behind the face, mm. */
  readonly thickness: number
  /** Half pyramids on the side face, cut where it ends and by the thickness, mm². */
  readonly area: number
  /** Nearest edge to the side, mm; null where none is near. */
  readonly side: number | null
  /** Shear from the middle of the row, along the edge, mm. */
  readonly eccentricity: number
  /** Of the shear from the line straight to the edge, degrees from 0 to below 180; beyond 90 it pulls away from the edge. */
  readonly angle: number
}

export interface AnchorFactorInput {
  readonly mode: AnchorMode
  readonly action: AnchorAction
  /** Supplementary reinforcement across the failure. */
  readonly supplementary: boolean
  /** Steel that elongates before it breaks; not given: taken as not. */
  readonly ductile: boolean | null
  /** Yield over tensile strength of the steel; null: not given. */
  readonly yieldRatio: number | null
}

/** Demand over design resistance, the greatest of its kind. Null where none is asked. */
export interface AnchorRatios {
  readonly steelTension: number
  readonly concreteTension: number
  readonly steelShear: number
  readonly concreteShear: number
}

export interface AnchorInteraction {
  readonly what: string
  readonly tension: number
  readonly shear: number
  /** What the two make together, to hold against `limit`. */
  readonly value: number
  readonly limit: number
  readonly source: Source
}

/**
 * What a family says of the resistance of one cast-in insert or a group in concrete, by capacity design. Resistances are nominal
 * (characteristic), kN, not reduced; each function is one clause. The rules are made for permanent fastenings.
 */
export interface AnchorRules {
  readonly standard: string
  readonly sources: Readonly<Record<AnchorMode, Source>>
  /** Depth that counts in a narrow member, mm. */
  readonly narrowDepth: (input: NarrowInput) => Worked<number>
  readonly breakout: (input: BreakoutInput) => Worked<number>
  readonly pullout: (input: PulloutInput) => Worked<number>
  /** Whether blow-out is asked at a side face that near. */
  readonly blowoutAsked: (input: { readonly edge: number; readonly depth: number }) => boolean
  /** Inserts nearer to each other along a side face than this many edge distances blow it out as one row. */
  readonly blowoutRow: number
  /** Of the whole row. */
  readonly blowout: (input: BlowoutInput) => Worked<number>
  /** Null where the code has distances and no resistance. */
  readonly splitting: ((input: SplittingInput) => Worked<number>) | null
  /** Splitting is not asked where every edge is at least this many product distances away: one insert, several. */
  readonly splittingFar: readonly [number, number]
  /** Edge distance that counts in a narrow, thin member, mm. */
  readonly narrowEdge: (input: NarrowEdgeInput) => Worked<number>
  readonly edge: (input: EdgeInput) => Worked<number>
  readonly pryout: (input: { readonly depth: number; readonly breakout: number }) => Worked<number>
  /** Steel across the axis from steel along it, kN of one insert. */
  readonly steelShear: (input: { readonly steel: number }) => Worked<number>
  /** What nominal is multiplied by for design: φ, or 1/γ. */
  readonly factor: (input: AnchorFactorInput) => Worked<number>
  /** Tension and shear together; empty where the code asks for nothing. */
  readonly interaction: (input: AnchorRatios) => Worked<readonly AnchorInteraction[]>
}

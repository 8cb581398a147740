import type { Source } from '../working/source.ts'
import type { Worked } from '../working/worked.ts'
import type { AnchorRules } from './anchor-rules.ts'

/** `release`: off the mould, with what sticks. `handling`: moved by crane in the yard or at the site. `travel`: on the road. */
export type LoadCaseId = 'release' | 'handling' | 'travel'

/**
 * Kinds of mould face that rules tell apart: `smooth` steel or coated board, oiled; `planed` boards or varnished timber;
 * `rough` timber; `concrete` casting bed.
 */
export type MouldFace = 'smooth' | 'planed' | 'rough' | 'concrete'

export interface LiftFactorInput {
  readonly stage: LoadCaseId
  /** Null where the yard does not say it. */
  readonly face: MouldFace | null
  /** Own weight, kN. */
  readonly weight: number
  /** Face that lies on the mould, m². */
  readonly faceArea: number
}

/** A limit with where it is from. */
export interface LiftLimit {
  readonly value: number
  readonly source: Source
}

/** What a family says of lifting a panel. Null or `unknown`: it says nothing that is confirmed. */
export interface LiftRules {
  /** Factor on own weight for the load on inserts and gear at a stage: suction or impact, as the family combines them. */
  readonly factor: (input: LiftFactorInput) => Worked<number>
  /** Factor on own weight for bending of the panel at a stage. */
  readonly bendingFactor: (input: LiftFactorInput) => Worked<number>
  /** Largest angle of a sling from the vertical, degrees. */
  readonly largestAngle: LiftLimit
  /** Least strength of the concrete at the first lift, MPa. */
  readonly leastStrength: LiftLimit | null
  /** Failure load over greatest working load of a cast-in lifting insert; null where none is confirmed. */
  readonly insertMargin: LiftLimit | null
  /** Tension that the concrete may have in bending at the hour of the lift, MPa. */
  readonly tension: (input: { readonly strength: number; readonly thickness: number }) => Worked<number>
  /** Resistance of cast-in inserts in concrete; null or absent: the family has none here, only the maker's rating. */
  readonly anchor?: AnchorRules | null
}

import type { Point } from '../panel/index.ts'
import type { Asked, Assumed, Check, Step } from '../working/index.ts'
import type { LiftHours } from './hour.ts'
import type { LiftCondition, LiftStage } from './stages/stage.ts'

export interface PlannedInsert {
  readonly mark: string
  readonly at: Point
  readonly kind: 'face' | 'edge'
  readonly type: string | null
  /** Own-weight share by statics, kN; null where the rigging is statically undetermined. */
  readonly load: number | null
  /** Maker's rated load, kN, at or above the rated strength; null where the yard lists no such kind. */
  readonly rated: number | null
}

export interface LiftPlan {
  /** kg */
  readonly mass: number
  /** Mass with the allowance for thickness and cast-ins, kg: what crane and gear are held against. */
  readonly hookMass: number
  /** kN, without factor */
  readonly weight: number
  readonly centre: Point
  /** Load factor of the first lift and where it is from; null where the family gives none. */
  readonly factor: number | null
  readonly inserts: readonly PlannedInsert[]
  readonly rigging: string | null
  /** Sling angle from the vertical, degrees; null where the rigging is not known. */
  readonly angle: number | null
  /** Governing tension at the first lift, factor in it, MPa; null where not known. */
  readonly peak: number | null
  /** Every stage of handling. */
  readonly stages: readonly LiftStage[]
  /** Conditions of all stages with the least strength at which each holds, in the order of the stages. */
  readonly conditions: readonly LiftCondition[]
  /** When each of them holds by the planned strength, hours from mixing; made with the whole plan, which knows the cure. */
  readonly hours?: LiftHours
  readonly working: readonly Step[]
  /** Defaults that nobody gave: the allowance on the mass. */
  readonly assumed?: readonly Assumed[]
  readonly checks: readonly Check[]
  readonly toRecord: readonly Asked[]
  readonly unknown: readonly string[]
}

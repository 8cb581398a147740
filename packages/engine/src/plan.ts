import type { CodeFamily, FamilyId } from './codes/family.ts'
import type { CurePlan } from './cure/cure-plan.ts'
import type { LiftPlan } from './lift/lift-plan.ts'
import type { MouldPlan } from './mould/mould-plan.ts'
import type { Drawing, Point } from './panel/index.ts'
import type { PourPlan } from './pour/pour-plan.ts'
import type { QualityPlan } from './quality/quality-plan.ts'
import type { SteelPlan } from './steel/steel-plan.ts'
import type { Asked, Assumed, Check, Step } from './working/index.ts'
import type { Yard } from './yard/index.ts'

export interface PlanInput {
  readonly drawing: Drawing
  /** Where missing, everything that needs the yard is not known. */
  readonly yard: Yard | null
  readonly family: CodeFamily
}

/**
 * Everything computed for one panel from drawing, yard and code family. A pure function of the three; recomputed at each
 * edit; never stored as truth.
 */
export interface Plan {
  readonly mark: string
  readonly family: FamilyId
  readonly editions: readonly string[]
  readonly engine: string
  /** kg, m³, mm */
  readonly mass: number
  readonly volume: number
  readonly centre: Point
  readonly length: number
  readonly width: number
  readonly thickness: number
  /** What drawing, yard and code decide, in the order of the steps. */
  readonly checks: readonly Check[]
  /** What must be seen or measured, in the order of the steps. */
  readonly toRecord: readonly Asked[]
  readonly steel: SteelPlan
  readonly mould: MouldPlan
  readonly pour: PourPlan
  readonly cure: CurePlan
  readonly lift: LiftPlan
  readonly quality: QualityPlan
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

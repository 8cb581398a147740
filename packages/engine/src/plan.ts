import type { CodeFamily, FamilyId } from './codes/family.ts'
import type { CurePlan } from './cure/cure-plan.ts'
import { planCure } from './cure/plan-cure.ts'
import { liftHours } from './lift/hour.ts'
import type { LiftPlan } from './lift/lift-plan.ts'
import { planLift } from './lift/plan-lift.ts'
import { wantedStrength } from './lift/wanted-strength.ts'
import type { MouldPlan } from './mould/mould-plan.ts'
import { planMould } from './mould/plan-mould.ts'
import type { Drawing } from './panel/drawing.ts'
import { panelOf } from './panel/panel.ts'
import type { Point } from './panel/point.ts'
import { NO_CHOICE, type PlacingChoice } from './pour/placing-choice.ts'
import { planPour } from './pour/plan-pour.ts'
import type { PourPlan } from './pour/pour-plan.ts'
import { planQuality } from './quality/plan-quality.ts'
import type { QualityPlan } from './quality/quality-plan.ts'
import { planSteel } from './steel/plan-steel.ts'
import type { SteelPlan } from './steel/steel-plan.ts'
import type { EnteredLimit } from './steps/facts.ts'
import { STEP_IDS, type StepId } from './steps/steps.ts'
import type { Asked } from './working/asked.ts'
import type { Check } from './working/check.ts'
import type { Assumed, Step } from './working/worked.ts'
import type { Yard } from './yard/yard.ts'

/** Version of the calculation, printed with every plan and passport. */
export const ENGINE_VERSION = '0.1.0'

export interface PlanInput {
  readonly drawing: Drawing
  /** Where missing, everything that needs the yard is not known. */
  readonly yard: Yard | null
  readonly family: CodeFamily
  /** Limits that an engineer entered for the yard, by key. */
  readonly limits?: Readonly<Record<string, EnteredLimit>>
  /** How the floor settled that the concrete is placed; assumed where nobody did. */
  readonly placing?: PlacingChoice
  /** File that the drawing came from, for messages. */
  readonly from?: string
}

/**
 * Everything computed for one panel from drawing, yard, code family and how it is placed. A pure function of these; recomputed at each
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

/**
 * Plans one panel: every room's part from the same panel, and all checks and asked items in the order of the steps.
 *
 * @throws InputError where the drawing leaves no concrete, falls into pieces, or has an opening outside its outline.
 */
export function plan({
  drawing,
  yard,
  family,
  limits = {},
  placing = NO_CHOICE,
  from = '',
}: PlanInput): Plan {
  const panel = panelOf(drawing, from)
  const wanted = wantedStrength({ drawing, yard, family, limits })
  const steel = planSteel({ panel, yard, family })
  const mould = planMould({ panel, yard, family, steel })
  const pour = planPour({
    panel,
    yard,
    family,
    placed: steel.placed,
    notLaid: steel.unknown,
    choice: placing,
  })
  const cure = planCure({ panel, yard, family, wanted, limits })
  const lift = withHours(planLift({ panel, yard, family, limits }), cure)
  const quality = planQuality({ panel, yard, family, limits })
  const rooms = [steel, mould, pour, cure, lift, quality]
  return {
    mark: drawing.mark,
    family: family.id,
    editions: family.editions,
    engine: ENGINE_VERSION,
    mass: panel.mass,
    volume: panel.volume,
    centre: panel.centre,
    length: panel.length,
    width: panel.width,
    thickness: drawing.thickness,
    checks: inStepOrder(rooms.flatMap(({ checks }): readonly Check[] => checks)),
    toRecord: inStepOrder(rooms.flatMap(({ toRecord }): readonly Asked[] => toRecord)),
    steel,
    mould,
    pour,
    cure,
    lift,
    quality,
    working: [
      ...panel.working,
      ...[steel, mould, pour, cure, lift].flatMap(({ working }): readonly Step[] => working),
    ],
    assumed: distinct([
      ...panel.assumed,
      ...rooms.flatMap(({ assumed }): readonly Assumed[] => assumed ?? []),
    ]),
  }
}

/** The hours of the lift need the strength by the hour. */
function withHours(lift: LiftPlan, { curve, wanted, unknown }: CurePlan): LiftPlan {
  return { ...lift, hours: liftHours({ conditions: lift.conditions, curve, wanted, gaps: unknown }) }
}

/** Within a step the order of the rooms stays. */
function inStepOrder<T extends { readonly step: StepId }>(items: readonly T[]): T[] {
  return [...items].sort((a, b) => STEP_IDS.indexOf(a.step) - STEP_IDS.indexOf(b.step))
}

/** Two rooms may assume the same thing: it is listed once. */
function distinct(assumed: readonly Assumed[]): Assumed[] {
  const seen = new Set<string>()
  return assumed.filter(({ field, value }) => {
    const key = `${field} ${value}`
    return seen.has(key) ? false : seen.add(key) !== undefined
  })
}

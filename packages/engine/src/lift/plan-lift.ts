import type { CodeFamily } from '../codes/family.ts'
import { misplacedInserts, type Panel } from '../panel/panel.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import { known, unknown, type Worked } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { hookMass } from './hook-mass.ts'
import { insertPlaceChecks, insertPositionCheck } from './insert-checks.ts'
import { drawnKinds } from './insert-kinds.ts'
import { angleCheck, designLoadChecks, upliftCheck } from './lift-checks.ts'
import type { LiftPlan } from './lift-plan.ts'
import { loadFactor } from './load-factor.ts'
import { riggingOf } from './rigging-of.ts'
import { type Sling, slingAngle } from './sling.ts'
import { factorChecks } from './stages/factor-checks.ts'
import { liftStages } from './stages/lift-stages.ts'
import type { LiftStage } from './stages/stage.ts'
import { liftConditions, stageChecks } from './stages/stage-checks.ts'
import { stripAsked } from './strip-asked.ts'
import { supportLoads } from './supports.ts'
import { wantedStrength } from './wanted-strength.ts'

export interface PlanLiftInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  /** Limits that an engineer entered for the yard. */
  readonly limits?: Readonly<Record<string, EnteredLimit>>
}

/** Mass, every stage of handling, insert loads, sling angle and what is checked and asked at the lifts. */
export function planLift({ panel, yard, family, limits = {} }: PlanLiftInput): LiftPlan {
  const { drawing } = panel
  const inserts = drawing.inserts ?? []
  const marks = inserts.map(({ mark }) => mark)
  const rigging = riggingOf(drawing.rigging, yard?.rigging ?? [])
  const sling: Worked<Sling> =
    'gap' in rigging
      ? unknown(rigging.gap)
      : slingAngle({ rigging, hook: panel.centre, picks: inserts.map(({ at }) => at) })
  const stages = liftStages({ panel, yard, family, limits })
  const first = stages.find(({ id }) => id === 'release') ?? null
  const loads = ownLoads({ panel, first, equalised: !('gap' in rigging) && rigging.equalised === true })
  const wanted = wantedStrength({ drawing, yard, family, limits })
  const kinds = drawnKinds({ drawing, yard })
  const factor = loadFactor({ panel, yard, family, of: 'inserts' })
  const heavy = hookMass({ mass: panel.mass })
  const checks = [
    ...insertPositionCheck({ panel }),
    ...insertPlaceChecks({ panel, kinds }),
    angleCheck({ sling, family }),
    ...upliftCheck({ loads, marks }),
    ...factorChecks({ panel, yard, family, limits, stages }),
    ...stageChecks({
      stages,
      family,
      limits,
      strength: wanted.known ? known(wanted.value.strength, wanted.working) : wanted,
      thickness: drawing.thickness,
    }),
    ...designLoadChecks({
      lifting: drawing.lifting,
      kinds,
      strength: wanted.known ? known(wanted.value.strength, wanted.working) : wanted,
    }),
  ]
  return {
    mass: panel.mass,
    hookMass: heavy.known ? heavy.value : panel.mass,
    weight: panel.weight,
    centre: panel.centre,
    factor: factor.known ? factor.value.factor : null,
    inserts: inserts.map(({ mark, at, kind, type }, index) => ({
      mark,
      at,
      kind,
      type: type ?? null,
      load: loads.known ? (loads.value[index] ?? null) : null,
      rated:
        kinds.kinds.find((group) => group.inserts.some((insert) => insert.mark === mark))?.kind.rated ?? null,
    })),
    rigging: 'gap' in rigging ? null : rigging.mark,
    angle: sling.known ? sling.value.angle : null,
    peak: first?.peak?.stress ?? null,
    stages,
    conditions: liftConditions({ stages, family, limits, thickness: drawing.thickness }),
    working: [
      ...(heavy.known ? heavy.working : []),
      ...(factor.known ? factor.working : []),
      ...(loads.known ? loads.working : []),
      ...(sling.known ? sling.working : []),
    ],
    assumed: heavy.assumed ?? [],
    checks,
    toRecord: stripAsked({ drawing, yard }),
    unknown: [
      ...new Set([
        ...stages.flatMap((stage) => stage.unknown),
        ...[loads, factor, sling].flatMap((part) => (part.known ? [] : part.gaps)),
        ...kinds.gaps,
      ]),
    ],
  }
}

/** Share of own weight on each insert at the first lift, kN: by statics where that is enough, else by the bending of the panel. */
function ownLoads({
  panel,
  first,
  equalised,
}: {
  readonly panel: Panel
  readonly first: LiftStage | null
  readonly equalised: boolean
}): Worked<readonly number[]> {
  const inserts = panel.drawing.inserts ?? []
  const misplaced = misplacedInserts(panel)
  if (misplaced.length > 0) {
    return unknown(...misplaced.map(({ found, expected }) => `${found}: expected ${expected}`))
  }
  const statics = supportLoads({ weight: panel.weight, centre: panel.centre, supports: inserts, equalised })
  if (statics.known || first === null || first.factor === null) return statics
  const carried = first.supports.filter(({ kind, load }) => kind === 'insert' && load !== null)
  if (carried.length !== inserts.length) return statics
  const { factor } = first
  return known(
    inserts.map(({ mark }) => (carried.find((one) => one.mark === mark)?.load ?? Number.NaN) / factor),
    first.working,
  )
}

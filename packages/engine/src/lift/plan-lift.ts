import type { CodeFamily } from '../codes/family.ts'
import { misplacedInserts, type Panel } from '../panel/panel.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import { known, unknown, type Worked } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { hookMass } from './hook-mass.ts'
import { insertPlaceChecks, insertPositionCheck } from './insert-checks.ts'
import { drawnKinds } from './insert-kinds.ts'
import { angleCheck, designLoadChecks, loadCheck, peakCheck, upliftCheck } from './lift-checks.ts'
import type { LiftPlan } from './lift-plan.ts'
import { loadFactor } from './load-factor.ts'
import { riggingOf } from './rigging-of.ts'
import { type Sling, slingAngle } from './sling.ts'
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

/**
 * Mass, insert loads, sling angle and what is checked and asked at the first lift, as far as statics go.
 *
 * Peak tension and the loads of four or more rigid inserts are unknown: they need the bending of the plate.
 */
export function planLift({ panel, yard, family, limits = {} }: PlanLiftInput): LiftPlan {
  const { drawing } = panel
  const inserts = drawing.inserts ?? []
  const marks = inserts.map(({ mark }) => mark)
  const rigging = riggingOf(drawing.rigging, yard?.rigging ?? [])
  const sling: Worked<Sling> =
    'gap' in rigging
      ? unknown(rigging.gap)
      : slingAngle({ rigging, hook: panel.centre, picks: inserts.map(({ at }) => at) })
  const misplaced = misplacedInserts(panel)
  const loads: Worked<readonly number[]> =
    misplaced.length > 0
      ? unknown(...misplaced.map(({ found, expected }) => `${found}: expected ${expected}`))
      : supportLoads({
          weight: panel.weight,
          centre: panel.centre,
          supports: inserts,
          equalised: !('gap' in rigging) && rigging.equalised === true,
        })
  const wanted = wantedStrength({ drawing, yard, family, limits })
  const kinds = drawnKinds({ drawing, yard })
  const factor = loadFactor({ panel, yard, family, of: 'inserts' })
  const bending = loadFactor({ panel, yard, family, of: 'bending' })
  const heavy = hookMass({ mass: panel.mass })
  const checks = [
    ...insertPositionCheck({ panel }),
    ...insertPlaceChecks({ panel, kinds }),
    angleCheck({ sling, family }),
    ...upliftCheck({ loads, marks }),
    loadCheck({ loads, kinds, marks, factor, sling, wanted }),
    ...designLoadChecks({
      lifting: drawing.lifting,
      kinds,
      strength: wanted.known ? known(wanted.value.strength, wanted.working) : wanted,
    }),
    peakCheck({ panel, family, wanted, factor: bending }),
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
    peak: null,
    stages: [],
    conditions: [],
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
        'peak tension: not computed yet: needs plate bending',
        ...[loads, factor, sling].flatMap((part) => (part.known ? [] : part.gaps)),
        ...kinds.gaps,
      ]),
    ],
  }
}

import { codeFamily } from '../codes/index.ts'
import { INSERT_MARGIN_LIMIT } from '../lift/stages/insert-limit.ts'
import { STAGE_INSERT, STAGE_PEAK, STRIP_STAGES, stageChecks } from '../lift/stages/stage-checks.ts'
import { factorLimit } from '../lift/stages/stage-factor.ts'
import { TENSION_LIMIT } from '../lift/stages/tension-limit.ts'
import type { Plan } from '../plan.ts'
import { known, type Worked } from '../working/worked.ts'
import type { CardRow } from './card.ts'
import type { YardFacts } from './facts.ts'
import { checkRow } from './rows.ts'
import type { StrengthAtLift } from './strength-at-lift.ts'

export interface StageRowsInput {
  readonly plan: Pick<Plan, 'family' | 'lift' | 'thickness'>
  readonly yard: YardFacts
  /** Low edge of this pour at this hour. */
  readonly strength: Worked<StrengthAtLift>
}

/** Whether a check of the plan is compared again on the strip card, at the strength of the hour. */
export function isStageCheck(id: string): boolean {
  return id.startsWith(STAGE_PEAK) || id.startsWith(STAGE_INSERT)
}

/** The stages of the first lift, held against the strength of now: ids `now:lift-peak:release`, `now:lift-insert:hang` … */
export function stageRows({ plan, yard, strength }: StageRowsInput): CardRow[] {
  const checks = stageChecks({
    stages: plan.lift.stages.filter(({ id }) => STRIP_STAGES.includes(id)),
    family: codeFamily(plan.family),
    limits: yard.limits,
    strength: strength.known ? known(strength.value.low, strength.working) : strength,
    thickness: plan.thickness,
  })
  return checks.map((check) =>
    checkRow({ ...check, id: `now:${check.id}`, what: `${check.what}, at this hour` }, 'record', [
      ...(strength.known ? strength.value.rests : []),
      ...limitEntries(check.id, yard),
    ]),
  )
}

/** Entries of the limits that an engineer has given for a row. */
function limitEntries(id: string, { limits }: YardFacts): string[] {
  const stage = STRIP_STAGES.find((each) => id === `${STAGE_PEAK}${each}` || id === `${STAGE_INSERT}${each}`)
  if (stage === undefined) return []
  const keys = id.startsWith(STAGE_PEAK)
    ? [factorLimit('bending', stage), TENSION_LIMIT]
    : [factorLimit('inserts', stage), INSERT_MARGIN_LIMIT]
  return keys.flatMap((key) => limits[key]?.entry ?? [])
}

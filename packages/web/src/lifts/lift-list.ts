import type { FamilyId } from '@castwright/engine/codes'
import type { Plan } from '@castwright/engine/plan'
import { cardOf, type PanelFacts, stepIsDone, type YardFacts } from '@castwright/engine/steps'
import type { Verdict } from '@castwright/engine/working'
import { type StageRow, stageRows, stageStrength } from './stage-rows.ts'

/** How a panel stands for its first lift, in one line. */
export interface LiftLine {
  readonly verdict: Verdict
  readonly text: string
}

export function isLifted(facts: PanelFacts): boolean {
  return stepIsDone('strip', facts)
}

export interface LiftLineInput {
  readonly facts: PanelFacts
  readonly plan: Plan
  readonly yard: YardFacts
  /** UTC instant. */
  readonly now: string
}

/** The stage of the first lift that is nearest to its limit, or what is not known. */
export function liftLine({ facts, plan, yard, now }: LiftLineInput): LiftLine {
  const card = cardOf({ plan, step: 'strip', facts, yard, now })
  const at = stageStrength(card.rows.find(({ id }) => id === 'strength'))
  const rows = stageRows({
    stages: plan.lift.stages.filter(({ step }) => step === 'strip'),
    family: plan.family as FamilyId,
    limits: yard.limits,
    strength: at.strength,
    thickness: plan.thickness,
  })
  if (rows.length === 0) return { verdict: 'unknown', text: 'no inserts drawn' }
  const fails = rows.find(({ verdict }) => verdict === 'fail')
  if (fails !== undefined) return { verdict: 'fail', text: `${fails.stage.name}: ${worstOf(fails)}` }
  const open = rows.find(({ verdict }) => verdict === 'unknown')
  if (open !== undefined) return { verdict: 'unknown', text: `${open.stage.name}: ${missingOf(open)}` }
  const worst = rows.reduce((most, row) => (ratioOf(row) > ratioOf(most) ? row : most))
  return { verdict: 'pass', text: `${worst.stage.name}: ${worstOf(worst)}` }
}

function ratioOf({ peak, insert }: StageRow): number {
  return Math.max(peak.ratio ?? 0, insert?.ratio ?? 0)
}

function worstOf(row: StageRow): string {
  const insert = (row.insert?.ratio ?? 0) > (row.peak.ratio ?? 0)
  return `${Math.ceil(ratioOf(row) * 100 - 1e-9)} % of the limit, ${insert ? 'an insert' : 'tension'}`
}

function missingOf({ peak, insert }: StageRow): string {
  return peak.unknown?.[0] ?? insert?.unknown?.[0] ?? 'not known'
}

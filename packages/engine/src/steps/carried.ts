import { MOULD_ROWS } from '../mould/measured-mould.ts'
import type { Plan } from '../plan.ts'
import { loadRowTitle } from '../pour/loads/load-row.ts'
import type { Carried } from './card.ts'
import type { PanelFacts, Signed, SignedDifference } from './facts.ts'
import { LEFT_ROW, LEFT_WHAT } from './left-row.ts'
import { STEP_IDS, type StepId } from './steps.ts'

/** Rows of the strip card that the record makes and the plan does not name. */
const NOW = /^now:/

/**
 * Decisions and signed differences of the steps before one, in the order of the steps: for the revision in force, and those that an
 * opening rested on, whatever the revision is now.
 */
export function carriedTo({
  step,
  facts,
  plan,
}: {
  readonly step: StepId
  readonly facts: PanelFacts
  readonly plan: Pick<Plan, 'checks' | 'toRecord'>
}): Carried[] {
  const before = STEP_IDS.slice(0, STEP_IDS.indexOf(step))
  return before.flatMap((earlier) => carriedFrom(earlier, facts, plan))
}

/** The same of one step. */
export function carriedFrom(
  step: StepId,
  facts: PanelFacts,
  plan: Pick<Plan, 'checks' | 'toRecord'>,
): Carried[] {
  const { decisions, differences, opening } = facts.steps[step]
  const rested = new Set(opening?.rests ?? [])
  const stands = ({ entry, revision, reason }: Signed): boolean =>
    (reason ?? '').trim() !== '' && (revision === facts.revision || rested.has(entry))
  const list = (kind: Carried['kind'], all: Readonly<Record<string, Signed | SignedDifference>>): Carried[] =>
    Object.entries(all)
      .filter(([, signed]) => stands(signed))
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([check, signed]) => ({ step, kind, check, what: titleOf(check, plan), signed }))
  const loads =
    step !== 'deliver'
      ? []
      : facts.dockets.flatMap((load): Carried[] => {
          const { number, decision } = load
          // A truck that was sent back is gone, whatever the drawing says now.
          if (decision === null || !(decision.decision === 'send-back' || stands(decision))) return []
          return [{ step, kind: 'load', check: `load:${number}`, what: `Load ${number}`, signed: decision }]
        })
  return [...list('decision', decisions), ...loads, ...list('difference', differences)]
}

function titleOf(check: string, { checks, toRecord }: Pick<Plan, 'checks' | 'toRecord'>): string {
  const id = check.replace(NOW, '')
  const found = [...checks, ...toRecord].find((item) => item.id === id)
  if (found === undefined)
    return MOULD_ROWS[check] ?? loadRowTitle(check) ?? (id.startsWith(LEFT_ROW) ? LEFT_WHAT : check)
  return id === check ? found.what : `${found.what}, at this hour`
}

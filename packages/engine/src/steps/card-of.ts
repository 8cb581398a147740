import { ANGLE_CHECK } from '../lift/lift-checks.ts'
import type { Plan } from '../plan.ts'
import { askedByDockets } from '../pour/loads/docket-answers.ts'
import { type Asked, judge, wantedOf } from '../working/asked.ts'
import type { Check } from '../working/check.ts'
import { commonPractice } from '../working/source.ts'
import { joinVerdicts } from '../working/verdict.ts'
import type { Card, CardRow } from './card.ts'
import { answerOf } from './card-answer.ts'
import { carriedTo } from './carried.ts'
import { decisionCounts } from './decision.ts'
import { withDifferences } from './difference.ts'
import type { PanelFacts, Recorded, Signed, Signer, YardFacts } from './facts.ts'
import { shutHold, stepIsDone } from './hold.ts'
import { leftRows } from './left-row.ts'
import { loadCardRows } from './load-card-rows.ts'
import { mouldRows } from './mould-row.ts'
import { checkRow, plainRow } from './rows.ts'
import { isStageCheck } from './stage-rows.ts'
import { STEEL_ROW, steelRows } from './steel-row.ts'
import { panelStep, type StepId } from './steps.ts'
import { designIsConfirmed, stripRows } from './strip-rows.ts'

export interface CardInput {
  /** Computed from the drawing of the revision in force. */
  readonly plan: Plan
  readonly step: StepId
  readonly facts: PanelFacts
  readonly yard: YardFacts
  /** UTC instant, for ages and dates of gear. */
  readonly now: string
  /** What the computed night says; shown at the step of its checks as advice. */
  readonly night?: readonly Check[]
}

/**
 * The card of one step: what the plan decides, what is asked, what the record decides, and whether the step may be closed
 * or its hold opened. Unknown is not pass: it keeps a hold shut as a fail does.
 */
export function cardOf(input: CardInput): Card {
  const { step, facts } = input
  const { hold } = panelStep(step)
  const conditions = rowsOf(input).map((row) =>
    withDecision(row, facts.steps[step].decisions[row.id], facts.revision),
  )
  const advice = (input.night ?? [])
    .filter((check) => check.step === step)
    .map((check): CardRow => ({ ...checkRow(check, 'plan'), advice: true }))
  const behind = shutHold(step, facts)
  const done = stepIsDone(step, facts)
  const state = done ? 'done' : behind === null ? 'open' : 'waiting'
  const missing = [
    ...(behind === null ? [] : [`${panelStep(behind).name} to open first`]),
    // Several rows may wait for the same end.
    ...new Set(conditions.flatMap((row) => waitsFor(row, hold))),
  ]
  const ready = state === 'open' && missing.length === 0
  return {
    step,
    state,
    rows: [...conditions, ...advice],
    verdict: joinVerdicts(
      conditions.filter((row) => row.replaced === undefined).map(({ verdict }) => verdict),
    ),
    ready,
    answer: answerOf({ step, hold, state, rows: conditions, ready, behind }),
    missing,
    entitled: hold ? ['lead'] : CLOSERS,
    rests: restsOf(conditions, facts),
    carried: carriedTo({ step, facts, plan: input.plan }),
  }
}

/** Checks, values and photos: floor and up. A viewer reads. */
const CLOSERS: readonly Signer['role'][] = ['floor', 'lead', 'engineer']

function rowsOf({ plan, step, facts, yard, now }: CardInput): CardRow[] {
  const planned = plan.checks.filter((check) => check.step === step).map((check) => checkRow(check, 'plan'))
  const asked = plan.toRecord
    .filter((item) => item.step === step)
    .map((item) => askedRow(item, facts.steps[step].values[item.id], facts.revision))
  switch (step) {
    case 'strip': {
      const rows = [
        ...stripRows({ plan, facts, yard, now }),
        // The angle is taken with the rigging in use, which the plan may not know; the stages at the strength of the hour.
        ...planned.filter(({ id }) => id !== ANGLE_CHECK && !isStageCheck(id)),
        ...asked,
      ]
      return withDifferences({ rows, facts, confirmed: designIsConfirmed(facts) })
    }
    case 'mould':
      return [...planned, ...asked, ...mouldRows({ plan, facts, yard, step })]
    case 'deliver':
      return [
        ...loadCardRows({ plan, facts, yard }),
        ...planned,
        ...asked.filter((row) => !askedByDockets(row.id, valueInForce(row, facts), facts.dockets)),
      ]
    case 'set':
      return [
        ...steelRows(facts, plan.family),
        ...mouldRows({ plan, facts, yard, step }),
        ...planned,
        ...asked,
      ]
    case 'place':
      return [...planned, ...asked, ...leftRows(facts)]
    case 'load':
      return [defectRow(facts), ...steelRows(facts, plan.family), ...planned, ...asked]
    default:
      return [...planned, ...asked]
  }
}

/** What was recorded for the revision in force. */
function valueInForce({ recorded }: CardRow, { revision }: PanelFacts): unknown {
  return recorded !== null && recorded.revision === revision ? recorded.value : undefined
}

function askedRow(asked: Asked, recorded: Recorded | undefined, revision: string | null): CardRow {
  const stale = recorded !== undefined && recorded.revision !== revision
  const verdict = recorded === undefined || stale ? 'unknown' : judge(asked, recorded.value)
  return plainRow({
    id: asked.id,
    from: 'asked',
    what: asked.what,
    verdict,
    demand: shownValue(recorded?.value),
    limit: wantedOf(asked),
    unit: asked.unit,
    note: asked.note ?? '',
    source: asked.source,
    unknown: verdict === 'unknown' ? askedGaps(asked, recorded, stale, revision) : [],
    asked,
    recorded: recorded ?? null,
    rests: recorded && !stale ? [recorded.entry] : [],
  })
}

function askedGaps(
  asked: Asked,
  recorded: Recorded | undefined,
  stale: boolean,
  revision: string | null,
): readonly string[] {
  if (recorded === undefined) return ['not recorded yet']
  if (stale) return [`recorded for revision ${recorded.revision ?? 'none'}, now ${revision ?? 'none'}`]
  return asked.unknown && asked.unknown.length > 0 ? asked.unknown : [`${asked.what}: no confirmed limit`]
}

function shownValue(value: unknown): number | string | null {
  if (typeof value === 'number' || typeof value === 'string') return value
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return Array.isArray(value) ? `${value.length} readings` : null
}

/** A panel with an open defect, or with steel that is not accepted, is not loaded, whatever anyone decides on this card. */
const DEFECT_ROW = 'no-open-defect'

function defectRow({ defects }: PanelFacts): CardRow {
  const open = defects.filter((defect) => defect.open)
  return plainRow({
    id: DEFECT_ROW,
    what: 'No open defect on this panel',
    verdict: open.length === 0 ? 'pass' : 'fail',
    demand: open.length,
    limit: 0,
    note: open.map(({ text }) => text).join('; '),
    source: commonPractice('a panel with an open defect stays in the yard'),
    rests: defects.flatMap(({ entry, disposition, inspection }) =>
      [entry, disposition?.entry, inspection?.entry].filter((id): id is string => id !== undefined),
    ),
  })
}

/** A decision counts with a reason, a role that may decide, for the revision in force, and for what was on record when it was made. */
function withDecision(row: CardRow, decision: Signed | undefined, revision: string | null): CardRow {
  if (decision === undefined || !decisionCounts(row, decision, revision)) return row
  return { ...row, decision, rests: [...row.rests, decision.entry] }
}

const DIFFERENCE_WORDS = 'a difference signed by an engineer with a reason'

/** What a row still asks for before the step may be closed or the hold opened. */
function waitsFor(row: CardRow, hold: boolean): string[] {
  if (row.verdict === 'pass' || row.replaced !== undefined) return []
  if (hold || row.id === DEFECT_ROW || row.id === STEEL_ROW) {
    const text = `${row.what}: ${row.verdict === 'fail' ? 'not met' : 'not known'}`
    return [row.difference?.may ? `${text}; waits for ${DIFFERENCE_WORDS}` : text]
  }
  if (row.waits !== undefined) return [row.waits]
  if (row.asked !== null && row.recorded === null) return [`${row.what}: not recorded yet`]
  return row.decision === null
    ? [`${row.what}: ${row.verdict === 'fail' ? 'fails' : 'not known'}, needs a decision`]
    : []
}

function restsOf(rows: readonly CardRow[], facts: PanelFacts): string[] {
  const holds = [facts.steps.set.opening, facts.steps.strip.opening].flatMap((opening) =>
    opening ? [opening.entry] : [],
  )
  return [...new Set([...rows.flatMap(({ rests }) => rests), ...holds])]
}

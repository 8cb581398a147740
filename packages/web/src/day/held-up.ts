import {
  type CardRow,
  cardOf,
  panelStep,
  STEP_IDS,
  type StepId,
  stepIsDone,
  stripHour,
  type YardFacts,
} from '@castwright/engine/steps'
import type { Verdict } from '@castwright/engine/working'
import { fixed } from '../look/index.ts'
import { valueText } from '../panel/row-text.ts'
import type { BedDay, PanelRef, PlannedPanel } from './bed-day.ts'
import { bedOf } from './bed-day.ts'
import { clockText } from './day-window.ts'

/** A thing that holds the day up, or is due next: a sentence that leads to its card. */
export interface DaySentence {
  readonly kind: 'fail' | 'unknown' | 'accent'
  readonly title: string
  readonly text: string
  readonly panel: PanelRef
  readonly step: StepId
}

export interface HeldUpInput {
  readonly panels: readonly PlannedPanel[]
  readonly rows: readonly BedDay[]
  readonly yard: YardFacts
  readonly now: Date
  readonly zone: string
}

const MOST = 3

/** At most three sentences: what fails first, then what is not known, then what is due next. */
export function heldUp(input: HeldUpInput): readonly DaySentence[] {
  const stuck = input.panels.flatMap((panel) => stuckAt(panel, input))
  const order: Readonly<Record<Verdict, number>> = { fail: 0, unknown: 1, pass: 2 }
  stuck.sort((a, b) => order[a.kind] - order[b.kind])
  const due = dueNext(input)
  const kept = stuck.slice(0, due === null ? MOST : MOST - 1)
  return due === null ? kept : [...kept, due]
}

/** The first step that is not done; null where all are. */
export function openStep(facts: PlannedPanel['facts']): StepId | null {
  return STEP_IDS.find((step) => !stepIsDone(step, facts)) ?? null
}

function stuckAt(
  { facts, plan }: PlannedPanel,
  { yard, now, zone }: HeldUpInput,
): (DaySentence & { kind: 'fail' | 'unknown' })[] {
  const panel = { job: facts.job, mark: facts.mark }
  const bed = bedOf(facts, yard.yard?.beds ?? [])
  const where = bed === null || stepIsDone('strip', facts) ? facts.mark : `Bed ${bed}: ${facts.mark}`
  const defect = facts.defects.find(({ open }) => open)
  if (defect) {
    const step = defect.step ?? openStep(facts) ?? 'as-built'
    return [{ kind: 'fail', title: `${where} has an open defect`, text: defect.text, panel, step }]
  }
  const step = stepThatCounts({ facts, plan }, now)
  if (step === null || plan === null) return []
  const card = cardOf({ plan, step, facts, yard, now: now.toISOString() })
  if (card.state === 'done') return []
  const fails = card.rows.find(
    (row) =>
      row.verdict === 'fail' && row.replaced === undefined && (panelStep(step).hold || row.decision === null),
  )
  if (fails) {
    return [{ kind: 'fail', title: `${where} ${failWord(step)}`, text: rowText(fails), panel, step }]
  }
  if (!panelStep(step).hold) return []
  const open = card.rows.filter((row) => row.verdict === 'unknown' && row.replaced === undefined)
  const first = open[0]
  if (first === undefined) return []
  const strip = step === 'strip' ? stripHour({ plan, facts, yard, now: now.toISOString() }) : null
  const when =
    strip !== null && strip.hour !== null && strip.strength !== null && facts.cast !== null
      ? ` Low edge meets ${fixed(strip.strength, 1)} MPa (${lowerFirst(strip.governs?.what ?? '')}) about ${clockText(Date.parse(facts.cast.at) + strip.hour * 3_600_000, zone)}, by ${strip.temperature} temperature.`
      : ''
  const rest = open.length > 1 ? ` and ${open.length - 1} more` : ''
  return [
    {
      kind: 'unknown',
      title: `${where} waits at ${panelStep(step).name.toLowerCase()}`,
      text: `Not known: ${lowerFirst(first.what)}${rest}.${when}`,
      panel,
      step,
    },
  ]
}

/** The open step; for a panel that cures past the hour planned for its strength, the strip that waits behind it. */
function stepThatCounts({ facts, plan }: Pick<PlannedPanel, 'facts' | 'plan'>, now: Date): StepId | null {
  const step = openStep(facts)
  const met = plan?.cure.hourLow ?? null
  if (step !== 'cure' || met === null || facts.cast === null) return step
  return now.getTime() >= Date.parse(facts.cast.at) + met * 3_600_000 ? 'strip' : step
}

function failWord(step: StepId): string {
  if (step === 'strip') return 'stays in the mould'
  if (step === 'set') return 'is not ready for concrete'
  return `fails at ${panelStep(step).name.toLowerCase()}`
}

function rowText(row: CardRow): string {
  return row.demand === null ? `${row.what}.` : `${row.what}: ${valueText(row)}.`
}

/** The next finishing window or strip of the day that is still to come. */
function dueNext({ rows, now, zone }: HeldUpInput): DaySentence | null {
  const time = now.getTime()
  const next = rows
    .flatMap(({ bed, blocks }) => blocks.map((block) => ({ bed, block })))
    .filter(({ block }) => !block.done && (block.kind === 'finish' ? block.to > time : false))
    .sort((a, b) => a.block.from - b.block.from)[0]
  if (next === undefined) return null
  const { bed, block } = next
  const begun = block.from <= time
  return {
    kind: 'accent',
    title: `${begun ? 'Now' : clockText(block.from, zone)}, bed ${bed}: power float on ${block.panel.mark}`,
    text: `${block.by === 'readings' ? 'Window by readings' : 'Planned window'} ${clockText(block.from, zone)} to ${clockText(block.to, zone)}. The surface decides.`,
    panel: block.panel,
    step: 'finish',
  }
}

function lowerFirst(text: string): string {
  // A mark or symbol keeps its capital: only a plain word begins small inside a sentence.
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text
}

import type { Drawing } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import {
  type Card,
  type CardRow,
  cardOf,
  type PanelFacts,
  panelStep,
  type StepId,
  type YardFacts,
} from '@castwright/engine/steps'
import { type Asked, ceilTo, floorTo, type Source, shown, wantedOf } from '@castwright/engine/working'
import QRCode from 'qrcode'
import { Paper, type PaperSize } from '../paper/paper.ts'
import { dayAndTime, dayText } from '../paper/when.ts'

/** What every sheet is made from. */
export interface SheetInput {
  readonly plan: Plan
  readonly drawing: Drawing
  readonly facts: PanelFacts
  readonly yard: YardFacts
  readonly yardName: string
  /** IANA name of the yard's time zone. */
  readonly timezone: string
  readonly size: PaperSize
  /** UTC; also the instant at which the cards are judged. */
  readonly made: string
  /** Address of the app, without a slash at the end: the code on the sheet opens the panel there. */
  readonly address: string
}

export const VERDICT_WORDS = { pass: 'passes', fail: 'FAILS', unknown: 'not known' } as const

/** A new sheet with the title block that screen and paper share: mark, step, size, mass, cast when. */
export function openSheet(input: SheetInput, name: string, step: StepId | null): Paper {
  const { plan, facts, drawing } = input
  const revision = facts.revision ?? drawing.revision ?? 'none'
  const paper = new Paper({
    title: `${plan.mark}: ${name}`,
    size: input.size,
    made: input.made,
    foot: `${facts.job} / ${plan.mark}, drawing revision ${revision}. Printed ${dayAndTime(input.made, input.timezone)}. The record is the truth, not this print.`,
  })
  const side = 58
  const top = paper.y
  drawCode(paper, panelAddress(input), paper.left + paper.width - side, top, side)
  const wide = paper.width - side - 10
  // A long mark is set smaller; it never runs into the code.
  const size = Math.min(30, (30 * wide) / paper.letters.widthOf(plan.mark, 30, true))
  paper.textAt(plan.mark, paper.left, top + 26 - size, size, true)
  paper.textAt(
    step === null ? name : `${name}. Step: ${panelStep(step).name.toLowerCase()}`,
    paper.left,
    top + 36,
    13,
    false,
    wide,
  )
  paper.y = top + side + 4
  paper.artifact(() => paper.rule(paper.y, 1.2))
  paper.y += 2
  paper.cells([
    ['Yard and job', `${input.yardName}, ${facts.job}`],
    ['Size, m', `${metres(plan.length)} × ${metres(plan.width)}, ${shown(plan.thickness)} mm`],
    ['Mass', `${(plan.mass / 1000).toFixed(2)} t planned`],
    ['Cast', dayAndTime(facts.cast?.at, input.timezone)],
  ])
  return paper
}

export function metres(mm: number): string {
  return (mm / 1000).toFixed(2).replace(/0$/, '')
}

/** Address that the code on a sheet opens. */
export function panelAddress({ address, facts }: SheetInput): string {
  return `${address}/panel/${encodeURIComponent(facts.job)}/${encodeURIComponent(facts.mark)}`
}

export function drawCode(paper: Paper, text: string, x: number, y: number, side: number): void {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' })
  paper.code(modules, x, y, side, `Code that opens ${text}`)
}

export function cardFor(input: SheetInput, step: StepId): Card {
  return cardOf({ plan: input.plan, step, facts: input.facts, yard: input.yard, now: input.made })
}

/** Source as printed: standard, clause, and its status where it was not seen. */
export function sourceText({ standard, clause, status }: Source): string {
  const place = `${standard} ${clause}`.trim()
  return status === 'from memory' ? `${place} (from memory)` : place
}

function verdictText(row: CardRow): string {
  if (row.replaced !== undefined) return `${VERDICT_WORDS[row.verdict]}, ${row.replaced}`
  return row.decision === null
    ? VERDICT_WORDS[row.verdict]
    : `${VERDICT_WORDS[row.verdict]}, decided by ${row.decision.by.name}`
}

/** The rows of a card: what, verdict, found, wanted, where the limit is from. */
export function cardTable(paper: Paper, card: Card): void {
  paper.table(
    [
      { head: 'Check', share: 34 },
      { head: 'Verdict', share: 12 },
      { head: 'Found', share: 16 },
      { head: 'Wanted', share: 16 },
      { head: 'Where the limit is from', share: 30 },
    ],
    card.rows.map((row) => [
      row.what,
      verdictText(row),
      found(strict(row, 'demand'), row.unit, row.unknown),
      row.asked === null ? limitText(strict(row, 'limit'), row.unit) : wantedText(row.asked),
      sourceText(row.source),
    ]),
    8.5,
  )
}

/** Rows whose limit is a most: found is printed rounded up, the limit down, as everywhere on the lift card. */
const AT_MOST = /^(now:)?(lift-(peak|insert)|design-load)(:|$)/

function strict(row: CardRow, which: 'demand' | 'limit'): number | string | null {
  const value = row[which]
  if (typeof value !== 'number' || !Number.isFinite(value) || !AT_MOST.test(row.id)) return value
  const size = Math.abs(value)
  const step = size >= 100 ? 1 : size >= 10 ? 0.1 : size >= 1 ? 0.01 : 0.001
  return which === 'demand' ? ceilTo(value, step) : floorTo(value, step)
}

/** What is to be seen or measured, with room to write where there is no screen. */
export function askedTable(paper: Paper, asked: readonly Asked[]): void {
  if (asked.length === 0) return
  paper.table(
    [
      { head: 'See or measure', share: 40 },
      { head: 'Wanted', share: 20 },
      { head: 'Where the limit is from', share: 28 },
      { head: 'Found, by whom', share: 30 },
    ],
    asked.map((item) => [
      item.what,
      (item.unknown?.length ?? 0) > 0 ? 'no confirmed limit' : wantedText(item),
      sourceText(item.source),
      '',
    ]),
    8.5,
  )
}

/** What is wanted of an asked item, with the side that is good: `at least 5 °C`. */
function wantedText(asked: Asked): string {
  if (asked.kind === 'tick') return 'yes'
  // A number that is judged with others stands with what its note says of it.
  if (asked.kind === 'number' && asked.recordOnly === true) return asked.note ?? ''
  const text = limitText(wantedOf(asked), asked.unit)
  const low = asked.low ?? null
  const high = asked.high ?? null
  if (text === '' || (low !== null && high !== null)) return text
  return low !== null ? `at least ${text}` : `at most ${text}`
}

function limitText(limit: number | string | null, unit: string): string {
  if (limit === null) return ''
  if (typeof limit === 'number') return shown(limit, unit)
  return unit === '' ? plainDay(limit) : `${limit} ${unit}`
}

function found(demand: number | string | null, unit: string, unknown: readonly string[]): string {
  if (demand === null) return unknown[0] ?? ''
  return typeof demand === 'number' ? shown(demand, unit) : plainDay(demand)
}

/** A day as the yard writes it, months in letters; any other word as it is. */
function plainDay(word: string): string {
  return /^\d{4}-\d{2}-\d{2}$/.test(word) ? dayText(`${word}T12:00:00.000Z`, 'UTC') : word
}

/** Cautions of the steps that the sheet serves. */
export function cautions(paper: Paper, steps: readonly StepId[]): void {
  for (const step of steps) {
    const { order, text } = panelStep(step).caution
    paper.framed(order, text)
  }
}

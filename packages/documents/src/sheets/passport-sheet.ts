import { inOrder, volumeHere } from '@castwright/engine/pour/loads'
import { carriedFrom, type SignedDifference, STEPS, type StepFacts } from '@castwright/engine/steps'
import { shown } from '@castwright/engine/working'
import type { Paper } from '../paper/paper.ts'
import { POINTS_PER_MM } from '../paper/paper.ts'
import { dayAndTime } from '../paper/when.ts'
import { panelPicture } from '../picture/panel-picture.ts'
import { cardFor, openSheet, type SheetInput, VERDICT_WORDS } from './sheet.ts'

/** A sheet about the passport: what it proves, and how a stranger checks it. It is not the passport itself. */
export async function passportSheet(input: SheetInput): Promise<Uint8Array> {
  const { drawing, facts, plan, timezone } = input
  const paper = openSheet(input, 'Passport', null)
  paper.paragraph(
    'This sheet is about the passport; the passport is the file that goes with the panel. Whoever has the file checks it with "castwright verify" or on the page /verify of any Castwright, without the yard’s server, against the key that the yard publishes.',
  )
  paper.picture(
    panelPicture({ drawing, frame: { width: paper.width, height: 190, text: 9, paper: POINTS_PER_MM } }),
  )
  paper.heading('Steps')
  paper.table(
    [
      { head: 'Step', share: 24 },
      { head: 'State', share: 18 },
      { head: 'By', share: 26 },
      { head: 'When', share: 26 },
      { head: 'On record', share: 14, align: 'right' },
    ],
    STEPS.map((step) => {
      const state = facts.steps[step.id]
      const end = step.hold ? state.opening : state.closed
      return [
        step.hold ? `${step.name} (hold)` : step.name,
        end === null ? 'not closed' : step.hold ? 'opened' : 'closed',
        end === null ? '' : `${end.by.name}, ${end.by.role}`,
        end === null ? '' : dayAndTime(end.seen, timezone),
        String(Object.keys(state.values).length),
      ]
    }),
  )
  paper.heading('Fails and not-knowns, with who decided')
  const open = STEPS.flatMap((step) =>
    cardFor(input, step.id)
      .rows.filter((row) => row.verdict !== 'pass' && touched(facts.steps[step.id]))
      .map((row) => [
        step.name,
        row.what,
        VERDICT_WORDS[row.verdict],
        row.replaced ??
          (row.decision === null
            ? (row.unknown[0] ?? '')
            : `${row.decision.by.name}: ${row.decision.reason ?? ''}`),
      ]),
  )
  if (open.length === 0) paper.paragraph('None in the steps worked so far.')
  else {
    paper.table(
      [
        { head: 'Step', share: 16 },
        { head: 'Check', share: 30 },
        { head: 'Verdict', share: 14 },
        { head: 'Decision, or what is missing', share: 44 },
      ],
      open,
      8.5,
    )
  }
  differencesSigned(paper, input)
  loadsDelivered(paper, input)
  paper.heading('Defects')
  if (facts.defects.length === 0) paper.paragraph('None found.')
  else {
    paper.table(
      [
        { head: 'Found', share: 40 },
        { head: 'When, by', share: 28 },
        { head: 'Decided', share: 32 },
        { head: 'State', share: 12 },
      ],
      facts.defects.map((defect) => [
        defect.text,
        `${dayAndTime(defect.seen, timezone)}, ${defect.by.name}`,
        defect.disposition === null
          ? 'not decided'
          : `${defect.disposition.decision}, ${defect.disposition.by.name}: ${defect.disposition.reason ?? ''}`,
        defect.open ? 'open' : 'closed',
      ]),
      8.5,
    )
  }
  paper.paragraph(`Planned by the rules of ${plan.editions.join('; ')}. Engine ${plan.engine}.`, {
    size: 8.5,
  })
  paper.signatures(['Handed over by', 'Received by'])
  return paper.finish()
}

function loadsDelivered(paper: Paper, input: SheetInput): void {
  const rows = deliveredRows(input)
  if (rows.length === 0) return
  paper.heading('Concrete delivered')
  paper.table(
    [
      { head: 'Load', share: 14 },
      { head: 'Mix', share: 10 },
      { head: 'm³', share: 9, align: 'right' },
      { head: 'Discharged', share: 18 },
      { head: 'Slump, mm', share: 12, align: 'right' },
      { head: 'Not passed', share: 28 },
      { head: 'Decided', share: 34 },
    ],
    rows,
    8.5,
  )
}

/** Truck loads of the pour, what was found outside their limits and what was decided about them: a row each. */
export function deliveredRows(input: SheetInput): string[][] {
  const { facts, timezone } = input
  if (facts.dockets.length === 0) return []
  const { rows } = cardFor(input, 'deliver')
  return inOrder(facts.dockets).map((load) => {
    const { number, mix, discharged, slump, decision } = load
    const against = rows.filter(({ id, verdict }) => id.startsWith(`load:${number}:`) && verdict !== 'pass')
    const volume = volumeHere(load)
    return [
      number,
      mix ?? 'not known',
      volume === null ? 'not known' : shown(volume),
      discharged === undefined ? 'not known' : dayAndTime(discharged, timezone),
      slump === undefined ? 'not known' : String(slump),
      against
        .map(({ what, verdict }) => `${what.replace(`Load ${number}: `, '')} ${VERDICT_WORDS[verdict]}`)
        .join('; '),
      decision === null
        ? ''
        : `${decision.decision === 'accept' ? 'Accepted' : 'Sent back'}, ${decision.by.name}: ${decision.reason ?? ''}`,
    ]
  })
}

function differencesSigned(paper: Paper, input: SheetInput): void {
  const rows = differenceRows(input)
  paper.heading('Differences signed')
  if (rows.length === 0) {
    paper.paragraph('None: no result of the lift was set aside for the lifting design.')
    return
  }
  differencesTable(paper, rows)
}

/** Results of ours that an engineer signed, a row each. */
export function differencesTable(paper: Paper, rows: readonly (readonly string[])[]): void {
  paper.table(
    [
      { head: 'Our result', share: 28 },
      { head: 'As it was signed', share: 24 },
      { head: 'Lifting design', share: 18 },
      { head: 'Signed by, when', share: 22 },
      { head: 'Reason', share: 32 },
    ],
    rows,
    8.5,
  )
}

/** Our results of the lift that failed or were not known, and that an engineer signed to let the lifting design govern: a row each. */
export function differenceRows({ facts, plan, timezone }: SheetInput): string[][] {
  return carriedFrom('strip', facts, plan).flatMap(({ what, signed }) =>
    'reference' in signed
      ? [
          [
            what,
            signedFor(signed),
            signed.reference,
            `${signed.by.name}, ${signed.by.role}, ${dayAndTime(signed.seen, timezone)}, revision ${signed.revision ?? 'none'}`,
            signed.reason ?? '',
          ],
        ]
      : [],
  )
}

function signedFor({ verdict, demand, limit, unit, missing }: SignedDifference): string {
  if (verdict === 'unknown') return `not known: ${missing.join('; ') || 'no value'}`
  const figure = (value: number | null): string => (value === null ? 'no value' : shown(value, unit))
  return `fails: ${figure(demand)}, limit ${figure(limit)}`
}

function touched(state: StepFacts): boolean {
  return Object.keys(state.values).length > 0 || state.opening !== null || state.closed !== null
}

import { MASS_ALLOWANCE } from '@castwright/engine/lift'
import { ceilTo, shown } from '@castwright/engine/working'
import { type Paper, POINTS_PER_MM } from '../paper/paper.ts'
import { hangingPicture } from '../picture/hanging-picture.ts'
import { stressPicture } from '../picture/stress-picture.ts'
import { stripPicture } from '../picture/strip-picture.ts'
import { firstField } from './lift-field.ts'
import { hoursPart } from './lift-hours-part.ts'
import {
  factorsTable,
  leastAtLift,
  leastTable,
  picksTable,
  riggingTable,
  stagesTable,
} from './lift-tables.ts'
import { differenceRows, differencesTable } from './passport-sheet.ts'
import { cardFor, cardTable, cautions, openSheet, type SheetInput } from './sheet.ts'

/** What must be on record before the first lift, and what each lift of the panel rests on. */
export async function liftCard(input: SheetInput): Promise<Uint8Array> {
  const { plan, facts } = input
  const { lift } = plan
  const card = cardFor(input, 'strip')
  const paper = openSheet(input, 'Lift card', 'strip')
  const least = leastAtLift(plan)
  paper.cells([
    [
      'Mass, planned; with its tolerance',
      `${tonnes(lift.mass)} t; ${tonnes(lift.hookMass)} t for crane and gear`,
    ],
    [
      'Centre of gravity from the left and below, mm',
      lift.centre.map((value) => Math.round(value)).join(', '),
    ],
    ['Rigging', lift.rigging ?? 'not given'],
    ['Least strength at the first lift', least.text],
  ])
  paper.paragraph(
    `${least.from} The mass with its tolerance is the planned one plus ${Math.round(100 * MASS_ALLOWANCE)} %; weigh where it matters.`,
  )
  panelPart(paper, input)
  paper.heading('Picks')
  picksTable(paper, input)
  riggingPart(paper, input)
  paper.heading('Every stage, at the strength wanted')
  stagesTable(paper, input)
  paper.paragraph(
    'Tension is held against the family’s limit for the way it was found: at a pick averaged over a strip, elsewhere the panel’s own value, at a re-entrant corner averaged or carried by the bars across it. Loads and tensions have the factor of the stage in them.',
    { size: 8.5 },
  )
  factorsTable(paper, input)
  paper.heading('Least strength for each stage')
  leastTable(paper, input)
  hoursPart(paper, input)
  designPart(paper, input)
  paper.heading('What is still open before this lift?')
  paper.paragraph(card.answer, { bold: true })
  cardTable(paper, card)
  if (lift.unknown.length > 0) {
    paper.heading('Not known')
    paper.paragraph(`${lift.unknown.join('. ')}.`, { size: 8.5 })
  }
  assumedPart(paper, input)
  cautions(paper, ['strip'])
  paper.paragraph(`Planned by the rules of ${plan.editions.join('; ')}. Engine ${plan.engine}.`, {
    size: 8.5,
  })
  paper.signatures([
    facts.design === null ? 'Engineer, who confirms the lifting design' : 'Engineer, where asked for',
    'Lead, who decides',
    'Lift supervisor',
    'Crane driver',
  ])
  return paper.finish()
}

function tonnes(kilograms: number): string {
  return ceilTo(kilograms / 1000, 0.01).toFixed(2)
}

/** The panel as it leaves the mould: tension, supports with loads, picks measured from the edges. */
function panelPart(paper: Paper, input: SheetInput): void {
  const { plan, drawing } = input
  const stage = plan.lift.stages.find(({ id }) => id === 'release')
  const frame = { width: paper.width, height: 290, text: 9, paper: POINTS_PER_MM }
  if (stage === undefined || stage.supports.length === 0) {
    paper.picture(stripPicture({ drawing, lift: plan.lift, frame: { ...frame, height: 230 } }))
    return
  }
  paper.heading(`${stage.name}, ${stage.how}`)
  paper.picture(
    stressPicture({
      drawing,
      supports: stage.supports,
      peak: stage.peak,
      field: firstField(input),
      name: `${stage.name}, ${stage.how}`,
      unknown: stage.unknown,
      frame,
    }),
  )
}

/** How it hangs: flat off the mould, and upright where it is turned. */
function riggingPart(paper: Paper, input: SheetInput): void {
  const { plan, drawing } = input
  const hung = plan.lift.stages.filter((stage) => stage.hung !== undefined)
  if (hung.length === 0) return
  paper.heading('Rigging')
  const seen = new Set<string>()
  for (const stage of hung) {
    if (stage.hung === undefined || stage.hung === null || seen.has(stage.hung.hang)) continue
    // Of what is turned, the upright end of the way is drawn.
    if (stage.id === 'turn' && hung.some(({ id }) => id === 'hang')) continue
    seen.add(stage.hung.hang)
    paper.paragraph(`${stage.name}:`, { bold: true })
    paper.picture(
      hangingPicture({
        drawing,
        rigged: stage.hung.rigged,
        hang: stage.hung.hang,
        rigging: stage.hung.rigging,
        centre: plan.lift.centre,
        frame: { width: paper.width, height: 250, text: 9, paper: POINTS_PER_MM },
      }),
    )
  }
  riggingTable(paper, input)
}

function designPart(paper: Paper, input: SheetInput): void {
  const { drawing, facts } = input
  const design = drawing.lifting
  paper.heading('Lifting design and differences')
  paper.paragraph(
    design === undefined
      ? 'The drawing carries no lifting design, so this lift stays shut.'
      : `By the drawing’s lifting design (${design.reference}, ${design.by}): at least ${shown(design.strength, 'MPa')} at the lift, at most ${shown(design.load, 'kN')} on any one insert. ${
          facts.design === null
            ? 'Not yet confirmed by an engineer.'
            : `Confirmed by ${facts.design.by.name} for revision ${facts.design.revision ?? 'none'}.`
        } Our own results stand beside it; the stricter governs.`,
  )
  const rows = differenceRows(input)
  if (rows.length === 0) paper.paragraph('Differences signed by an engineer: none.')
  else differencesTable(paper, rows)
}

function assumedPart(paper: Paper, { plan }: SheetInput): void {
  const assumed = [...(plan.lift.assumed ?? []), ...plan.lift.stages.flatMap((stage) => stage.assumed)]
  const lines = [
    ...new Set(
      assumed.map(
        ({ field, value, unit, why }) =>
          `${field}: ${typeof value === 'number' ? shown(value, unit) : value} (${why})`,
      ),
    ),
  ]
  if (lines.length === 0) return
  paper.heading('Assumed, because nobody gave it')
  paper.paragraph(`${lines.join('. ')}.`, { size: 8.5 })
}

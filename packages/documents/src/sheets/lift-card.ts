import { MASS_ALLOWANCE } from '@castwright/engine/lift'
import { ceilTo, shown } from '@castwright/engine/working'
import { type Paper, POINTS_PER_MM } from '../paper/paper.ts'
import { hangingPicture } from '../picture/hanging-picture.ts'
import type { Picture } from '../picture/picture.ts'
import { sketchOf, stagesPicture } from '../picture/stages-picture.ts'
import { stressPicture } from '../picture/stress-picture.ts'
import { stripPicture } from '../picture/strip-picture.ts'
import { stageField } from './lift-field.ts'
import { hoursPart } from './lift-hours-part.ts'
import {
  factorsTable,
  leastAtLift,
  leastTable,
  picksTable,
  riggingTable,
  stagesTable,
  stageWords,
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
  paper.need(90)
  paper.heading('Picks')
  picksTable(paper, input)
  riggingPart(paper, input)
  const stages = stagesPicture({
    stages: plan.lift.stages.map((stage) => ({
      sketch: sketchOf(stage),
      name: stage.name,
      words: stageWords(plan.checks, stage.id),
    })),
    frame: { width: paper.width, height: 200, text: 8.5, paper: POINTS_PER_MM },
  })
  paper.need(stages.height + 120)
  paper.heading('Every stage, at the strength wanted')
  if (plan.lift.stages.length > 0) paper.picture(stages)
  stagesTable(paper, input)
  paper.paragraph(
    'Tension is held against the family’s limit for the way it was found: at a pick averaged over a strip, elsewhere the panel’s own value, at a re-entrant corner averaged or carried by the bars across it. Loads and tensions have the factor of the stage in them.',
    { size: 8.5 },
  )
  factorsTable(paper, input)
  paper.need(90)
  paper.heading('Least strength for each stage')
  leastTable(paper, input)
  hoursPart(paper, input)
  designPart(paper, input)
  paper.need(110)
  paper.heading('What is still open before this lift?')
  paper.paragraph(card.answer, { bold: true })
  cardTable(paper, card)
  if (lift.unknown.length > 0) {
    paper.heading('Not known')
    paper.paragraph(`${lift.unknown.join('. ')}.`, { size: 8.5 })
  }
  assumedPart(paper, input)
  // Nobody signs a page without the caution on it.
  paper.need(170)
  cautions(paper, ['strip'])
  paper.paragraph(`Planned by the rules of ${plan.editions.join('; ')}. Engine ${plan.engine}.`, {
    size: 8.5,
  })
  paper.signatures([
    facts.design === null ? 'Engineer of the lifting design' : 'Engineer, where asked for',
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
  const frame = { width: paper.width, height: isTall(input) ? 430 : 260, text: 9, paper: POINTS_PER_MM }
  if (stage === undefined || plan.lift.inserts.length === 0) {
    paper.picture(stripPicture({ drawing, lift: plan.lift, frame: { ...frame, height: 230 } }))
    return
  }
  const name = `${stage.name}, ${stage.how}`
  const picture = stressPicture({
    drawing,
    // Where nothing is known of the stage the picks are measured all the same.
    supports:
      stage.supports.length > 0
        ? stage.supports
        : plan.lift.inserts.map(({ mark, at }) => ({ mark, kind: 'insert', at: [at], load: null })),
    peak: stage.peak,
    field: stageField(input, 'release'),
    name,
    unknown: stage.unknown,
    frame,
  })
  paper.need(picture.height + HEADED)
  paper.heading(name)
  paper.picture(picture)
  keyLines(paper, picture)
}

/** What the lines of a picture mean, under it. */
function keyLines(paper: Paper, { key }: Picture): void {
  const lines = key.map(({ text }) => text.charAt(0).toUpperCase() + text.slice(1))
  if (lines.length > 0) paper.paragraph(`${lines.join('. ')}.`, { size: 8.5 })
}

/** A panel drawn upright takes more of the page, or nothing of it could be read. */
function isTall({ plan }: SheetInput): boolean {
  return plan.width > plan.length
}

/** A heading, a line and a scale with their picture, points. */
const HEADED = 90

/** How it hangs: flat off the mould, and upright where it is turned. */
function riggingPart(paper: Paper, input: SheetInput): void {
  const { plan, drawing } = input
  const hung = plan.lift.stages.filter((stage) => stage.hung !== undefined)
  if (hung.length === 0) return
  const seen = new Set<string>()
  for (const { id, name, hung: own } of hung) {
    if (own === undefined || own === null || seen.has(own.hang)) continue
    // Of what is turned, the upright end of the way is drawn.
    if (own.hang === 'row' && id !== 'hang' && hung.some((stage) => stage.id === 'hang')) continue
    const picture = hangingPicture({
      drawing,
      rigged: own.rigged,
      hang: own.hang,
      rigging: own.rigging,
      centre: plan.lift.centre,
      frame: { width: paper.width, height: isTall(input) ? 400 : 215, text: 9, paper: POINTS_PER_MM },
    })
    paper.need(picture.height + HEADED)
    if (seen.size === 0) paper.heading('Rigging')
    paper.paragraph(`${name}:`, { bold: true })
    paper.picture(picture)
    keyLines(paper, picture)
    seen.add(own.hang)
  }
  if (seen.size === 0) {
    paper.need(130)
    paper.heading('Rigging')
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

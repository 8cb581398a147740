import { mouldSurvey } from '@castwright/engine/mould'
import type { Ring } from '@castwright/engine/panel'
import { mouldNow } from '@castwright/engine/steps'
import { ceilTo, shown } from '@castwright/engine/working'
import { type Paper, POINTS_PER_MM, pictureRoom } from '../paper/paper.ts'
import { lengthText } from '../picture/chain.ts'
import { formSectionPicture } from '../picture/form-section-picture.ts'
import { mouldMeasuredPicture } from '../picture/mould-measured-picture.ts'
import { mouldPicture, spansText } from '../picture/mould-picture.ts'
import { agentText, alikeSides, PROP_RULE_WORDS } from '../picture/mould-words.ts'
import type { Picture } from '../picture/picture.ts'
import { railBowPicture } from '../picture/rail-bow-picture.ts'
import { holdDownPart } from './hold-down-part.ts'
import {
  askedTable,
  cardFor,
  cardTable,
  cautions,
  openSheet,
  type SheetInput,
  sourceText,
  VERDICT_WORDS,
} from './sheet.ts'

/** What the mould gang needs: forms and props by side, the load on them, what to tape, release agent. */
export async function mouldCard(input: SheetInput): Promise<Uint8Array> {
  const { plan, drawing, facts, yard } = input
  const { mould } = plan
  const paper = openSheet(input, 'Mould card', 'mould')
  paper.cells([
    ['Side form', mould.form ?? 'none chosen'],
    ['Props', mould.sides.length === 0 ? 'not known' : String(mould.props.length)],
    ['Thrust', mould.thrust === null ? 'not known' : `${up(mould.thrust, 0.001)} kN/m`],
    ['To oil', shown(mould.oiledArea, 'm²')],
  ])
  const frame = (height: number) => ({ width: paper.width, height, text: 9, paper: POINTS_PER_MM })
  paper.picture(mouldPicture({ drawing, mould, frame: frame(250) }))
  sidesPart(paper, input)

  const height = yard.yard?.forms?.find(({ mark }) => mark === mould.form)?.height ?? null
  const section = formSectionPicture({
    mark: plan.mark,
    thickness: plan.thickness,
    height,
    mould,
    frame: frame(150),
  })
  paper.heading('Load on the side forms', 2, section === null ? 30 : pictureRoom(section))
  if (section === null) paper.paragraph('Not known.')
  else keyedPicture(paper, section)
  const rail = railBowPicture({ mark: plan.mark, mould, frame: frame(110) })
  if (rail !== null) keyedPicture(paper, rail)
  checksPart(paper, input)

  paper.heading('Release agent')
  if (mould.agents.length === 0) paper.paragraph('Not known: no bed of the yard says its mould face.')
  for (const face of mould.agents)
    paper.paragraph([agentText(face), ...face.against.map((why) => `${why}.`)].join(' '))

  holdDownPart(paper, input)
  tapePart(paper, input)
  const { values } = facts.steps.mould
  const open = plan.toRecord.filter(
    ({ step, id }) => step === 'mould' && values[id]?.revision !== facts.revision,
  )
  if (open.length > 0) {
    paper.heading('To see and measure')
    askedTable(paper, open)
  }
  if (Object.keys(values).length > 0) {
    paper.heading('On record')
    const card = cardFor(input, 'mould')
    cardTable(paper, {
      ...card,
      rows: card.rows.filter(({ from, recorded }) => from === 'record' || recorded !== null),
    })
  }
  cautions(paper, ['mould'])
  paper.signatures(['Set up by', 'Taped by', 'Lead'])
  return paper.finish()
}

/** A picture with what its lines mean: paper has no samples beside them. */
function keyedPicture(paper: Paper, picture: Picture): void {
  paper.picture(picture)
  paper.paragraph(picture.key.map(({ text }) => sentence(text)).join(' '), { size: 8.5 })
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`
}

/** Loads and bows are printed rounded up. */
function up(value: number, step: number): string {
  return String(Number(ceilTo(value, step).toPrecision(6)))
}

function sidesPart(paper: Paper, { plan }: SheetInput): void {
  const { mould } = plan
  if (mould.sides.length === 0) {
    paper.paragraph(`Props: not known. ${mould.unknown.join('; ')}.`)
    return
  }
  paper.table(
    [
      { head: 'Side', share: 16 },
      { head: 'Length, mm', share: 14, align: 'right' },
      { head: 'Props, mm apart', share: 18 },
      { head: 'Bow, mm', share: 11, align: 'right' },
      { head: 'On one prop, kN', share: 14, align: 'right' },
      { head: 'On one brace, kN', share: 14, align: 'right' },
      { head: 'Spacing', share: 30 },
    ],
    alikeSides(mould.sides).map(({ numbers, side }) => [
      numbers.join(', '),
      lengthText(side.length),
      spansText(side.spans, side.spacing),
      up(side.bow, 0.01),
      up(side.push, 0.01),
      up(side.brace, 0.01),
      PROP_RULE_WORDS[side.rule],
    ]),
    8.5,
  )
  paper.paragraph(
    'Props at both ends of each side and evenly between. Full head of fresh concrete on the thickness of the panel; a screed or a person leaning on the form is not in it, nor what heat, oil and dirt take from a magnet.',
    { size: 8.5 },
  )
}

function checksPart(paper: Paper, { plan }: SheetInput): void {
  const checks = plan.checks.filter(({ step }) => step === 'mould')
  paper.table(
    [
      { head: 'Check', share: 38 },
      { head: 'Found', share: 16, align: 'right' },
      { head: 'Limit', share: 16, align: 'right' },
      { head: 'Verdict', share: 14 },
      { head: 'Where the limit is from', share: 32 },
    ],
    checks.map(({ what, demand, limit, unit, verdict, source, unknown }) => [
      what,
      demand === null ? (unknown?.[0] ?? 'not known') : shown(demand, unit),
      limit === null ? '' : shown(limit, unit),
      VERDICT_WORDS[verdict],
      sourceText(source),
    ]),
    8.5,
  )
}

/** The lengths to tape, with room to write; what is on record is printed. */
function tapePart(paper: Paper, { plan, drawing, facts, yard }: SheetInput): void {
  const survey = mouldSurvey(drawing.outline as unknown as Ring)
  const now = mouldNow({ plan, facts, yard })
  const { values } = facts.steps.mould
  const found = (id: string): unknown =>
    values[id]?.revision === facts.revision ? values[id]?.value : undefined
  const taped = new Set(survey.lengths.flatMap(({ id }) => (found(id) === undefined ? [] : [id])))
  const shape = now?.shape ?? null
  const picture = mouldMeasuredPicture({
    drawing,
    survey,
    taped,
    shape,
    frame: { width: paper.width, height: 180, text: 9, paper: POINTS_PER_MM },
  })
  const title = shape === null ? 'Lengths that give the shape of the mould' : 'The mould as measured'
  paper.heading(title, 2, pictureRoom(picture))
  keyedPicture(paper, picture)
  for (const check of now === null ? [] : [now.readings, now.corners, now.square])
    if (check?.note !== undefined && check.note !== '') paper.paragraph(check.note)
  if (shape === null)
    paper.paragraph(
      'Tape every side and diagonal straight from corner to corner: one more than the shape needs, so that a misread tape shows.',
    )
}

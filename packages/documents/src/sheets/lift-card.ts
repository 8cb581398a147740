import { ceilTo, floorTo, shown } from '@castwright/engine/working'
import { POINTS_PER_MM } from '../paper/paper.ts'
import { stripPicture } from '../picture/strip-picture.ts'
import { cardFor, cardTable, cautions, openSheet, type SheetInput } from './sheet.ts'

/** What must be on record before the first lift, and the figures of that lift. */
export async function liftCard(input: SheetInput): Promise<Uint8Array> {
  const { plan, drawing, facts } = input
  const { lift } = plan
  const card = cardFor(input, 'strip')
  const paper = openSheet(input, 'Lift card', 'strip')
  paper.cells([
    ['Mass for crane and gear', `${(lift.hookMass / 1000).toFixed(2)} t`],
    [
      'Centre of gravity from the left and below, mm',
      lift.centre.map((value) => Math.round(value)).join(', '),
    ],
    ['Rigging', lift.rigging ?? 'not given'],
    ['Slings from the vertical', lift.angle === null ? 'not known' : `${shown(lift.angle)}°`],
  ])
  paper.picture(
    stripPicture({
      drawing,
      lift,
      frame: { width: paper.width, height: 230, text: 9, paper: POINTS_PER_MM },
    }),
  )
  paper.table(
    [
      { head: 'Insert', share: 10 },
      { head: 'From the left, mm', share: 16, align: 'right' },
      { head: 'From below, mm', share: 16, align: 'right' },
      { head: 'Kind', share: 18 },
      { head: 'Share of own weight, kN', share: 20, align: 'right' },
      { head: 'Maker’s rated load, kN', share: 20, align: 'right' },
    ],
    lift.inserts.map((insert) => [
      insert.mark,
      String(Math.round(insert.at[0])),
      String(Math.round(insert.at[1])),
      insert.type === null ? insert.kind : `${insert.kind}, ${insert.type}`,
      // Loads are printed rounded up, ratings down, as on the picture.
      insert.load === null ? 'not known' : ceilTo(insert.load, 0.1).toFixed(1),
      insert.rated === null ? 'not known' : floorTo(insert.rated, 0.1).toFixed(1),
    ]),
  )
  const design = drawing.lifting
  paper.paragraph(
    design === undefined
      ? 'The drawing carries no lifting design. Peak tension and insert loads are not known, so this lift stays shut.'
      : `By the drawing’s lifting design (${design.reference}, ${design.by}): at least ${shown(design.strength, 'MPa')} at the lift, at most ${shown(design.load, 'kN')} on any one insert. ` +
          (facts.design === null
            ? 'Not yet confirmed by an engineer.'
            : `Confirmed by ${facts.design.by.name} for revision ${facts.design.revision ?? 'none'}.`),
  )
  paper.heading('What is still open before this lift?')
  paper.paragraph(card.answer, { bold: true })
  cardTable(paper, card)
  cautions(paper, ['strip'])
  paper.signatures(['Engineer, where asked for', 'Lead, who decides', 'Lift supervisor', 'Crane driver'])
  return paper.finish()
}

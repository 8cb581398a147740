import { ceilTo, shown } from '@castwright/engine/working'
import { type Paper, POINTS_PER_MM, pictureRoom } from '../paper/paper.ts'
import { setPicture } from '../picture/set-picture.ts'
import { voidSection } from '../picture/void-section.ts'
import type { SheetInput } from './sheet.ts'

const NOT_KNOWN = 'not known'

/** Loads are printed rounded up. */
function up(value: number): string {
  return ceilTo(value, 0.01).toFixed(2)
}

/** Void formers and ducts with what holds them down, beside the pour that lifts them; nothing for a full panel. */
export function holdDownPart(paper: Paper, { plan, drawing }: SheetInput): void {
  const { mould } = plan
  const { voids, ducts } = mould
  if (voids.length === 0 && ducts.length === 0) return
  const above = setPicture({
    drawing,
    mould: { ...mould, chairs: [] },
    frame: { width: paper.width, height: 220, text: 9, paper: POINTS_PER_MM },
  })
  paper.heading('Void formers and ducts', 2, pictureRoom(above))
  paper.picture(above)
  for (const held of voids.slice(0, 2)) {
    paper.picture(
      voidSection({
        drawing,
        held,
        frame: { width: paper.width, height: 120, text: 9, paper: POINTS_PER_MM },
      }),
    )
  }
  paper.table(
    [
      { head: 'Mark', share: 2 },
      { head: 'Uplift', share: 2, align: 'right' },
      { head: 'To hold', share: 2, align: 'right' },
      { head: 'Straps or ties', share: 2, align: 'right' },
      { head: 'Apart, mm', share: 2, align: 'right' },
      { head: 'On each, kN', share: 2, align: 'right' },
      { head: 'First layer to, mm', share: 2, align: 'right' },
    ],
    [
      ...voids.map(({ mark, floats, gross, hold, straps, spacing, load, firstLayer }) => [
        `void former ${mark}`,
        floats ? `${up(gross)} kN` : 'sealed to the bed',
        floats ? `${up(hold)} kN` : 'none',
        floats ? (straps === null ? NOT_KNOWN : String(straps)) : 'none',
        spacing === null ? '' : String(Math.floor(spacing)),
        load === null ? '' : up(load),
        floats ? shown(firstLayer) : '',
      ]),
      ...ducts.map(({ mark, gross, hold, ties, spacing, load }) => [
        `duct ${mark}`,
        `${up(gross)} kN/m`,
        `${up(hold)} kN/m`,
        ties === null ? NOT_KNOWN : String(ties),
        spacing === null ? '' : String(Math.floor(spacing)),
        load === null ? '' : up(load),
        '',
      ]),
    ],
  )
  paper.paragraph(
    'Uplift of fresh concrete as a fluid; to hold: uplift less own weight, with its factor. The peak comes as the concrete just covers a former: two layers, both sides evenly; the line across a section is the top of the first. What the straps are fixed to is for the yard to see.',
  )
}

import { shown } from '@castwright/engine/working'
import { Paper, POINTS_PER_MM } from '../paper/paper.ts'
import { shortDay } from '../paper/when.ts'
import { drawCode, metres, panelAddress, type SheetInput } from './sheet.ts'

const WIDE = 105 * POINTS_PER_MM
const HIGH = 74 * POINTS_PER_MM

/** The label that is fixed to the panel: 105 × 74 mm. */
export async function label(input: SheetInput): Promise<Uint8Array> {
  const { plan, facts, drawing } = input
  const paper = new Paper({
    title: `${plan.mark}: label`,
    size: input.size,
    made: input.made,
    foot: '',
    page: [WIDE, HIGH],
    margin: 12,
  })
  const side = 96
  const wide = paper.width - side - 8
  drawCode(paper, panelAddress(input), paper.left + paper.width - side, paper.y, side)
  const size = Math.min(40, (wide / paper.letters.widthOf(plan.mark, 40, true)) * 40)
  paper.textAt(plan.mark, paper.left, 12, size, true)
  paper.textAt(`${input.yardName}\n${facts.job}`, paper.left, 62, 11, false, wide)
  paper.y = 112
  paper.cells([
    ['Mass', `${(plan.mass / 1000).toFixed(2)} t`],
    ['Size, m', `${metres(plan.length)} × ${metres(plan.width)}`],
    ['Cast', shortDay(facts.cast?.at, input.timezone)],
  ])
  const design =
    drawing.lifting === undefined
      ? 'no lifting design on the drawing'
      : `least ${shown(drawing.lifting.strength, 'MPa')} at the lift`
  paper.textAt(
    `Drawing revision ${facts.revision ?? drawing.revision ?? 'none'}; ${design}. Planned mass; weigh where it matters. Lift only by the lifting plan.`,
    paper.left,
    HIGH - 40,
    8.5,
    false,
    paper.width,
  )
  return paper.finish()
}

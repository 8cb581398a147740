import type { ScheduledBar } from '@castwright/engine/steel'
import { shown } from '@castwright/engine/working'
import { drawPicture } from '../paper/draw-picture.ts'
import { type Paper, POINTS_PER_MM } from '../paper/paper.ts'
import { shapePicture } from '../picture/steel-layers-shape.ts'
import { steelPicture } from '../picture/steel-picture.ts'
import { askedTable, cautions, openSheet, type SheetInput } from './sheet.ts'

/** Every bar of the panel: what to cut, how to bend it, where it laps. */
export async function steelSchedule(input: SheetInput): Promise<Uint8Array> {
  const { plan, drawing } = input
  const { steel } = plan
  const paper = openSheet(input, 'Steel schedule', 'cut-bend')
  paper.picture(
    steelPicture({
      drawing,
      steel,
      frame: { width: paper.width, height: 230, text: 9, paper: POINTS_PER_MM },
    }),
  )
  paper.table(
    [
      { head: 'Mark', share: 14 },
      { head: 'Ø, mm', share: 8, align: 'right' },
      { head: 'Grade', share: 10 },
      { head: 'Count', share: 8, align: 'right' },
      { head: 'Cut length, mm', share: 13, align: 'right' },
      { head: 'Shape', share: 12 },
      { head: 'Legs outside, mm', share: 20 },
      { head: 'Inside of bend, mm', share: 14, align: 'right' },
      { head: 'Mass, kg', share: 11, align: 'right' },
    ],
    steel.bars.map((bar) => [
      bar.mark,
      shown(bar.diameter),
      bar.grade,
      String(bar.count),
      String(Math.round(bar.cutLength)),
      bar.shape,
      bar.legs.map((leg) => Math.round(leg)).join(' + '),
      bar.turns.length === 0 ? '' : shown(bar.inside),
      bar.mass.toFixed(1),
    ]),
    8.5,
  )
  bentBars(paper, steel.bars)
  const laps = steel.laps.length === 0 ? 'No laps.' : `${steel.laps.length} laps, ${lapLengths(input)}.`
  paper.paragraph(
    `Steel ${shown(steel.mass, 'kg')}. ${laps} Crossings to tie: ${shown(steel.ties)}. Tying wire ${shown(steel.wire, 'kg')}. Cut lengths are along the centreline, rounded to 1 mm here.`,
  )
  for (const gap of steel.unknown) paper.paragraph(`Not known: ${gap}.`)
  paper.heading('To see and measure')
  askedTable(
    paper,
    plan.toRecord.filter(({ step }) => step === 'steel-in' || step === 'cut-bend' || step === 'cage'),
  )
  cautions(paper, ['cut-bend', 'cage'])
  paper.signatures(['Cut and bent by', 'Cage checked by'])
  return paper.finish()
}

const SHAPE = { across: 3, height: 92, gap: 10 } as const

/** Each bent bar of the schedule as it is bent, three across, outside dimensions beside its legs. */
function bentBars(paper: Paper, bars: readonly ScheduledBar[]): void {
  const bent = bars.filter(({ turns }) => turns.length > 0)
  if (bent.length === 0) return
  paper.gap(6)
  paper.need(SHAPE.height + 60)
  paper.heading('Bent bars, outside dimensions')
  const wide = (paper.width - (SHAPE.across - 1) * SHAPE.gap) / SHAPE.across
  for (let i = 0; i < bent.length; i += SHAPE.across) {
    paper.need(SHAPE.height + 14)
    const top = paper.y
    bent.slice(i, i + SHAPE.across).forEach((bar, column) => {
      const x = paper.left + column * (wide + SHAPE.gap)
      paper.textAt(`${bar.mark}: ${bar.shape}, ${shown(bar.inside, 'mm')} inside`, x, top, 8.5, true, wide)
      const picture = shapePicture({
        bar,
        frame: { width: wide, height: SHAPE.height - 14, text: 8, paper: 1 },
      })
      const figure = paper.pdf.struct('Figure', { alt: picture.title }, () =>
        drawPicture(paper, picture, [x, top + 14]),
      )
      paper.root.add(figure)
      figure.end()
    })
    paper.y = top + SHAPE.height + SHAPE.gap
  }
}

/** The lap lengths that occur, shortest first. */
function lapLengths({ plan }: SheetInput): string {
  const lengths = [
    ...new Set(plan.steel.laps.map((lap) => `${shown(lap.length)} mm on ${shown(lap.diameter)} mm bars`)),
  ]
  return lengths.join(', ')
}

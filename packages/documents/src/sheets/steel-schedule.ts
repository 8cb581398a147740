import { shown } from '@castwright/engine/working'
import { POINTS_PER_MM } from '../paper/paper.ts'
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

/** The lap lengths that occur, shortest first. */
function lapLengths({ plan }: SheetInput): string {
  const lengths = [
    ...new Set(plan.steel.laps.map((lap) => `${shown(lap.length)} mm on ${shown(lap.diameter)} mm bars`)),
  ]
  return lengths.join(', ')
}

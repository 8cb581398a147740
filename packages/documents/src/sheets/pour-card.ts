import { tightText } from '@castwright/engine/pour'
import { shown } from '@castwright/engine/working'
import { POINTS_PER_MM } from '../paper/paper.ts'
import { placePicture } from '../picture/place-picture.ts'
import { holdDownPart } from './hold-down-part.ts'
import { askedTable, cautions, openSheet, type SheetInput } from './sheet.ts'

/** At most so many insertions with little room stand on the sheet. */
const MOST_TIGHT = 12

/** Where the chute stands and which heads work, told as recorded or assumed. */
function standText({ pour }: SheetInput['plan']): string {
  const [x, y] = pour.chute
  const place = `${shown(Math.round(x))}, ${shown(Math.round(y))} mm`
  const stand =
    pour.stand === null ? `Chute assumed at the corner ${place}.` : `Chute at ${place}, as recorded.`
  return `${stand} Heads at work: ${pour.heads.join(', ')}${pour.assumed.some(({ field }) => field === 'vibrators') ? ', assumed' : ', as recorded'}.`
}

/** Under a former the pattern reaches nothing from above. */
function underFormers({ voids = [] }: SheetInput['drawing']): string {
  return voids.some(({ above }) => above > 0)
    ? ' Concrete under void formers is vibrated from their sides before it is covered.'
    : ''
}

/** What the floor needs from the truck's arrival to the covered panel. */
export async function pourCard(input: SheetInput): Promise<Uint8Array> {
  const { plan, drawing } = input
  const { pour } = plan
  const paper = openSheet(input, 'Pour card', 'place')
  paper.cells([
    ['Concrete in the panel', shown(pour.netVolume, 'm³')],
    ['To order', shown(pour.orderVolume, 'm³')],
    ['Mix', pour.mix ?? 'not known'],
    ['Strength class', shown(drawing.concrete.strength, 'MPa')],
  ])
  paper.picture(
    placePicture({
      drawing,
      pour,
      frame: { width: paper.width, height: 250, text: 9, paper: POINTS_PER_MM },
    }),
  )
  const pattern = pour.compaction
  if (pattern === null) {
    paper.paragraph('Vibration pattern: not known. The yard lists no vibrator.')
  } else {
    const action =
      pattern.action === null ? '' : `, from a radius of action of ${shown(pattern.action, 'mm')}`
    paper.paragraph(
      `${pattern.insertions.length} insertions in the order of the line, planned on a radius of ${shown(pattern.radius, 'mm')}${action}. About ${shown(pattern.minutes)} minutes. ` +
        (pattern.uncovered === 0
          ? `Every point of the concrete, seen from above, is within reach of one of them.${underFormers(drawing)}`
          : `Not reached: ${shown(pattern.uncovered, 'm²')}.`),
    )
    paper.paragraph(standText(plan))
    if (pour.tight.length > 0)
      paper.paragraph(
        `Little room: ${pour.tight.slice(0, MOST_TIGHT).map(tightText).join('; ')}${pour.tight.length > MOST_TIGHT ? `; ${pour.tight.length - MOST_TIGHT} more in the pour room` : ''}.`,
      )
    if (pattern.zones.length > 0) {
      paper.table(
        [
          { head: 'Zone, in order', share: 1 },
          { head: 'Concrete, m³', share: 1, align: 'right' },
          { head: 'Insertions', share: 1, align: 'right' },
          { head: 'Minutes', share: 1, align: 'right' },
          { head: 'Done, by whom', share: 2 },
        ],
        pattern.zones.map((zone) => [
          String(zone.order),
          shown(zone.volume),
          String(zone.insertions.length),
          shown(zone.minutes),
          '',
        ]),
      )
    }
  }
  paper.paragraph(
    pour.finish === null
      ? 'Finishing window: not known. The surface decides.'
      : `Planned power-float window, at the reference temperature of the mix: ${shown(pour.finish.opens)} to ${shown(pour.finish.closes)} h after mixing. The times by readings stand under Surface in the app; the surface decides.`,
  )
  holdDownPart(paper, input)
  paper.heading('To see and measure')
  askedTable(
    paper,
    plan.toRecord.filter(({ step }) => step === 'deliver' || step === 'place' || step === 'finish'),
  )
  cautions(paper, ['deliver', 'place', 'finish'])
  paper.signatures(['Placed and vibrated by', 'Lead'])
  return paper.finish()
}

import type { CutBar, CutList, CutPlan } from '@castwright/engine/steel'
import { Paper, type PaperSize } from '../paper/paper.ts'
import { dayAndTime } from '../paper/when.ts'
import { cuttingPicture } from '../picture/cutting-picture.ts'
import { INKS } from '../picture/role-look.ts'
import { drawCode } from './sheet.ts'

export interface CuttingSheetInput {
  readonly list: Pick<CutList, 'kerf'>
  /** Bound and proof are left out where the plan comes from the record. */
  readonly plan: Pick<CutPlan, 'bars' | 'stockLength' | 'rackLength' | 'netLength'> &
    Partial<Pick<CutPlan, 'lowerBound' | 'proven'>>
  /** Where the code leads, to tick off there; none without it. */
  readonly address?: string
  /** What is cut: `12 mm, 500E, Monday`. */
  readonly name: string
  /** IANA name of the yard's time zone. */
  readonly timezone: string
  readonly size: PaperSize
  /** UTC. */
  readonly made: string
}

/** Boxes to tick beside one bar; more batches than this are written as a number. */
const MOST_BOXES = 40
const BOX = 11
/** Side of the square code, pt. */
const CODE = 64

/** Every different bar to one scale, with boxes to tick at the shear. The same input gives the same bytes. */
export async function cuttingSheet(input: CuttingSheetInput): Promise<Uint8Array> {
  const { list, plan, name, timezone, size, made, address } = input
  const paper = new Paper({
    title: `Cutting sheet: ${name}`,
    size,
    made,
    foot: `Cutting sheet, ${name}. Made ${dayAndTime(made, timezone)}.`,
  })
  const top = paper.y
  paper.heading(`Cutting sheet: ${name}`, 1)
  if (address !== undefined) {
    drawCode(paper, address, paper.left + paper.width - CODE, top, CODE)
    paper.paragraph('The code opens this plan, to tick off there.', { size: 9 })
    paper.y = Math.max(paper.y, top + CODE + 6)
  }
  paper.cells([
    ['New stock', `${metres(plan.stockLength)} m`],
    ['From the rack', `${metres(plan.rackLength)} m`],
    ['Pieces', `${metres(plan.netLength)} m`],
    ['Kerf', list.kerf === undefined ? '0 mm, assumed' : `${list.kerf} mm`],
  ])
  paper.paragraph(proofText(plan))
  paper.paragraph(
    'Cut only from bars that were accepted. Measure the first bar of each kind before the others are cut. Lengths in mm, bars to one scale; an offcut that is scrap is hatched.',
    { bold: true },
  )
  const longest = Math.max(0, ...plan.bars.map((bar) => bar.stock))
  plan.bars.forEach((bar, index) => {
    barPart(paper, input, { bar, number: index + 1, longest })
  })
  paper.signatures(['Cut by', 'First lengths measured by'])
  return paper.finish()
}

function proofText({ stockLength, lowerBound, proven }: CuttingSheetInput['plan']): string {
  if (lowerBound === undefined) return 'The plan as it was handed to the shear.'
  if (proven) return 'No plan takes less new stock, nor as little of it and less from the rack: proven.'
  const over = stockLength - lowerBound
  return `Best plan found. A better one is not ruled out: it could save at most ${metres(Math.max(0, over))} m of new stock.`
}

function barPart(
  paper: Paper,
  { list }: CuttingSheetInput,
  { bar, number, longest }: { readonly bar: CutBar; readonly number: number; readonly longest: number },
): void {
  const picture = cuttingPicture({
    bar,
    kerf: list.kerf ?? 0,
    longest,
    frame: { width: paper.width, height: 40, text: 9 },
  })
  paper.need(picture.height + 16 + 60)
  const rack = bar.rack === true ? 'from the rack, ' : ''
  paper.paragraph(`${number}. ${bar.count} × bar of ${bar.stock}, ${rack}${leftText(bar)}`, {
    size: 11,
    bold: true,
  })
  // Every piece is told below the bar, so none is lost where its mark found no room.
  paper.picture({ ...picture, notes: [] })
  paper.paragraph(bar.pieces.map(pieceText).join('; '), { size: 10 })
  const batches = bar.batches ?? [{ bars: 1, times: bar.count }]
  const batchCount = batches.reduce((sum, { times }) => sum + times, 0)
  const atOnce = bar.batches?.map(({ bars, times }) => `${times} × ${bars}`).join(' + ')
  const words = atOnce === undefined ? 'One box a bar' : `Bars at once: ${atOnce}. One box a batch`
  if (batchCount > MOST_BOXES) {
    paper.paragraph(
      `${atOnce === undefined ? '' : `Bars at once: ${atOnce}. `}Bars cut, of ${bar.count}: ____________`,
    )
  } else {
    paper.paragraph(`${words}:`, { size: 9 })
    boxes(paper, batchCount)
  }
  paper.gap(8)
}

function leftText({ offcut, offcutTo }: CutBar): string {
  const length = Number(offcut.toFixed(1))
  if (length === 0) return 'nothing left'
  if (offcutTo === undefined) return `${length} left of each`
  return offcutTo === 'rack' ? `${length} left of each, to the rack` : `${length} left of each, scrap`
}

function pieceText({ length, count, mark, panel, machine }: CutBar['pieces'][number]): string {
  return [
    `${count} × ${length}`,
    mark,
    panel === undefined ? undefined : `for ${panel}`,
    machine === undefined ? undefined : `to ${machine}`,
  ]
    .filter((word) => word !== undefined)
    .join(' ')
}

function boxes(paper: Paper, count: number): void {
  const across = Math.floor(paper.width / (BOX + 4))
  const rows = Math.ceil(count / across)
  paper.need(rows * (BOX + 4))
  paper.artifact(() => {
    for (let index = 0; index < count; index += 1) {
      const x = paper.left + (index % across) * (BOX + 4)
      const y = paper.y + Math.floor(index / across) * (BOX + 4)
      paper.pdf.rect(x, y, BOX, BOX).lineWidth(0.8).stroke(INKS.ink)
    }
  })
  paper.y += rows * (BOX + 4)
}

/** Two decimals, so that 4.2 m reads 4.20. */
function metres(mm: number): string {
  return (mm / 1000).toFixed(2)
}

import type { ScheduledBar } from '@castwright/engine/steel'
import { shown } from '@castwright/engine/working'
import QRCode from 'qrcode'
import { drawPicture } from '../paper/draw-picture.ts'
import { Paper } from '../paper/paper.ts'
import { dayAndTime } from '../paper/when.ts'
import { INKS } from '../picture/role-look.ts'
import { shapePicture } from '../picture/steel-layers-shape.ts'
import { barTagText } from './bar-tags-text.ts'
import type { SheetInput } from './sheet.ts'

const HIGH = 166
const GAP = 8
const CODE = 80
/** Clear around the code: four of its modules. */
const QUIET = 9

/** A tag to cut out for each line of the schedule, two across: mark, size, count, cut length, shape, and a code that says the same. */
export async function barTags(input: SheetInput): Promise<Uint8Array> {
  const { plan, facts, drawing, made, timezone } = input
  const revision = facts.revision ?? drawing.revision ?? 'none'
  const paper = new Paper({
    title: `${plan.mark}: bar tags`,
    size: input.size,
    made,
    foot: `${facts.job} / ${plan.mark}, drawing revision ${revision}. Printed ${dayAndTime(made, timezone)}. Cut along the frames, one tag a bundle.`,
  })
  paper.heading(`Bar tags: ${plan.mark}`, 1)
  const { bars } = plan.steel
  if (bars.length === 0) paper.paragraph('No bars on the schedule of this panel.')
  for (const gap of plan.steel.unknown) paper.paragraph(`Not known: ${gap}.`)
  const wide = (paper.width - GAP) / 2
  for (let i = 0; i < bars.length; i += 2) {
    paper.need(HIGH)
    const top = paper.y
    bars.slice(i, i + 2).forEach((bar, column) => {
      drawTag(paper, input, { bar, revision, x: paper.left + column * (wide + GAP), y: top, wide })
    })
    paper.y = top + HIGH + GAP
  }
  return paper.finish()
}

interface Tag {
  readonly bar: ScheduledBar
  readonly revision: string
  readonly x: number
  readonly y: number
  readonly wide: number
}

function drawTag(paper: Paper, { plan, facts }: SheetInput, { bar, revision, x, y, wide }: Tag): void {
  paper.artifact(() => {
    paper.pdf.rect(x, y, wide, HIGH).lineWidth(0.6).dash(4, { space: 3 }).stroke(INKS.quiet).undash()
  })
  const { job } = facts
  const { mark, diameter, grade, count } = bar
  const cutLength = Math.round(bar.cutLength)
  const text = barTagText({ job, panel: plan.mark, revision, mark, diameter, grade, count, cutLength })
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' })
  paper.code(modules, x + wide - CODE - QUIET, y + QUIET, CODE, `Code of the tag: ${text}`)
  const left = x + 10
  const room = wide - CODE - 2 * QUIET - 14
  const size = Math.min(24, (24 * room) / paper.letters.widthOf(mark, 24, true))
  paper.textAt(mark, left, y + 8, size, true)
  paper.textAt(`${shown(diameter)} mm ${grade}`, left, y + 40, 12, true, room)
  paper.textAt(`${count} × ${cutLength} mm`, left, y + 57, 12, true, room)
  const more = `${job}\n${plan.mark}, revision ${revision}`
  paper.textAt(more, left, y + 75, 8.5, false, room)
  drawShape(paper, bar, { x: left, y: y + CODE + QUIET + 5, wide: wide - 20 })
}

function drawShape(
  paper: Paper,
  bar: ScheduledBar,
  place: { readonly x: number; readonly y: number; readonly wide: number },
): void {
  const bent = bar.turns.length > 0
  const inside = bent ? `, bends ${shown(bar.inside, 'mm')} inside` : ''
  const words = `${bar.shape}${inside}`
  const left = Math.min(paper.letters.widthOf(words, 8.5, false), place.wide * 0.45)
  paper.textAt(words, place.x, place.y + 14, 8.5, false, left + 1)
  const frame = { width: place.wide - left - 8, height: HIGH - CODE - QUIET - 9, text: 8, paper: 1 }
  const picture = shapePicture({ bar, frame })
  const figure = paper.pdf.struct('Figure', { alt: picture.title }, () =>
    drawPicture(paper, picture, [place.x + left + 8, place.y + (frame.height - picture.height) / 2]),
  )
  paper.root.add(figure)
  figure.end()
}

import { codeFamily } from '@castwright/engine/codes'
import { bendGauge, type GaugeDisc, type GaugeUse } from '@castwright/engine/steel'
import { type Paper, POINTS_PER_MM } from '../paper/paper.ts'
import { INKS } from '../picture/role-look.ts'
import { openSheet, type SheetInput, sourceText } from './sheet.ts'

/** Sides of an identification card, mm: ISO/IEC 7810, size ID-1. */
const CARD = { wide: 85.6, high: 53.98 } as const

const RULER = 100
/** Room about a disc for scissors, mm. */
const GAP = 5
/** Least width of the words under a disc, mm. */
const WORDS = 44
/** A sheet of an arc takes this much of the curve, mm: less than the printable part of both page sizes. */
const TILE = { wide: 170, high: 220 } as const

const ROLE = { main: 'main bar', stirrup: 'stirrup or tie' } as const

/** Discs of the least inside diameters of every stocked bar of the family, at true scale, to cut out and lay in a bend. */
export async function bendGaugeSheet(input: SheetInput): Promise<Uint8Array> {
  const family = codeFamily(input.plan.family)
  const { discs, unknown, sources } = bendGauge(family)
  const paper = openSheet(input, 'Bend gauge', 'cut-bend')
  paper.heading('Bend gauge, true size', 1)
  paper.paragraph(
    `Least inside diameters of uncoated bars, rules for ${family.name}: ${sources.map(sourceText).join('; ')}. Print at 100 %, never “fit to page”, and prove the scale below before a disc is cut out. The drawing and the engineer’s schedule outrank these values.`,
  )
  paper.paragraph(
    'Lay the disc in the bend. Where it touches at the crown, the bend is not tighter than the rule allows. Where it stands on two points with daylight at the crown, the bend is too tight: the bar goes to quarantine, it is not bent back.',
    { bold: true },
  )
  proof(paper)
  paper.gap(8)
  const widest = paper.width / POINTS_PER_MM
  const whole = discs.filter(({ diameter }) => diameter + 2 * GAP <= widest)
  discRows(paper, whole)
  for (const disc of discs) if (!whole.includes(disc)) quarterArcs(paper, disc)
  if (unknown.length > 0) {
    paper.heading('No confirmed value')
    paper.paragraph(`${unknown.join('; ')}. No disc: ask the engineer.`)
  }
  paper.heading('Not covered')
  paper.paragraph(
    'Galvanised bars, bars warmer or colder than the family allows, bends near welds, bends that were straightened, and the crushing of concrete inside a loaded bend have rules of their own.',
  )
  return paper.finish()
}

/** A ruler line and the outline of a card: both measured before the gauge is used. */
function proof(paper: Paper): void {
  const high = CARD.high * POINTS_PER_MM
  paper.need(high + 34)
  const top = paper.y + 14
  paper.textAt(
    `${RULER} mm between the end marks. A card of standard size fits the frame (85.60 × 53.98 mm).`,
    paper.left,
    paper.y,
    9,
    false,
  )
  paper.artifact(() => {
    const { pdf } = paper
    pdf
      .rect(paper.left, top, CARD.wide * POINTS_PER_MM, high)
      .lineWidth(0.4)
      .stroke(INKS.ink)
  })
  paper.y = top + high + 6
  rulerLine(paper)
}

/** The ruler has a line of its own: no page is narrower than it. */
function rulerLine(paper: Paper): void {
  const { pdf } = paper
  const y = paper.y + 4
  paper.artifact(() => {
    for (let mm = 0; mm <= RULER; mm += 1) {
      const long = mm % 10 === 0 ? 12 : mm % 5 === 0 ? 8 : 5
      const x = paper.left + mm * POINTS_PER_MM
      pdf.moveTo(x, y).lineTo(x, y + long)
    }
    pdf
      .moveTo(paper.left, y)
      .lineTo(paper.left + RULER * POINTS_PER_MM, y)
      .lineWidth(0.3)
      .stroke(INKS.ink)
  })
  paper.textAt('0', paper.left - 2, y + 12, 8, false)
  paper.textAt(`${RULER} mm`, paper.left + RULER * POINTS_PER_MM - 8, y + 12, 8, false)
  paper.y = y + 26
}

/** As many discs side by side as the page is wide, each with its words under it. */
function discRows(paper: Paper, discs: readonly GaugeDisc[]): void {
  const widest = paper.width / POINTS_PER_MM
  let row: GaugeDisc[] = []
  let used = 0
  const flush = (): void => {
    if (row.length > 0) discRow(paper, row)
    row = []
    used = 0
  }
  for (const disc of discs) {
    const wide = cellWidth(disc)
    if (used + wide > widest) flush()
    row.push(disc)
    used += wide
  }
  flush()
}

function cellWidth({ diameter }: GaugeDisc): number {
  return Math.max(diameter, WORDS) + GAP
}

function discRow(paper: Paper, row: readonly GaugeDisc[]): void {
  const size = 8.5
  const texts = row.map((disc) =>
    paper.letters.lines(wordsOf(disc), size, false, Math.max(disc.diameter, WORDS) * POINTS_PER_MM),
  )
  const tallest = Math.max(...row.map(({ diameter }) => diameter)) * POINTS_PER_MM
  const words = Math.max(...texts.map((lines) => lines.length)) * size * 1.35 + size * 1.35
  paper.need(tallest + words + 3 * GAP)
  const base = paper.y + tallest + GAP
  let x = paper.left
  for (const disc of row) {
    const wide = Math.max(disc.diameter, WORDS) * POINTS_PER_MM
    const radius = (disc.diameter / 2) * POINTS_PER_MM
    const centre: readonly [number, number] = [x + wide / 2, base - radius]
    paper.artifact(() => drawDisc(paper, centre, radius))
    paper.textAt(`D ${sizeText(disc.diameter)} mm`, x, base + 3, size, true)
    paper.textAt(wordsOf(disc), x, base + 3 + size * 1.35, size, false, wide)
    x += wide + GAP * POINTS_PER_MM
  }
  paper.y = base + words + 2 * GAP
}

function drawDisc({ pdf }: Paper, [x, y]: readonly [number, number], radius: number): void {
  pdf.circle(x, y, radius).lineWidth(0.35).stroke(INKS.ink)
  cross(pdf, x, y)
}

function cross(pdf: Paper['pdf'], x: number, y: number): void {
  pdf
    .moveTo(x - 6, y)
    .lineTo(x + 6, y)
    .moveTo(x, y - 6)
    .lineTo(x, y + 6)
    .lineWidth(0.3)
    .stroke(INKS.ink)
}

/** A quarter of a disc that no page holds, on as many sheets as it takes, with crosses at known places to join them by. */
function quarterArcs(paper: Paper, disc: GaugeDisc): void {
  const radius = disc.diameter / 2
  const columns = Math.ceil(radius / TILE.wide)
  const rows = Math.ceil(radius / TILE.high)
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const [x0, y0] = [column * TILE.wide, row * TILE.high]
      const [x1, y1] = [Math.min(radius, x0 + TILE.wide), Math.min(radius, y0 + TILE.high)]
      // Nothing of the arc on this sheet: it lies wholly inside or wholly outside.
      if (Math.hypot(x0, y0) > radius || Math.hypot(x1, y1) < radius) continue
      paper.need(Number.POSITIVE_INFINITY)
      arcTile(paper, disc, { x0, y0, x1, y1 }, columns * rows > 1)
    }
  }
}

interface Tile {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

function arcTile(paper: Paper, disc: GaugeDisc, tile: Tile, joined: boolean): void {
  const { x0, y0, x1, y1 } = tile
  const radius = disc.diameter / 2
  paper.paragraph(
    `Quarter of D ${sizeText(disc.diameter)} mm: ${wordsOf(disc)}.${joined ? ` Part x ${sizeText(x0)} to ${sizeText(x1)}, y ${sizeText(y0)} to ${sizeText(y1)} mm from the centre; join the sheets cross on cross.` : ''}`,
    { size: 9 },
  )
  const top = paper.y + 8
  const at = (x: number, y: number): readonly [number, number] => [
    paper.left + 14 + (x - x0) * POINTS_PER_MM,
    top + (y1 - y) * POINTS_PER_MM,
  ]
  paper.artifact(() => {
    const { pdf } = paper
    const [left, low] = at(x0, y0)
    const [right, high] = at(x1, y1)
    pdf.save()
    pdf.rect(left, high, right - left, low - high).clip()
    const [cx, cy] = at(0, 0)
    pdf
      .circle(cx, cy, radius * POINTS_PER_MM)
      .lineWidth(0.35)
      .stroke(INKS.ink)
    pdf.restore()
    if (x0 === 0) pdf.moveTo(left, low).lineTo(left, high).lineWidth(0.3).stroke(INKS.ink)
    if (y0 === 0) pdf.moveTo(left, low).lineTo(right, low).lineWidth(0.3).stroke(INKS.ink)
    for (const [x, y] of [
      [x0, y0],
      [x1, y0],
      [x0, y1],
      [x1, y1],
    ] as const) {
      const [px, py] = at(x, y)
      cross(pdf, px, py)
    }
  })
  for (const [x, y] of [
    [x0, y0],
    [x1, y1],
  ] as const) {
    const [px, py] = at(x, y)
    paper.textAt(`${sizeText(x)}, ${sizeText(y)}`, px + 3, py + 3, 7, false)
  }
  paper.y = top + (y1 - y0) * POINTS_PER_MM + 14
}

function wordsOf({ uses }: GaugeDisc): string {
  return uses.map(useText).join('; ')
}

function useText({ size, role, plain, grades }: GaugeUse): string {
  return `${size} ${ROLE[role]}${plain ? ', plain' : ''} (${grades.join(', ')})`
}

function sizeText(mm: number): string {
  return String(Math.round(mm * 100) / 100)
}

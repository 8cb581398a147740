import type { CircleShape, LineShape, Picture, PolygonShape, Shape } from '../picture/picture.ts'
import { INKS, type Ink, ROLE_LOOK } from '../picture/role-look.ts'
import type { Paper } from './paper.ts'

/** Draws a picture laid out in points with its top left corner at a place. */
export function drawPicture(paper: Paper, picture: Picture, [x, y]: readonly [number, number]): void {
  paper.pdf.save().translate(x, y)
  for (const shape of picture.shapes) drawShape(paper, shape)
  paper.pdf.restore()
}

function drawShape(paper: Paper, shape: Shape): void {
  switch (shape.kind) {
    case 'polygon':
      drawPolygon(paper, shape)
      break
    case 'line':
      drawLine(paper, shape)
      break
    case 'circle':
      drawCircle(paper, shape)
      break
    case 'text': {
      const look = ROLE_LOOK[shape.role]
      const bold = shape.bold === true
      const width = paper.letters.widthOf(shape.text, shape.size, bold)
      const [x, y] = shape.at
      paper.pdf.save()
      if (shape.backed) {
        const { left, right, top, bottom } = shape.box
        paper.pdf.rect(left, top, right - left, bottom - top).fill(INKS.sheet)
      }
      if (shape.turn !== 0) paper.pdf.rotate(shape.turn, { origin: [x, y] })
      const from = shape.align === 'left' ? x : x - width / 2
      paper.letters.draw(shape.text, from, y - shape.size * 0.62, shape.size, bold, INKS[look.text])
      paper.pdf.restore()
    }
  }
}

function drawPolygon({ pdf }: Paper, { rings, role, pattern }: PolygonShape): void {
  const look = ROLE_LOOK[role]
  const trace = (): void => {
    for (const ring of rings) {
      ring.forEach(([x, y], index) => {
        if (index === 0) pdf.moveTo(x, y)
        else pdf.lineTo(x, y)
      })
      pdf.closePath()
    }
  }
  if (look.fill !== null) {
    trace()
    pdf.fill(INKS[look.fill], 'even-odd')
  }
  if (pattern !== undefined) {
    pdf.save()
    trace()
    pdf.clip('even-odd')
    drawPattern(pdf, rings, pattern)
    pdf.restore()
  }
  if (look.line !== null) {
    trace()
    strokeAs(pdf, look.line, look.width, look.dash)
  }
}

function drawPattern(
  pdf: PDFKit.PDFDocument,
  rings: PolygonShape['rings'],
  pattern: NonNullable<PolygonShape['pattern']>,
): void {
  const points = rings.flat()
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  if (pattern === 'cross') {
    pdf.moveTo(left, top).lineTo(right, bottom).moveTo(left, bottom).lineTo(right, top)
    strokeAs(pdf, 'quiet', 0.5)
    return
  }
  if (pattern === 'hatch') {
    for (let x = left - (bottom - top); x < right; x += 6) pdf.moveTo(x, bottom).lineTo(x + bottom - top, top)
    strokeAs(pdf, 'quiet', 0.5)
    return
  }
  for (let y = top + 3; y < bottom; y += 6) for (let x = left + 3; x < right; x += 6) pdf.circle(x, y, 0.8)
  pdf.fill(INKS.accent)
}

function drawLine({ pdf }: Paper, { points, role, arrow }: LineShape): void {
  const look = ROLE_LOOK[role]
  points.forEach(([x, y], index) => {
    if (index === 0) pdf.moveTo(x, y)
    else pdf.lineTo(x, y)
  })
  strokeAs(pdf, look.line ?? 'ink', look.width || 1, look.dash)
  const [from, to] = points.slice(-2)
  if (arrow !== true || from === undefined || to === undefined) return
  const turn = Math.atan2(to[1] - from[1], to[0] - from[0])
  for (const side of [-0.4, 0.4]) {
    pdf.moveTo(to[0], to[1]).lineTo(to[0] - 6 * Math.cos(turn + side), to[1] - 6 * Math.sin(turn + side))
  }
  strokeAs(pdf, look.line ?? 'ink', look.width || 1)
}

function drawCircle(paper: Paper, { at: [x, y], radius, role, letter, size }: CircleShape): void {
  const look = ROLE_LOOK[role]
  if (look.fill !== null) paper.pdf.circle(x, y, radius).fill(INKS[look.fill])
  if (look.line !== null) {
    paper.pdf.circle(x, y, radius)
    strokeAs(paper.pdf, look.line, look.width, look.dash)
  }
  if (letter === undefined) return
  const high = size ?? radius * 1.3
  paper.letters.draw(
    letter,
    x - paper.letters.widthOf(letter, high, true) / 2,
    y - high * 0.62,
    high,
    true,
    INKS[look.text],
  )
}

/** Colours of the look on paper; dashes end with the line that they belong to. */
function strokeAs(pdf: PDFKit.PDFDocument, ink: Ink, width: number, dash?: readonly number[]): void {
  pdf.lineWidth(width)
  if (dash === undefined) pdf.undash()
  else pdf.dash(dash[0] ?? 3, { space: dash[1] ?? 3 })
  pdf.stroke(INKS[ink])
  if (dash !== undefined) pdf.undash()
}

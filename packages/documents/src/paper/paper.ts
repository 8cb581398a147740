import PDFDocument from 'pdfkit'
import type { Picture } from '../picture/picture.ts'
import { INKS } from '../picture/role-look.ts'
import { drawPicture } from './draw-picture.ts'
import { faceFiles } from './face.ts'
import { Lettering } from './lettering.ts'
import { type Column, drawTable } from './table.ts'

export type PaperSize = 'a4' | 'letter'

/** Width and height of a sheet, points. */
const SIZES: Readonly<Record<PaperSize, readonly [number, number]>> = {
  a4: [595.28, 841.89],
  letter: [612, 792],
}
export const POINTS_PER_MM = 72 / 25.4

export interface PaperInput {
  readonly title: string
  readonly size: PaperSize
  /** When the sheet was made, UTC: the only time in the file, so that the same input gives the same bytes. */
  readonly made: string
  /** Printed at the foot of every page, left of the page number. */
  readonly foot: string
  /** A label has its own small page, points. */
  readonly page?: readonly [number, number]
  readonly margin?: number
}

type Struct = PDFKit.PDFStructureElement

/** Height that a picture takes with its scale line, points; a heading that belongs to it asks for as much. */
export function pictureRoom({ height }: Pick<Picture, 'height'>): number {
  return height + 16
}

/**
 * A sheet being written from the top: tagged for those who hear it, with page breaks between lines and never inside them.
 * Positions are points from the top left corner.
 */
export class Paper {
  readonly pdf: PDFKit.PDFDocument
  readonly letters: Lettering
  /** The whole sheet, for those who hear it; each part hangs itself on. */
  readonly root: Struct
  readonly left: number
  readonly width: number
  y: number
  private readonly bottom: number
  private readonly top: number
  private readonly chunks: Buffer[] = []
  private readonly ended: Promise<Uint8Array>

  constructor(private readonly input: PaperInput) {
    const [wide, high] = input.page ?? SIZES[input.size]
    const margin = input.margin ?? 34
    const made = new Date(input.made)
    this.pdf = new PDFDocument({
      size: [wide, high],
      margin: 0,
      pdfVersion: '1.7',
      // The types lag behind: the library takes PDF/UA.
      subset: 'PDF/UA' as 'PDF/A-1',
      tagged: true,
      lang: 'en',
      displayTitle: true,
      bufferPages: true,
      font: faceFiles().get('regular') as unknown as string,
      info: {
        Title: input.title,
        Producer: 'Castwright',
        Creator: 'Castwright',
        CreationDate: made,
        ModDate: made,
      },
    })
    for (const [name, bytes] of faceFiles()) this.pdf.registerFont(name, bytes)
    this.letters = new Lettering(this.pdf)
    this.left = margin
    this.width = wide - 2 * margin
    this.top = margin
    this.y = margin
    this.bottom = high - margin - (input.page === undefined ? 18 : 0)
    this.root = this.pdf.struct('Document')
    this.pdf.addStructure(this.root)
    this.ended = new Promise((done, fail) => {
      this.pdf.on('data', (chunk: Buffer) => this.chunks.push(chunk))
      this.pdf.on('end', () => done(new Uint8Array(Buffer.concat(this.chunks))))
      this.pdf.on('error', fail)
    })
  }

  /** Space left on this page, points. */
  get room(): number {
    return this.bottom - this.y
  }

  /** Starts a new page unless so much room is left. */
  need(height: number): void {
    if (this.y + height <= this.bottom || this.y === this.top) return
    this.pdf.addPage()
    this.y = this.top
  }

  gap(points: number): void {
    this.y += points
  }

  /** `follows`: height of what must not be parted from it, points. */
  heading(text: string, level: 1 | 2 = 2, follows = 30): void {
    const size = level === 1 ? 22 : 13
    const lines = this.letters.lines(text, size, true, this.width)
    this.need(lines.length * size * 1.25 + follows)
    this.tagged(level === 1 ? 'H1' : 'H2', () => this.write(lines, { size, bold: true, x: this.left }))
    this.gap(level === 1 ? 4 : 3)
  }

  paragraph(text: string, { size = 10, bold = false }: { size?: number; bold?: boolean } = {}): void {
    const lines = this.letters.lines(text, size, bold, this.width)
    for (let from = 0; from < lines.length; ) {
      this.need(size * 1.35)
      const fits = Math.max(1, Math.floor(this.room / (size * 1.35)))
      this.tagged('P', () => this.write(lines.slice(from, from + fits), { size, bold, x: this.left }))
      from += fits
    }
    this.gap(4)
  }

  /** A ruled frame with words that must not be missed. */
  framed(order: string, text: string): void {
    const inner = this.width - 20
    const orderLines = this.letters.lines(order, 11, true, inner)
    const textLines = this.letters.lines(text, 10, false, inner)
    const height = orderLines.length * 11 * 1.35 + textLines.length * 10 * 1.35 + 14
    this.need(height + 4)
    const from = this.y
    this.tagged('P', () => {
      this.y += 7
      this.write(orderLines, { size: 11, bold: true, x: this.left + 10 })
      this.write(textLines, { size: 10, bold: false, x: this.left + 10 })
    })
    this.artifact(() => {
      this.pdf.rect(this.left, from, this.width, height).lineWidth(1.2).stroke(INKS.ink)
    })
    this.y = from + height + 6
  }

  /** Label over value, side by side between thin rules: the title block and its like. */
  cells(cells: readonly (readonly [label: string, value: string])[]): void {
    const wide = this.width / cells.length
    const labels = cells.map(([label]) => this.letters.lines(label, 8.5, false, wide - 10))
    const values = cells.map(([, value]) => this.letters.lines(value, 12, true, wide - 10))
    const head = 3 + Math.max(...labels.map((lines) => lines.length)) * 8.5 * 1.35
    const height = head + Math.max(...values.map((lines) => lines.length)) * 12 * 1.35 + 3
    this.need(height)
    const top = this.y
    cells.forEach((_, index) => {
      const x = this.left + index * wide + (index === 0 ? 0 : 8)
      this.tagged('P', () => {
        this.y = top + 3
        this.write(labels[index] ?? [], { size: 8.5, bold: false, x, ink: INKS.quiet })
        this.y = top + head
        this.write(values[index] ?? [], { size: 12, bold: true, x })
      })
    })
    this.artifact(() => {
      for (let index = 1; index < cells.length; index += 1) {
        const x = this.left + index * wide
        this.pdf
          .moveTo(x, top + 2)
          .lineTo(x, top + height - 2)
          .lineWidth(0.5)
          .stroke(INKS.quiet)
      }
      this.rule(top + height, 1.2)
    })
    this.y = top + height + 8
  }

  /** A table whose head is repeated on each page; rows are never split. */
  table(columns: readonly Column[], rows: readonly (readonly string[])[], size = 9): void {
    drawTable(this, columns, rows, size)
  }

  /** A drawing to scale, with its title as the alternative text. */
  picture(picture: Picture): void {
    this.need(pictureRoom(picture))
    const x = this.left + (this.width - picture.width) / 2
    const figure = this.pdf.struct('Figure', { alt: picture.title }, () =>
      drawPicture(this, picture, [x, this.y]),
    )
    this.root.add(figure)
    figure.end()
    this.y += picture.height + 4
    const scale = picture.ratio === null ? '' : `Scale 1:${picture.ratio} when printed at full size. `
    const notes =
      picture.notes.length === 0 ? '' : `Not lettered for want of room: ${picture.notes.join('; ')}.`
    if (scale + notes !== '') this.paragraph((scale + notes).trim(), { size: 8.5 })
  }

  /** Lines to sign on: role, name, time. */
  signatures(roles: readonly string[]): void {
    const height = 34
    this.need(height * Math.ceil(roles.length / 2) + 6)
    const wide = (this.width - 20) / 2
    roles.forEach((role, index) => {
      const x = this.left + (index % 2) * (wide + 20)
      const line = this.y + 22
      const back = this.y
      this.tagged('P', () => {
        this.y = line + 2
        this.write([`${role}: name, signature, date and time`], {
          size: 8.5,
          bold: false,
          x,
          ink: INKS.quiet,
        })
      })
      this.artifact(() => {
        this.pdf
          .moveTo(x, line)
          .lineTo(x + wide, line)
          .lineWidth(0.8)
          .stroke(INKS.ink)
      })
      this.y = index % 2 === 1 || index === roles.length - 1 ? back + height : back
    })
  }

  /** One line at a place of its own, tagged as a paragraph. */
  textAt(text: string, x: number, y: number, size: number, bold: boolean, width?: number): void {
    const back = this.y
    const lines = width === undefined ? [text] : this.letters.lines(text, size, bold, width)
    this.tagged('P', () => {
      this.y = y
      this.write(lines, { size, bold, x })
    })
    this.y = back
  }

  /** Modules of a square code, dark on light, with a word for those who hear it. */
  code(
    modules: { readonly size: number; readonly data: ArrayLike<number> },
    x: number,
    y: number,
    side: number,
    alt: string,
  ): void {
    const step = side / modules.size
    const figure = this.pdf.struct('Figure', { alt }, () => {
      for (let row = 0; row < modules.size; row += 1) {
        for (let column = 0; column < modules.size; column += 1) {
          if (modules.data[row * modules.size + column])
            this.pdf.rect(x + column * step, y + row * step, step + 0.02, step + 0.02)
        }
      }
      this.pdf.fill('#000000')
    })
    this.root.add(figure)
    figure.end()
  }

  /** What is drawn here means nothing to those who hear the sheet. */
  artifact(draw: () => void): void {
    this.pdf.markContent('Artifact')
    draw()
    this.pdf.endMarkedContent()
  }

  rule(y: number, width = 0.5): void {
    this.pdf
      .moveTo(this.left, y)
      .lineTo(this.left + this.width, y)
      .lineWidth(width)
      .stroke(width < 1 ? INKS.hair : INKS.ink)
  }

  /** Puts the foot on every page and gives the file. */
  async finish(): Promise<Uint8Array> {
    const { start, count } = this.pdf.bufferedPageRange()
    if (this.input.page === undefined) {
      for (let page = start; page < start + count; page += 1) {
        this.pdf.switchToPage(page)
        this.artifact(() => {
          this.rule(this.bottom + 6, 0.5)
          const number = `page ${page - start + 1} of ${count}`
          this.y = this.bottom + 9
          const room = this.width - this.letters.widthOf(number, 8, false) - 12
          const size = Math.min(8, (8 * room) / this.letters.widthOf(this.input.foot, 8, false))
          this.write([this.input.foot], { size, bold: false, x: this.left, ink: INKS.quiet })
          this.y = this.bottom + 9
          this.write([number], {
            size: 8,
            bold: false,
            x: this.left + this.width - this.letters.widthOf(number, 8, false),
            ink: INKS.quiet,
          })
        })
      }
    }
    this.root.end()
    this.pdf.end()
    return this.ended
  }

  private tagged(kind: string, draw: () => void): void {
    const element = this.pdf.struct(kind, {}, draw)
    this.root.add(element)
    element.end()
  }

  private write(
    lines: readonly string[],
    { size, bold, x, ink = INKS.ink }: { size: number; bold: boolean; x: number; ink?: string },
  ): void {
    for (const line of lines) {
      this.letters.draw(line, x, this.y, size, bold, ink)
      this.y += size * 1.35
    }
  }
}

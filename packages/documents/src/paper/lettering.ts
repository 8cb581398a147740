import { faceRuns } from './face.ts'

/** Text of one PDF measured, broken into lines and drawn, with the face that has each sign. Sizes and places in points. */
export class Lettering {
  /** Widths at size 1, by weight and text: shaping is the slow part of a sheet. */
  private readonly widths = new Map<string, number>()

  constructor(private readonly pdf: PDFKit.PDFDocument) {}

  /** Width of one line of text, points. */
  widthOf(text: string, size: number, bold: boolean): number {
    const key = `${bold ? 'b' : 'r'}${text}`
    let unit = this.widths.get(key)
    if (unit === undefined) {
      unit = faceRuns(text, bold).reduce(
        (sum, run) => sum + this.pdf.font(run.face).fontSize(100).widthOfString(run.text) / 100,
        0,
      )
      this.widths.set(key, unit)
    }
    return unit * size
  }

  /** Draws one line of text with its top left corner at a place; marked content is the caller's. */
  draw(text: string, x: number, y: number, size: number, bold: boolean, ink: string): void {
    let at = x
    for (const run of faceRuns(text, bold)) {
      this.pdf.font(run.face).fontSize(size).fillColor(ink)
      const width = this.pdf.widthOfString(run.text)
      this.pdf.text(run.text, at, y, { lineBreak: false })
      at += width
    }
  }

  /** Breaks a text into lines of a width; a word longer than the line is cut. */
  lines(text: string, size: number, bold: boolean, width: number): string[] {
    return text.split('\n').flatMap((paragraph) => {
      const lines: string[] = []
      let line = ''
      for (const word of paragraph.split(' ').flatMap((whole) => this.pieces(whole, size, bold, width))) {
        const longer = line === '' ? word : `${line} ${word}`
        if (line !== '' && this.widthOf(longer, size, bold) > width) {
          lines.push(line)
          line = word
        } else line = longer
      }
      lines.push(line)
      return lines
    })
  }

  private pieces(word: string, size: number, bold: boolean, width: number): string[] {
    if (this.widthOf(word, size, bold) <= width) return [word]
    const pieces: string[] = []
    let piece = ''
    for (const sign of word) {
      if (piece !== '' && this.widthOf(piece + sign, size, bold) > width) {
        pieces.push(piece)
        piece = sign
      } else piece += sign
    }
    return [...pieces, piece]
  }
}

import type { Box, Role, TextShape } from './picture.ts'
import { textHeight, textWidth } from './text-width.ts'

/** A sentence in lines that fit a width; a word longer than the line is cut. */
export function wordLines(text: string, size: number, width: number): string[] {
  const lines: string[] = []
  let line = ''
  const pieces = text.split(' ').flatMap((word) => cutWord(word, size, width))
  for (const word of pieces) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && textWidth(longer, size) > width) {
      lines.push(line)
      line = word
    } else line = longer
  }
  return [...lines, line]
}

function cutWord(word: string, size: number, width: number): string[] {
  if (textWidth(word, size) <= width) return [word]
  const pieces: string[] = []
  let piece = ''
  for (const sign of word) {
    if (piece !== '' && textWidth(piece + sign, size) > width) {
      pieces.push(piece)
      piece = sign
    } else piece += sign
  }
  return [...pieces, piece]
}

export interface LeftText {
  readonly role: Role
  readonly text: string
  readonly size: number
  /** Left end and middle height. */
  readonly x: number
  readonly y: number
  readonly bold?: boolean
  readonly backed?: boolean
}

/** A text that begins at a place of its own, in space that its caller keeps free. */
export function leftText({ role, text, size, x, y, bold, backed }: LeftText): TextShape {
  const half = textHeight(size) / 2
  const box: Box = { left: x, right: x + textWidth(text, size), top: y - half, bottom: y + half }
  return {
    kind: 'text',
    role,
    text,
    at: [x, y],
    align: 'left',
    size,
    turn: 0,
    box,
    ...(bold === undefined ? {} : { bold }),
    ...(backed === undefined ? {} : { backed }),
  }
}

/** A text centred on a place, in space that its caller keeps free. */
export function centredText({ role, text, size, x, y, bold }: LeftText): TextShape {
  const half = textHeight(size) / 2
  const wide = textWidth(text, size) / 2
  return {
    kind: 'text',
    role,
    text,
    at: [x, y],
    size,
    turn: 0,
    box: { left: x - wide, right: x + wide, top: y - half, bottom: y + half },
    ...(bold === undefined ? {} : { bold }),
  }
}

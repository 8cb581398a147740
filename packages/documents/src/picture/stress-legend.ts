import type { StressField } from '@castwright/engine/lift'
import type { Layout } from './layout.ts'
import type { Role, Shape } from './picture.ts'
import { textWidth } from './text-width.ts'
import { centredText, leftText, wordLines } from './words.ts'

/** In sizes of the text: a line of words, a row of boxes, their numbers. */
const ROWS = { words: 1.5, boxes: 1, numbers: 1.4 } as const

export function legendHeight(text: number, field: StressField | null, width: number): number {
  const lines = legendWords(field, text, width).length
  const boxes = field === null || field.bands.length === 0 ? 0 : ROWS.boxes + ROWS.numbers
  return text * (ROWS.words * lines + boxes + 0.4)
}

function legendWords(field: StressField | null, text: number, width: number): string[] {
  const words =
    field === null
      ? 'The tension over the panel is not known for this stage, or nothing bends it.'
      : field.bands.length === 0
        ? 'No tension over the panel.'
        : `Tension in MPa, ${faceWords(field.face)}; each shade from its number up`
  return wordLines(words, text, width - text)
}

/** Bands side by side with the tension at which each begins. */
export function stressLegend(layout: Layout, field: StressField | null): Shape[] {
  const { text, below, height, width } = layout
  const top = height - below
  const lines = legendWords(field, text, width)
  const left = Math.min(layout.panel.left, width / 4)
  const x = Math.min(left, Math.max(text / 2, width - text / 2 - textWidth(widest(lines), text)))
  const words = lines.map((line, i) =>
    leftText({ role: 'level', text: line, size: text, x, y: top + text * ROWS.words * (i + 0.5) }),
  )
  if (field === null || field.bands.length === 0) return words
  const numbers = field.bands.map(({ level }) => String(level))
  const wide = textWidth(widest(numbers), text)
  const first = Math.max(wide / 2 + 1, left)
  const box = Math.min(Math.max(wide + text * 0.6, text * 4), (width - first - wide) / numbers.length)
  const from = top + text * ROWS.words * lines.length
  return [
    ...words,
    ...numbers.flatMap((number, i): Shape[] => {
      const at = first + i * box
      return [
        {
          kind: 'polygon',
          role: bandRole(i),
          rings: [
            [
              [at, from],
              [at + box, from],
              [at + box, from + text * ROWS.boxes],
              [at, from + text * ROWS.boxes],
            ],
          ],
        },
        centredText({
          role: 'level',
          text: number,
          size: text,
          x: at,
          y: from + text * (ROWS.boxes + ROWS.numbers / 2),
        }),
      ]
    }),
  ]
}

function widest(lines: readonly string[]): string {
  return lines.reduce((most, line) => (textWidth(line, 1) > textWidth(most, 1) ? line : most), '')
}

export function bandRole(index: number): Role {
  return (
    (['band-1', 'band-2', 'band-3', 'band-4', 'band-5', 'band-6'] as const)[Math.min(index, 5)] ?? 'band-6'
  )
}

export function faceWords(face: StressField['face']): string {
  return face === 'worse' ? 'the worse of both faces' : face === 'mould' ? 'mould face' : 'top face'
}

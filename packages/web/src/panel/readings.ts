import { readNumber } from '../look/index.ts'

export type ReadingsText =
  | { readonly ok: true; readonly readings: number[] | number[][] }
  | { readonly ok: false; readonly fault: string }

/**
 * Readings as typed, one a line: a single number, or several parted by spaces or semicolons (a point, a pair). All lines have
 * the same count.
 */
export function readReadings(text: string): ReadingsText {
  const lines = text
    .split(/\r\n|\r|\n/)
    .map((line, index) => ({ row: index + 1, parts: line.split(/[\s;]+/).filter((part) => part !== '') }))
    .filter(({ parts }) => parts.length > 0)
  const [first] = lines
  if (first === undefined) return { ok: false, fault: 'No reading yet: write one a line.' }
  const rows: number[][] = []
  for (const { row, parts } of lines) {
    if (parts.length !== first.parts.length) {
      return {
        ok: false,
        fault: `Line ${row}: found ${parts.length} numbers, expected ${first.parts.length} as in the first line`,
      }
    }
    const numbers = parts.map(readNumber)
    const bad = numbers.indexOf(null)
    if (bad >= 0) return { ok: false, fault: `Line ${row}: found ${parts[bad]}, expected a number` }
    rows.push(numbers as number[])
  }
  return { ok: true, readings: first.parts.length === 1 ? rows.map(([value]) => value as number) : rows }
}

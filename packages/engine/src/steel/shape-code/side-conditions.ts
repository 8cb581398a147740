import { bendRow } from '../../codes/eu/bs8666-2005/bend-table.ts'

export interface ConditionsInput {
  readonly diameter: number
  readonly inside: number
  /** By the letters of the shape, mm. */
  readonly dimensions: Readonly<Record<string, number>>
}

/** End legs of each shape by letter; shapes with ends of their own kind are not in it. */
const ENDS: Readonly<Record<string, readonly string[]>> = {
  '11': ['A', 'B'],
  '12': ['A', 'B'],
  '15': ['A', 'C'],
  '21': ['A', 'C'],
  '22': ['A'],
  '23': ['A', 'C'],
  '25': ['A', 'B'],
  '26': ['A', 'C'],
  '27': ['A', 'C'],
  '28': ['A', 'C'],
  '31': ['A', 'D'],
  '32': ['A', 'D'],
  '34': ['A', 'E'],
  '35': ['A', 'E'],
  '36': ['A', 'D'],
  '41': ['A', 'E'],
  '44': ['A', 'E'],
  '46': ['A', 'E'],
}

/** Formers of curves that are bent in one piece, mm. */
const LARGEST_FORMER = 400
const ONE_PIECE = ['12', '13', '22', '33', '47']

/** Links: end legs past a turn under 150° take the least of links, past half a turn the general one. */
const LINKS = ['48', '51', '52', '63']
const HOOKED = '47'

/** Side conditions of BS 8666:2005 that a shape does not meet, in words; empty where all are met. */
export function sideConditions(code: string, { diameter: d, inside, dimensions }: ConditionsInput): string[] {
  const { A = 0, B = 0, C = 0 } = dimensions
  const row = bendRow(d)
  const found: string[] = []
  const least = (letter: string, need: number, why: string) => {
    const size = dimensions[letter] ?? 0
    if (size < need - 1e-6) found.push(`${letter}: ${round(size)} mm, at least ${round(need)} mm (${why})`)
  }
  const most = (letter: string, limit: number, why: string) => {
    const size = dimensions[letter] ?? 0
    if (size > limit + 1e-6) found.push(`${letter}: ${round(size)} mm, at most ${round(limit)} mm (${why})`)
  }
  const link = LINKS.includes(code)
  const ends = link || code === HOOKED ? ['C'] : (ENDS[code] ?? [])
  for (const letter of ends) {
    if (row !== undefined) least(letter, link ? row.link : row.general, 'P')
    if (code === '12') least(letter, inside / 2 + 6 * d, 'R + 6 d')
  }
  const curve = code === '22' ? 'C' : 'B'
  if (code === '13' || code === '22' || code === '33') {
    least(curve, row === undefined ? 0 : 2 * (row.radius + d), '2 (r + d)')
  }
  if (code === '13') {
    least('A', B / 2 + 5 * d, 'B/2 + 5 d')
    least('C', B / 2 + 5 * d, 'B/2 + 5 d')
  }
  if (code === '22') least('D', C / 2 + 5 * d, 'C/2 + 5 d')
  if (code === '33') {
    least('A', 12 * d + 30, '12 d + 30')
    least('C', B / 2 + 5 * d, 'B/2 + 5 d')
  }
  if (code === '51') {
    most('C', A, 'A')
    most('C', B, 'B')
  }
  if (ONE_PIECE.includes(code) && inside > LARGEST_FORMER) {
    found.push(`former: ${round(inside)} mm, at most ${LARGEST_FORMER} mm (curve bent in one piece)`)
  }
  return found
}

function round(value: number): number {
  return Math.round(value * 10) / 10
}

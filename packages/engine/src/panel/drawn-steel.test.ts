import { describe, expect, it } from 'vitest'
import { InputError } from '../working/issue.ts'
import { parseDrawing } from './drawing.ts'

const drawing = (steel: unknown, openings: readonly string[] = ['D1']) => ({
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 180,
  openings: openings.map((mark, index) => ({
    mark,
    outline: [
      [900 + 1500 * index, 300],
      [1900 + 1500 * index, 300],
      [1900 + 1500 * index, 2400],
      [900 + 1500 * index, 2400],
    ],
  })),
  concrete: { strength: 40 },
  steel: [steel],
})

function refused(steel: unknown, openings?: readonly string[]): string {
  try {
    parseDrawing(drawing(steel, openings))
  } catch (error) {
    if (error instanceof InputError)
      return error.issues.map(({ path, expected }) => `${path}: ${expected}`).join('; ')
    throw error
  }
  return 'nothing refused'
}

const bar = { diameter: 10, grade: 'B500B' }
const u = { edge: 'all', form: 'u', ...bar, spacing: 200, leg: 400 }
const trim = { trim: 'D1', layer: 'both', ...bar, count: 2, beyond: 600 }
const starter = { starters: 'top', layer: 'mould', ...bar, spacing: 200, embed: 600, project: 700 }
const standing = {
  ...starter,
  starters: [
    [100, 100],
    [900, 100],
  ],
  layer: undefined,
}
const tie = {
  ties: [
    [100, 100],
    [900, 100],
  ],
  spacing: 150,
  ...bar,
  width: 200,
}

describe('steel of a drawing', () => {
  it('edge bars, trimmers, starters and ties are read as drawn', () => {
    const lines = [
      u,
      { ...u, edge: 'D1', form: 'hook', layer: 'top', inside: 40, mark: 'H' },
      { ...trim, apart: 60, diagonals: { ...bar, length: 1200, count: 1 } },
      { ...trim, trim: 'all' },
      starter,
      JSON.parse(JSON.stringify({ ...standing, foot: 200 })),
      tie,
      { ...tie, spacing: undefined, across: 'x', tail: 80 },
    ].map((line) => JSON.parse(JSON.stringify(line)))
    for (const line of lines) expect(parseDrawing(drawing(line)).steel).toEqual([line])
  })

  it('a fault is told at its field, whatever the line is', () => {
    expect(refused({ ...u, leg: -1 })).toBe('steel[0].leg: a number above 0')
    expect(refused({ ...u, edge: 'D9' })).toMatch(/^steel\[0\]\.edge: one of "all"/)
    expect(refused({ ...u, spacing: 10 })).toBe('steel[0].spacing: more than the diameter, 10')
    expect(refused({ ...u, form: 'hook' })).toBe('steel[0].layer: the layer of the leg')
    expect(refused({ ...u, layer: 'top' })).toMatch(/^steel\[0\]\.layer: no layer/)
    expect(refused({ ...u, length: 3 })).toBe('steel[0].length: no field of this name')
    expect(refused({ ...trim, trim: 'outer' })).toMatch(/^steel\[0\]\.trim: one of "all", "D1"/)
    expect(refused({ ...trim, count: 1.5 })).toBe('steel[0].count: a whole number')
    expect(refused({ ...trim, diagonals: { ...bar, count: 1 } })).toMatch(/^steel\[0\]\.diagonals\.length:/)
    expect(refused({ ...starter, foot: 100 })).toMatch(/^steel\[0\]\.foot:/)
    expect(refused({ ...starter, layer: undefined })).toMatch(/^steel\[0\]\.layer: the layer/)
    expect(refused({ ...standing, layer: 'top' })).toMatch(/^steel\[0\]\.layer: no layer/)
    expect(
      refused({
        ...starter,
        starters: [
          [1, 1],
          [1, 1],
        ],
        layer: undefined,
      }),
    ).toMatch(/^steel\[0\]\.starters: two/)
    expect(refused({ ...tie, spacing: undefined })).toMatch(/^steel\[0\]\.across:/)
    expect(refused({ ...tie, across: 'x' })).toMatch(/^steel\[0\]\.across: no direction/)
    expect(refused({ ...tie, ties: [[1, 1]] })).toMatch(/^steel\[0\]\.ties: the two ends/)
  })

  it('an opening that is named like a word for edges cannot be meant by it', () => {
    expect(refused(u, ['all'])).toMatch(/^steel\[0\]\.edge: a word for edges that is not also/)
    expect(refused({ ...u, edge: 'outer' }, ['all'])).toBe('nothing refused')
  })
})

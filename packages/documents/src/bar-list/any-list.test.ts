import { codeFamily } from '@castwright/engine/codes'
import { parseDrawing } from '@castwright/engine/panel'
import { cutLength } from '@castwright/engine/steel'
import { InputError } from '@castwright/engine/working'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type BarList, barsOf, goodBars, wholeList } from './bars-of.ts'
import { readTable } from './read-table.ts'
import { writeXlsx } from './write-xlsx.ts'

const RULES = codeFamily('nz').steel
const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40 },
}

/** What people and programs leave in cells, right or not. */
const cell = fc.oneof(
  fc.constantFrom('B1', '12', '500E', '24', '600', '300', '60', '90', '', '', ' ', '1.200', '1,2', '-5', '0'),
  fc.constantFrom(
    'NaN',
    'Infinity',
    '1e9',
    '=A1',
    '"',
    "'=",
    '#REF!',
    '90 90',
    '600+300',
    'U',
    'stirrup',
    '№',
    '\u0000',
  ),
  fc.double().map(String),
  fc.string({ maxLength: 8 }),
)
const names = [
  'Mark',
  'Dia',
  'Grade',
  'Role',
  'Count',
  'Cut length',
  'A',
  'B',
  'C',
  'Turns',
  'Inside',
  'Shape',
  'Legs',
  'Other',
]

function holds(list: BarList): void {
  if (list.errors.length > 0) expect(wholeList(list)).toEqual([])
  const bars = goodBars(list)
  // Every bar that is given can stand in a drawing, and can be bent.
  parseDrawing({ ...DRAWING, steel: bars })
  for (const { diameter, legs = [], turns = [], inside = null, grade, role = 'main' } of bars) {
    const least = RULES.leastBend({ diameter, grade, role, plain: false, galvanised: false })
    expect(
      cutLength({ diameter, legs, turns, inside: inside ?? (least.known ? least.value : null) }).known,
    ).toBe(true)
  }
  for (const { row, found, expected } of [...list.errors, ...list.warnings]) {
    expect(row === null || row >= 1).toBe(true)
    // What stands in quotes is what came.
    expect(`${found.replace(/"(\\.|[^"])*"/g, '')} ${expected}`).not.toMatch(/NaN|undefined|\[object/)
  }
}

it('whatever stands in a text file: good bars and named faults, or the file is refused', async () => {
  const grid = fc.tuple(
    fc.shuffledSubarray(names, { minLength: 3 }),
    fc.array(fc.array(cell, { maxLength: 14 }), { maxLength: 8 }),
    fc.constantFrom(',', ';', '\t'),
  )
  await fc.assert(
    fc.asyncProperty(grid, async ([head, rows, sign]) => {
      const bytes = new TextEncoder().encode([head, ...rows].map((row) => row.join(sign)).join('\n'))
      try {
        holds(barsOf({ table: await readTable({ bytes, name: 'any.csv' }), rules: RULES }))
      } catch (error) {
        expect(error).toBeInstanceOf(InputError)
      }
    }),
    { numRuns: 400 },
  )
})

it('rows that are mostly right: a fault of one cell stays in its row', async () => {
  const right = ['B', '12', '500E', 'main', '24', '', '600', '300', '250', '90', '60', '', '', '']
  const broken = fc.tuple(fc.integer({ min: 0, max: 13 }), cell)
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.option(broken, { nil: null }), { minLength: 1, maxLength: 6 }),
      async (faults) => {
        const rows = faults.map((fault, index) => {
          const row = right.map((text, at) => (at === 0 ? `B${index}` : text))
          if (fault !== null) row[fault[0]] = fault[1].replace(/[\n\r"\t]/g, '')
          return row
        })
        const text = [
          names.filter((name) => name !== 'Legs'),
          ...rows.map((row) => row.filter((_, at) => at !== 12)),
        ]
        const bytes = new TextEncoder().encode(text.map((row) => row.join('\t')).join('\n'))
        const list = await readTable({ bytes, name: 'any.csv' }).catch((error: unknown) => {
          expect(error).toBeInstanceOf(InputError)
          return null
        })
        if (list === null) return
        const found = barsOf({
          table: list,
          rules: RULES,
          map: { format: 'castwright.barlist-map/1', decimal: 'point' },
        })
        holds(found)
        const sound = faults.flatMap((fault, index) => (fault === null ? [index + 2] : []))
        const named = found.errors.flatMap(({ row, name }) => (row === null || name === 'Mark' ? [] : [row]))
        expect(named.filter((row) => sound.includes(row))).toEqual([])
      },
    ),
    { numRuns: 300 },
  )
})

it('whatever bytes: refused in words, or read', async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), fc.boolean(), async (bytes, zip) => {
      const file = zip ? new Uint8Array([0x50, 0x4b, 3, 4, ...bytes]) : bytes
      try {
        holds(barsOf({ table: await readTable({ bytes: file, name: 'any' }), rules: RULES }))
      } catch (error) {
        expect(error).toBeInstanceOf(InputError)
      }
    }),
    { numRuns: 300 },
  )
})

it('a spreadsheet with some bytes changed: refused in words, or read', async () => {
  const whole = await writeXlsx({
    columns: ['Mark', 'Dia', 'Grade', 'Count', 'A'].map((name) => ({ name, kind: 'text', width: 9 })),
    rows: [
      ['B1', 12, '500E', 2, 600],
      ['B2', 16, '500E', 4, 900],
    ],
    unknown: [],
  })
  const change = fc.array(
    fc.tuple(fc.integer({ min: 0, max: whole.length - 1 }), fc.integer({ min: 0, max: 255 })),
    {
      minLength: 1,
      maxLength: 6,
    },
  )
  await fc.assert(
    fc.asyncProperty(change, async (changes) => {
      const bytes = whole.slice()
      for (const [at, value] of changes) bytes[at] = value
      try {
        holds(barsOf({ table: await readTable({ bytes, name: 'any.xlsx' }), rules: RULES }))
      } catch (error) {
        expect(error).toBeInstanceOf(InputError)
      }
    }),
    { numRuns: 200 },
  )
})

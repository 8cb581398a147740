import { describe, expect, it } from 'vitest'
import { InputError } from '../working/issue.ts'
import { jobJsonSchema, parseYard, yardJsonSchema } from '../yard/yard.ts'
import { parseDrawing, readDrawing } from './drawing.ts'
import { drawingJsonSchema } from './json-schema.ts'
import { misplacedInserts, panelOf } from './panel.ts'

const PLAIN = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40 },
}

/** The example of the contract, whole. */
const WHOLE = {
  ...PLAIN,
  openings: [
    {
      mark: 'D1',
      outline: [
        [900, 0],
        [1900, 0],
        [1900, 2100],
        [900, 2100],
      ],
    },
  ],
  concrete: { strength: 40, density: 2500, aggregate: 19 },
  cover: { mould: 30, top: 30, edge: 30 },
  steel: [
    { layer: 'mould', direction: 'x', diameter: 12, grade: '500E', spacing: 200 },
    {
      bar: 'trimmer',
      diameter: 16,
      grade: '500E',
      path: [
        [700, 2200],
        [2100, 2200],
      ],
      layer: 'mould',
    },
  ],
  lap: { length: 1200 },
  inserts: [{ mark: 'A', at: [1242, 621], kind: 'face' }],
  lifting: { strength: 15, load: 25, reference: 'lifting design LD-3', by: 'designer' },
}

function issuesOf(value: unknown): readonly { path: string; found: string; expected: string }[] {
  try {
    const misplaced = misplacedInserts(panelOf(parseDrawing(value, 'W1.json'), 'W1.json'))
    if (misplaced.length > 0) throw new InputError(misplaced, 'W1.json')
  } catch (error) {
    if (error instanceof InputError) {
      expect(error.from).toBe('W1.json')
      return error.issues
    }
    throw error
  }
  return []
}

describe('a drawing', () => {
  it('needs only format, mark, outline, thickness and strength', () => {
    expect(issuesOf(PLAIN)).toEqual([])
  })

  it('with an insert in the door is read and planned, but the insert is out of place', () => {
    expect(panelOf(parseDrawing(WHOLE)).mass).toBeCloseTo(5962.5, 9)
    expect(issuesOf(WHOLE)).toEqual([
      {
        path: 'inserts[0].at',
        found: '[1242, 621] for face insert A',
        expected: 'a point inside the concrete',
      },
    ])
    expect(issuesOf({ ...WHOLE, inserts: [{ mark: 'A', at: [2442, 621], kind: 'face' }] })).toEqual([])
  })

  it('is read from text with a byte-order mark', () => {
    expect(readDrawing(`\uFEFF${JSON.stringify(PLAIN)}`).mark).toBe('W1')
  })

  it('that is not JSON is refused with the place', () => {
    expect(() => readDrawing('{', 'W9.json')).toThrow(/W9\.json.*not JSON/)
  })

  const square = (x: number, y: number, size = 500) => [
    [x, y],
    [x + size, y],
    [x + size, y + size],
    [x, y + size],
  ]
  const insert = (at: number[], kind = 'face') => ({ inserts: [{ mark: 'A', at, kind }] })
  const bar = (fields: object) => ({ steel: [{ bar: 'B', diameter: 12, grade: '500E', ...fields }] })

  it.each<[string, object, string]>([
    ['nothing at all', { format: undefined }, 'format'],
    ['a format of another version', { format: 'castwright.drawing/2' }, 'format'],
    ['no mark', { mark: '' }, 'mark'],
    ['a thickness of nothing', { thickness: 0 }, 'thickness'],
    ['a thickness below nothing', { thickness: -150 }, 'thickness'],
    ['a thickness in words', { thickness: '150' }, 'thickness'],
    ['a thickness that is not finite', { thickness: Number.POSITIVE_INFINITY }, 'thickness'],
    ['a thickness that is not a number', { thickness: Number.NaN }, 'thickness'],
    [
      'two corners',
      {
        outline: [
          [0, 0],
          [6000, 0],
        ],
      },
      'outline',
    ],
    [
      'a corner of three numbers',
      {
        outline: [
          [0, 0, 0],
          [6000, 0],
          [6000, 3000],
        ],
      },
      'outline[0]',
    ],
    [
      'a corner a thousand kilometres out',
      {
        outline: [
          [0, 0],
          [1e9, 0],
          [6000, 3000],
        ],
      },
      'outline[1][0]',
    ],
    [
      'crossing edges',
      {
        outline: [
          [0, 0],
          [6000, 3000],
          [6000, 0],
          [0, 3000],
        ],
      },
      'outline[2]',
    ],
    ['the first corner again at the end', { outline: [...PLAIN.outline, [0, 0]] }, 'outline[0]'],
    [
      'corners on one line',
      {
        outline: [
          [0, 0],
          [3000, 0],
          [6000, 0],
        ],
      },
      'outline[2]',
    ],
    ['no strength', { concrete: {} }, 'concrete.strength'],
    ['a density below nothing', { concrete: { strength: 40, density: -1 } }, 'concrete.density'],
    ['an unknown field', { colour: 'grey' }, 'colour'],
    ['an unknown word for the code', { code: 'uk' }, 'code'],
    [
      'an opening that crosses itself',
      {
        openings: [
          {
            mark: 'D',
            outline: [
              [1000, 1000],
              [2000, 2000],
              [2000, 1000],
              [1000, 2000],
            ],
          },
        ],
      },
      'openings[0].outline[2]',
    ],
    [
      'two openings of one mark',
      {
        openings: [
          { mark: 'D', outline: square(1000, 1000) },
          { mark: 'D', outline: square(3000, 1000) },
        ],
      },
      'openings[1].mark',
    ],
    ['an opening outside', { openings: [{ mark: 'D', outline: square(7000, 0) }] }, 'openings[0].outline'],
    [
      'an opening that only touches from outside',
      { openings: [{ mark: 'D', outline: square(6000, 0) }] },
      'openings[0].outline',
    ],
    [
      'an opening that leaves nothing',
      {
        openings: [
          {
            mark: 'D',
            outline: [
              [-1, -1],
              [6001, -1],
              [6001, 3001],
              [-1, 3001],
            ],
          },
        ],
      },
      'openings',
    ],
    [
      'an opening that cuts the panel in two',
      {
        openings: [
          {
            mark: 'D',
            outline: [
              [2000, -1],
              [3000, -1],
              [3000, 3001],
              [2000, 3001],
            ],
          },
        ],
      },
      'openings',
    ],
    [
      'a mat of an unknown layer',
      { steel: [{ layer: 'middle', direction: 'x', diameter: 12, grade: '500E', spacing: 200 }] },
      'steel[0].layer',
    ],
    [
      'a mat of bars side by side',
      { steel: [{ layer: 'top', direction: 'x', diameter: 12, grade: '500E', spacing: 12 }] },
      'steel[0].spacing',
    ],
    [
      'a bar with path and legs',
      bar({
        path: [
          [0, 0],
          [1, 1],
        ],
        legs: [500],
      }),
      'steel[0]',
    ],
    ['a bar with neither', bar({}), 'steel[0]'],
    [
      'a bar of two bends and three turns',
      bar({ legs: [500, 500, 500], turns: [90, 90, 90] }),
      'steel[0].turns',
    ],
    ['half a bar', bar({ legs: [500], count: 0.5 }), 'steel[0].count'],
    [
      'two inserts of one mark',
      {
        inserts: [
          { mark: 'A', at: [1000, 1000], kind: 'face' },
          { mark: 'A', at: [2000, 1000], kind: 'face' },
        ],
      },
      'inserts[1].mark',
    ],
    ['an insert of an unknown kind', insert([1000, 1000], 'side'), 'inserts[0].kind'],
    ['a face insert outside', insert([7000, 1000]), 'inserts[0].at'],
    ['a face insert on the edge', insert([6000, 1000]), 'inserts[0].at'],
    ['an edge insert 1.1 mm off its edge', insert([3000, 2998.9], 'edge'), 'inserts[0].at'],
    ['an edge insert in the middle', insert([3000, 1500], 'edge'), 'inserts[0].at'],
    [
      'a lifting design of no load',
      { lifting: { strength: 15, load: 0, reference: 'LD', by: 'N' } },
      'lifting.load',
    ],
    ['a lifting design of nobody', { lifting: { strength: 15, load: 25, reference: 'LD' } }, 'lifting.by'],
  ])('with %s is refused and names the field', (_, change, path) => {
    const issues = issuesOf({ ...PLAIN, ...change })
    expect(issues.map((issue) => issue.path)).toContain(path)
    for (const issue of issues) {
      expect(issue.found).not.toBe('')
      expect(issue.expected).not.toBe('')
    }
  })

  it('may have edge inserts on an edge, within 1 mm, and on the edge of an opening', () => {
    expect(issuesOf({ ...PLAIN, ...insert([3000, 3000], 'edge') })).toEqual([])
    expect(issuesOf({ ...PLAIN, ...insert([3000, 2999], 'edge') })).toEqual([])
    const open = { openings: [{ mark: 'D', outline: square(1000, 1000) }] }
    expect(issuesOf({ ...PLAIN, ...open, ...insert([1000, 1200], 'edge') })).toEqual([])
  })

  it('of too many corners in all is refused before anything is computed', () => {
    const ring = (y: number) => Array.from({ length: 2000 }, (_, k) => [k, y + (k % 2)])
    const openings = Array.from({ length: 11 }, (_, k) => ({ mark: `D${k}`, outline: ring(k * 10) }))
    expect(issuesOf({ ...PLAIN, openings })[0]?.expected).toBe('at most 20000 corners')
  })
})

describe('JSON Schema', () => {
  it('of drawing, yard and job say draft, format and what is required', () => {
    for (const [schema, format] of [
      [drawingJsonSchema(), 'castwright.drawing/1'],
      [yardJsonSchema(), 'castwright.yard/1'],
      [jobJsonSchema(), 'castwright.job/1'],
    ] as const) {
      expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
      expect(schema).toMatchObject({ type: 'object', additionalProperties: false })
      expect(schema).toHaveProperty('properties.format.const', format)
    }
    expect(drawingJsonSchema().required).toEqual(['format', 'mark', 'outline', 'thickness', 'concrete'])
  })
})

describe('a yard', () => {
  const YARD = { format: 'castwright.yard/1', name: 'Kettle Lane', code: 'eu', timezone: 'Europe/Dublin' }
  const crane = { mark: 'C1', chart: [[5000, 10_000]] }

  it.each<[string, object, RegExp]>([
    ['an unknown time zone', { timezone: 'Mars/Base' }, /timezone/],
    ['two cranes of one mark', { cranes: [crane, crane] }, /cranes\[1\]\.mark/],
    [
      'rigging with the mark of a crane',
      { cranes: [crane], rigging: [{ mark: 'C1', legs: 4, length: 4000, rated: 8000 }] },
      /rigging\[0\]\.mark/,
    ],
    ['half a leg', { rigging: [{ mark: 'R1', legs: 1.5, length: 4000, rated: 8000 }] }, /rigging\[0\]\.legs/],
    ['a day that does not exist', { cranes: [{ ...crane, due: '2026-02-30' }] }, /cranes\[0\]\.due/],
  ])('with %s is refused', (_, change, message) => {
    expect(() => parseYard({ ...YARD, ...change })).toThrow(message)
  })

  it('needs no more than name, code and time zone', () => {
    expect(parseYard(YARD).name).toBe('Kettle Lane')
  })
})

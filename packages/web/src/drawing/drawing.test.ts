import { parseDrawing } from '@castwright/engine/panel'
import { emptyPanelFacts } from '@castwright/engine/steps'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addBar } from './acts/add-bar.ts'
import { addCorner } from './acts/add-corner.ts'
import { addInsert } from './acts/add-insert.ts'
import { addMat } from './acts/add-mat.ts'
import { addOpening } from './acts/add-opening.ts'
import { clearDraft } from './acts/clear-draft.ts'
import { removeCorner } from './acts/remove-corner.ts'
import { removeInsert } from './acts/remove-insert.ts'
import { removeOpening } from './acts/remove-opening.ts'
import { removeSteel } from './acts/remove-steel.ts'
import { setCorner } from './acts/set-corner.ts'
import { setField } from './acts/set-field.ts'
import { setHandling } from './acts/set-handling.ts'
import { setInsert } from './acts/set-insert.ts'
import { setOpening } from './acts/set-opening.ts'
import { setSteel } from './acts/set-steel.ts'
import { shapeOpening } from './acts/shape-opening.ts'
import { shapeOutline } from './acts/shape-outline.ts'
import { takeDrawing } from './acts/take-drawing.ts'
import { type Draft, draftOf, EMPTY_DRAFT } from './draft.ts'
import { readDraft } from './draft-drawing.ts'
import { readDrawingFile } from './drawing-file.ts'
import { fieldOf } from './field-of.ts'
import { EMPTY_HANDLING, FACTOR_STAGES, marksOf } from './handling-draft.ts'
import { type History, perform, redo, startHistory, undo } from './history.ts'
import { jsonFault } from './json-place.ts'
import { forgetDraft, keepDraft, readKeptDraft } from './kept-draft.ts'
import { pictureDrawing } from './picture-drawing.ts'
import { nextRevision } from './revision.ts'
import { saveDrawing } from './save-drawing.ts'

/** A panel with a door and a window, every part typed. */
const TYPED: Draft = {
  ...EMPTY_DRAFT,
  job: 'J1',
  mark: 'W9',
  length: '6000',
  width: '3000',
  thickness: '150',
  strength: '40',
  coverMould: '30',
  coverTop: '30',
  coverEdge: '30',
  openings: [
    { mark: 'D1', form: 'box', x: '900', y: '0', width: '1000', height: '2100', corners: [] },
    { mark: 'N1', form: 'box', x: '3400', y: '900', width: '1600', height: '1200', corners: [] },
  ],
  steel: [
    { kind: 'mat', layer: 'mould', direction: 'x', diameter: '12', grade: '500E', spacing: '200' },
    {
      kind: 'bar',
      bar: 'T1',
      layer: 'mould',
      role: 'main',
      diameter: '16',
      grade: '500E',
      form: 'path',
      corners: [
        { x: '700', y: '2200' },
        { x: '2100', y: '2200' },
      ],
      legs: '',
      turns: '',
      inside: '',
      count: '2',
      tied: '',
    },
  ],
  lap: '1200',
  inserts: [{ mark: 'A', x: '500', y: '2500', kind: 'face', type: '' }],
  liftStrength: '15',
  liftLoad: '25',
  liftReference: 'LD-3',
  liftBy: 'designer',
}

function faultAt(draft: Draft, field: string): string | undefined {
  return readDraft(draft).faults.get(field)
}

describe('a draft as a drawing', () => {
  test('typed in full it is the drawing that it says', () => {
    const { drawing, faults } = readDraft(TYPED)
    expect([...faults]).toEqual([])
    expect(drawing).toMatchObject({
      mark: 'W9',
      outline: [
        [0, 0],
        [6000, 0],
        [6000, 3000],
        [0, 3000],
      ],
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
        { mark: 'N1' },
      ],
      lap: { length: 1200 },
      lifting: { strength: 15, load: 25, reference: 'LD-3', by: 'designer' },
    })
    expect(drawing?.concrete).toEqual({ strength: 40 })
  })

  test('any drawing goes into the form and comes out the same', () => {
    const drawing = parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'G1',
      revision: 'C',
      code: 'eu',
      thickness: 180,
      outline: [
        [0, 0],
        [8000, 0],
        [8000, 2700],
        [4000, 4000.5],
        [0, 2700],
      ],
      openings: [
        {
          mark: 'R1',
          outline: [
            [3000, 1000],
            [3600, 1200],
            [3300, 1900],
          ],
        },
      ],
      concrete: { strength: 40, density: 2450, aggregate: 16 },
      cover: { mould: 30 },
      steel: [
        { layer: 'top', direction: 'y', diameter: 10, grade: 'B500B', spacing: 150 },
        {
          bar: 'U1',
          diameter: 12,
          grade: 'B500B',
          role: 'stirrup',
          legs: [200, 110, 200],
          turns: [90],
          inside: 48,
          count: 12,
        },
      ],
      inserts: [{ mark: 'A', at: [2000.5, 1500], kind: 'face', type: 'K27' }],
      rigging: 'R4',
    })
    expect(readDraft(draftOf(drawing)).drawing).toEqual(drawing)
  })

  test('an empty form names what every drawing needs', () => {
    const { drawing, faults } = readDraft(EMPTY_DRAFT)
    expect(drawing).toBeNull()
    expect([...faults.keys()].sort()).toEqual([
      'concrete.strength',
      'mark',
      'outline.length',
      'outline.width',
      'thickness',
    ])
  })
})

describe('what is wrong stands at its field', () => {
  test('a number that is none', () => {
    expect(faultAt({ ...TYPED, thickness: 'thick' }, 'thickness')).toBe('Found thick, expected a number.')
  })

  test('a size that is not above 0', () => {
    expect(faultAt({ ...TYPED, length: '-6000' }, 'outline.length')).toContain('above 0')
    expect(faultAt({ ...TYPED, thickness: '0' }, 'thickness')).toContain('above 0')
  })

  test('an opening whose width is missing names the width and nothing else', () => {
    const draft = setOpening.next(TYPED, { index: 1, field: 'width', text: '' })
    expect([...readDraft(draft).faults.keys()]).toEqual(['openings[1].width'])
  })

  test('two openings of one mark', () => {
    expect(
      faultAt(setOpening.next(TYPED, { index: 1, field: 'mark', text: 'D1' }), 'openings[1].mark'),
    ).toContain('once')
  })

  test('an outline that crosses itself names the corner', () => {
    const corners = [
      ['0', '0'],
      ['6000', '0'],
      ['0', '3000'],
      ['6000', '3000'],
    ].map(([x = '', y = '']) => ({ x, y }))
    const { faults } = readDraft({ ...TYPED, form: 'corners', corners, openings: [], inserts: [] })
    expect([...faults.keys()].every((field) => /^outline\[\d\]\.[xy]$/.test(field))).toBe(true)
    expect([...faults.values()].join(' ')).toContain('simple polygon')
  })

  test('openings that cut the panel in two', () => {
    const draft = {
      ...TYPED,
      openings: [
        { mark: 'C1', form: 'box' as const, x: '2000', y: '-10', width: '100', height: '3100', corners: [] },
      ],
    }
    expect(readDraft(draft).drawing).toBeNull()
    expect([...readDraft(draft).faults.values()].join(' ')).toContain('one piece')
  })

  test('a lifting design of which a part is missing', () => {
    expect([...readDraft({ ...TYPED, liftBy: '' }).faults.keys()]).toEqual(['lifting.by'])
  })

  test('spacing of a mat, legs of a bar', () => {
    expect(
      faultAt(setSteel.next(TYPED, { index: 0, field: 'spacing', text: '10' }), 'steel[0].spacing'),
    ).toBeDefined()
    const legs = setSteel.next(setSteel.next(TYPED, { index: 1, field: 'form', text: 'legs' }), {
      index: 1,
      field: 'legs',
      text: '200 x 200',
    })
    expect(faultAt(legs, 'steel[1].legs')).toContain('Found x')
  })

  test('every path that a drawing can be refused by belongs to a field of the form', () => {
    const paths: readonly (readonly [string, string])[] = [
      ['outline', 'outline.length'],
      ['outline[1]', 'outline.length'],
      ['outline[2][1]', 'outline.width'],
      ['outline[3]', 'outline.width'],
      ['openings[0].outline[0][0]', 'openings[0].x'],
      ['openings[0].outline[0][1]', 'openings[0].y'],
      ['openings[0].outline[1][0]', 'openings[0].width'],
      ['openings[0].outline[2][1]', 'openings[0].height'],
      ['openings[0].mark', 'openings[0].mark'],
      ['concrete.strength', 'concrete.strength'],
      ['steel[0].spacing', 'steel[0].spacing'],
      ['steel[1]', 'steel[1].bar'],
      ['steel[1].path[0][1]', 'steel[1].path[0].y'],
      ['steel[1].legs[2]', 'steel[1].legs'],
      ['inserts[0].at', 'inserts[0].x'],
      ['inserts[0].at[1]', 'inserts[0].y'],
      ['lifting.load', 'lifting.load'],
      ['handling.turn.inserts[2]', 'handling.turn.inserts'],
      ['handling.store.lines', 'handling.store.lines[0]'],
      ['handling.travel.lines[1]', 'handling.travel.lines[1]'],
      ['handling.factors.store', 'handling.factors.store'],
      ['openings', ''],
      ['', ''],
    ]
    for (const [path, field] of paths) expect([path, fieldOf(path, TYPED)]).toEqual([path, field])
    const corners = shapeOpening.next(shapeOutline.next(TYPED, { form: 'corners' }), {
      index: 0,
      form: 'corners',
    })
    expect(fieldOf('outline[2][1]', corners)).toBe('outline[2].y')
    expect(fieldOf('openings[0].outline[3]', corners)).toBe('openings[0].outline[3].x')
  })
})

describe('how the panel is handled', () => {
  const size = fc.double({ min: 1, max: 9000, noNaN: true }).map((value) => Math.round(value * 10) / 10)
  const lying = fc.record(
    {
      as: fc.constantFrom('flat', 'upright'),
      across: fc.constantFrom('x', 'y'),
      lines: fc.tuple(size, size).filter(([a, b]) => Math.abs(a - b) > 2),
      lean: fc.integer({ min: 0, max: 30 }),
    },
    { requiredKeys: ['as'] },
  )
  const marks = ['A', 'B 2', '"C"', 'D\\', 'é,;']
  const handlings = fc.record(
    {
      turn: fc.record(
        {
          about: fc.constantFrom('bottom', 'top', 'left', 'right'),
          inserts: fc.uniqueArray(fc.constantFrom(...marks), { minLength: 1 }),
          rigging: fc.constantFrom('R2', 'R 4'),
        },
        { requiredKeys: ['about'] },
      ),
      store: lying,
      travel: lying,
      factors: fc
        .record(
          Object.fromEntries(
            FACTOR_STAGES.map((stage) => [stage, fc.double({ min: 0.1, max: 4, noNaN: true })]),
          ),
          { requiredKeys: [] },
        )
        .map((factors) => JSON.parse(JSON.stringify(factors)))
        .filter((factors) => Object.values(factors).every((value) => !String(value).includes('e'))),
    },
    { requiredKeys: [] },
  )

  test('close steel that the drawing file says is kept, though the form has no fields for it', () => {
    const plain = readDraft(TYPED).drawing as NonNullable<ReturnType<typeof readDraft>['drawing']>
    const outline: [number, number][] = [
      [100, 100],
      [600, 100],
      [600, 400],
    ]
    const drawing = { ...plain, congested: [{ mark: 'plates', outline, share: 0.5 }] }
    expect(readDraft(draftOf(drawing)).drawing).toEqual(drawing)
  })

  test('any handling goes into the form and comes out the same, nothing dropped (seed 20261126)', () => {
    const { handling: _, ...plain } = readDraft(TYPED).drawing as NonNullable<
      ReturnType<typeof readDraft>['drawing']
    >
    fc.assert(
      fc.property(handlings, (handling) => {
        const drawing = parseDrawing({
          ...plain,
          inserts: marks.map((mark, index) => ({ mark, at: [500 + index * 40, 2500], kind: 'face' })),
          handling,
        })
        const draft = draftOf(drawing)
        const read = readDraft(draft)
        expect([...read.faults]).toEqual([])
        const said = Object.entries(handling).filter(([, part]) => Object.keys(part ?? {}).length > 0)
        expect(read.drawing?.handling ?? {}).toEqual(Object.fromEntries(said))
        expect(draftOf(read.drawing as typeof drawing)).toEqual(draft)
      }),
      { seed: 20261126, numRuns: 200 },
    )
  })

  test('a form that says nothing of it makes a drawing that says nothing of it', () => {
    expect(readDraft(TYPED).drawing).not.toHaveProperty('handling')
  })

  test('typed field by field', () => {
    const draft = [
      { of: 'turn', field: 'about', text: 'bottom' },
      { of: 'turn', field: 'inserts', text: ' A ' },
      { of: 'store', field: 'as', text: 'upright' },
      { of: 'store', field: 'lean', text: '6,5' },
      { of: 'factors', field: 'turn', text: '1.6' },
    ].reduce(
      (before, input) => setHandling.next(before, input as Parameters<typeof setHandling.next>[1]),
      TYPED,
    )
    expect(readDraft(draft).drawing?.handling).toEqual({
      turn: { about: 'bottom', inserts: ['A'] },
      store: { as: 'upright', lean: 6.5 },
      factors: { turn: 1.6 },
    })
  })

  test.each([
    ['marks without the edge', { inserts: 'A' }, 'handling.turn.about'],
    ['an insert that is not drawn', { about: 'bottom', inserts: 'A Q' }, 'handling.turn.inserts'],
    ['timbers without how it is kept', { store: { first: '1000', second: '5000' } }, 'handling.store.as'],
    ['one timber', { travel: { as: 'flat', first: '1000' } }, 'handling.travel.lines[1]'],
    [
      'two timbers at one place',
      { store: { as: 'flat', first: '9', second: '9' } },
      'handling.store.lines[0]',
    ],
    [
      'a timber that is no number',
      { store: { as: 'flat', first: '9', second: 'x' } },
      'handling.store.lines[1]',
    ],
    ['a lean beyond 30°', { store: { as: 'upright', lean: '31' } }, 'handling.store.lean'],
    ['a factor of 0', { factors: { hang: '0' } }, 'handling.factors.hang'],
    ['a factor in words', { factors: { erect: 'double' } }, 'handling.factors.erect'],
  ])('%s: told at its field', (_, change: object, field) => {
    const [merged] = [change].map((part) =>
      Object.fromEntries(
        Object.entries(EMPTY_HANDLING).map(([name, empty]) => {
          const typed = (part as Record<string, unknown>)[name] ?? empty
          return [name, typeof typed === 'object' ? { ...(empty as object), ...(typed as object) } : typed]
        }),
      ),
    )
    const draft = { ...TYPED, handling: merged as unknown as Draft['handling'] }
    expect([...readDraft(draft).faults.keys()]).toEqual([field])
    expect(readDraft(draft).drawing).toBeNull()
  })

  test('marks are parted by spaces, quotes keep one together', () => {
    expect(marksOf('  A  B "C 1" "D')).toEqual(['A', 'B', 'C 1', '"D'])
    expect(marksOf(' ')).toEqual([])
  })
})

describe('acts', () => {
  test('going from a rectangle to corners keeps the shape', () => {
    const corners = shapeOpening.next(shapeOutline.next(TYPED, { form: 'corners' }), {
      index: 0,
      form: 'corners',
    })
    expect(readDraft(corners).drawing).toEqual(readDraft(TYPED).drawing)
  })

  test('a corner added half-way and moved makes a gable', () => {
    const corners = shapeOutline.next({ ...TYPED, openings: [], inserts: [], steel: [] }, { form: 'corners' })
    const added = addCorner.next(corners, { ring: { of: 'outline' }, after: 2 })
    expect(added.corners[3]).toEqual({ x: '3000', y: '3000' })
    const gable = setCorner.next(added, { ring: { of: 'outline' }, corner: 3, axis: 'y', text: '4000' })
    expect(readDraft(gable).drawing?.outline[3]).toEqual([3000, 4000])
    expect(removeCorner.next(gable, { ring: { of: 'outline' }, corner: 3 }).corners).toEqual(corners.corners)
  })

  test('new things get marks that are free', () => {
    let draft = removeOpening.next(addOpening.next(TYPED, { letter: 'D' }), { index: 0 })
    expect(draft.openings.map(({ mark }) => mark)).toEqual(['N1', 'D2'])
    draft = addOpening.next(draft, { letter: 'D' })
    expect(draft.openings.at(-1)?.mark).toBe('D1')
    expect(addInsert.next(TYPED, null).inserts.map(({ mark }) => mark)).toEqual(['A', 'B'])
  })

  test('steel and inserts are added, changed and removed by place', () => {
    const added = addBar.next(addMat.next(EMPTY_DRAFT, null), null)
    expect(added.steel.map(({ kind }) => kind)).toEqual(['mat', 'bar'])
    expect(removeSteel.next(added, { index: 0 }).steel.map(({ kind }) => kind)).toEqual(['bar'])
    expect(setSteel.next(added, { index: 0, field: 'legs', text: '1' })).toEqual(added)
    const insert = setInsert.next(addInsert.next(EMPTY_DRAFT, null), { index: 0, field: 'x', text: '12' })
    expect(insert.inserts[0]?.x).toBe('12')
    expect(removeInsert.next(insert, { index: 0 }).inserts).toEqual([])
  })

  test('a file fills the form and keeps the job that was typed', () => {
    const { drawing } = readDraft(TYPED)
    const { job: _, ...withoutJob } = drawing as NonNullable<typeof drawing>
    expect(takeDrawing.next({ ...EMPTY_DRAFT, job: 'J7' }, { drawing: withoutJob }).job).toBe('J7')
  })
})

describe('taking back', () => {
  test('letters typed into one field are one step; another field is another', () => {
    let history = startHistory(EMPTY_DRAFT)
    for (const text of ['6', '60', '600']) history = perform(history, setField, { field: 'length', text })
    history = perform(history, setField, { field: 'width', text: '3' })
    expect(history.past).toHaveLength(2)
    history = undo(history)
    expect([history.draft.length, history.draft.width]).toEqual(['600', ''])
    expect(undo(history).draft).toEqual(EMPTY_DRAFT)
    expect(redo(history).draft.width).toBe('3')
  })

  test('a form that was cleared comes back', () => {
    const cleared = perform(startHistory(TYPED), clearDraft, null)
    expect(cleared.draft.length).toBe('')
    expect(undo(cleared).draft).toEqual(TYPED)
  })

  test('any row of acts is taken back to the start and done again', () => {
    type Do = (history: History) => History
    const acts: fc.Arbitrary<Do> = fc.oneof(
      fc.string().map(
        (text): Do =>
          (history) =>
            perform(history, setField, { field: 'length', text }),
      ),
      fc.constant<Do>((history) => perform(history, addOpening, { letter: 'N' })),
      fc.nat(3).map(
        (index): Do =>
          (history) =>
            perform(history, removeOpening, { index }),
      ),
      fc.constant<Do>((history) => perform(history, addMat, null)),
      fc.constant<Do>((history) => perform(history, clearDraft, null)),
    )
    fc.assert(
      fc.property(fc.array(acts, { maxLength: 30 }), (row) => {
        const start = startHistory(TYPED)
        const end = row.reduce((history, act) => act(history), start)
        let back = end
        while (back.past.length > 0) back = undo(back)
        expect(back.draft).toEqual(TYPED)
        let again = back
        while (again.future.length > 0) again = redo(again)
        expect(again.draft).toEqual(end.draft)
      }),
      { seed: 20261125, numRuns: 100 },
    )
  })
})

describe('a drawing file', () => {
  test('of broken JSON is refused with line and column', () => {
    const read = readDrawingFile(
      '{\n  "format": "castwright.drawing/1",\n  "mark": "W1"\n  "thickness": 150\n}',
    )
    expect(read).toEqual({
      ok: false,
      faults: [{ place: 'line 4, column 3', found: '"thickness": 150', expected: 'a comma or }' }],
    })
  })

  test('that is no drawing names every place with what was found', () => {
    const read = readDrawingFile(
      '{"format":"castwright.drawing/1","mark":"W1","thickness":-1,"outline":[[0,0],[1,0]],"concrete":{}}',
    )
    const places = read.ok ? [] : read.faults.map(({ place }) => place)
    expect(places).toEqual(expect.arrayContaining(['thickness', 'outline', 'concrete.strength']))
  })

  test('that is good comes in', () => {
    const read = readDrawingFile(JSON.stringify(readDraft(TYPED).drawing))
    expect(read.ok ? read.drawing.mark : null).toBe('W9')
  })

  test('the place is found exactly where JSON ends, and only where it does', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.nat(4), (value, indent) => {
        expect(jsonFault(JSON.stringify(value, null, indent))).toBeNull()
      }),
      { seed: 1, numRuns: 300 },
    )
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), (text) => {
        let good = true
        try {
          JSON.parse(text)
        } catch {
          good = false
        }
        expect(jsonFault(text) === null).toBe(good)
      }),
      { seed: 2, numRuns: 500 },
    )
    expect(jsonFault('[1,\n 2,]')).toMatchObject({ line: 2, column: 4 })
    expect(jsonFault('{"a": "b')).toMatchObject({
      line: 1,
      column: 9,
      expected: 'text that ends with a quote',
    })
    expect(jsonFault('{"a": 1} x')).toMatchObject({ column: 10, expected: 'the end of the file' })
    expect(jsonFault('')).toMatchObject({ line: 1, column: 1, found: 'the end of the file' })
  })
})

describe('the picture of a draft', () => {
  test('stands as soon as the outline closes, without what is not complete', () => {
    expect(pictureDrawing({ ...EMPTY_DRAFT, length: '6000' })).toBeNull()
    const drawn = pictureDrawing({
      ...addOpening.next({ ...EMPTY_DRAFT, length: '6000', width: '3000' }, { letter: 'D' }),
    })
    expect(drawn?.outline).toHaveLength(4)
    expect(drawn?.openings).toEqual([])
  })

  test('shows each opening and insert that is complete', () => {
    const drawn = pictureDrawing({
      ...TYPED,
      inserts: [...TYPED.inserts, { mark: 'B', x: '', y: '1', kind: 'face', type: '' }],
    })
    expect(drawn?.openings).toHaveLength(2)
    expect(drawn?.inserts?.map(({ mark }) => mark)).toEqual(['A'])
  })
})

describe('a draft kept on the device', () => {
  const map = new Map<string, string>()
  const storage = {
    getItem: (key: string) => map.get(key) ?? null,
    setItem: (key: string, text: string) => void map.set(key, text),
    removeItem: (key: string) => void map.delete(key),
  }

  test('comes back as it was typed, panel by panel, until it is recorded', () => {
    keepDraft(storage, 'new', TYPED)
    expect(readKeptDraft(storage, 'new')).toEqual(TYPED)
    expect(readKeptDraft(storage, 'J1/W1')).toBeNull()
    forgetDraft(storage, 'new')
    expect(readKeptDraft(storage, 'new')).toBeNull()
  })

  test('from before the form asked how a panel is handled comes back and says nothing of it', () => {
    const { handling: _, ...before } = TYPED
    storage.setItem('castwright.draft/1:new', JSON.stringify(before))
    expect(readKeptDraft(storage, 'new')).toEqual(TYPED)
  })

  test('of another form, or in a storage that is shut, is none', () => {
    const full = () => {
      throw new Error('full')
    }
    for (const text of [
      '{',
      '7',
      '{"job":"J"}',
      JSON.stringify({ ...TYPED, openings: 'none' }),
      JSON.stringify({ ...TYPED, handling: { about: '' } }),
    ]) {
      storage.setItem('castwright.draft/1:new', text)
      expect(readKeptDraft(storage, 'new')).toBeNull()
    }
    expect(readKeptDraft({ ...storage, getItem: full }, 'new')).toBeNull()
    expect(() => keepDraft({ ...storage, setItem: full }, 'new', TYPED)).not.toThrow()
  })
})

describe('saving', () => {
  const drawing = readDraft(TYPED).drawing as NonNullable<ReturnType<typeof readDraft>['drawing']>
  const facts = { ...emptyPanelFacts({ job: 'J1', mark: 'W9' }), revision: 'A', drawing }

  test('a new panel becomes an entry about job and mark', () => {
    const saved = saveDrawing({ drawing, job: 'J1', facts: null, revises: false })
    expect(saved.ok ? saved.draft : null).toMatchObject({
      kind: 'drawing',
      subject: { kind: 'panel', id: 'J1/W9' },
      revision: 'A',
    })
  })

  test('a mark that is taken, a revision that is in force, a missing job are told at their field', () => {
    expect(saveDrawing({ drawing, job: 'J1', facts, revises: false })).toMatchObject({
      ok: false,
      field: 'mark',
    })
    expect(saveDrawing({ drawing, job: 'J1', facts, revises: true })).toMatchObject({
      ok: false,
      field: 'revision',
    })
    expect(saveDrawing({ drawing, job: ' ', facts: null, revises: false })).toMatchObject({
      ok: false,
      field: 'job',
    })
    expect(saveDrawing({ drawing, job: 'J/1', facts: null, revises: false })).toMatchObject({
      ok: false,
      field: 'job',
    })
  })

  test('the next revision follows the one in force', () => {
    expect(['A', 'Z', 'AZ', '3', 'P09', 'first', '', null].map(nextRevision)).toEqual([
      'B',
      'AA',
      'BA',
      '4',
      'P10',
      'first.1',
      'A',
      'A',
    ])
  })
})

import { parseDrawing } from '@castwright/engine/panel'
import { describe, expect, test } from 'vitest'
import { addCorner } from './acts/add-corner.ts'
import { addDuct } from './acts/add-duct.ts'
import { addVoid } from './acts/add-void.ts'
import { removeDuct } from './acts/remove-duct.ts'
import { removeVoid } from './acts/remove-void.ts'
import { setCorner } from './acts/set-corner.ts'
import { setDuct } from './acts/set-duct.ts'
import { setVoid } from './acts/set-void.ts'
import { shapeVoid } from './acts/shape-void.ts'
import { type Draft, draftOf, EMPTY_DRAFT } from './draft.ts'
import { readDraft } from './draft-drawing.ts'
import { type History, perform, startHistory, undo } from './history.ts'
import { keepDraft, readKeptDraft } from './kept-draft.ts'
import { pictureDrawing } from './picture-drawing.ts'

const PLAIN: Draft = {
  ...EMPTY_DRAFT,
  job: 'J1',
  mark: 'W9',
  length: '6000',
  width: '3000',
  thickness: '200',
  strength: '40',
}

/** A former and a duct typed in the form, field by field. */
function typed(): History {
  let history = startHistory(PLAIN)
  history = perform(history, addVoid, null)
  const former = {
    x: '2500',
    y: '1000',
    width: '1000',
    height: '600',
    depth: '100',
    above: '50',
    density: '20',
  } as const
  for (const [field, text] of Object.entries(former))
    history = perform(history, setVoid, { index: 0, field: field as keyof typeof former, text })
  history = perform(history, addDuct, null)
  for (const [field, text] of [
    ['diameter', '60'],
    ['height', '100'],
  ] as const)
    history = perform(history, setDuct, { index: 0, field, text })
  for (const [corner, x] of [
    [0, '0'],
    [1, '6000'],
  ] as const) {
    history = perform(history, setCorner, { ring: { of: 'duct', index: 0 }, corner, axis: 'x', text: x })
    history = perform(history, setCorner, { ring: { of: 'duct', index: 0 }, corner, axis: 'y', text: '2500' })
  }
  return history
}

const faultOf = (draft: Draft, field: string) => readDraft(draft).faults.get(field)

describe('void formers and ducts in the form of a drawing', () => {
  test('typed in full they are the drawing that they say, and are in its picture', () => {
    const { draft } = typed()
    const { drawing, faults } = readDraft(draft)
    expect([...faults]).toEqual([])
    expect(drawing?.voids).toEqual([
      {
        mark: 'V1',
        outline: [
          [2500, 1000],
          [3500, 1000],
          [3500, 1600],
          [2500, 1600],
        ],
        depth: 100,
        above: 50,
        density: 20,
      },
    ])
    expect(drawing?.ducts).toEqual([
      {
        mark: 'P1',
        line: [
          [0, 2500],
          [6000, 2500],
        ],
        diameter: 60,
        height: 100,
      },
    ])
    const picture = pictureDrawing(draft)
    expect([picture?.voids?.[0]?.mark, picture?.ducts?.[0]?.diameter]).toEqual(['V1', 60])
  })

  test('one that is not complete is not drawn, the others are', () => {
    const { draft } = perform(typed(), addVoid, null)
    expect(draft.voids[1]?.mark).toBe('V2')
    expect(pictureDrawing(draft)?.voids).toHaveLength(1)
    expect(faultOf(draft, 'voids[1].depth')).toBe('Missing: a number.')
  })

  test('any drawing with them goes into the form and comes out the same', () => {
    const drawing = parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'T9',
      revision: 'B',
      outline: [
        [0, 0],
        [6000, 0],
        [6000, 3000],
        [0, 3000],
      ],
      thickness: 260,
      concrete: { strength: 50 },
      voids: [
        {
          mark: 'V1',
          outline: [
            [2500, 1000],
            [3500, 1200],
            [2600, 1900],
          ],
          depth: 80,
          above: 90,
          mass: 2,
          section: 0.7,
        },
        {
          mark: 'V2',
          outline: [
            [4500, 1000],
            [5500, 1000],
            [5500, 1900],
            [4500, 1900],
          ],
          depth: 30,
          above: 0,
          density: 600,
        },
      ],
      ducts: [
        {
          mark: 'P1',
          line: [
            [0, 2500],
            [4000, 2500],
            [4000, 3000],
          ],
          diameter: 50,
          height: 130,
          mass: 0.7,
        },
      ],
    })
    expect(readDraft(draftOf(drawing)).drawing).toEqual(drawing)
  })

  test('what is wrong stands at its field', () => {
    const { draft } = typed()
    const wrong = (change: object) => ({ ...draft, voids: [{ ...draft.voids[0]!, ...change }] })
    expect(faultOf(wrong({ depth: '160' }), 'voids[0].depth')).toContain('160 on 50 in 200 mm')
    expect(faultOf(wrong({ x: '5500' }), 'voids[0].width')).toContain('void former V1 outside the concrete')
    expect(faultOf(wrong({ mass: '3' }), 'voids[0].density')).toContain('one of the two')
    expect(faultOf(wrong({ section: '2' }), 'voids[0].section')).toBeDefined()
    const duct = (change: object) => ({ ...draft, ducts: [{ ...draft.ducts[0]!, ...change }] })
    expect(faultOf(duct({ height: '20' }), 'ducts[0].height')).toContain('20 of a duct of 60 mm')
    expect(faultOf(duct({ mark: 'V1' }), 'ducts[0].mark')).toContain('a mark used once')
    expect(
      faultOf(
        duct({
          corners: [
            { x: '0', y: '1300' },
            { x: '6000', y: '1300' },
          ],
        }),
        'ducts[0].line',
      ),
    ).toContain('duct P1 through void former V1')
    const short = duct({ corners: [{ x: '0', y: 'far' }] })
    expect(faultOf(short, 'ducts[0].line[0].y')).toContain('far')
  })

  test('every act is taken back', () => {
    const before = typed()
    const acts = [
      perform(before, shapeVoid, { index: 0, form: 'corners' }),
      perform(before, removeVoid, { index: 0 }),
      perform(before, removeDuct, { index: 0 }),
      perform(before, addCorner, { ring: { of: 'duct', index: 0 }, after: 0 }),
      perform(before, addCorner, { ring: { of: 'void', index: 0 }, after: 0 }),
    ]
    for (const done of acts) {
      expect(done.draft).not.toEqual(before.draft)
      expect(undo(done).draft).toEqual(before.draft)
    }
    expect(acts[0]?.draft.voids[0]?.corners[2]).toEqual({ x: '3500', y: '1600' })
    // A line is open: a point after its last has nothing to stand half-way to.
    const end = perform(before, addCorner, { ring: { of: 'duct', index: 0 }, after: 1 })
    expect(end.draft.ducts[0]?.corners[2]).toEqual({ x: '', y: '' })
  })

  test('a draft kept before the form asked for them is read, with none', () => {
    const kept = new Map<string, string>()
    const storage = {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => void kept.set(key, text),
      removeItem: (key: string) => void kept.delete(key),
    }
    const { voids: _, ducts: __, ...old } = PLAIN
    keepDraft(storage, 'new', old as Draft)
    expect(readKeptDraft(storage, 'new')).toEqual(PLAIN)
    keepDraft(storage, 'new', typed().draft)
    expect(readKeptDraft(storage, 'new')).toEqual(typed().draft)
  })
})

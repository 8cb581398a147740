import { barsOf, EMPTY_MAP, findColumns, readTable, type Table } from '@castwright/documents/bar-list'
import { codeFamily } from '@castwright/engine/codes'
import { type Drawing, type DrawnBar, parseDrawing } from '@castwright/engine/panel'
import type { PanelFacts } from '@castwright/engine/steps'
import { describe, expect, it } from 'vitest'
import type { TextStorage } from '../../drawing/kept-draft.ts'
import { addList } from './acts/add-list.ts'
import { legChoice, spelledMap, withField, withLegs } from './change-map.ts'
import { keepMap, readKeptMap } from './kept-map.ts'
import { listRows } from './list-rows.ts'
import { fileName } from './save-file.ts'
import { scheduleOf } from './schedules.ts'

const RULES = codeFamily('nz').steel
const DRAWING: Drawing = parseDrawing({
  format: 'castwright.drawing/1',
  mark: 'W1',
  job: 'Hall',
  revision: 'A',
  code: 'nz',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40 },
  steel: [{ bar: 'U1', diameter: 12, grade: '500E', legs: [600], count: 2 }],
})
const FACTS = { job: 'Hall', mark: 'W1', drawing: DRAWING, revision: 'A' } as PanelFacts
const BAR: DrawnBar = { bar: 'B1', diameter: 12, grade: '500E', role: 'main', legs: [900], count: 3 }

function table(text: string): Promise<Table> {
  return readTable({ bytes: new TextEncoder().encode(text), name: 'list.csv' })
}

function storage(): TextStorage {
  const kept = new Map<string, string>()
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => void kept.set(key, text),
    removeItem: (key) => void kept.delete(key),
  }
}

describe('a list into a drawing', () => {
  const given = {
    facts: FACTS,
    bars: [BAR],
    revision: ' B ',
    family: 'nz' as const,
    existing: 'refuse' as const,
  }

  it('is a new revision of the panel with the bars behind its own', () => {
    const answer = addList.answer(given)
    expect(answer).toMatchObject({
      ok: true,
      draft: { kind: 'drawing', subject: { kind: 'panel', id: 'Hall/W1' }, revision: 'B' },
    })
    if (!answer.ok) return
    expect((answer.draft.value as unknown as Drawing).steel).toEqual([...(DRAWING.steel ?? []), BAR])
  })

  it.each([
    [{ revision: 'A' }, 'revision'],
    [{ revision: '  ' }, 'revision'],
    [{ bars: [{ ...BAR, bar: 'U1' }] }, 'bars'],
    [{ facts: { ...FACTS, drawing: null } }, 'bars'],
  ])('refuses %j', (change, field) => {
    expect(addList.answer({ ...given, ...change })).toMatchObject({ ok: false, field })
  })

  it('takes the place of bars of its marks where that is said', () => {
    const answer = addList.answer({ ...given, bars: [{ ...BAR, bar: 'U1' }], existing: 'replace' })
    if (!answer.ok) throw new Error(answer.fault)
    expect((answer.draft.value as unknown as Drawing).steel).toEqual([{ ...BAR, bar: 'U1' }])
  })
})

describe('the columns of a list', () => {
  const text = 'Ref,Dia,Grade,Count,A,B,C\nB1,12,500E,1,600,300,200\n'

  it('change one at a time, and the others stay', async () => {
    const list = await table(text)
    const spelled = spelledMap(findColumns(list), EMPTY_MAP)
    const named = findColumns(list, withField(spelled, 'mark', 'A'))
    expect(named.issues).toEqual([])
    expect(legChoice(named)).toEqual({ all: null, each: ['E', 'F', 'G'] })
    const short = findColumns(list, withLegs(withField(spelled, 'mark', 'A'), { all: null, each: ['E'] }))
    expect(short.legs.map(({ letter }) => letter)).toEqual(['E'])
    const one = findColumns(list, withLegs(spelled, { all: 'G', each: [] }))
    expect(legChoice(one)).toEqual({ all: 'G', each: [] })
    expect(findColumns(list, withField(spelled, 'count', null)).issues.map(({ name }) => name)).toEqual([
      'Mark',
      'Count',
    ])
  })

  it('are kept for lists with the same names, whatever their order', async () => {
    const kept = storage()
    const list = await table(text)
    keepMap(kept, list, withField(spelledMap(findColumns(list), EMPTY_MAP), 'mark', 'A'))
    const other = await table('Count,A,B,C,Grade,Dia,Ref\n1,600,300,200,500E,12,B7\n')
    const map = readKeptMap(kept, other)
    expect(barsOf({ table: other, rules: RULES, map: map ?? EMPTY_MAP }).rows[0]?.bar).toMatchObject({
      bar: 'B7',
      legs: [600, 300, 200],
    })
    expect(readKeptMap(kept, await table('Ref,Dia\n'))).toBeNull()
  })

  it('a kept map that is broken is none', async () => {
    const list = await table(text)
    const broken: TextStorage = { ...storage(), getItem: () => '{"format":"other"}' }
    expect(readKeptMap(broken, list)).toBeNull()
  })
})

it('a row shows its cells as they stand in the file, and what was found at it', async () => {
  const list = await table('Mark,Dia,Grade,Count,A\n\nB1,x,500E,1,600\nB2,12,500E,1,600\n,,,,\n')
  const rows = listRows(list, barsOf({ table: list, rules: RULES }))
  expect(rows.columns.map(({ name }) => name)).toEqual(['Mark', 'Dia', 'Grade', 'Count', 'A'])
  expect(rows.rows.map(({ row, good, cells, errors }) => [row, good, cells[1], errors.length])).toEqual([
    [3, false, 'x', 1],
    [4, true, '12', 0],
  ])
  expect(rows.whole.errors).toEqual([])
})

describe('the schedule of a panel', () => {
  it('has the bars of its plan', () => {
    expect(scheduleOf(FACTS, null)).toMatchObject({
      job: 'Hall',
      panel: 'W1',
      bars: [{ mark: 'U1', count: 2 }],
    })
  })

  it('says why there is none', () => {
    expect(scheduleOf({ ...FACTS, drawing: null }, null).unknown).toEqual(['no drawing in force'])
    const { code: _code, ...bare } = DRAWING
    expect(scheduleOf({ ...FACTS, drawing: bare }, null).unknown).toEqual([
      'neither drawing nor yard names a code family',
    ])
  })
})

it('a file gets a name that every file system takes', () => {
  expect(fileName('Hall "West"/2', 'N05', 'bars.csv')).toBe('Hall-West-2-N05-bars.csv')
  expect(fileName('', '../x', 'bars.csv')).toBe('x-bars.csv')
})

import { codeFamily } from '@castwright/engine/codes'
import { coverOfPours, readTemperatureLog } from '@castwright/engine/cure'
import { plan } from '@castwright/engine/plan'
import { dueTests } from '@castwright/engine/quality/specimens'
import {
  cardOf,
  type PanelFacts,
  pourResults,
  STEP_IDS,
  type StepId,
  stepIsDone,
} from '@castwright/engine/steps'
import { checkChain, fold, mayMake, parseEntry, type StoredEntry, type YardState } from '@castwright/record'
import { describe, expect, it } from 'vitest'
import { DEMO_CLOCK, DEMO_ZONE } from './calendar.ts'
import { DEMO_JOB } from './drawings.ts'
import { demoHistory, tellHistory } from './history.ts'
import { at, wallOf } from './local-time.ts'
import { demoPeople } from './people.ts'
import { shiftDays } from './shift-days.ts'
import { chainEnds, type ToldEntry } from './telling.ts'
import { weatherHours } from './weather.ts'

const { told, state } = tellHistory()

function stored(entries: readonly ToldEntry[]): StoredEntry[] {
  return entries.map((entry, index) => ({ ...entry, index }))
}

function facts(mark: string, from: YardState = state): PanelFacts {
  const found = from.panels.get(`${DEMO_JOB}/${mark}`)
  if (found === undefined) throw new Error(`no panel ${mark}`)
  return found
}

/** The step that a panel stands at: the first that is not done. */
function standsAt(panel: PanelFacts): StepId | 'gone' {
  return STEP_IDS.find((step) => !stepIsDone(step, panel)) ?? 'gone'
}

function card(mark: string, step: StepId, from: YardState = state, now = DEMO_CLOCK) {
  const panel = facts(mark, from)
  if (panel.drawing === null) throw new Error(`no drawing ${mark}`)
  const { yard, limits } = from.yard
  const made = plan({ drawing: panel.drawing, yard, family: codeFamily('eu'), limits })
  return cardOf({ plan: made, step, facts: panel, yard: from.yard, now })
}

describe('the record of the invented job', () => {
  it('has entries that the record takes, by people who may make them', () => {
    const roles = new Map(demoPeople().map(({ id, role }) => [id, role]))
    for (const { stored: _, ...entry } of told) {
      expect(() => parseEntry(entry)).not.toThrow()
      expect(entry.person.role).toBe(roles.get(entry.person.id))
      if (entry.kind !== 'opening') expect(mayMake(entry.person.role, entry.kind), entry.kind).toBe(true)
    }
  })

  it('breaks no rule of the record: chains whole, no conflict, nothing late', () => {
    expect(checkChain(told)).toEqual([])
    expect(fold(stored(told)).flags).toEqual([])
  })

  it('was stored in order, each entry after it was seen, none after the clock', () => {
    for (const [index, entry] of told.entries()) {
      expect(entry.stored > (told[index - 1]?.stored ?? '')).toBe(true)
      expect(entry.stored >= entry.seen).toBe(true)
      expect(Date.parse(entry.seen)).toBeLessThanOrEqual(Date.parse(DEMO_CLOCK) + 5000)
    }
    expect(new Set(told.map(({ id }) => id)).size).toBe(told.length)
  })

  it('stands half-way: so many panels at each step', () => {
    const counts: Record<string, string[]> = {}
    for (const panel of state.panels.values()) {
      const step = standsAt(panel)
      counts[step] = [...(counts[step] ?? []), panel.mark]
    }
    expect(counts).toEqual({
      gone: ['B01', 'B02', 'N01', 'N02', 'S01', 'T01'],
      'hand-over': ['S02', 'T02'],
      load: ['C01', 'E01', 'E02', 'G01', 'N03', 'N04', 'S03', 'S04', 'T03'],
      'as-built': ['B03', 'S05'],
      cure: ['C02', 'N05'],
      finish: ['S06'],
      deliver: ['E03'],
      set: ['N06'],
      mould: ['T04'],
      cage: ['G02', 'S07'],
      'cut-bend': ['C03'],
      'steel-in': ['B04', 'B05', 'C04', 'C05', 'E04', 'E05', 'G03', 'N07', 'S08', 'S09', 'S10', 'T05'],
    })
  })

  it('opened each hold on what its card asked for, and rests on it', () => {
    const ids = new Set(told.map(({ id }) => id))
    const openings = told.filter(({ kind }) => kind === 'opening')
    expect(openings.filter(({ step }) => step === 'set')).toHaveLength(23)
    expect(openings.filter(({ step }) => step === 'strip')).toHaveLength(19)
    for (const { rests = [], about, device } of openings) {
      expect(rests.every((id) => ids.has(id))).toBe(true)
      expect(rests).toContain(about)
      expect(rests.length).toBeGreaterThan(5)
      expect(device.id).toBe('record')
    }
  })

  it('would not have opened the two that wait', () => {
    const edge = card('N06', 'set')
    expect(edge.ready).toBe(false)
    expect(
      edge.rows.filter(({ verdict }) => verdict !== 'pass').map(({ id, verdict }) => [id, verdict]),
    ).toEqual([['cover:edge', 'fail']])
    const weak = card('C02', 'strip')
    const strength = weak.rows.find(({ id }) => id === 'strength')
    expect(weak.ready).toBe(false)
    expect(strength?.verdict).toBe('fail')
    expect(Number(strength?.demand)).toBeLessThan(Number(strength?.limit))
  })

  it('has one failed check that nobody has decided, and one that the engineer has', () => {
    const open = card('B03', 'as-built').rows.filter(({ verdict }) => verdict === 'fail')
    expect(open.map(({ id, decision }) => [id, decision])).toEqual([['built-length', null]])
    const decided = card('N04', 'as-built').rows.filter(({ verdict }) => verdict === 'fail')
    expect(decided.map(({ id, decision }) => [id, decision?.by.name])).toEqual([
      ['built-squareness', 'Ines Calder'],
    ])
  })

  it('opened strip on differences that the engineer signed, where ours was not passed, and on none where it was', () => {
    const signed = (mark: string) => Object.values(facts(mark).steps.strip.differences)
    for (const mark of ['N01', 'T01', 'N02', 'C01', 'E02']) expect(signed(mark), mark).toEqual([])
    for (const [mark, verdict] of [
      ['N03', 'fail'],
      ['S02', 'fail'],
    ] as const) {
      expect(signed(mark).length, mark).toBeGreaterThan(0)
      for (const { entry, by, verdict: found, reason } of signed(mark)) {
        expect(facts(mark).steps.strip.opening?.rests).toContain(entry)
        expect([by.name, found]).toEqual(['Ines Calder', verdict])
        expect(reason).toMatch(/Oakley/)
      }
      expect(card(mark, 'as-built').carried.map(({ kind }) => kind)).toContain('difference')
    }
  })

  it('has one open defect and one that was repaired and inspected', () => {
    const defects = [...state.panels.values()].flatMap(({ mark, defects: found }) =>
      found.map(({ open }) => [mark, open]),
    )
    expect(defects.sort()).toEqual([
      ['G01', true],
      ['S03', false],
    ])
    expect(card('G01', 'load').ready).toBe(false)
  })

  it('has a load out of slump that was used by name, one that was sent back, and a truck that is still here', () => {
    const used = card('N03', 'deliver')
    expect(
      used.rows
        .filter(({ verdict }) => verdict !== 'pass')
        .map(({ id, decision }) => [id, decision?.by.name]),
    ).toEqual([['load:7334:slump', 'Tom Pike']])
    expect(card('N03', 'strip').carried).toContainEqual(
      expect.objectContaining({ kind: 'load', what: 'Load 7334' }),
    )
    const back = facts('S04').dockets.filter(({ decision }) => decision?.decision === 'send-back')
    expect(back.map(({ number, slump }) => [number, slump])).toEqual([['7353', 185]])
    expect(card('S04', 'deliver')).toMatchObject({ state: 'done', verdict: 'pass' })
    const here = facts('E03').dockets.filter(({ discharged }) => discharged === undefined)
    expect(here.map(({ number }) => number)).toEqual(['7374'])
    expect(card('E03', 'deliver').missing).toEqual(['Load 7374: still discharging'])
  })

  it('knows from which load each specimen of a pour came', () => {
    for (const { mark, specimens, dockets } of state.panels.values()) {
      const marks = dockets.flatMap(({ specimens: made = [] }) => made)
      for (const { specimen } of specimens) expect(marks, mark).toContain(specimen)
    }
  })

  it('has a correction in force', () => {
    const width = facts('N02').steps['as-built'].values['built-width']
    expect(width).toMatchObject({ value: 3252, verdict: 'pass', corrects: [expect.any(String)] })
  })

  it('records verdicts and limits that the plan of today asks for', () => {
    for (const mark of ['N01', 'B01', 'S01', 'T01', 'C01', 'G01', 'E02', 'T03']) {
      const panel = facts(mark)
      if (panel.drawing === null) throw new Error(mark)
      const { yard, limits } = state.yard
      const { toRecord } = plan({ drawing: panel.drawing, yard, family: codeFamily('eu'), limits })
      const asked = new Set(toRecord.map(({ step, id }) => `${step} ${id}`))
      for (const step of STEP_IDS)
        for (const id of Object.keys(panel.steps[step].values)) expect(asked).toContain(`${step} ${id}`)
    }
  }, 60_000)

  it('has weather, cylinders, logs, dockets, gear dates and entered limits', () => {
    expect(state.weather.length).toBeGreaterThan(190)
    const cast = [...state.panels.values()].filter((panel) => panel.cast !== null)
    expect(cast).toHaveLength(23)
    expect(cast.filter(({ temperatures }) => temperatures.length === 1)).toHaveLength(22)
    expect(cast.filter(({ specimens }) => specimens.length >= 2)).toHaveLength(20)
    expect(cast.filter(({ sets = [] }) => sets.length === 1)).toHaveLength(23)
    const loads = [...state.panels.values()].map(({ dockets }) => dockets.length)
    expect([1, 2].map((count) => loads.filter((each) => each === count).length)).toEqual([21, 2])
    expect(Object.keys(state.yard.gear).length).toBeGreaterThan(8)
    expect(Object.keys(state.yard.limits)).toHaveLength(5)
    expect(state.jobs.get(DEMO_JOB)).toBeDefined()
  })

  it('has specimens that are due, one that was forgotten, and tests that lie in their band', () => {
    const due = dueTests({
      panels: state.panels.values(),
      family: codeFamily('eu'),
      timezone: DEMO_ZONE,
      now: DEMO_CLOCK,
    })
    const of = (state: string) => due.filter((test) => test.state === state).map(({ specimen }) => specimen)
    expect(of('overdue')).toEqual(['S02-7'])
    expect(of('due')).toContain('T01-4')
    expect(of('coming').length).toBeGreaterThan(60)
    const mix = state.yard.yard?.mixes?.find(({ mark }) => mark === 'K40')
    if (mix === undefined) throw new Error('no mix K40')
    const cover = coverOfPours({
      mix,
      pours: [...state.panels.values()]
        .filter(({ cast }) => cast?.mix === 'K40')
        .map(({ temperatures, specimens }) => ({
          readings: temperatures[0]?.readings ?? [],
          cylinders: pourResults({
            specimens,
            cubeRatio: null,
            standardCuring: codeFamily('eu').cure.standardCuring,
          }).cylinders,
        })),
    })
    expect(cover).toMatchObject({ left: 0, below: 0 })
    expect(cover.count).toBeGreaterThan(15)
  })

  it('is the same to the byte at every run', () => {
    expect(JSON.stringify(demoHistory().entries)).toBe(JSON.stringify(told))
  })
})

describe('the data files of the invented job', () => {
  it('weather by the hour', async () => {
    const [from, to] = [at('2026-09-08', '07:00', DEMO_ZONE), at('2026-09-16', '12:00', DEMO_ZONE)]
    const rows = weatherHours(from, to, DEMO_ZONE).map(
      ({ at: when, air, humidity, wind }) => `${new Date(when).toISOString()},${air},${humidity},${wind}`,
    )
    await expect(`${['at,air,humidity,wind', ...rows].join('\n')}\n`).toMatchFileSnapshot(
      '../data/weather.csv',
    )
  })

  it.each(['N01', 'B01', 'T01', 'C02'])('night of %s, as a logger writes it', async (mark) => {
    const rows = facts(mark).temperatures[0]?.readings.map(([hours, celsius]) => `${hours},${celsius}`) ?? []
    const text = `${['hours,celsius', ...rows].join('\n')}\n`
    expect(readTemperatureLog(text)).toHaveLength(rows.length)
    await expect(text).toMatchFileSnapshot(`../data/night-${mark}.csv`)
  })
})

describe('a history moved by whole days', () => {
  it.each([1, 40, 70, 200, -30])('by %i days keeps every time of day, dates and chains', (days) => {
    const moved = shiftDays(told, days)
    expect(moved).toHaveLength(told.length)
    expect(checkChain(moved)).toEqual([])
    for (const [index, entry] of moved.entries()) {
      const before = told[index] as ToldEntry
      const wall = wallOf(Date.parse(entry.seen), DEMO_ZONE) - wallOf(Date.parse(before.seen), DEMO_ZONE)
      expect(wall).toBe(days * 86_400_000)
      expect(entry.id).toBe(before.id)
    }
    for (const { stored: _, ...entry } of moved) parseEntry(entry)
  })

  it('folds to the same steps', () => {
    const moved = fold(stored(shiftDays(told, 70)))
    expect(moved.flags).toEqual([])
    for (const [id, panel] of state.panels) {
      const there = moved.panels.get(id)
      expect(there && standsAt(there)).toBe(standsAt(panel))
    }
    expect(facts('C02', moved).drawing).toEqual(facts('C02').drawing)
    expect(moved.yard.gear['gantry north']?.due).toBe('2027-04-23')
    expect(moved.jobs.get(DEMO_JOB)?.due.N01).toBe('2026-11-30')
  })

  it('over the night in which clocks change: the age of a cylinder follows', () => {
    // C02 is poured on the 15th; 39 days later is the Saturday before the clocks go back.
    const ages = (entries: readonly ToldEntry[]) =>
      entries.flatMap(({ kind, subject, value }) =>
        kind === 'specimen' && subject.id.endsWith('/C02') ? [(value as { age: number }).age] : [],
      )
    const [before, after] = [ages(told), ages(shiftDays(told, 39))]
    expect(before).toHaveLength(2)
    for (const [index, age] of after.entries()) expect(age).toBeCloseTo((before[index] ?? 0) + 1, 9)
  })

  it('by no days is the same, by half a day is refused', () => {
    expect(chainEnds(shiftDays(told, 0))).toEqual(chainEnds(told))
    expect(() => shiftDays(told, 0.5)).toThrow(/days: found 0.5/)
  })
})

describe('times of day', () => {
  it.each([
    ['2026-09-16', '15:10', '2026-09-16T14:10:00.000Z'],
    ['2026-12-01', '15:10', '2026-12-01T15:10:00.000Z'],
    ['2026-10-25', '00:30', '2026-10-24T23:30:00.000Z'],
    ['2026-10-25', '01:30', '2026-10-25T00:30:00.000Z'],
    ['2026-10-25', '02:30', '2026-10-25T02:30:00.000Z'],
    ['2027-03-28', '00:30', '2027-03-28T00:30:00.000Z'],
    ['2027-03-28', '01:30', '2027-03-28T01:30:00.000Z'],
    ['2027-03-28', '02:30', '2027-03-28T01:30:00.000Z'],
  ])('%s %s in Dublin is %s', (day, time, expected) => {
    expect(new Date(at(day, time, 'Europe/Dublin')).toISOString()).toBe(expected)
  })

  it('also where the wall is a day and half an hour ahead', () => {
    expect(new Date(at('2026-09-16', '06:15', 'Asia/Kolkata')).toISOString()).toBe('2026-09-16T00:45:00.000Z')
    expect(new Date(at('2026-09-16', '06:15', 'Pacific/Fiji')).toISOString()).toBe('2026-09-15T18:15:00.000Z')
  })
})

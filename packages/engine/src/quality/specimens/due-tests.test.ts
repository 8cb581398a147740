import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { casting } from '../../lift/reference-panels.ts'
import type { Load } from '../../pour/loads/load.ts'
import type { SpecimenResult, SpecimenSet } from '../../steps/facts.ts'
import { dueTests } from './due-tests.ts'
import { samplesWanted } from './samples-wanted.ts'

const BY = { id: 'p1', name: 'Jo', role: 'floor' } as const
const MIXED = '2026-09-01T07:00:00.000Z'
const MADE = '2026-09-01T07:30:00.000Z'

const SET: SpecimenSet = {
  entry: 's',
  set: 'S1',
  kind: 'cylinder',
  size: 150,
  made: MADE,
  tests: [
    { age: 20, cured: 'panel', specimens: ['S1-1', 'S1-2'] },
    { age: 168, cured: 'standard', specimens: ['S1-3'] },
    { age: 672, cured: 'standard', specimens: ['S1-4'] },
  ],
  by: BY,
  seen: MADE,
}

function result(specimen: string, age: number): SpecimenResult {
  return { entry: specimen, specimen, kind: 'cylinder', age, strength: 20, by: BY, seen: MADE }
}

function found(now: string, specimens: readonly SpecimenResult[] = [], family: 'us' | 'eu' = 'us') {
  return dueTests({
    panels: [
      {
        job: 'J',
        mark: 'W1',
        cast: { entry: 'c', at: MIXED, bed: null, mix: 'K40' },
        specimens,
        sets: [SET],
      },
      { job: 'J', mark: 'W2', cast: null, specimens: [], sets: [SET] },
    ],
    family: codeFamily(family),
    timezone: 'Europe/Dublin',
    now,
  })
}

const states = (now: string, family: 'us' | 'eu') => found(now, [], family).map(({ state }) => state)

describe('what is to be tested when', () => {
  it('lists each specimen once, in order, for all panels that it stands for', () => {
    const due = found('2026-09-01T08:00:00.000Z')
    expect(due.map(({ specimen }) => specimen)).toEqual(['S1-1', 'S1-2', 'S1-3', 'S1-4'])
    expect(due[0]).toMatchObject({ panels: ['J/W1', 'J/W2'], due: '2026-09-02T03:30:00.000Z', within: null })
  })

  // ASTM C39, permissible tolerance on the test age (from memory): 7 d ± 6 h, 28 d ± 20 h; 20 h is no age of the table.
  it('has the time that the standard gives for an age', () => {
    const [, , week, month] = found('2026-09-01T08:00:00.000Z')
    expect(week?.within).toEqual({ from: '2026-09-08T01:30:00.000Z', to: '2026-09-08T13:30:00.000Z' })
    expect(month?.within).toEqual({ from: '2026-09-28T11:30:00.000Z', to: '2026-09-30T03:30:00.000Z' })
  })

  it.each([
    ['2026-09-01T22:00:00.000Z', 'us', ['coming', 'coming', 'coming', 'coming']],
    // Midnight is past in Dublin: the strip age is due today.
    ['2026-09-01T23:30:00.000Z', 'us', ['due', 'due', 'coming', 'coming']],
    ['2026-09-03T08:00:00.000Z', 'us', ['overdue', 'overdue', 'coming', 'coming']],
    ['2026-09-08T13:30:00.000Z', 'us', ['overdue', 'overdue', 'due', 'coming']],
    ['2026-09-08T13:30:01.000Z', 'us', ['overdue', 'overdue', 'missed', 'coming']],
    ['2026-09-08T13:30:01.000Z', 'eu', ['overdue', 'overdue', 'due', 'coming']],
    ['2026-09-09T13:30:01.000Z', 'eu', ['overdue', 'overdue', 'overdue', 'coming']],
    ['2026-09-28T12:00:00.000Z', 'us', ['overdue', 'overdue', 'missed', 'due']],
  ] as const)('at %s in %s: %j', (now, family, expected) => {
    expect(states(now, family)).toEqual(expected)
  })

  it('is done with a result, and says by how much it missed its age', () => {
    const at = (age: number) => found('2026-09-20T08:00:00.000Z', [result('S1-3', age)])[2]
    // Mixed half an hour before making: 168.5 h from mixing is the age itself.
    expect(at(168.5)).toMatchObject({ state: 'done', missedBy: 0 })
    expect(at(174.5)?.missedBy).toBe(0)
    expect(at(176.5)?.missedBy).toBeCloseTo(2, 6)
    expect(at(160.5)?.missedBy).toBeCloseTo(-2, 6)
    expect(found('2026-09-20T08:00:00.000Z', [result('S1-3', 200)], 'eu')[2]).toMatchObject({
      state: 'done',
      missedBy: null,
    })
  })

  it('has nothing where no set is on record', () => {
    const panel = { job: 'J', mark: 'W1', cast: null, specimens: [result('a', 20)] }
    const none = dueTests({
      panels: [panel],
      family: codeFamily('nz'),
      timezone: 'Pacific/Fiji',
      now: MADE,
    })
    expect(none).toEqual([])
  })
})

describe('sets that a day wants', () => {
  const cast = { entry: 'c', at: MIXED, bed: null, mix: 'K40' }
  const load = (volume?: number): Load => ({
    number: '1',
    entry: 'd',
    entries: ['d'],
    by: BY,
    seen: MADE,
    said: {},
    differs: [],
    decision: null,
    ...(volume === undefined ? {} : { volume }),
  })
  const ask = (family: 'us' | 'eu' | 'nz', loads: readonly Load[], sets: readonly SpecimenSet[] = [SET]) =>
    samplesWanted({
      panels: [
        { job: 'J', mark: 'W1', cast, sets, drawing: casting().drawing, dockets: loads },
        {
          job: 'J',
          mark: 'W0',
          cast: { ...cast, at: '2026-08-31T07:00:00.000Z' },
          drawing: null,
          dockets: [],
        },
        { job: 'J', mark: 'W9', cast: null, drawing: null, dockets: [] },
      ],
      family: codeFamily(family),
      timezone: 'Europe/Dublin',
      now: '2026-09-01T15:00:00.000Z',
    })

  it('holds the sets made today against the tests that the family wants', () => {
    expect(ask('eu', [load(3)])).toMatchObject([
      {
        mix: 'K40',
        volume: 3,
        panels: ['J/W1'],
        sets: ['S1'],
        check: { demand: 1, limit: 1, verdict: 'pass' },
      },
    ])
    expect(ask('eu', [load(3)], [])[0]?.check.verdict).toBe('fail')
    expect(ask('us', [load(120)])[0]?.check).toMatchObject({ demand: 1, limit: 2, verdict: 'fail' })
  })

  it('is not known where a docket gives no volume, or nothing is confirmed', () => {
    expect(ask('eu', [load()])[0]).toMatchObject({ volume: null, check: { verdict: 'unknown' } })
    expect(ask('eu', [])[0]?.check.unknown?.join()).toMatch(/volume of W1/)
    expect(ask('nz', [load(3)])[0]?.check.unknown?.join()).toMatch(/not confirmed/)
  })
})

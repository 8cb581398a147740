import {
  type CardRow,
  CUBE_RATIO_LIMIT,
  emptyPanelFacts,
  STEP_IDS,
  strengthAtLift,
} from '@castwright/engine/steps'
import { type Asked, COMMON_PRACTICE } from '@castwright/engine/working'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readAnswer } from './answer.tsx'
import { changedWords, EMPTY_DOCKET, marksOf, nextMarks, readDocket, textOf } from './docket-text.ts'
import { mayDo } from './entitled.ts'
import { limitAsks } from './limit-key.ts'
import { clock } from './load-clock.tsx'
import { headOf, keepMap, keptMap } from './logger-map-kept.ts'
import { readReadings } from './readings.ts'
import { originText, valueText } from './row-text.ts'
import { openStep, rungsOf } from './rungs.ts'
import { dayText, fieldTime, instantOf, whenText } from './when.ts'

const ASKED: Asked = {
  id: 'slump',
  step: 'deliver',
  what: 'Slump',
  kind: 'number',
  unit: 'mm',
  low: 80,
  high: 120,
  source: COMMON_PRACTICE,
}
const ROW: CardRow = {
  id: 'strength',
  from: 'plan',
  what: 'Strength',
  verdict: 'fail',
  demand: 13.1,
  limit: 15,
  unit: 'MPa',
  note: '',
  source: COMMON_PRACTICE,
  working: [],
  assumed: [],
  unknown: [],
  asked: null,
  recorded: null,
  decision: null,
  rests: [],
}

describe('the ladder', () => {
  const facts = emptyPanelFacts({ job: 'J', mark: 'W' })
  const done = new Set(['steel-in', 'cut-bend', 'mould'])
  const isDone = (step: string): boolean => done.has(step)

  test('has fourteen rungs; the first that is not done is open, the rest are to come', () => {
    const rungs = rungsOf({ facts, shown: 'cage', isDone })
    expect(rungs.map(({ state }) => state)).toEqual([
      'done',
      'done',
      'open',
      'done',
      ...Array(10).fill('ahead'),
    ])
    expect(rungs.filter(({ hold }) => hold).map(({ step }) => step)).toEqual(['set', 'strip'])
    expect(rungs.filter(({ shown }) => shown).map(({ step }) => step)).toEqual(['cage'])
  })

  test('opens the first step that is not done, and the last where all are', () => {
    expect(openStep(facts, isDone)).toBe('cage')
    expect(openStep(facts, () => true)).toBe(STEP_IDS.at(-1))
  })
})

describe('value of limit', () => {
  test('a check says found of wanted with the unit', () => {
    expect(valueText({ ...ROW, demand: 20.4, limit: 24.4, unit: 'kN', verdict: 'pass' })).toBe(
      '20.4 of 24.4 kN',
    )
    expect(valueText({ ...ROW, demand: 25, limit: 24.4, unit: 'kN' })).toBe('25 of 24.4 kN')
  })

  test('a limit that is to be reached says at least', () => {
    expect(valueText(ROW)).toBe('13.1, at least 15 MPa')
    expect(valueText({ ...ROW, demand: 16, verdict: 'pass' })).toBe('16, at least 15 MPa')
  })

  test('what is not known never shows a number', () => {
    expect(valueText({ ...ROW, demand: null })).toBe('not known')
    expect(valueText({ ...ROW, demand: Number.NaN })).toBe('not known')
  })

  test('what is asked and not recorded says so', () => {
    expect(valueText({ ...ROW, asked: ASKED, demand: null })).toBe('not recorded')
  })

  test('planned, measured and from the record are three words', () => {
    expect(originText(ROW)).toBe('planned')
    expect(originText({ ...ROW, from: 'record' })).toBe('from the record')
    expect(originText({ ...ROW, from: 'asked', asked: ASKED })).toBe('')
    const limit = { standard: 'yard trial', clause: 'table 2', status: 'entered' } as const
    expect(originText({ ...ROW, from: 'asked', asked: ASKED, source: limit })).toBe(
      'limit entered by an engineer from yard trial',
    )
    expect(
      originText({ ...ROW, source: { standard: 'entered by the drawing', clause: '', status: 'entered' } }),
    ).toBe('planned, entered by the drawing')
  })
})

test('an engineer may enter what a cylinder is of a cube where only cubes were tested', () => {
  const asks = (unknown: readonly string[]) =>
    limitAsks({ id: 'strength', limit: 18, unit: 'MPa', unknown }).map(({ key }) => key)
  const none = strengthAtLift({
    specimens: [
      {
        entry: 'r',
        specimen: 'C1',
        kind: 'cube',
        age: 12,
        strength: 30,
        by: { id: 'p', name: 'Jo', role: 'floor' },
        seen: '',
      },
    ],
    hour: 20,
    scatter: 0.08,
    curveLow: null,
  })
  expect(asks(none.known ? [] : none.gaps)).toEqual([CUBE_RATIO_LIMIT])
  expect(asks(['a cylinder or probe result of this pour'])).toEqual([])
})

test('an engineer may enter a limit only where the row has none and the engine reads one', () => {
  const keys = (id: string, limit: CardRow['limit'] = null) =>
    limitAsks({ id, limit, unit: 'mm', unknown: [] }).map(({ key }) => key)
  expect(keys('built-bow')).toEqual(['quality.bow'])
  expect(keys('peak-temperature')).toEqual(['cure.peakTemperature'])
  expect(keys('built-bow', '-6 to 6')).toEqual([])
  expect(keys('slump')).toEqual([])
})

test('as-built tolerances that nobody has given can be entered at the measured mould', () => {
  const row = { id: 'mould-cast', limit: null, unit: 'mm' }
  const asks = limitAsks({ ...row, unknown: ['squareness: no confirmed as-built tolerance'] })
  expect(asks.map(({ key, unit }) => [key, unit])).toEqual([['quality.squareness', 'mm']])
  expect(limitAsks({ ...row, unknown: ['Side 2'] })).toEqual([])
})

test('at a stage of the lift an engineer may enter factor, tension and margin, each with a reason', () => {
  const asks = (id: string) => limitAsks({ id, limit: 1.9, unit: 'MPa', unknown: [] })
  expect(asks('now:lift-peak:release').map(({ key, unit }) => [key, unit])).toEqual([
    ['lift.factor:release', ''],
    ['lift.tension', '√MPa'],
  ])
  expect(asks('lift-insert:travel').map(({ key }) => key)).toEqual([
    'lift.insertFactor:travel',
    'lift.insertMargin',
  ])
  expect(asks('lift-peak:turn').every(({ reasoned }) => reasoned)).toBe(true)
  for (const id of ['lift-peak', 'lift-peak:moon', 'lift-angle', 'lift-factor:release'])
    expect(asks(id)).toEqual([])
})

describe('what a person types', () => {
  test('numbers take comma or point; what is none is named', () => {
    expect(readAnswer(ASKED, '95,5')).toEqual({ ok: true, value: 95.5 })
    expect(readAnswer(ASKED, 'wet')).toEqual({ ok: false, fault: 'wet is no number.' })
    expect(readAnswer(ASKED, ' ')).toEqual({ ok: false, fault: 'Type the number first.' })
  })

  test('a choice is one of those that are there', () => {
    const choice: Asked = { ...ASKED, kind: 'choice', choices: [{ value: 'C1', good: true }] }
    expect(readAnswer(choice, 'C1')).toEqual({ ok: true, value: 'C1' })
    expect(readAnswer(choice, 'C2').ok).toBe(false)
  })

  test('readings are one a line, all lines of the same count', () => {
    expect(readReadings('5990\n5991\n')).toEqual({ ok: true, readings: [5990, 5991] })
    expect(readReadings('0 0 1\n6000 0 2')).toEqual({
      ok: true,
      readings: [
        [0, 0, 1],
        [6000, 0, 2],
      ],
    })
    expect(readReadings('1\n2 3')).toEqual({
      ok: false,
      fault: 'Line 2: found 2 numbers, expected 1 as in the first line',
    })
    expect(readReadings('1\nx')).toEqual({ ok: false, fault: 'Line 2: found x, expected a number' })
    expect(readReadings('\n').ok).toBe(false)
  })
})

describe('the columns of a logger’s file', () => {
  const map = {
    format: 'castwright.logger-map/1' as const,
    first: 2,
    time: { columns: ['A'], as: 'day first' as const },
    decimal: 'comma' as const,
    unit: 'C' as const,
    channels: [{ column: 'B', name: 'core' }],
  }
  const text = (words: string) => [words.split(';').map((word) => ({ kind: 'text', text: word }))]

  test('are known again by the head of the file, whatever its numbers are', () => {
    const held = new Map<string, string>()
    const storage = {
      getItem: (key: string) => held.get(key) ?? null,
      setItem: (key: string, value: string) => void held.set(key, value),
    }
    keepMap(storage, headOf(text('Serial 1234;time;core')), map)
    expect(keptMap(storage, headOf(text('Serial 9876;time;core')))).toEqual(map)
    expect(keptMap(storage, headOf(text('time;face')))).toBeNull()
  })

  test('are asked again where the device keeps nothing, or rubbish', () => {
    const full = {
      getItem: () => '[["x",{"format":1}]]',
      setItem: () => {
        throw new Error('full')
      },
    }
    expect(keptMap(full, 'x')).toBeNull()
    expect(() => keepMap(full, 'x', map)).not.toThrow()
  })
})

describe('a docket as typed', () => {
  test('needs only its number; what is left empty is absent', () => {
    expect(readDocket({ ...EMPTY_DOCKET, number: ' 3061 ', slump: '95' }, 'Europe/Dublin')).toEqual({
      ok: true,
      docket: { number: '3061', slump: 95 },
    })
  })

  test('names each field that is wrong', () => {
    const read = readDocket(
      {
        ...EMPTY_DOCKET,
        volume: '0',
        slump: 'wet',
        batched: '2026-11-24T10:00',
        arrived: '2026-11-24T09:30',
      },
      'Europe/Dublin',
    )
    expect(read.ok ? {} : Object.keys(read.faults).sort()).toEqual(['arrived', 'number', 'slump', 'volume'])
  })

  test('takes no more into the panel than the truck held, and no discharge before its begin', () => {
    const read = readDocket(
      {
        ...EMPTY_DOCKET,
        number: '1',
        volume: '3',
        used: '3,1',
        began: '2026-11-24T10:00',
        discharged: '2026-11-24T09:59',
      },
      'Europe/Dublin',
    )
    expect(read.ok ? {} : read.faults).toEqual({
      used: 'More than the truck held.',
      discharged: 'Before it began.',
    })
  })

  test('is shown again as it stands, and only what was changed counts as changed', () => {
    const words = {
      number: '3061',
      truck: '4',
      volume: 3,
      batched: '2026-11-24T09:52:41.000Z',
      waterAdded: 5,
      waterAfterDischarge: false,
      specimens: ['W1-1', 'W1-2'],
    }
    const read = readDocket(textOf(words, 'Europe/Dublin'), 'Europe/Dublin')
    if (!read.ok) throw new Error(JSON.stringify(read.faults))
    expect(changedWords(words, read.docket, 'Europe/Dublin')).toEqual(words)
  })

  test('gives specimens the next free marks of the panel', () => {
    expect(nextMarks('W1', ['W1-1', 'W1-3'], 2)).toEqual(['W1-2', 'W1-4'])
    expect(marksOf(' W1-1, W1-2;W1-1  ')).toEqual(['W1-1', 'W1-2'])
  })
})

describe('the clock of a load', () => {
  test('is in minutes and seconds', () => {
    expect([clock(7.1), clock(102), clock(0)]).toEqual(['7:06', '102:00', '0:00'])
  })
})

describe('times in the yard’s zone', () => {
  test('are shown by weekday and clock in the last days, else by day and month', () => {
    const now = new Date('2026-06-10T12:00:00Z')
    expect(whenText('2026-06-09T14:10:00.000Z', 'Europe/Dublin', now)).toBe('Tue 15:10')
    expect(whenText('2026-03-02T09:05:00.000Z', 'Europe/Dublin', now)).toBe('2 Mar 09:05')
    expect(whenText('never', 'Europe/Dublin', now)).toBe('not known')
    expect(dayText('2026-06-02')).toBe('2 Jun 2026')
    expect(dayText('2026-06-02', { year: false })).toBe('2 Jun')
    expect(dayText('soon')).toBe('not known')
  })

  test('typed and shown are the same, whatever the zone and the season', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: Date.UTC(2024, 0, 1) / 60_000, max: Date.UTC(2030, 0, 1) / 60_000 }),
        fc.constantFrom('Europe/Dublin', 'Pacific/Chatham', 'America/New_York', 'Australia/Adelaide', 'UTC'),
        (minutes, zone) => {
          const typed = fieldTime(new Date(minutes * 60_000), zone)
          const back = instantOf(typed, zone)
          expect(back).not.toBeNull()
          expect(fieldTime(new Date(back ?? 0), zone)).toBe(typed)
        },
      ),
      { seed: 20261125, numRuns: 300 },
    )
  })

  test('a time that the clocks skip is none', () => {
    expect(instantOf('2026-03-29T01:30', 'Europe/Dublin')).toBeNull()
    expect(instantOf('tomorrow', 'Europe/Dublin')).toBeNull()
  })
})

test('a viewer reads; only an engineer confirms a lifting design', () => {
  expect(mayDo('viewer', 'value')).toBe(false)
  expect(mayDo('floor', 'value')).toBe(true)
  expect([mayDo('lead', 'design'), mayDo('engineer', 'design')]).toEqual([false, true])
  expect([mayDo('lead', 'difference'), mayDo('engineer', 'difference')]).toEqual([false, true])
  expect(mayDo('floor', 'disposition')).toBe(false)
})

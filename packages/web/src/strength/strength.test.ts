import { codeFamily } from '@castwright/engine/codes'
import { dueTests } from '@castwright/engine/quality/specimens'
import { emptyPanelFacts, type PanelFacts } from '@castwright/engine/steps'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ageText, emptySet, readSet } from '../panel/set-text.ts'
import { calendarText, dueList } from './due-days.ts'
import { hourTicks } from './hour-ticks.ts'
import { earlyPairs, resultSeries } from './result-series.ts'
import { curveAt } from './strength-line.ts'
import { ticksOf } from './ticks.ts'

const BY = { id: 'p', name: 'Jo', role: 'floor' as const }

function pour(
  mark: string,
  mixed: string,
  results: readonly (readonly [age: number, strength: number])[],
): PanelFacts {
  return {
    ...emptyPanelFacts({ job: 'J', mark }),
    cast: { entry: 'c', at: mixed, bed: null, mix: 'K40' },
    specimens: results.map(([age, strength], at) => ({
      entry: `${mark}${at}`,
      specimen: `${mark}-${at}`,
      kind: 'cylinder',
      age,
      strength,
      by: BY,
      seen: mixed,
    })),
  }
}

describe('results by mix and age', () => {
  const panels = [
    pour('W2', '2026-09-02T06:00:00.000Z', [
      [17, 15],
      [672, 46],
    ]),
    pour('W1', '2026-09-01T06:00:00.000Z', [
      [16, 14],
      [672, 44],
      [200, 30],
    ]),
  ]

  test('stand in the order of their pours, ages apart', () => {
    const series = resultSeries(panels)
    expect(series.map(({ age, tests }) => [age, tests.map(({ strength }) => strength)])).toEqual([
      ['14 to 24 h', [14, 15]],
      ['7 d', [30]],
      ['28 d', [44, 46]],
    ])
  })

  test('pair the early and the later results of one pour, of one kind', () => {
    expect(earlyPairs(resultSeries(panels), { mix: 'K40', kind: 'cylinder' })).toEqual([
      { early: 14, late: 44 },
      { early: 15, late: 46 },
    ])
    expect(earlyPairs(resultSeries(panels), { mix: 'K40', kind: 'cube' })).toEqual([])
  })
})

describe('the curve between its hours', () => {
  test('is straight, and nothing outside of it', () => {
    const curve = [
      [10, 8, 6, 10],
      [11, 10, 8, null],
    ] as const
    expect(curveAt(curve, 10.5)).toEqual({ strength: 9, low: 7, high: null })
    expect(curveAt(curve, 12)).toBeNull()
    expect(curveAt([], 1)).toBeNull()
  })
})

describe('hours of the clock on a chart', () => {
  const mixed = Date.parse('2026-09-15T13:25:00.000Z')

  test('stand every six hours of the yard’s own clock, midnight by its day', () => {
    const ticks = hourTicks(mixed, 'Europe/Dublin', 0, 24)
    expect(ticks.map(({ text }) => text)).toEqual(['18:00', 'Wed', '06:00', '12:00'])
    // 18:00 in Dublin is 17:00 UTC: 3 h 35 min after mixing.
    expect(ticks[0]?.x).toBeCloseTo(3.5833, 3)
    expect(hourTicks(mixed, 'Asia/Kolkata', 0, 12).map(({ text }) => text)).toEqual(['Wed', '06:00'])
  })

  test('are midnights over days, and none over weeks', () => {
    expect(hourTicks(mixed, 'Europe/Dublin', 0, 72).map(({ text }) => text)).toEqual(['Wed', 'Thu', 'Fri'])
    expect(hourTicks(mixed, 'Europe/Dublin', 0, 600)).toEqual([])
    expect(hourTicks(mixed, 'Europe/Dublin', 5, Number.NaN)).toEqual([])
  })
})

describe('ticks', () => {
  test('hold both ends in a few round steps', () => {
    const value = fc.double({ min: -200, max: 200, noNaN: true })
    fc.assert(
      fc.property(value, value, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)]
        const ticks = ticksOf(low, high)
        expect(ticks.length).toBeGreaterThanOrEqual(2)
        expect(ticks.length).toBeLessThanOrEqual(8)
        expect(ticks[0]).toBeLessThanOrEqual(low + 1e-6)
        expect(ticks.at(-1)).toBeGreaterThanOrEqual(high - 1e-6)
      }),
    )
    expect(ticksOf(0, 38)).toEqual([0, 10, 20, 30, 40])
    expect(ticksOf(Number.NaN, 3)).toEqual([])
  })
})

describe('due tests under their headings', () => {
  const NOW = '2026-09-10T08:00:00.000Z'
  const set = (name: string, made: string, ages: readonly number[]) => ({
    entry: name,
    set: name,
    kind: 'cylinder' as const,
    made,
    tests: ages.map((age, at) => ({
      age,
      cured: 'standard' as const,
      specimens: [`${name}-${2 * at + 1}`, `${name}-${2 * at + 2}`],
    })),
    by: BY,
    seen: made,
  })
  const panel: PanelFacts = {
    ...pour('W1', '2026-09-03T06:00:00.000Z', []),
    specimens: [
      {
        entry: 'r',
        specimen: 'A-1',
        kind: 'cylinder',
        age: 48,
        strength: 30,
        cured: 'standard',
        by: BY,
        seen: '2026-09-09T08:00:00.000Z',
      },
      {
        entry: 'q',
        specimen: 'A-2',
        kind: 'cylinder',
        age: 48,
        strength: 31,
        cured: 'standard',
        by: BY,
        seen: '2026-09-09T08:01:00.000Z',
      },
    ],
    sets: [set('A', '2026-09-03T07:00:00.000Z', [48, 72, 168, 240, 672])],
  }
  const tests = dueTests({ panels: [panel], family: codeFamily('eu'), timezone: 'Europe/Dublin', now: NOW })
  const list = dueList(tests, Date.parse(NOW))

  test('stand once each, by set and age', () => {
    const ages = (groups: typeof list.today) => groups.map(({ first, tests: its }) => [first.age, its.length])
    expect(ages(list.done)).toEqual([[48, 2]])
    expect(ages(list.overdue)).toEqual([[72, 2]])
    expect(ages(list.today)).toEqual([[168, 2]])
    expect(ages(list.week)).toEqual([[240, 2]])
    expect(ages(list.later)).toEqual([[672, 2]])
  })

  test('go into a calendar with an event each, no line over 75 octets, what means something escaped', () => {
    const text = calendarText([...list.today, ...list.week], NOW)
    const lines = text.split('\r\n')
    expect(lines.filter((line) => line === 'BEGIN:VEVENT')).toHaveLength(2)
    expect(lines).toContain('DTSTART:20260910T070000Z')
    expect(lines).toContain('SUMMARY:Test A-5\\, A-6 at 7 d')
    for (const line of lines) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true)
  })
})

describe('the form of a set', () => {
  const text = emptySet({ set: 'W1-S1', made: '2026-09-03T09:30', docket: '7301', strip: 17.2 })

  test('has two specimens for the first lift and for 7 and 28 days, each with its mark', () => {
    const read = readSet(text, 'Europe/Dublin')
    expect(read).toMatchObject({
      ok: true,
      set: {
        set: 'W1-S1',
        made: '2026-09-03T08:30:00.000Z',
        docket: '7301',
        tests: [
          { age: 18, cured: 'panel', specimens: ['W1-S1-1', 'W1-S1-2'] },
          { age: 168, cured: 'standard', specimens: ['W1-S1-3', 'W1-S1-4'] },
          { age: 672, cured: 'standard', specimens: ['W1-S1-5', 'W1-S1-6'] },
        ],
      },
    })
  })

  test('says which line is wrong, and wants at least one specimen', () => {
    const [first, ...rest] = text.ages
    if (first === undefined) throw new Error('no line')
    const wrong = readSet({ ...text, ages: [{ ...first, age: '' }, ...rest] }, 'Europe/Dublin')
    expect(wrong).toMatchObject({
      ok: false,
      faults: { ages: [expect.stringMatching(/age/), undefined, undefined, undefined] },
    })
    const none = readSet(
      { ...text, ages: text.ages.map((each) => ({ ...each, count: '0' })) },
      'Europe/Dublin',
    )
    expect(none).toMatchObject({ ok: false, faults: { all: expect.stringMatching(/at least one/) } })
    expect(readSet({ ...text, set: ' ', made: 'x', size: '-1' }, 'Europe/Dublin')).toMatchObject({
      ok: false,
      faults: { set: expect.any(String), made: expect.any(String), size: expect.any(String) },
    })
  })

  test('names ages in hours, and in days where they are whole', () => {
    expect([20, 47.96, 168, 672, 170.25].map(ageText)).toEqual(['20 h', '48 h', '7 d', '28 d', '170.3 h'])
  })
})

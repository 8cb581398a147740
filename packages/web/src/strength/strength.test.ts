import { emptyPanelFacts, type PanelFacts } from '@castwright/engine/steps'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
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
    expect(series.map(({ age, results }) => [age, results.map(({ strength }) => strength)])).toEqual([
      ['14 to 24 h', [14, 15]],
      ['7 d', [30]],
      ['28 d', [44, 46]],
    ])
  })

  test('pair the early and the later results of one pour', () => {
    expect(earlyPairs(resultSeries(panels), 'K40')).toEqual([
      { early: 14, late: 44 },
      { early: 15, late: 46 },
    ])
    expect(earlyPairs(resultSeries(panels), 'other')).toEqual([])
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

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { replay } from '../../working/replay.ts'
import { cusumChart } from './cusum.ts'
import { earlyRelation } from './early-relation.ts'
import { individualsChart } from './individuals.ts'

const RUN = [41.2, 43.0, 39.8, 44.1, 42.5, 40.7, 45.0, 41.9, 43.3, 42.2]
const FALLING = [42, 43.5, 40.1, 38.2, 37.5, 39, 36.8, 38.4, 37.9, 36.5, 38.8, 37]

function found<T>(worked: { readonly known: true; readonly value: T } | { readonly known: false }): T {
  if (!worked.known) throw new Error('not known')
  return worked.value
}

describe('charts of strength', () => {
  // Computed, second method: mean and mean moving range by hand; factors 2.66, 3.267 and 1.128 of Shewhart's individuals chart (from memory).
  it('individuals: mean 42.37, limits 35.69 and 49.05, standard deviation 2.226', () => {
    const chart = individualsChart({ values: RUN })
    const { centre, low, high, sigma, signals } = found(chart)
    expect(centre).toBeCloseTo(42.37, 2)
    expect(low).toBeCloseTo(35.69, 2)
    expect(high).toBeCloseTo(49.05, 2)
    expect(sigma).toBeCloseTo(2.226, 3)
    expect(signals).toEqual([])
    if (chart.known)
      for (const step of chart.working.filter(({ by }) => by !== 'search'))
        expect(replay(step)).toBeCloseTo(Number(step.result), 6)
  })

  // Cumulative sums in UK concrete practice: gradient σ/6, decision interval 8.1 σ (from memory); the sums computed by hand.
  it('cumulative sums: the mean is under 42 from the twelfth value on', () => {
    const { low, decision, signals } = found(cusumChart({ values: FALLING, target: 42, sigma: 4 }))
    expect(decision).toBeCloseTo(32.4, 9)
    expect(low[11]).toBeCloseTo(33.13, 2)
    expect(signals).toEqual([{ at: 11, side: 'low' }])
  })

  // The same data with slack half a standard deviation and interval five (E. S. Page, Biometrika 41, 1954, kind of scheme; from memory).
  it('cumulative sums with k 0.5 σ and h 5 σ do not signal yet', () => {
    const { low, signals } = found(
      cusumChart({ values: FALLING, target: 42, sigma: 4, gradient: 0.5, interval: 5 }),
    )
    expect(signals).toEqual([])
    expect(Math.max(...low)).toBeCloseTo(19.9, 1)
  })

  it('names the rule that fired and where', () => {
    const rules = (values: number[]) =>
      found(individualsChart({ values })).signals.map(({ rule, at, side }) => `${rule} ${at} ${side}`)
    expect(rules([40, 41, 40, 41, 40, 41, 40, 41, 40, 55])).toContain('beyond three 9 high')
    expect(rules([41, 45, 41, 45, 41, 40.5, 40, 39.5, 39, 38.5])).toContain('six in a row 9 low')
    expect(rules([45, 46, 45, 46, 45, 41, 40, 41, 40, 41, 40, 41, 40, 41])).toContain(
      'nine on one side 13 low',
    )
  })

  it('is not known with too few values or without scatter', () => {
    expect(individualsChart({ values: [40, 41, 42, 40] }).known).toBe(false)
    expect(individualsChart({ values: [40, 40, 40, 40, 40] }).known).toBe(false)
    expect(individualsChart({ values: [40, Number.NaN, 40, 41, 40] }).known).toBe(false)
    expect(cusumChart({ values: [], target: 40, sigma: 3 }).known).toBe(false)
    expect(cusumChart({ values: [40], target: 40, sigma: 0 }).known).toBe(false)
  })

  it('turns over with its values: what is low of one is high of its mirror', () => {
    const values = fc.array(fc.double({ min: 20, max: 60, noNaN: true }), { minLength: 5, maxLength: 40 })
    fc.assert(
      fc.property(values, (drawn) => {
        const chart = individualsChart({ values: drawn })
        const mirror = individualsChart({ values: drawn.map((value) => 80 - value) })
        expect(chart.known).toBe(mirror.known)
        if (!chart.known || !mirror.known) return
        const sides = (signals: typeof chart.value.signals) =>
          signals.filter(({ rule }) => rule === 'beyond three').length
        expect(sides(chart.value.signals)).toBe(sides(mirror.value.signals))
        expect(chart.value.sigma).toBeCloseTo(mirror.value.sigma, 9)
      }),
    )
  })
})

describe('early results and later strength', () => {
  // Computed, second method: the line through points that lie on it, with no scatter and so no band.
  it('finds a line that the pairs lie on', () => {
    const pairs = [10, 12, 15, 18, 20].map((early) => ({ early, late: 20 + 1.4 * early }))
    const { slope, intercept, late, low, high } = found(earlyRelation({ pairs, early: 16 }))
    expect([slope, intercept, late]).toEqual([
      expect.closeTo(1.4, 9),
      expect.closeTo(20, 9),
      expect.closeTo(42.4, 9),
    ])
    expect(high - low).toBeCloseTo(0, 6)
  })

  // Computed, second method: by hand, slope 40.667 / 23.333, rest 6.457, lever 0.4, t(0.95, 4) = 2.1318: 45.40 ± 3.205.
  it('gives the 90 % band for one later test', () => {
    const pairs = [
      [12, 38],
      [14, 40],
      [16, 45],
      [15, 41],
      [18, 47],
      [13, 37],
    ].map(([early = 0, late = 0]) => ({ early, late }))
    const { late, low, high, outside } = found(earlyRelation({ pairs, early: 17 }))
    expect(late).toBeCloseTo(45.4, 2)
    expect(high - late).toBeCloseTo(late - low, 9)
    expect(high - late).toBeCloseTo(3.205, 3)
    expect(outside).toBe(false)
    expect(found(earlyRelation({ pairs, early: 25 })).outside).toBe(true)
  })

  it('is not known with fewer than four pairs or alike early results', () => {
    const pair = { early: 12, late: 38 }
    expect(earlyRelation({ pairs: [pair, pair, { early: 14, late: 40 }], early: 13 }).known).toBe(false)
    expect(earlyRelation({ pairs: [pair, pair, pair, pair], early: 13 }).known).toBe(false)
  })
})

import { describe, expect, it } from 'vitest'
import { hungBeam, leastSag } from './hung-beam.ts'

describe('a beam held at points', () => {
  // Closed forms of beam tables: Roark's Formulas for Stress and Strain; from memory.
  it('two ends: 5 w L⁴ / 384 EI and w L² / 8', () => {
    const beam = hungBeam(2, 0)
    expect(beam.sag).toBeCloseTo(5 / 384, 10)
    expect(beam.moment).toBeCloseTo(1 / 8, 10)
    expect(beam.shares).toEqual([0.5, 0.5])
  })

  it('three points: 3/8, 10/8, 3/8 of a span, moment w l² / 8, sag w l⁴ / 185 EI', () => {
    const beam = hungBeam(3, 0)
    expect(beam.shares[0]).toBeCloseTo(3 / 16, 10)
    expect(beam.shares[1]).toBeCloseTo(10 / 16, 10)
    expect(beam.moment).toBeCloseTo(1 / 32, 10)
    expect(beam.sag * 16).toBeCloseTo(1 / 184.6, 4)
  })

  it('four points: 0.4 and 1.1 of a span, moment 0.1 w l²', () => {
    const beam = hungBeam(4, 0)
    expect(beam.shares[0]).toBeCloseTo(0.4 / 3, 10)
    expect(beam.shares[1]).toBeCloseTo(1.1 / 3, 10)
    expect(beam.moment).toBeCloseTo(0.1 / 9, 10)
  })

  it('two points of least sag lie 0.2232 of the length in, 0.5537 apart', () => {
    // Points of support of a measuring bar for least sag: 0.5537 L apart (from memory).
    expect(1 - 2 * leastSag(2).overhang).toBeCloseTo(0.5537, 3)
  })

  it('two points with equal moments lie 0.2071 in', () => {
    // computed, second method: a²/2 = (1 − 2a)²/8 − a²/2 gives a = (√2 − 1) / 2; moment a²/2.
    const a = (Math.SQRT2 - 1) / 2
    expect(hungBeam(2, a).moment).toBeCloseTo(a ** 2 / 2, 10)
  })

  it('shares make the whole, and more points sag less', () => {
    let last = Number.POSITIVE_INFINITY
    for (let n = 2; n <= 10; n += 1) {
      const beam = leastSag(n)
      expect(beam.shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 10)
      expect(beam.sag).toBeLessThan(last)
      last = beam.sag
    }
  })
})

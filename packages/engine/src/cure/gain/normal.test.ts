import { describe, expect, it } from 'vitest'
import { normalBelow } from './normal.ts'

describe('share of a normal law below a deviate', () => {
  // Second method: the density summed by Simpson's rule.
  it.each([-6, -3, -1.6448536269514722, -0.3, 0, 0.7, 2.5, 5])(
    'is the integral of its density, z %d',
    (z) => {
      const n = 4000
      const step = (z + 12) / n
      let sum = 0
      for (let i = 0; i <= n; i += 1) {
        const x = -12 + i * step
        sum += (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp(-(x ** 2) / 2)
      }
      expect(normalBelow(z)).toBeCloseTo((sum * step) / 3 / Math.sqrt(2 * Math.PI), 11)
    },
  )

  it('has one in twenty below the deviate of the band, and ends at 0 and 1', () => {
    expect(normalBelow(-1.6448536269514722)).toBeCloseTo(0.05, 12)
    expect([normalBelow(-40), normalBelow(40)]).toEqual([0, 1])
    expect(normalBelow(Number.NaN)).toBeNaN()
  })
})

import { describe, expect, it } from 'vitest'
import { type AgedTest, fitCurve } from './fit-curve.ts'
import { strengthOf } from './strength-curve.ts'
import { student95 } from './student-table.ts'

describe('a curve through tests', () => {
  it('finds the curve that the tests were made from', () => {
    const curve = { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 } as const
    const tests = [10, 14, 20, 28, 48, 72, 168].map((age): AgedTest => [age, strengthOf(curve, age) ?? 0])
    const fit = fitCurve(tests, 'hyperbolic')
    expect(fit?.curve).toMatchObject({ form: 'hyperbolic' })
    expect(fit?.curve.ultimate).toBeCloseTo(55, 4)
    expect(fit?.squares).toBeLessThan(1e-10)
  })

  it('finds an exponential one too', () => {
    const curve = { form: 'exponential', ultimate: 62, tau: 21, shape: 0.85 } as const
    const tests = [12, 18, 24, 48, 72, 168, 672].map((age): AgedTest => [age, strengthOf(curve, age) ?? 0])
    const fit = fitCurve(tests, 'exponential')
    expect(fit?.curve.ultimate).toBeCloseTo(62, 3)
    expect(fit?.squares).toBeLessThan(1e-8)
  })

  it('is not drawn through fewer ages than it has parameters', () => {
    const twice: AgedTest[] = [
      [24, 20],
      [24, 21],
      [48, 30],
    ]
    expect(fitCurve(twice, 'hyperbolic')).toBeNull()
    expect(fitCurve(twice, 'hyperbolic from 0')?.parameters).toBe(2)
  })

  it('does not break on tests that fall with age', () => {
    const fit = fitCurve(
      [
        [24, 30],
        [48, 20],
        [72, 10],
        [96, 5],
      ],
      'hyperbolic',
    )
    expect(Number.isFinite(fit?.curve.ultimate ?? 0)).toBe(true)
  })
})

/** Share of Student's distribution within ± t, by Simpson's rule on its density in the angle atan(t / √ν). */
function within(t: number, degrees: number): number {
  const end = Math.atan(t / Math.sqrt(degrees))
  const area = (to: number) => {
    const parts = 4000
    let sum = 0
    for (let i = 0; i <= parts; i += 1) {
      const weight = i === 0 || i === parts ? 1 : i % 2 === 1 ? 4 : 2
      sum += weight * Math.cos((to * i) / parts) ** (degrees - 1)
    }
    return (sum * to) / parts / 3
  }
  return area(end) / area(Math.PI / 2)
}

describe('Student’s t, one in twenty beyond', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30, 40, 60, 120])(
    'of %i degrees leaves 90 %% between both edges',
    (degrees) => {
      expect(within(student95(degrees) ?? 0, degrees)).toBeCloseTo(0.9, 4)
    },
  )

  it('reads the smaller number of degrees between rows, and none below one', () => {
    expect(student95(11)).toBe(student95(10))
    expect(student95(1000)).toBe(student95(120))
    expect(student95(0)).toBeNull()
  })
})

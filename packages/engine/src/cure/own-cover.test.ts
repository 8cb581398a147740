import { describe, expect, it } from 'vitest'
import { coverOfPours, LEAST_COVER, ownCover } from './own-cover.ts'

const CURVE = { form: 'hyperbolic', ultimate: 54, rate: 0.046, offset: 4 } as const
const MIX = { curve: CURVE, scatter: 0.08, reference: 20, activation: 40_000 } as const
const at = (age: number) => (54 * 0.046 * (age - 4)) / (1 + 0.046 * (age - 4))
const log = (celsius: number, until: number) =>
  [
    [0, celsius],
    [until, celsius],
  ] as const

describe('how often a band held results of pours', () => {
  const pour = (share: number) => ({
    readings: log(20, 24),
    cylinders: [{ hour: 24, strength: share * at(24) }],
  })

  // Computed, second method: by hand. The band is S (1 ∓ 1.645 · 0.08), so 0.86 lies under it and 1.14 over it.
  it('counts what is inside, what is under, and the half-width', () => {
    const found = coverOfPours({ mix: MIX, pours: [1, 0.9, 1.1, 0.86, 1.14].map(pour) })
    expect(found).toMatchObject({ count: 5, held: 3, below: 1, left: 0, from: null, to: null })
    expect(found.halfWidth).toBeCloseTo(1.6449 * 0.08 * at(24), 3)
  })

  // Computed, second method: roots of (p − 0.9)² = z² p (1 − p) / 10 by bisection: 0.65228 and 0.97737.
  it('gives the interval of the share from ten results on', () => {
    const pours = [0.8, ...Array.from({ length: LEAST_COVER - 1 }, () => 1)].map(pour)
    const found = coverOfPours({ mix: MIX, pours })
    expect(found).toMatchObject({ count: 10, held: 9 })
    expect(found.from).toBeCloseTo(0.65228, 4)
    expect(found.to).toBeCloseTo(0.97737, 4)
  })

  it('takes two cylinders of one hour as one test, and those cured otherwise apart', () => {
    const pours = [
      {
        readings: log(20, 24),
        cylinders: [
          { hour: 24, strength: 0.8 * at(24) },
          { hour: 24.1, strength: 1.2 * at(24) },
          { hour: 24, strength: at(24), celsius: 20 },
        ],
      },
    ]
    expect(coverOfPours({ mix: MIX, pours })).toMatchObject({ count: 2, held: 2 })
  })

  it('leaves out what has no log at its hour, and everything of a mix without scatter', () => {
    const late = { readings: log(20, 24), cylinders: [{ hour: 168, strength: 40 }] }
    const none = { readings: [], cylinders: [{ hour: 24, strength: at(24) }] }
    expect(coverOfPours({ mix: MIX, pours: [late, none, pour(1)] })).toMatchObject({ count: 1, left: 2 })
    const { scatter: _, ...bare } = MIX
    expect(coverOfPours({ mix: bare, pours: [pour(1)] })).toMatchObject({
      count: 0,
      left: 1,
      halfWidth: null,
    })
  })
})

describe('how often a mix’s band held its own tests, each left out in turn', () => {
  const ages = [18, 24, 48, 72, 168, 336, 672]
  const twice = [...ages, ...ages].map((age, i) => ({
    age,
    strength: at(age) * (1 + 0.04 * Math.sin(3 * i)),
  }))

  it('judges those that the rest spans', () => {
    const found = ownCover({ mix: { tests: twice, scatter: 0.08 } })
    expect(found).toMatchObject({ count: 14, left: 0 })
    expect(found.held).toBeGreaterThanOrEqual(12)
    const once = ownCover({ mix: { tests: twice.slice(0, 7), scatter: 0.08 } })
    expect(once).toMatchObject({ count: 5, left: 2 })
  })

  it('finds the one that does not fit outside its band', () => {
    const odd = twice.map((test, i) => (i === 9 ? { ...test, strength: 0.5 * test.strength } : test))
    const found = ownCover({ mix: { tests: odd, scatter: 0.05 } })
    expect(found.below).toBeGreaterThanOrEqual(1)
  })

  it('judges nothing without tests', () => {
    expect(ownCover({ mix: {} })).toEqual({
      count: 0,
      held: 0,
      below: 0,
      halfWidth: null,
      from: null,
      to: null,
      left: 0,
    })
  })
})

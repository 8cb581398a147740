import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { replay } from '../working/replay.ts'
import { formPlate } from './form-plate.ts'
import { propsAlong } from './props.ts'
import { railHolds, railLoads, spanFactors, strengthChecks } from './rail-strength.ts'
import { sideThrust } from './side-form.ts'
import { unequalPush, voidFormer } from './void-former.ts'

/** Moments at the supports of n equal spans under an even load of 1, by the three-moment equation solved as a band: the second method. */
function supportMoments(spans: number): number[] {
  const n = spans - 1
  const [diagonal, right] = [Array.from({ length: n }, () => 4), Array.from({ length: n }, () => -0.5)]
  for (let i = 1; i < n; i += 1) {
    const factor = 1 / (diagonal[i - 1] ?? 1)
    diagonal[i] = (diagonal[i] ?? 0) - factor
    right[i] = (right[i] ?? 0) - factor * (right[i - 1] ?? 0)
  }
  const inner: number[] = Array.from({ length: n }, () => 0)
  for (let i = n - 1; i >= 0; i -= 1) inner[i] = ((right[i] ?? 0) - (inner[i + 1] ?? 0)) / (diagonal[i] ?? 1)
  return [0, ...inner, 0]
}

describe('loads of a mould', () => {
  it.each([1, 2, 3, 4])(
    'computed, second method: %i equal spans, largest moment and push on a prop',
    (spans) => {
      const at = supportMoments(spans)
      const ends = Array.from({ length: spans }, (_, i) => 0.5 + (at[i + 1] ?? 0) - (at[i] ?? 0))
      const field = ends.map((left, i) => (at[i] ?? 0) + left ** 2 / 2)
      const most = Math.max(...at.map(Math.abs), ...field)
      const pushes = at.map((_, i) => (ends[i] ?? 0) + (i === 0 ? 0 : 1 - (ends[i - 1] ?? 0)))
      const { moment, push } = spanFactors(spans)
      expect(moment).toBeCloseTo(most, 9)
      expect(push).toBeCloseTo(Math.max(...pushes), 9)
    },
  )

  // Computed, second method: beam theory of a strip, M = p0 t² / 6, δ = p0 t⁴ / (30 E I).
  it('a steel plate of 5 mm standing 200 mm: 0.128 mm, 8.0 MPa; 6 mm: 0.074 mm', () => {
    const plate = (s: number) => {
      const found = formPlate({ thickness: 200, plate: s, modulus: 200_000, held: 'foot', weight: 25 })
      if (!found.known) throw new Error(found.gaps.join())
      for (const step of found.working) expect(replay(step)).toBeCloseTo(Number(step.result), 9)
      return found.value
    }
    expect(plate(5).bow).toBeCloseTo(0.128, 3)
    expect(plate(5).stress).toBeCloseTo(8, 6)
    expect(plate(6).bow).toBeCloseTo(0.074, 3)
  })

  // Computed, second method: the elastic line of a strip held at both edges, by small steps.
  it('a plate held at both edges bows as its elastic line says', () => {
    const [t, s, modulus, p0] = [300, 18, 8000, 0.0075]
    const found = formPlate({ thickness: t, plate: s, modulus, held: 'both', weight: 25 })
    if (!found.known) throw new Error(found.gaps.join())
    const steps = 20_000
    const h = t / steps
    const stiffness = (modulus * s ** 3) / 12
    const moment = (x: number): number => (p0 * t * x) / 6 - (p0 * x ** 3) / (6 * t)
    let [slope, y, most] = [0, 0, 0]
    const line: number[] = []
    for (let i = 0; i < steps; i += 1) {
      slope -= (moment((i + 0.5) * h) / stiffness) * h
      y += slope * h
      line.push(y)
    }
    for (const [i, value] of line.entries()) most = Math.max(most, value - (y * (i + 1)) / steps)
    expect(found.value.bow).toBeCloseTo(most, 3)
    expect(found.value.stress).toBeCloseTo((6 * p0 * t ** 2) / (9 * Math.sqrt(3)) / s ** 2, 9)
  })

  // Computed, second method: Archimedes by hand, 24 kN/m³ on 0.06 m³ less 1.2 kg.
  it('a foam block of 1.0 × 0.6 × 0.1 m: 1.440 kN gross, 1.428 net, 2.142 to hold', () => {
    const found = voidFormer({ volume: 0.06, mass: 1.2, floats: true, strap: 0.8 })
    if (!found.known) throw new Error(found.gaps.join())
    expect(found.value.gross).toBeCloseTo(1.44, 3)
    expect(found.value.net).toBeCloseTo(1.428, 3)
    expect(found.value.hold).toBeCloseTo(2.142, 3)
    expect(found.value.straps).toBe(3)
    expect((found.assumed ?? []).map(({ field }) => field)).toEqual(['weight', 'factor'])
    const duct = voidFormer({ volume: (Math.PI * 0.1 ** 2) / 4, mass: 0, floats: true })
    expect(duct.known ? duct.value.gross : 0).toBeCloseTo(0.188, 3)
    const sealed = voidFormer({ volume: 0.06, mass: 1.2, floats: false })
    expect(sealed.known ? sealed.value.hold : 1).toBe(0)
  })

  it('unequal heads push by the difference of their squares, and equal ones not at all', () => {
    const push = (high: number, low: number) => unequalPush({ high, low })
    expect(push(200, 0).known && push(200, 0)).toMatchObject({ value: expect.closeTo(0.48, 9) })
    expect(push(200, 200)).toMatchObject({ value: 0 })
    expect(push(100, 200).known).toBe(false)
  })
})

describe('props by bow, strength and rating', () => {
  const outline: [number, number][] = [
    [0, 0],
    [7200, 0],
    [7200, 3000],
    [0, 3000],
  ]
  const rail = { modulus: 8000, inertia: 1_139_000 }
  const thrust = sideThrust(150, 25)

  it('stand closer where the rail is weak or the prop is', () => {
    const spacing = (more: object) =>
      propsAlong({ outline, thrust, rail: { ...rail, ...more }, limit: 1.5 }).spacing
    const plain = spacing({})
    expect(spacing({ section: 50_625, bending: 100 })).toBe(plain)
    expect(spacing({ section: 50_625, bending: 0.5 })).toBeLessThan(plain)
    expect(spacing({ propRating: 0.2 })).toBeLessThan(plain)
  })

  it('are checked where the yard says what they take, not known where it says half, silent where it says nothing', () => {
    const side = { spans: 3, spacing: 1200 }
    const line = { thrust, bend: side, push: side }
    expect(strengthChecks(line, {})).toEqual([])
    const [bending] = strengthChecks(line, { bending: 10 })
    expect(bending?.verdict).toBe('unknown')
    const both = strengthChecks(line, { section: 50_625, bending: 10, propRating: 0.3 })
    expect(both.map(({ id, verdict }) => `${id} ${verdict}`)).toEqual([
      'side-form-strength pass',
      'prop-push fail',
    ])
    for (const check of both)
      for (const step of check.working) expect(replay(step)).toBeCloseTo(Number(step.result), 9)
  })

  it('hold on every side whatever the outline is, where they can', () => {
    const size = fc.integer({ min: 600, max: 14_000 })
    fc.assert(
      fc.property(size, size, fc.double({ min: 0.2, max: 5, noNaN: true }), (a, b, propRating) => {
        const strength = { section: 50_625, bending: 8, propRating }
        const ring: [number, number][] = [
          [0, 0],
          [a, 0],
          [a, b],
          [0, b],
        ]
        const line = propsAlong({ outline: ring, thrust, rail: { ...rail, ...strength }, limit: 1.5 })
        expect(line.bow).toBeLessThanOrEqual(1.5 + 1e-6)
        const { bend, push } = line.worst
        expect(railHolds(bend.spans, thrust, bend.spacing, strength)).toBe(true)
        expect(railLoads(push.spans, thrust, push.spacing).push).toBeLessThanOrEqual(propRating + 1e-6)
      }),
    )
  })
})

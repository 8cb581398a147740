import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { replay } from '../working/replay.ts'
import { formPlate } from './form-plate.ts'
import { propsAlong } from './props.ts'
import { BRACE_SHARE, railLoads, spanFactors, strengthChecks } from './rail-strength.ts'
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

  // Computed, second method: the statics of the triangle, overturning γ t³ / 6 over the depth t.
  it.each([
    [150, 0.09375],
    [200, 0.16667],
    [300, 0.375],
  ])('a brace at the top of %i mm holds %f kN/m', (thickness, expected) => {
    expect(sideThrust(thickness, 25) * BRACE_SHARE).toBeCloseTo(expected, 4)
    expect(((25 * (thickness / 1000) ** 3) / 6 / thickness) * 1000).toBeCloseTo(expected, 4)
  })

  // Computed, second method: the moment and the elastic line of a strip held at both edges, searched point by point.
  it('a strip held at both edges under a triangle: 0.064150 at 0.5774, 0.006522 at 0.5193 from the free end', () => {
    const n = 4000
    const moment = (x: number): number => x / 6 - x ** 3 / 6
    // y'' = −M, integrated by hand: y = x⁵/120 − x³/36 + 7x/360
    const bow = (x: number): number => x ** 5 / 120 - x ** 3 / 36 + (7 * x) / 360
    const peak = (of: (x: number) => number): [number, number] =>
      Array.from({ length: n + 1 }, (_, k): [number, number] => [k / n, of(k / n)]).reduce((most, next) =>
        next[1] > most[1] ? next : most,
      )
    const [[atM, most], [atD, deep]] = [peak(moment), peak(bow)]
    expect(most).toBeCloseTo(0.06415, 5)
    expect(atM).toBeCloseTo(0.5774, 3)
    expect(deep).toBeCloseTo(0.006522, 6)
    expect(atD).toBeCloseTo(0.5193, 3)
    const found = formPlate({ thickness: 1000, plate: 100, modulus: 1, held: 'both', weight: 1 })
    if (!found.known) throw new Error(found.gaps.join())
    // p0 = 0.001 MPa, I = 100³ / 12 a mm
    expect(found.value.bow).toBeCloseTo((deep * 0.001 * 1000 ** 4) / (100 ** 3 / 12), 0)
    expect(found.value.stress).toBeCloseTo((6 * most * 0.001 * 1000 ** 2) / 100 ** 2, 4)
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

  it('say which rule set the spacing of each side', () => {
    const rules = (more: object) =>
      propsAlong({ outline, thrust, rail: { ...rail, ...more }, limit: 1.5 }).sides.map(({ rule }) => rule)
    expect(rules({})).toEqual(['bow', 'longest', 'bow', 'longest'])
    expect(rules({ inertia: 1e9 })).toEqual(['longest', 'longest', 'longest', 'longest'])
    expect(rules({ propRating: 0.2 })).toEqual(['prop', 'prop', 'prop', 'prop'])
    expect(rules({ braceRating: 0.05 })).toEqual(['brace', 'brace', 'brace', 'brace'])
    expect(rules({ section: 50_625, bending: 0.3 })).toEqual(['bending', 'bending', 'bending', 'bending'])
    const short = propsAlong({
      outline: [
        [0, 0],
        [900, 0],
        [900, 800],
        [0, 800],
      ],
      thrust,
      rail,
      limit: 1.5,
    })
    expect(short.sides.map(({ rule, spans }) => `${rule} ${spans}`)).toEqual(Array(4).fill('ends 1'))
  })

  it('check the brace where the yard rates it: a third of the push', () => {
    const side = { spans: 3, spacing: 1200 }
    const [brace] = strengthChecks({ thrust, bend: side, push: side }, { braceRating: 0.1 })
    expect(brace).toMatchObject({ id: 'brace-force', verdict: 'fail' })
    expect(brace?.demand).toBeCloseTo((1.1 * thrust * 1.2) / 3, 9)
    for (const step of brace?.working ?? []) expect(replay(step)).toBeCloseTo(Number(step.result), 9)
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
        const { moment } = railLoads(bend.spans, thrust, bend.spacing)
        expect((moment * 1e6) / strength.section).toBeLessThanOrEqual(strength.bending + 1e-6)
        expect(railLoads(push.spans, thrust, push.spacing).push).toBeLessThanOrEqual(propRating + 1e-6)
      }),
    )
  })
})

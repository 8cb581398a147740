import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../panel/point.ts'
import type { Piece } from '../panel/region.ts'
import { PlateField } from './plate/field.ts'
import { liftedPlate, plateOf } from './plate/lifted-plate.ts'
import { rigidity } from './plate/model.ts'
import { type StressField, stressField, stressLevels } from './stress-field.ts'

function rectangle(x: number, y: number, width: number, height: number): Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

const PLAIN: Piece = { outline: rectangle(0, 0, 6000, 3000), holes: [] }
const WITH_DOOR: Piece = {
  outline: rectangle(0, 0, 6000, 3000),
  holes: [rectangle(900, 400, 1000, 2000).reverse()],
}
const CONCRETE = { thickness: 150, modulus: 30_000, poisson: 0.2 }
const PICKS: Point[] = [
  [700, 2600],
  [5000, 2600],
  [2400, 500],
  [5000, 500],
]

/** Area of rings by the even-odd rule, their direction being outer left, inner right. */
function reachedArea(rings: readonly Float32Array[]): number {
  return rings.reduce((sum, ring) => {
    let twice = 0
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length
      twice += ring[i]! * ring[j + 1]! - ring[j]! * ring[i + 1]!
    }
    return sum + twice / 2
  }, 0)
}

/** A plate bent to w = −a x³: mx = 6 D a x, my = ν mx, so that the tension on the mould face grows evenly with x. */
function bentByCubic(piece: Piece, a: number): PlateField {
  const model = plateOf({ piece, ...CONCRETE, supports: [] })
  const { x } = model.mesh
  const u = new Float64Array(6 * x.length)
  for (let i = 0; i < x.length; i += 1) {
    u[6 * i] = -a * x[i]! ** 3
    u[6 * i + 1] = -3 * a * x[i]! ** 2
    u[6 * i + 3] = -6 * a * x[i]!
  }
  return new PlateField(model, u)
}

function lifted(piece: Piece): PlateField {
  return liftedPlate({
    piece,
    ...CONCRETE,
    pressure: 0.0045,
    supports: PICKS.map((at) => ({ at })),
  }).field
}

function bytes(field: StressField): number {
  return [
    field.x,
    field.y,
    field.stress,
    field.deflection,
    field.triangles,
    ...field.bands.flatMap(({ rings }) => rings),
  ].reduce((sum, part) => sum + part.byteLength, 0)
}

describe('a tension that grows evenly along the panel', () => {
  // 6 · 6 D a x / t² with D = E t³ / 12 (1 − ν²): x = 6000 mm gives 3 MPa for this a.
  const a = (3 * 150 ** 2) / (36 * rigidity(30_000, 150, 0.2) * 6000)

  test('each contour is a straight line across at its place', () => {
    const field = stressField({
      field: bentByCubic(PLAIN, a),
      face: 'mould',
      factor: 1,
      levels: [0.5, 1, 2, 2.9],
    })
    for (const { level, rings } of field.bands) {
      expect(rings).toHaveLength(1)
      const xs = [...rings[0]!].filter((_, i) => i % 2 === 0)
      expect(Math.min(...xs)).toBeCloseTo(2000 * level, 1)
      expect(Math.max(...xs)).toBeCloseTo(6000, 3)
      expect(reachedArea(rings)).toBeCloseTo((6000 - 2000 * level) * 3000, -4)
    }
  })

  test('the factor moves it, the other face has none of it, the worse of both is the same', () => {
    const field = bentByCubic(PLAIN, a)
    const at = (face: 'mould' | 'top' | 'worse', factor: number): number =>
      reachedArea(stressField({ field, face, factor, levels: [1.5] }).bands[0]!.rings)
    expect(at('mould', 1)).toBeCloseTo(3000 * 3000, -4)
    expect(at('mould', 1.5)).toBeCloseTo(4000 * 3000, -4)
    expect(at('worse', 1)).toBeCloseTo(at('mould', 1), 0)
    expect(at('top', 1)).toBe(0)
  })

  test('an opening is left out of every band', () => {
    const { bands } = stressField({
      field: bentByCubic(WITH_DOOR, a),
      face: 'mould',
      factor: 1,
      levels: [0.25, 0.75],
    })
    // 0.25 MPa from x = 500, left of the door; 0.75 from x = 1500, in the middle of it.
    expect(reachedArea(bands[0]!.rings)).toBeCloseTo(5500 * 3000 - 1000 * 2000, -4)
    expect(reachedArea(bands[1]!.rings)).toBeCloseTo(4500 * 3000 - 400 * 2000, -4)
  })
})

describe('a lifted panel', () => {
  const field = lifted(WITH_DOOR)
  const levels = [0.2, 0.4, 0.6, 0.8, 1, 1.2]

  test('the share of the concrete in each band is that of the plate’s own values', () => {
    const made = stressField({ field, face: 'worse', factor: 1, levels })
    const step = 40
    const counts = levels.map(() => 0)
    for (let x = step / 2; x < 6000; x += step) {
      for (let y = step / 2; y < 3000; y += step) {
        const found = field.at([x, y])
        if (found !== null)
          for (const [i, level] of levels.entries()) if (found.stress >= level) counts[i]! += 1
      }
    }
    for (const [i, { rings }] of made.bands.entries()) {
      const area = reachedArea(rings) / 1e6
      expect(Math.abs(area - (counts[i]! * step * step) / 1e6)).toBeLessThan(0.08)
    }
  })

  test('mould and top face together are the worse of both at every node', () => {
    const [mould, top, worse] = (['mould', 'top', 'worse'] as const).map((face) =>
      stressField({ field, face, factor: 1, levels: [] }),
    ) as [StressField, StressField, StressField]
    for (let i = 0; i < worse.x.length; i += 1) {
      expect(worse.stress[i]).toBe(Math.max(mould.stress[i]!, top.stress[i]!))
      expect(worse.stress[i]).toBeCloseTo(field.atNode(i).stress, 4)
      expect(worse.deflection[i]).toBeCloseTo(field.atNode(i).deflection, 4)
    }
  })

  test('is small enough to send from a worker', () => {
    expect(bytes(stressField({ field, face: 'worse', factor: 1, levels }))).toBeLessThan(100_000)
  })

  test('no factor or level that is no number above 0, no level below the one before', () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => stressField({ field, face: 'top', factor: bad, levels })).toThrow(/expected/)
      expect(() => stressField({ field, face: 'top', factor: 1, levels: [bad] })).toThrow(/expected/)
    }
    expect(() => stressField({ field, face: 'top', factor: 1, levels: [0.4, 0.4] })).toThrow(/ascending/)
  })
})

describe('bands', () => {
  test('a higher level never has more concrete, and rings stay on the panel (seed 20261125)', () => {
    fc.assert(
      fc.property(
        fc.record({
          length: fc.integer({ min: 2000, max: 9000 }),
          width: fc.integer({ min: 1500, max: 4000 }),
          thickness: fc.integer({ min: 100, max: 250 }),
          ratio: fc.double({ min: 0.12, max: 0.35, noNaN: true }),
        }),
        ({ length, width, thickness, ratio }) => {
          const [x, y] = [ratio * length, ratio * width]
          const supports = rectangle(x, y, length - 2 * x, width - 2 * y).map((at) => ({ at }))
          const { field, peak } = liftedPlate({
            piece: { outline: rectangle(0, 0, length, width), holes: [] },
            ...CONCRETE,
            thickness,
            pressure: 0.00002452 * thickness,
            supports,
          })
          const levels = stressLevels(peak.stress)
          const { bands } = stressField({ field, face: 'worse', factor: 1, levels })
          let before = length * width * (1 + 1e-6)
          for (const { rings } of bands) {
            const area = reachedArea(rings)
            expect(area).toBeLessThanOrEqual(before + 1e-6 * length * width)
            expect(area).toBeGreaterThanOrEqual(-1)
            before = area
            for (const ring of rings) {
              for (let i = 0; i < ring.length; i += 2) {
                expect(ring[i]).toBeGreaterThanOrEqual(-0.01)
                expect(ring[i]).toBeLessThanOrEqual(length + 0.01)
                expect(ring[i + 1]).toBeGreaterThanOrEqual(-0.01)
                expect(ring[i + 1]).toBeLessThanOrEqual(width + 0.01)
              }
            }
          }
        },
      ),
      { seed: 20261125, numRuns: 12 },
    )
  })

  test('levels are six, round, ascending, and the last is reached (seed 3)', () => {
    expect(stressLevels(0.82)).toEqual([0.1, 0.2, 0.35, 0.45, 0.6, 0.8])
    expect(stressLevels(3.8)).toEqual([0.45, 0.95, 1.5, 2.1, 2.85, 3.6])
    expect(stressLevels(5)).toEqual([0.5, 1.5, 2, 3, 4, 5])
    expect(stressLevels(0)).toEqual([])
    expect(stressLevels(-1)).toEqual([])
    expect(stressLevels(Number.NaN)).toEqual([])
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 1e3, noNaN: true }), (most) => {
        const levels = stressLevels(most)
        expect(levels).toHaveLength(6)
        for (const [i, level] of levels.entries()) expect(level).toBeGreaterThan(i === 0 ? 0 : levels[i - 1]!)
        expect(levels.at(-1)).toBeLessThanOrEqual(most * (1 + 1e-5))
      }),
      { seed: 3, numRuns: 500 },
    )
  })
})

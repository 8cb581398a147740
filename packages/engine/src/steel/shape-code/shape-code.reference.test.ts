import { describe, expect, it } from 'vitest'
import { arcShape, helixShape, ringShape } from './curved-shapes.ts'
import { minimisedLength } from './minimised.ts'
import { scheduledLength, shapeLabels } from './shape-code.ts'

/** Bars all one way in one plane; the true length beside the standard's own. */
function bar(diameter: number, inside: number | null, legs: readonly number[], turns: readonly number[]) {
  const senses = legs.slice(1).map(() => 1 as const)
  const found = shapeLabels({ diameter, inside, legs, turns, senses, outOfPlane: false })
  if (!found.known) throw new Error(found.gaps.join())
  return found.value
}

describe('lengths by BS 8666:2005 Table 3, and up to 25 mm', () => {
  it.each([
    ['11', 12, 48, [600, 400], [90], 976, 1000, 975.1],
    ['12', 16, 200, [800, 500], [90], 1237.8, 1250, 1237.6],
    ['13', 12, 96, [1000, 300], [180], 1349.2, 1350, null],
    ['21', 16, 64, [500, 1200, 500], [90], 2136, 2150, 2133.7],
    ['41', 12, 48, [150, 300, 800, 300, 150], [90], 1604, 1625, null],
    ['51', 10, 40, [130, 500, 300, 500, 300, 130], [90], 1760, 1775, null],
    ['51', 12, 48, [160, 600, 250, 600, 250, 160], [90], 1900, 1900, null],
  ] as const)(
    'shape %s, %d mm: legs %j',
    (code, diameter, inside, legs, turns, formula, scheduled, exact) => {
      const label = bar(diameter, inside, legs, turns)
      expect(label.bs8666).toBe(code)
      expect(label.formulaLength).toBeCloseTo(formula, 1)
      expect(scheduledLength(label.formulaLength ?? 0)).toBe(scheduled)
      // Exact: computed, second method: tangents and arcs summed by hand.
      if (exact !== null) expect(Math.abs(label.length - exact)).toBeLessThan(0.1)
      expect(label.difference).toBeCloseTo(formula - label.length, 6)
    },
  )

  it('shape 46, 16 mm, 1000, 400, 1500, 400, 300: 3600, an approximate formula', () => {
    const found = shapeLabels({
      diameter: 16,
      inside: 64,
      legs: [1000, 400, 1500, 400, 300],
      turns: [30],
      senses: [-1, 1, 1, -1],
      outOfPlane: false,
    })
    expect(found).toMatchObject({
      value: { bs8666: '46', formulaLength: 3600, dimensions: { A: 1000, B: 400, C: 1500, E: 300 } },
    })
  })

  it('shape 51 with the least ends: 1760 and 1892 (minimised form)', () => {
    expect(minimisedLength({ code: '51', diameter: 10, A: 300, B: 500 })).toMatchObject({ value: 1760 })
    expect(minimisedLength({ code: '51', diameter: 12, A: 250, B: 600 })).toMatchObject({ value: 1892 })
    expect(minimisedLength({ code: '47', diameter: 12, A: 500, B: 300 })).toMatchObject({ value: 1552 })
    expect(minimisedLength({ code: '63', diameter: 10, A: 500, B: 300 })).toMatchObject({ value: 2050 })
    expect(minimisedLength({ code: '11', diameter: 10, A: 500, B: 300 }).known).toBe(false)
    expect(minimisedLength({ code: '51', diameter: Number.NaN, A: 500, B: 300 }).known).toBe(false)
  })

  it('shape 75, 12 mm, 600 outside, lap 300: 2147.3', () => {
    const ring = ringShape({ diameter: 12, outside: 600, lap: 300 })
    expect(ring.known && ring.value.length).toBeCloseTo(2147.3, 1)
  })

  it('shape 77, 12 mm, 600 outside, ten turns: 18472.6 at 100 mm pitch, 18533.4 at 150', () => {
    const helix = (pitch: number) => helixShape({ diameter: 12, outside: 600, turns: 10, pitch })
    const [flat, steep] = [helix(100), helix(150)]
    expect(flat.known && flat.value.formulaLength).toBeCloseTo(18472.6, 1)
    expect(flat.known && flat.value.difference).toBeLessThan(0)
    expect(steep.known && steep.value.formulaLength).toBeCloseTo(18533.4, 1)
    expect(steep.known && steep.value.difference).toBe(0)
    // The long form starts over a fifth of the outside diameter.
    expect(helix(120)).toMatchObject({ working: [{}, { note: 'pitch up to A / 5' }] })
    expect(helix(120.1)).toMatchObject({ working: [{}, { note: 'pitch over A / 5' }] })
  })

  it('curves that are none are not known', () => {
    expect(arcShape({ length: 900 })).toMatchObject({ value: { code: '67', length: 900 } })
    expect(arcShape({ length: 0 }).known).toBe(false)
    expect(ringShape({ diameter: 12, outside: 24, lap: 300 }).known).toBe(false)
    expect(ringShape({ diameter: 12, outside: 600, lap: Number.NaN }).known).toBe(false)
    expect(helixShape({ diameter: 12, outside: 600, turns: -1, pitch: 100 }).known).toBe(false)
  })
})

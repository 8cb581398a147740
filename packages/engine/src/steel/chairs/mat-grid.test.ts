import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BAR_MODULUS, matGridSag } from './mat-grid.ts'

const stiffness = (diameter: number): number => (BAR_MODULUS * Math.PI * diameter ** 4) / 64
/** Weight of bar, N/mm. */
const weight = (diameter: number): number => (7850 * 9.80665 * Math.PI * diameter ** 2) / 4e9

describe('a mat on its chairs', () => {
  it('one direction alone is a beam of two spans with the person in one of them', () => {
    // Roark's Formulas for Stress and Strain, continuous beam of two equal spans, one loaded at its middle (from memory): 23 P L³ / 1536 EI.
    const [d, L] = [12, 600]
    const sag = matGridSag({
      carried: { diameter: d, spacing: 200 },
      crossing: null,
      spacing: L,
      person: 1,
    })
    const person = (23 * 1000 * L ** 3) / (1536 * stiffness(d))
    // Own weight put at the nodes: half a span's weight at each middle of the two, 7 P L³ / 768 EI with both spans loaded.
    const own = (7 * ((weight(d) * L) / 2) * L ** 3) / (768 * stiffness(d))
    expect(sag?.sag).toBeCloseTo(person + own, 3)
    // Moment under the load 13/64 PL, and 10/64 more of the nodes' weight (both spans loaded: 5/32).
    const moment = (13 / 64) * 1000 * L + (5 / 32) * ((weight(d) * L) / 2) * L
    expect(sag?.stress).toBeCloseTo((moment * 32) / (Math.PI * d ** 3), 1)
  })

  it('crossing bars take a share, so the mat sags less than its bar alone', () => {
    const carried = { diameter: 12, spacing: 200 }
    const bar = matGridSag({ carried, crossing: null, spacing: 600, person: 1 })
    const mat = matGridSag({ carried, crossing: carried, spacing: 600, person: 1 })
    expect(mat?.sag).toBeLessThan(bar?.sag ?? 0)
  })

  it('one crossing bar a bay on chaired bars: the two beams on each other, and hardly stiffer', () => {
    // computed, second method: the crossing bar as a beam of two spans r on rows that settle. Its reactions under a load in the middle of
    // a span are 13/32, 22/32 and −3/32; each row is a beam of two spans s loaded in its middle. The bar of the other bay helps a little.
    const [d, s, r] = [12, 600, 500]
    const mat = (person: number) =>
      matGridSag({
        carried: { diameter: d, spacing: r },
        crossing: { diameter: d, spacing: s / 2 },
        spacing: s,
        person,
      })?.sag ?? Number.NaN
    const alone =
      (1000 * (23 / 1536) * (r ** 3 + ((13 ** 2 + 22 ** 2 + 3 ** 2) / 32 ** 2) * s ** 3)) / stiffness(d)
    const added = mat(3) - mat(2)
    expect(added).toBeLessThan(alone)
    expect(added).toBeGreaterThan(0.9 * alone)
  })

  it('bars further apart than the chairs are looked at between their crossings', () => {
    const bars = { diameter: 10, spacing: 300 }
    const mat = matGridSag({ carried: bars, crossing: bars, spacing: 400, person: 1 })
    expect(mat?.sag).toBeGreaterThan(3)
    expect(mat?.across).toBe(300)
  })

  it('more weight sags in proportion, thicker bars less, wider chairs more', () => {
    const bar = fc.record({
      diameter: fc.integer({ min: 6, max: 32 }),
      spacing: fc.integer({ min: 100, max: 400 }),
    })
    fc.assert(
      fc.property(bar, bar, fc.integer({ min: 200, max: 900 }), (carried, crossing, spacing) => {
        const sag = (person: number, more = 0): number =>
          matGridSag({
            carried: { ...carried, diameter: carried.diameter + more },
            crossing: { ...crossing, diameter: crossing.diameter + more },
            spacing,
            person,
          })?.sag ?? Number.NaN
        const [one, two, three] = [sag(1), sag(2), sag(3)]
        expect(one).toBeGreaterThan(0)
        expect(three - two).toBeLessThanOrEqual((two - one) * 1.01 + 1e-9)
        expect(sag(1, 2)).toBeLessThan(one)
      }),
      { numRuns: 40 },
    )
  })

  it('a size of nothing has no sag', () => {
    const bars = { diameter: 12, spacing: 200 }
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(matGridSag({ carried: bars, crossing: bars, spacing: bad, person: 1 })).toBeNull()
      expect(matGridSag({ carried: bars, crossing: bars, spacing: 600, person: bad })).toBeNull()
      expect(
        matGridSag({ carried: { ...bars, diameter: bad }, crossing: bars, spacing: 600, person: 1 }),
      ).toBeNull()
    }
  })
})

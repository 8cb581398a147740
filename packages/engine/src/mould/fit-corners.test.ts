import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { distance, type Point, type Ring } from '../panel/point.ts'
import { starRing } from '../panel/random-shapes.ts'
import { MOST_CORNERS, mouldSurvey } from './corner-lengths.ts'
import { fitCorners, type TapedLength } from './fit-corners.ts'
import { MISREAD_FACTOR, misreadLengths, TAPE_SCATTER } from './misread.ts'

const LIMIT = MISREAD_FACTOR * TAPE_SCATTER

/** Lengths as a tape without error reads them in a mould set up at these corners. */
function tapedIn(outline: Ring, setUp: Ring): { drawn: Ring; rows: TapedLength[] } {
  const { corners, lengths } = mouldSurvey(outline)
  const place = new Map(corners.map((index, k) => [index, k]))
  return {
    drawn: corners.map((index) => outline[index] as Point),
    rows: lengths.map(({ from, to }) => ({
      from: place.get(from) as number,
      to: place.get(to) as number,
      length: distance(setUp[from] as Point, setUp[to] as Point),
    })),
  }
}

/** Outlines that a mould could have: no corner that is nearly straight and none nearly on another. */
const outlines = starRing({ least: 800 }).filter((ring) =>
  ring.every((corner, k) => {
    const [p, q] = [ring[(k + ring.length - 1) % ring.length], ring[(k + 1) % ring.length]] as [Point, Point]
    const cross = (corner[0] - p[0]) * (q[1] - corner[1]) - (corner[1] - p[1]) * (q[0] - corner[0])
    return Math.abs(cross) > 0.1 * distance(p, corner) * distance(corner, q) && distance(p, corner) > 150
  }),
)

describe('lengths taped in a mould', () => {
  it('are every side and two diagonals of a rectangle, one more than its shape needs', () => {
    const { lengths } = mouldSurvey([
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [0, 3000],
    ])
    expect(lengths.map(({ id }) => id)).toEqual([
      'side:1',
      'side:2',
      'side:3',
      'side:4',
      'diagonal:1-3',
      'diagonal:2-4',
    ])
    expect(lengths[4]?.drawn).toBeCloseTo(6708.204, 3)
  })

  it('are one more than the shape needs for any outline, and few where corners are many', () => {
    fc.assert(
      fc.property(outlines, (ring) => {
        const { corners, lengths } = mouldSurvey(ring)
        const count = corners.length
        expect(count).toBe(ring.length > MOST_CORNERS ? 6 : ring.length)
        // A shape of n corners has 2n − 3 lengths to choose; a triangle has none to spare.
        expect(lengths).toHaveLength(count === 3 ? 3 : 2 * count - 2)
        expect(new Set(lengths.map(({ id }) => id)).size).toBe(lengths.length)
      }),
      { numRuns: 40 },
    )
  })
})

describe('corners from taped lengths', () => {
  it('of a random outline that is set up as drawn and taped exactly lie where they are drawn', () => {
    fc.assert(
      fc.property(outlines, (ring) => {
        const { drawn, rows } = tapedIn(ring, ring)
        const fitted = fitCorners(drawn, rows)
        expect(fitted).not.toBeNull()
        for (const [k, at] of (fitted?.at ?? []).entries())
          expect(distance(at, drawn[k] as Point)).toBeLessThan(1e-6)
        expect(misreadLengths(drawn, rows, LIMIT)).toEqual([])
      }),
      { numRuns: 40 },
    )
  })

  it('show one corner that stands wrong as that corner alone, by the whole of it', () => {
    const drawn: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 1500],
      [2000, 1500],
      [2000, 4000],
      [0, 4000],
    ]
    for (let k = 0; k < drawn.length; k += 1) {
      const setUp = drawn.map(([x, y], i): Point => (i === k ? [x + 9, y - 7] : [x, y]))
      const { rows } = tapedIn(drawn, setUp)
      const out = (fitCorners(drawn, rows)?.at ?? []).map((at, i) => distance(at, drawn[i] as Point))
      expect(out[k]).toBeCloseTo(Math.hypot(9, 7), 1)
      for (const [i, size] of out.entries()) if (i !== k) expect(size).toBeLessThan(0.3)
    }
  })

  it('do not hang on where the mould lies: turned and shifted lengths are the same lengths', () => {
    fc.assert(
      fc.property(outlines, fc.double({ min: -3, max: 3, noNaN: true }), (ring, turn) => {
        const [c, s] = [Math.cos(turn), Math.sin(turn)]
        const turned = ring.map(([x, y]): Point => [c * x - s * y + 900, s * x + c * y - 400])
        const { drawn, rows } = tapedIn(ring, turned)
        for (const [k, at] of (fitCorners(drawn, rows)?.at ?? []).entries())
          expect(distance(at, drawn[k] as Point)).toBeLessThan(1e-5)
      }),
      { numRuns: 20 },
    )
  })

  it('are not known where the lengths leave the shape loose', () => {
    const square: Ring = [
      [0, 0],
      [1000, 0],
      [1000, 1000],
      [0, 1000],
    ]
    const sides = square.map((_, k) => ({ from: k, to: (k + 1) % 4, length: 1000 }))
    expect(fitCorners(square, sides)).toBeNull()
  })
})

describe('a misread tape', () => {
  it('of 20 mm is named first, with its size, by every length that can show it', () => {
    let shown = 0
    fc.assert(
      fc.property(outlines, fc.nat(), fc.constantFrom(-20, 20), (ring, pick, slip) => {
        const { drawn, rows } = tapedIn(ring, ring)
        const index = pick % rows.length
        const slipped = rows.map((row, k) => (k === index ? { ...row, length: row.length + slip } : row))
        const part = fitCorners(drawn, slipped)?.shows[index] ?? 0
        // What shows of it, over the scatter of a good reading, must pass the limit.
        if (20 * Math.sqrt(part) < LIMIT * 1.1 || part < 0.03) return
        const found = misreadLengths(drawn, slipped, LIMIT)
        shown += 1
        const named = found.find((one) => one.index === index)
        expect(named?.over).toBeCloseTo(slip, 3)
        expect(found[0]?.index).toBe(index)
      }),
      { numRuns: 60 },
    )
    expect(shown).toBeGreaterThan(10)
  })

  it('in a mould that stands wrong itself may be one of several, the likeliest first', () => {
    const ring: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [0, 3000],
    ]
    const setUp = ring.map(([x, y], k): Point => (k === 2 ? [x + 6, y] : [x, y]))
    const { drawn, rows } = tapedIn(ring, setUp)
    const slipped = rows.map((row, k) => (k === 4 ? { ...row, length: row.length - 8 } : row))
    const found = misreadLengths(drawn, slipped, LIMIT)
    // Without a long side the mould lies nearer to the drawing than without a diagonal, which keeps corner 3 out by 6.
    expect(found.map(({ index }) => (index < 4 ? 'side' : 'diagonal'))).toEqual([
      'side',
      'side',
      'diagonal',
      'diagonal',
    ])
    expect(found.find(({ index }) => index === 4)?.over).toBeCloseTo(-8, 6)
  })

  it('is not blamed on anybody where every length reads a little over', () => {
    const ring: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [0, 3000],
    ]
    const { drawn, rows } = tapedIn(ring, ring)
    const fits = rows.map((row) => ({ ...row, length: row.length + 1 }))
    expect(misreadLengths(drawn, fits, LIMIT)).toEqual([])
  })
})

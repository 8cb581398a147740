import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lappedLine, STAGGER } from './lapped-line.ts'

describe('bars longer than the stock', () => {
  it('a bar as long as the stock is one piece', () => {
    expect(lappedLine({ from: 0, to: 6000, stock: 6000, lap: 600, odd: false })).toEqual({
      pieces: [{ from: 0, to: 6000 }],
      laps: [],
    })
    expect(lappedLine({ from: 0, to: 6001, stock: 6000, lap: 600, odd: false })?.pieces).toHaveLength(2)
  })

  it('11 920 from bars of 6000 with laps of 600: 5920, 6000 and two laps, neighbours staggered', () => {
    const even = lappedLine({ from: 40, to: 11960, stock: 6000, lap: 600, odd: false })
    const odd = lappedLine({ from: 40, to: 11960, stock: 6000, lap: 600, odd: true })
    expect(even?.pieces).toHaveLength(3)
    expect(even?.pieces[0]).toEqual({ from: 40, to: 5960 })
    for (const a of even?.laps ?? []) {
      for (const b of odd?.laps ?? []) expect(Math.abs(a - b)).toBeGreaterThanOrEqual(STAGGER * 600 - 1e-6)
    }
  })

  it('two whole bars that just reach take a third piece in odd rows, so that the laps do not meet', () => {
    const odd = lappedLine({ from: 0, to: 11400, stock: 6000, lap: 600, odd: true })
    expect(lappedLine({ from: 0, to: 11400, stock: 6000, lap: 600, odd: false })?.laps).toEqual([5700])
    expect(odd?.pieces).toHaveLength(3)
    for (const lap of odd?.laps ?? []) expect(Math.abs(lap - 5700)).toBeGreaterThanOrEqual(780)
  })

  it('a lap of half the stock or more cannot be built; impossible sizes neither', () => {
    expect(lappedLine({ from: 0, to: 9000, stock: 6000, lap: 3000, odd: false })).toBeNull()
    expect(lappedLine({ from: 0, to: 9000, stock: 6000, lap: 2999, odd: false })).not.toBeNull()
    expect(lappedLine({ from: 0, to: Number.NaN, stock: 6000, lap: 600, odd: false })).toBeNull()
    expect(lappedLine({ from: 0, to: 9000, stock: 0, lap: 600, odd: false })).toBeNull()
  })

  it('property (seed 4671): pieces cover the line, fit the stock, overlap by the lap, and are as few as can be', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 60_000 }),
        fc.constantFrom(4000, 6000, 9000, 12_000),
        fc.integer({ min: 200, max: 1900 }),
        fc.boolean(),
        (length, stock, lap, odd) => {
          const line = lappedLine({ from: 10, to: 10 + length, stock, lap, odd })
          expect(line).not.toBeNull()
          const pieces = line?.pieces ?? []
          expect(pieces[0]?.from).toBe(10)
          expect(pieces.at(-1)?.to).toBe(10 + length)
          for (const piece of pieces) {
            expect(piece.to - piece.from).toBeLessThanOrEqual(stock + 1e-6)
            if (pieces.length > 1) expect(piece.to - piece.from).toBeGreaterThan(lap)
          }
          for (let i = 1; i < pieces.length; i += 1) {
            expect((pieces[i - 1]?.to ?? 0) - (pieces[i]?.from ?? 0)).toBeCloseTo(lap, 6)
          }
          const fewest = length <= stock ? 1 : Math.ceil((length - lap) / (stock - lap) - 1e-9)
          expect(pieces.length).toBeLessThanOrEqual(fewest + (odd ? 1 : 0))
        },
      ),
      { seed: 4671, numRuns: 500 },
    )
  })
})

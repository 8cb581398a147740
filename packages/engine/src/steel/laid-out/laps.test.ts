import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { lapPlaces } from './lap-places.ts'
import { lapShares } from './lap-share.ts'
import { openingZones } from './opening-zones.ts'

const free = { avoid: [], beside: [], before: [] }

describe('places of laps in one row', () => {
  it('neighbours take turns with the same two cut lengths where the stock leaves room', () => {
    const row = { from: 0, to: 9000, stock: 6000, lap: 700 }
    const first = lapPlaces({ ...row, ...free })
    expect(first?.pieces).toEqual([
      { from: 0, to: 6000 },
      { from: 5300, to: 9000 },
    ])
    const second = lapPlaces({ ...row, ...free, beside: first?.laps ?? [] })
    expect(second?.pieces).toEqual([
      { from: 0, to: 3700 },
      { from: 3000, to: 9000 },
    ])
    const third = lapPlaces({ ...row, ...free, beside: second?.laps ?? [], before: first?.laps ?? [] })
    expect(third).toEqual(first)
  })

  it('a lap moves off the stretch beside an opening', () => {
    const found = lapPlaces({ from: 0, to: 9000, stock: 6000, lap: 700, ...free, avoid: [[5000, 6200]] })
    const [at] = found?.laps ?? []
    expect(found?.pieces.length).toBe(2)
    expect(at === undefined ? null : at + 350 <= 5000 || at - 350 >= 6200).toBe(true)
  })

  it('stagger outranks openings, and both are worth one piece more', () => {
    // 2 pieces leave the lap between 5300 and 5400: right beside the neighbour's.
    const row = { from: 0, to: 11_200, stock: 6000, lap: 700 }
    const first = lapPlaces({ ...row, ...free })
    const second = lapPlaces({ ...row, ...free, beside: first?.laps ?? [] })
    expect(first?.pieces.length).toBe(2)
    expect(second?.pieces.length).toBe(3)
    for (const a of second?.laps ?? [])
      for (const b of first?.laps ?? []) expect(Math.abs(a - b)).toBeGreaterThanOrEqual(1.3 * 700 - 1e-6)
  })

  it('pieces cover the row, overlap by the lap exactly, and are neither longer than the stock nor under two laps', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1500, max: 40_000 }),
        fc.integer({ min: 3000, max: 12_000 }),
        fc.integer({ min: 200, max: 1400 }),
        fc.array(fc.integer({ min: 0, max: 40_000 }), { maxLength: 4 }),
        fc.array(fc.tuple(fc.integer({ min: 0, max: 40_000 }), fc.integer({ min: 100, max: 3000 })), {
          maxLength: 3,
        }),
        (length, stock, lap, beside, stretches) => {
          const avoid = stretches.map(([from, wide]) => [from, from + wide] as const)
          const found = lapPlaces({ from: 0, to: length, stock, lap, avoid, beside, before: [] })
          expect(found).not.toBeNull()
          if (found === null) return
          expect(found.pieces[0]?.from).toBe(0)
          expect(found.pieces.at(-1)?.to).toBe(length)
          for (const [i, piece] of found.pieces.entries()) {
            expect(piece.to - piece.from).toBeLessThanOrEqual(stock + 1e-5)
            const even = (length + lap * (found.pieces.length - 1)) / found.pieces.length
            if (found.pieces.length > 1) {
              expect(piece.to - piece.from).toBeGreaterThanOrEqual(Math.min(2 * lap, even) - 1e-5)
            }
            const next = found.pieces[i + 1]
            if (next !== undefined) {
              expect(piece.to - next.from).toBeCloseTo(lap, 6)
              expect(found.laps[i]).toBeCloseTo(piece.to - lap / 2, 6)
            }
          }
          const fewest = length <= stock ? 1 : Math.max(2, Math.ceil((length - lap) / (stock - lap) - 1e-9))
          expect(found.pieces.length).toBeLessThanOrEqual(fewest + 1)
        },
      ),
      { numRuns: 300 },
    )
  })

  it('a bar as long as the stock is one piece, one longer two', () => {
    const row = { from: 0, stock: 6000, lap: 600, ...free }
    expect(lapPlaces({ ...row, to: 6000 })).toEqual({ pieces: [{ from: 0, to: 6000 }], laps: [] })
    expect(lapPlaces({ ...row, to: 6001 })?.pieces).toHaveLength(2)
  })

  it('11 920 from bars of 6000 with laps of 600 takes three pieces, neighbours staggered', () => {
    const row = { from: 40, to: 11_960, stock: 6000, lap: 600 }
    const one = lapPlaces({ ...row, ...free })
    const other = lapPlaces({ ...row, ...free, beside: one?.laps ?? [] })
    expect([one?.pieces.length, other?.pieces.length]).toEqual([3, 3])
    for (const a of one?.laps ?? [])
      for (const b of other?.laps ?? []) expect(Math.abs(a - b)).toBeGreaterThanOrEqual(780 - 1e-6)
  })

  it('a lap of half the stock or more cannot be built; impossible sizes neither', () => {
    const row = { from: 0, to: 9000, stock: 6000, ...free }
    expect(lapPlaces({ ...row, lap: 3000 })).toBeNull()
    expect(lapPlaces({ ...row, lap: 2999 })).not.toBeNull()
    expect(lapPlaces({ ...row, to: Number.NaN, lap: 600 })).toBeNull()
    expect(lapPlaces({ ...row, stock: 0, lap: 600 })).toBeNull()
  })
})

describe('stretches beside openings', () => {
  const door: [number, number][] = [
    [900, 0],
    [1900, 0],
    [1900, 2100],
    [900, 2100],
  ]
  it('an opening within one lap of the row counts, with half a lap at either end', () => {
    const zones = (at: number) => openingZones({ openings: [door], direction: 'x', at, lap: 700 })
    expect(zones(2800)).toEqual([[550, 2250]])
    expect(zones(2801)).toEqual([])
    expect(zones(1000)).toEqual([[550, 2250]])
    expect(openingZones({ openings: [door], direction: 'y', at: 2000, lap: 700 })).toEqual([[-350, 2450]])
  })

  it('of a slanting opening only the part within the strip counts', () => {
    const gable: [number, number][] = [
      [0, 0],
      [4000, 0],
      [2000, 2000],
    ]
    const [zone] = openingZones({ openings: [gable], direction: 'x', at: 2500, lap: 1000 })
    expect(zone?.[0]).toBeCloseTo(1500 - 500, 9)
    expect(zone?.[1]).toBeCloseTo(2500 + 500, 9)
  })
})

describe('share lapped at one section', () => {
  const row = (...laps: number[]) => ({ from: 0, to: 9000, laps })
  it('rows that take turns count half; laps in line count all', () => {
    expect(lapShares([row(3000), row(5000), row(3000), row(5000)], 455).flat()).toEqual([50, 50, 50, 50])
    expect(lapShares([row(3000), row(3000)], 455).flat()).toEqual([100, 100])
  })

  it('a row counts once though it has two laps near the section, and rows that end before it do not count', () => {
    expect(lapShares([row(3000, 3800), row(3400), { from: 5000, to: 9000, laps: [] }], 455)[1]).toEqual([100])
    expect(lapShares([row(3000), row(), row(), { from: 5000, to: 9000, laps: [] }], 455)[0]).toEqual([
      100 / 3,
    ])
  })

  it('agrees with counting every row for every lap', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.integer({ min: 0, max: 9000 }), { maxLength: 3 }), {
          minLength: 1,
          maxLength: 12,
        }),
        fc.integer({ min: 50, max: 900 }),
        (laps, reach) => {
          const rows = laps.map((each) => row(...each))
          const slow = rows.map(({ laps: own }) =>
            own.map(
              (at) =>
                (100 * rows.filter((other) => other.laps.some((lap) => Math.abs(lap - at) <= reach)).length) /
                rows.length,
            ),
          )
          expect(lapShares(rows, reach)).toEqual(slow)
        },
      ),
    )
  })
})

describe('codes that shorten a lap for half the bars', () => {
  const input = {
    diameter: 12,
    yield: 500,
    concrete: 25,
    cover: 20,
    gap: 200,
    below: 100,
    bond: 'good',
    apart: 0,
  } as const
  const length = (family: 'au' | 'us', more: Record<string, number>) => {
    const found = codeFamily(family).steel.lap({
      ...input,
      ...(family === 'us' ? { diameter: 12.7, yield: 413.7 } : {}),
      share: 50,
      ...more,
    })
    return found.known ? found.value.length : null
  }
  it('only where twice the steel required is there and at most half is lapped', () => {
    // AS 3600:2018 13.2.2, k7 1.0 and 1.25; N12 in 25 MPa at 20 mm: 450 and 562.5 (computed, second method: by hand).
    expect(length('au', { spare: 2 })).toBeCloseTo(450, 6)
    for (const more of [{}, { spare: 1.99 }, { spare: 2, share: 51 }]) {
      expect(length('au', more)).toBeCloseTo(562.5, 6)
    }
    // ACI 318-19 25.5.2.1: class B is 1.3 of class A where neither is at its least.
    expect(length('us', {})).toBeCloseTo(1.3 * (length('us', { spare: 2 }) ?? 0), 6)
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { degreeHoursOf, maturity } from './maturity.ts'
import type { Reading } from './readings.ts'
import { readingsUntil } from './readings.ts'
import { SEED, someReadings } from './testing.ts'

const value = (readings: readonly Reading[], datum: number) => {
  const found = maturity({ readings, datum })
  return found.known ? found.value : Number.NaN
}

describe('maturity', () => {
  it('of 20 °C for a day is 480 °C·h above 0 and 720 above −10', () => {
    const day: Reading[] = [
      [0, 20],
      [24, 20],
    ]
    expect(value(day, 0)).toBe(480)
    expect(value(day, -10)).toBe(720)
  })

  it('is cut at the datum exactly, inside an interval', () => {
    // From −10 to 10 °C in 4 h: two hours above 0, 5 °C on average.
    expect(
      value(
        [
          [0, -10],
          [4, 10],
        ],
        0,
      ),
    ).toBeCloseTo(10, 12)
    expect(
      value(
        [
          [0, 10],
          [4, -10],
        ],
        0,
      ),
    ).toBeCloseTo(10, 12)
  })

  it('counts nothing at and below the datum', () => {
    expect(
      value(
        [
          [0, 0],
          [5, 0],
        ],
        0,
      ),
    ).toBe(0)
    expect(
      value(
        [
          [0, -5],
          [5, -1],
        ],
        0,
      ),
    ).toBe(0)
    expect(
      value(
        [
          [0, -5],
          [5, 0],
        ],
        0,
      ),
    ).toBe(0)
  })

  it('of a long log is worked in one line, of a short one in a line an interval', () => {
    const hours = (count: number) => Array.from({ length: count + 1 }, (_, hour): Reading => [hour, 20])
    const [short, long] = [hours(48), hours(49)].map((readings) => maturity({ readings, datum: 0 }))
    expect(short?.working).toHaveLength(49)
    expect(long?.working).toHaveLength(1)
  })

  it.each([
    ['one reading', [[0, 20]], 0],
    [
      'time that stands',
      [
        [0, 20],
        [0, 21],
      ],
      0,
    ],
    [
      'a temperature that is none',
      [
        [0, 20],
        [1, Number.NaN],
      ],
      0,
    ],
    [
      'an hour that is none',
      [
        [0, 20],
        [Number.POSITIVE_INFINITY, 20],
      ],
      0,
    ],
    [
      'a datum that is none',
      [
        [0, 20],
        [1, 20],
      ],
      Number.NaN,
    ],
  ] as [string, Reading[], number][])('is not known with %s', (_, readings, datum) => {
    expect(maturity({ readings, datum }).known).toBe(false)
  })

  it(`adds up over a log split anywhere (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        someReadings,
        fc.double({ min: -20, max: 40, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (readings, datum, share) => {
          const [first, last] = [readings[0]?.[0] ?? 0, readings.at(-1)?.[0] ?? 0]
          const cut = first + share * (last - first)
          const head = readingsUntil(readings, cut)
          const at = head.at(-1) as Reading
          const tail = [at, ...readings.filter(([hour]) => hour > at[0])]
          const parts = degreeHoursOf(head, datum) + (tail.length > 1 ? degreeHoursOf(tail, datum) : 0)
          const whole = degreeHoursOf(readings, datum)
          expect(Math.abs(parts - whole)).toBeLessThan(1e-7 * (1 + whole))
        },
      ),
      { seed: SEED },
    )
  })

  it(`never falls when any reading is warmer (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        someReadings,
        fc.nat(),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (readings, pick, more) => {
          const warmer = readings.map(
            ([hour, celsius], index): Reading => [
              hour,
              celsius + (index === pick % readings.length ? more : 0),
            ],
          )
          expect(degreeHoursOf(warmer, 0)).toBeGreaterThanOrEqual(degreeHoursOf(readings, 0) - 1e-9)
        },
      ),
      { seed: SEED },
    )
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point } from '../panel/point.ts'
import { pathShape } from './bar-path.ts'
import { cutLength, shortLegs } from './cut-length.ts'

describe('cut length', () => {
  it('a straight bar is its leg', () => {
    expect(cutLength({ diameter: 12, inside: null, legs: [2500], turns: [] })).toMatchObject({
      value: { length: 2500, deductions: [] },
    })
  })

  it('the two ways of measuring meet at a turn of 90°', () => {
    const at = (turn: number) => {
      const cut = cutLength({ diameter: 16, inside: 80, legs: [500, 500], turns: [turn] })
      return cut.known ? cut.value.length : Number.NaN
    }
    expect(at(90 + 1e-9)).toBeCloseTo(at(90), 6)
  })

  it('a leg as long as its bend needs is made, a hair shorter is not', () => {
    const bar = { diameter: 12, inside: 60, turns: [90] }
    expect(shortLegs({ ...bar, legs: [600, 42] })).toEqual([])
    expect(shortLegs({ ...bar, legs: [600, 41.9] })).toEqual([
      { leg: 1, found: 41.9, least: expect.closeTo(42, 9) },
    ])
    expect(cutLength({ ...bar, legs: [600, 41.9] })).toMatchObject({
      known: false,
      gaps: [expect.stringContaining('legs[1]')],
    })
  })

  it.each([
    [{ diameter: 0 }, 'diameter'],
    [{ inside: null }, 'inside'],
    [{ inside: Number.NaN }, 'inside'],
    [{ legs: [600, -1] }, 'legs[1]'],
    [{ legs: [] }, 'legs'],
    [{ turns: [90, 90] }, 'turns'],
    [{ turns: [181] }, 'turns[0]'],
    [{ turns: [0] }, 'turns[0]'],
  ])('%j is unknown and names the field', (part, field) => {
    const cut = cutLength({ diameter: 12, inside: 60, legs: [600, 300], turns: [90], ...part })
    expect(cut.known).toBe(false)
    if (!cut.known) expect(cut.gaps.join()).toContain(field)
  })

  it('property (seed 3766): a path of straights and right or skew turns is as long as its straights and arcs', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 300, max: 3000 }), fc.integer({ min: -140, max: 140 })), {
          minLength: 1,
          maxLength: 6,
        }),
        fc.constantFrom(8, 12, 16),
        (steps, diameter) => {
          const inside = 4 * diameter
          const radius = inside / 2 + diameter / 2
          let heading = 0
          let [x, y] = [0, 0]
          const path: Point[] = [[0, 0]]
          let expected = 0
          for (const [index, [length, turn]] of steps.entries()) {
            x += length * Math.cos((heading * Math.PI) / 180)
            y += length * Math.sin((heading * Math.PI) / 180)
            path.push([x, y])
            expected += length
            if (index === steps.length - 1) break
            const angle = (Math.abs(turn) * Math.PI) / 180
            expected += radius * angle - 2 * radius * Math.tan(angle / 2)
            heading += turn
          }
          const shape = pathShape({ diameter, inside, path })
          expect(shape.known).toBe(true)
          if (!shape.known) return
          const cut = cutLength({ diameter, inside, ...shape.value })
          if (cut.known) expect(cut.value.length).toBeCloseTo(expected, 5)
          else expect(cut.gaps.join()).toMatch(/shorter than its bends/)
        },
      ),
      { seed: 3766, numRuns: 300 },
    )
  })
})

describe('bar by path', () => {
  it('an L has its outside dimensions: half a bar over the centreline at the corner', () => {
    const shape = pathShape({
      diameter: 12,
      inside: 60,
      path: [
        [0, 0],
        [594, 0],
        [594, 294],
      ],
    })
    expect(shape).toMatchObject({ value: { turns: [90], oneWay: true } })
    expect(shape.known && shape.value.legs).toEqual([600, 300].map((leg) => expect.closeTo(leg, 6)))
  })

  it('corners in line are no bends; folds and repeated corners are unknown', () => {
    const straight: Point[] = [
      [0, 0],
      [1000, 0],
      [2500, 0],
    ]
    expect(pathShape({ diameter: 12, inside: null, path: straight })).toMatchObject({
      value: { legs: [2500], turns: [] },
    })
    const back: Point[] = [
      [0, 0],
      [1000, 0],
      [500, 0],
    ]
    expect(pathShape({ diameter: 12, inside: 60, path: back })).toMatchObject({ known: false })
    const twice: Point[] = [
      [0, 0],
      [0, 0],
      [500, 0],
    ]
    expect(pathShape({ diameter: 12, inside: 60, path: twice })).toMatchObject({ known: false })
    const bent: Point[] = [
      [0, 0],
      [1000, 0],
      [1000, 500],
    ]
    expect(pathShape({ diameter: 12, inside: null, path: bent })).toMatchObject({
      known: false,
      gaps: [expect.stringContaining('inside')],
    })
  })

  it('a Z turns both ways', () => {
    const path: Point[] = [
      [0, 0],
      [500, 0],
      [500, 500],
      [1000, 500],
    ]
    expect(pathShape({ diameter: 12, inside: 60, path })).toMatchObject({ value: { oneWay: false } })
  })
})

it('legs whose sum is no number are not a length', () => {
  const cut = cutLength({ diameter: 12, inside: 48, legs: [1e308, 1e308], turns: [90] })
  expect(cut).toMatchObject({ known: false, gaps: [expect.stringMatching(/^legs/)] })
})

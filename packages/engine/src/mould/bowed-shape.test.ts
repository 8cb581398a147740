import { describe, expect, it } from 'vitest'
import { bowedPlate, bowedRail } from './bowed-shape.ts'

const steps = Array.from({ length: 4001 }, (_, k) => k / 4000)

describe('bowed shapes, as parts of the largest bow', () => {
  it.each([1, 2, 3] as const)('a rail of %i spans is straight at its props and reaches 1 once', (spans) => {
    for (let prop = 0; prop <= spans; prop += 1) expect(bowedRail(spans, prop)).toBeCloseTo(0, 9)
    expect(Math.max(...steps.map((part) => bowedRail(spans, part * spans)))).toBeCloseTo(1, 5)
  })

  // Computed, second method: the slope of a continuous beam has no jump over a prop.
  it.each([2, 3] as const)('a rail of %i spans runs smoothly over its inner props', (spans) => {
    const slope = (x: number, h: number) => (bowedRail(spans, x + h) - bowedRail(spans, x)) / h
    for (let prop = 1; prop < spans; prop += 1) expect(slope(prop, 1e-5)).toBeCloseTo(slope(prop, -1e-5), 2)
  })

  it('a plate that stands free bows most at the top, one held at both edges a little below the middle', () => {
    expect([bowedPlate('foot', 0), bowedPlate('foot', 1)]).toEqual([0, 1])
    expect(bowedPlate('both', 0)).toBeCloseTo(0, 9)
    expect(bowedPlate('both', 1)).toBeCloseTo(0, 9)
    const deepest = steps.reduce((best, up) =>
      bowedPlate('both', up) > bowedPlate('both', best) ? up : best,
    )
    // 0.5193 from the free surface (beam theory).
    expect(1 - deepest).toBeCloseTo(0.5193, 3)
    expect(bowedPlate('both', deepest)).toBeCloseTo(1, 4)
  })
})

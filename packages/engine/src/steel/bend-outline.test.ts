import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point } from '../panel/point.ts'
import { bentOutline, enclosingBox, type OutlineInput } from './bend-outline.ts'
import { cutLength } from './cut-length.ts'

function lengthOf(points: readonly Point[]): number {
  return points.slice(1).reduce((sum, [x, y], index) => {
    const [fromX, fromY] = points[index] as Point
    return sum + Math.hypot(x - fromX, y - fromY)
  }, 0)
}

const U: OutlineInput = { diameter: 16, inside: 64, legs: [500, 1200, 500], turns: [90], senses: [1, 1] }

describe('outline of a bent bar', () => {
  it('a U of 500, 1200, 500 outside measures that, and half a bar more at its open side', () => {
    const points = bentOutline(U)
    const box = enclosingBox(points.known ? points.value : [], 16)
    expect(box.long).toBeCloseTo(1200, 6)
    expect(box.short).toBeCloseTo(508, 6)
  })

  it('a hook of half a turn is as wide as its pin and two bars', () => {
    const points = bentOutline({ diameter: 12, inside: 60, legs: [500, 107], turns: [180], senses: [-1] })
    const box = enclosingBox(points.known ? points.value : [], 12)
    expect(box.short).toBeCloseTo(84, 2)
    expect(box.long).toBeCloseTo(506, 2)
  })

  it('the outline is as long as the cut, a little less for its chords, whatever the bar (random legs, turns and sides)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ turn: fc.integer({ min: 1, max: 180 }), left: fc.boolean() }), {
          minLength: 1,
          maxLength: 6,
        }),
        fc.integer({ min: 200, max: 2000 }),
        fc.integer({ min: 20, max: 100 }),
        (bends, leg, inside) => {
          const input: OutlineInput = {
            diameter: 10,
            inside,
            legs: Array.from({ length: bends.length + 1 }, (_, index) => leg + 7 * index),
            turns: bends.map(({ turn }) => turn),
            senses: bends.map(({ left }) => (left ? 1 : -1)),
          }
          const [outline, cut] = [bentOutline(input), cutLength(input)]
          expect(outline.known).toBe(cut.known)
          if (!outline.known || !cut.known) return
          const length = lengthOf(outline.value)
          expect(length).toBeLessThanOrEqual(cut.value.length + 1e-6)
          expect(length).toBeGreaterThan(cut.value.length * (1 - 1e-4))
          const box = enclosingBox(outline.value, 10)
          expect(box.short).toBeLessThanOrEqual(box.long)
          expect(box.short).toBeGreaterThanOrEqual(10)
        },
      ),
    )
  })

  it('turning the bar does not change its box', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6.3, noNaN: true }), (angle) => {
        const points = bentOutline({ ...U, legs: [700, 400, 300], senses: [1, -1] })
        if (!points.known) throw new Error('known')
        const turned = points.value.map(
          ([x, y]): Point => [
            x * Math.cos(angle) - y * Math.sin(angle),
            x * Math.sin(angle) + y * Math.cos(angle),
          ],
        )
        const [a, b] = [enclosingBox(points.value, 16), enclosingBox(turned, 16)]
        expect(b.short).toBeCloseTo(a.short, 6)
        expect(b.long).toBeCloseTo(a.long, 6)
      }),
    )
  })

  it('a straight bar is as narrow as it is thick; no bar is no box', () => {
    const straight = bentOutline({ diameter: 20, inside: null, legs: [3000], turns: [], senses: [] })
    expect(straight.known && enclosingBox(straight.value, 20)).toEqual({ long: 3020, short: 20 })
    expect(enclosingBox([[0, 0]], 20)).toEqual({ long: 20, short: 20 })
  })

  it('sides that are not one a bend, and legs that cannot be bent, are not known', () => {
    expect(bentOutline({ ...U, senses: [1] })).toMatchObject({
      known: false,
      gaps: [expect.stringMatching(/^senses/)],
    })
    expect(bentOutline({ ...U, legs: [500, 90, 500] }).known).toBe(false)
  })
})

import { describe, expect, it } from 'vitest'
import { cutLength } from '../cut-length.ts'
import type { Corner } from '../steel-plan.ts'
import { bentLine } from './bent-line.ts'

const along = (line: readonly Corner[]) =>
  line.slice(1).reduce((sum, to, i) => {
    const from = line[i] as Corner
    return sum + Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])
  }, 0)

describe('bends in space', () => {
  it('a U is as long as it is cut (computed, second method: legs less what its bends take off)', () => {
    const u: Corner[] = [
      [430, 0, 35],
      [35, 0, 35],
      [35, 0, 140],
      [430, 0, 140],
    ]
    const { straights, bends: arcs } = bentLine(u, 25)
    const bends = arcs()
    const cut = cutLength({ diameter: 10, inside: 40, legs: [400, 115, 400], turns: [90] })
    const length = [...straights, ...bends].reduce((sum, line) => sum + along(line), 0)
    expect(cut.known && cut.value.length - length).toBeGreaterThan(0)
    expect(cut.known && cut.value.length - length).toBeLessThan(1.5)
    expect(bends.length).toBe(2)
    for (const [, y, z] of bends[0] ?? []) {
      expect(y).toBe(0)
      expect(z).toBeGreaterThanOrEqual(35)
    }
    // Every point of the first bend 25 mm from its middle.
    for (const [x, , z] of bends[0] ?? []) expect(Math.hypot(x - 60, z - 60)).toBeCloseTo(25, 9)
  })

  it('a closed bar bends at every corner, once', () => {
    const tie: Corner[] = [
      [0, 0, 0],
      [200, 0, 0],
      [200, 0, 100],
      [0, 0, 100],
      [0, 0, 0],
    ]
    const { straights, bends: arcs } = bentLine(tie, 20)
    const bends = arcs()
    expect(straights.map(along)).toEqual([160, 60, 160, 60])
    expect(bends.length).toBe(4)
  })

  it('an end leg as long as its bend is all bend; a straight bar has none', () => {
    const hook: Corner[] = [
      [0, 175, 30],
      [0, 30, 30],
      [0, 30, 65],
    ]
    expect(bentLine(hook, 35).straights.map(along)).toEqual([110, 0])
    const plain = bentLine(hook.slice(0, 2), 35)
    expect(plain.straights).toEqual([[hook[0], hook[1]]])
    expect(plain.bends()).toEqual([])
  })
})

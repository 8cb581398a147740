import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Corner } from '../steel-plan.ts'
import { emptySpace, segmentsApart, solidsOf } from './space.ts'

const corner = fc
  .tuple(
    fc.integer({ min: -50, max: 50 }),
    fc.integer({ min: -50, max: 50 }),
    fc.integer({ min: -50, max: 50 }),
  )
  .map(([x, y, z]): Corner => [x, y, z])

const at = (from: Corner, to: Corner, part: number): Corner => [
  from[0] + (to[0] - from[0]) * part,
  from[1] + (to[1] - from[1]) * part,
  from[2] + (to[2] - from[2]) * part,
]

describe('distance between two straight parts', () => {
  it('is that of trying points along both (computed, second method)', () => {
    fc.assert(
      fc.property(corner, corner, corner, corner, fc.boolean(), (a, b, c, d, parallel) => {
        const one = { from: a, to: b }
        const to: Corner = parallel ? [c[0] + b[0] - a[0], c[1] + b[1] - a[1], c[2] + b[2] - a[2]] : d
        const other = { from: c, to }
        const found = segmentsApart(one, other)
        let least = Number.POSITIVE_INFINITY
        for (let i = 0; i <= 40; i += 1) {
          const p = at(a, b, i / 40)
          for (let j = 0; j <= 40; j += 1) {
            const q = at(c, to, j / 40)
            least = Math.min(least, Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]))
          }
        }
        expect(found).toBeLessThanOrEqual(least + 1e-9)
        // Half a step of each part at most.
        const step =
          (Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]) +
            Math.hypot(to[0] - c[0], to[1] - c[1], to[2] - c[2])) /
          80
        expect(found).toBeGreaterThanOrEqual(least - step - 1e-9)
        expect(segmentsApart(other, one)).toBeCloseTo(found, 9)
      }),
    )
  })
})

describe('bars in the same place', () => {
  const bar = (id: string, centreline: readonly Corner[], diameter = 12) =>
    solidsOf({ id, centreline, diameter })

  it('bars that touch, side by side or one over the other, do not clash; deeper by a millimetre they do', () => {
    const space = emptySpace()
    space.add(
      bar('A', [
        [0, 0, 36],
        [9000, 0, 36],
      ]),
    )
    expect(
      space.clash(
        bar('B', [
          [4000, -500, 48],
          [4000, 500, 48],
        ]),
      ),
    ).toBeNull()
    expect(
      space.clash(
        bar('B', [
          [100, 12, 36],
          [900, 12, 36],
        ]),
      ),
    ).toBeNull()
    expect(
      space.clash(
        bar('B', [
          [4000, -500, 47],
          [4000, 500, 47],
        ]),
      )?.id,
    ).toBe('A')
    expect(
      space.clash(
        bar('B', [
          [100, 11, 36],
          [900, 11, 36],
        ]),
      )?.id,
    ).toBe('A')
  })

  it('a bar is found from any square that it passes, once, and parts of one bar do not clash', () => {
    const space = emptySpace()
    space.add(
      bar('U', [
        [0, 0, 36],
        [400, 0, 36],
        [400, 0, 140],
        [0, 0, 140],
      ]),
    )
    space.add(
      bar('D', [
        [-3000, -3000, 60],
        [3000, 3000, 60],
      ]),
    )
    expect(
      space.clashes(
        bar('X', [
          [-3000, 2000, 60],
          [3000, 2000, 60],
        ]),
      ),
    ).toEqual(['D'])
    expect(
      space.clashes(
        bar('U', [
          [0, 0, 36],
          [400, 0, 36],
        ]),
      ),
    ).toEqual([])
    expect(
      space.clashes(
        bar('X', [
          [-200, 10, 36],
          [700, 10, 36],
        ]),
      ),
    ).toEqual(['U'])
  })
})

import { describe, expect, it } from 'vitest'
import { distance, type Point, type Ring } from '../panel/point.ts'
import { rackPush, rackText } from './rack-push.ts'

const box = (long: number, high: number): Ring => [
  [0, 0],
  [long, 0],
  [long, high],
  [0, high],
]
const racked = (ring: Ring, dx: number, dy: number): Ring =>
  ring.map(([x, y], k): Point => [x + (k >= 2 ? dx : 0), y + (k === 1 || k === 2 ? dy : 0)])

describe('a racked rectangle', () => {
  // Computed, second method: 6000 × 3000 sheared by 5 has diagonals 6712.676 and 6703.732, 8.944 apart; a difference of 9 is 5.031 mm.
  it('is pushed square by the shear that its diagonals give', () => {
    const found = rackPush(box(6000, 3000), racked(box(6000, 3000), 5, 0))
    expect(found?.difference).toBeCloseTo(8.944, 3)
    expect(found?.by).toBeCloseTo(5, 3)
    expect((found?.by ?? 0) * (9 / 8.944)).toBeCloseTo(5.031, 3)
  })

  it.each([
    [6000, 3000, 9, 0, 3],
    [6000, 3000, -9, 0, 3],
    [2400, 5200, 0, 9, 2],
    [2400, 5200, 0, -9, 2],
  ])(
    'of %i × %i racked by %i, %i has equal diagonals after the push it asks for',
    (long, high, dx, dy, side) => {
      const drawn = box(long, high)
      const at = racked(drawn, dx, dy)
      const push = rackPush(drawn, at)
      expect(push?.side).toBe(side)
      if (push === null) return
      const [from, to] = [push.side - 1, push.side]
      const goal = drawn[push.towards - 1] as Point
      const other = drawn[(push.towards - 1 === from ? to : from) % 4] as Point
      const size = distance(other, goal)
      const pushed = at.map(
        ([x, y], k): Point =>
          k === from || k === to
            ? [x + ((goal[0] - other[0]) / size) * push.by, y + ((goal[1] - other[1]) / size) * push.by]
            : [x, y],
      )
      const [p, q, r, s] = pushed as unknown as [Point, Point, Point, Point]
      expect(Math.abs(distance(p, r) - distance(q, s))).toBeLessThan(0.1)
    },
  )

  it('is said as one push', () => {
    const push = rackPush(box(6800, 3250), racked(box(6800, 3250), 9, 0))
    expect(push && rackText(push)).toBe(
      'Corner 1 to 3 is 16 mm longer than 2 to 4: push side 3 along itself by 9 mm towards corner 4.',
    )
  })

  it('is no other outline', () => {
    const kite: Ring = [
      [0, 0],
      [3000, -1000],
      [6000, 0],
      [3000, 1000],
    ]
    expect(rackPush(kite, kite)).toBeNull()
    expect(rackPush(box(1, 1).slice(0, 3), box(1, 1))).toBeNull()
  })
})

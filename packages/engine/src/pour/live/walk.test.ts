import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CompactionPlan } from '../pour-plan.ts'
import {
  EMPTY_WALK,
  goOn,
  goTo,
  nextOf,
  pulledOut,
  takeBack,
  type Walk,
  walkState,
  zoneRows,
} from './walk.ts'

const START = 1_800_000_000_000
const at = (seconds: number): number => START + seconds * 1000

function plan(count = 6, zoneOf = 3): CompactionPlan {
  const insertions = Array.from({ length: count }, (_, i): [number, number] => [i * 300, 0])
  return {
    insertions,
    radius: 130,
    action: 150,
    uncovered: 0,
    path: 0,
    minutes: 1,
    close: [],
    zones: Array.from({ length: Math.ceil(count / zoneOf) }, (_, z) => ({
      order: z + 1,
      outlines: [],
      volume: 0.1,
      insertions: insertions.map((_, i) => i).slice(z * zoneOf, (z + 1) * zoneOf),
      minutes: 0.5,
    })),
  }
}

/** So many insertions one after another, ten seconds each. */
function walked(count: number, of = plan()): Walk {
  let walk: Walk = EMPTY_WALK
  for (let i = 0; i < count; i += 1) walk = goOn(walk, of, at(i * 10))
  return pulledOut(walk, at(count * 10))
}

describe('a walk over the insertions', () => {
  it('goes on in the working order and ends when all are reached', () => {
    const half = walkState(walked(3), plan(), at(30))
    expect(half.zones.map(({ done }) => done)).toEqual([true, false])
    expect([half.reached, half.next, half.done]).toEqual([3, 3, false])
    const whole = walkState(walked(6), plan(), at(60))
    expect([whole.reached, whole.next, whole.done]).toEqual([6, null, true])
  })

  it('shows at once what was passed over, and leads back to it', () => {
    const walk = goTo(goTo(EMPTY_WALK, 0, at(0)), 3, at(8))
    expect(walkState(walk, plan(), at(9)).missed).toEqual([1, 2])
    const later = goOn(goOn(goOn(walk, plan(), at(18)), plan(), at(28)), plan(), at(38))
    expect(later.current?.insertion).toBe(1)
  })

  it('tells what was too short and too long', () => {
    let walk = goTo(EMPTY_WALK, 0, at(0))
    walk = goTo(walk, 1, at(3))
    walk = pulledOut(walk, at(3 + 45))
    const state = walkState(walk, plan(), at(50))
    expect([state.short, state.long]).toEqual([[0], [1]])
  })

  it('tells concrete that waits beside worked concrete for too long, but not once all is done', () => {
    expect(walkState(walked(3), plan(), at(30 + 14 * 60)).leftMinutes).toBeNull()
    expect(walkState(walked(3), plan(), at(30 + 16 * 60)).leftMinutes).toBeCloseTo(16, 6)
    expect(walkState(walked(6), plan(), at(60 + 3600)).leftMinutes).toBeNull()
  })

  it('takes back a tap, and a visit', () => {
    const walk = goOn(walked(2), plan(), at(20))
    expect(takeBack(walk)).toEqual(walked(2))
    expect(takeBack(takeBack(walk)).visits).toHaveLength(1)
  })

  it('keeps rows for the record: insertion from 1, start and length in seconds', () => {
    expect(zoneRows(walked(4), [3, 4, 5])).toEqual([[4, 30, 10]])
  })

  it('reaches every insertion by going on alone, whatever was tapped in between, and never counts one twice', () => {
    const tap = fc.record({
      seconds: fc.integer({ min: 0, max: 20 }),
      to: fc.option(fc.nat({ max: 8 }), { nil: null }),
    })
    fc.assert(
      fc.property(fc.array(tap, { maxLength: 30 }), (taps) => {
        const of = plan(9)
        let walk: Walk = EMPTY_WALK
        let now = 0
        for (const { seconds, to } of taps) {
          now += seconds
          walk = to === null ? goOn(walk, of, at(now)) : goTo(walk, to, at(now))
        }
        for (let left = 0; left < 12; left += 1) {
          now += 10
          walk = goOn(walk, of, at(now))
        }
        const state = walkState(pulledOut(walk, at(now + 10)), of, at(now + 10))
        expect(nextOf(walk, of, -1) === null || walk.current !== null).toBe(true)
        expect(state.reached).toBe(9)
        expect(state.zones.every(({ reached, of: all }) => reached === all)).toBe(true)
        const spent = walk.visits.reduce((sum, { from, to }) => sum + (to - from), 0)
        expect(spent).toBeLessThanOrEqual((now + 10) * 1000)
      }),
    )
  })
})

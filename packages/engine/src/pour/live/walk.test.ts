import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point } from '../../panel/point.ts'
import { subtract } from '../../panel/region.ts'
import { compact } from '../compact.ts'
import type { CompactionPlan } from '../pour-plan.ts'
import { ExampleWalk, examplePlan } from './example-walk.ts'
import { reachedOf } from './reached.ts'
import { stopsOf } from './stops.ts'
import { takeBack } from './walk.ts'
import { mergedVisits, recordedVisits, tickedZones, zoneRows } from './zone-rows.ts'

const START = 1_800_000_000_000
const at = (seconds: number): number => START + seconds * 1000

/** So many stops one after another, ten seconds each. */
function walked(count: number, plan = examplePlan()): ExampleWalk {
  const hand = new ExampleWalk(plan)
  for (let i = 0; i < count; i += 1) hand.onward(at(i * 10))
  return hand.out(at(count * 10))
}

describe('a walk over the insertions', () => {
  it('goes on in the working order and ends when all are reached', () => {
    const half = walked(3).state(at(30))
    expect(half.zones.map(({ done }) => done)).toEqual([true, false])
    expect([half.reached, half.next, half.done]).toEqual([3, 3, false])
    const whole = walked(6).state(at(60))
    expect([whole.reached, whole.next, whole.done]).toEqual([6, null, true])
  })

  it('shows at once what was passed over, and leads back to it', () => {
    const hand = new ExampleWalk(examplePlan()).to(0, at(0)).to(3, at(8))
    expect(hand.state(at(9)).missed).toEqual([1, 2])
    hand.onward(at(18)).onward(at(28)).onward(at(38))
    expect(hand.state(at(38)).current).toBe(1)
  })

  it('tells what was too short', () => {
    const hand = new ExampleWalk(examplePlan()).to(0, at(0)).to(1, at(3)).out(at(48))
    const { short, stops } = hand.state(at(50))
    expect([short, stops[1]]).toEqual([[0], 'long'])
  })

  it('takes back a tap, and a visit', () => {
    const two = walked(2)
    const before = two.walk
    two.onward(at(20))
    expect(takeBack(two.walk)).toEqual(before)
    expect(takeBack(takeBack(two.walk)).visits).toHaveLength(1)
  })

  it('reaches every stop by going on alone, whatever was tapped in between, and never counts one twice', () => {
    const tap = fc.record({
      seconds: fc.integer({ min: 0, max: 20 }),
      to: fc.option(fc.nat({ max: 17 }), { nil: null }),
    })
    fc.assert(
      fc.property(fc.array(tap, { maxLength: 30 }), fc.integer({ min: 1, max: 2 }), (taps, layers) => {
        const hand = new ExampleWalk(examplePlan({ count: 9, layers }))
        let now = 0
        for (const { seconds, to } of taps) {
          now += seconds
          if (to === null) hand.onward(at(now))
          else hand.to(to, at(now))
        }
        for (let left = 0; left < 9 * layers + 3; left += 1) {
          now += 10
          hand.onward(at(now))
        }
        const state = hand.out(at(now + 10)).state(at(now + 10))
        expect(state.reached).toBe(9 * layers)
        expect(state.zones.every(({ reached, of: all }) => reached === all)).toBe(true)
        const spent = hand.walk.visits.reduce((sum, { from, to }) => sum + (to - from), 0)
        expect(spent).toBeLessThanOrEqual((now + 10) * 1000)
      }),
    )
  })
})

describe('a zone that was ticked and not walked', () => {
  const plan = examplePlan({ count: 9 })
  const first = plan.zones[0]?.id ?? ''

  it('counts as said, never as walked nor as missed; the next stop lies in a zone that is neither', () => {
    const hand = new ExampleWalk(plan, null, [], new Set([first]))
    const before = hand.state(at(0))
    expect([before.next, before.reached, before.missed]).toEqual([3, 0, []])
    expect(before.zones.map(({ reached, said, done }) => [reached, said, done])).toEqual([
      [0, 3, false],
      [0, 0, false],
      [0, 0, false],
    ])
    expect(before.stops.slice(0, 4)).toEqual(['said', 'said', 'said', 'waiting'])
    const after = hand.onward(at(0)).to(6, at(10)).out(at(20)).state(at(20))
    expect(after.missed).toEqual([4, 5])
    expect([after.reached, after.zones[0]?.reached]).toEqual([2, 0])
  })

  it('is walked where somebody walks in it all the same; the rest stays said', () => {
    const hand = new ExampleWalk(plan, null, [], new Set([first])).to(1, at(0)).out(at(10))
    const state = hand.state(at(10))
    expect(state.stops.slice(0, 3)).toEqual(['said', 'reached', 'said'])
    expect(state.zones[0]).toMatchObject({ reached: 1, said: 2, done: false })
  })

  it('does not wait beside walked concrete, and lets the walk end', () => {
    const hand = new ExampleWalk(plan, null, [], new Set([first]))
    for (let i = 0; i < 6; i += 1) hand.onward(at(i * 10))
    const state = hand.out(at(60)).state(at(60 + 30 * 60))
    expect([state.next, state.done, state.reached, state.left]).toEqual([null, true, 6, []])
  })

  it('is ticked by yes for the revision in force alone', () => {
    const values = {
      'zone:0-900': { value: true, revision: 'B' },
      'zone:900-1800': { value: true, revision: 'A' },
      'zone:1800-2700': { value: false, revision: 'B' },
      'walk:0-900:x': { value: true, revision: 'B' },
    }
    expect([...tickedZones(values, 'B')]).toEqual(['0-900'])
  })
})

describe('concrete that waits', () => {
  it('is told beside worked concrete after 15 min, with its insertion, and stays told once it was worked', () => {
    const hand = walked(3)
    expect(hand.state(at(30 + 14 * 60)).left).toEqual([])
    const waiting = hand.state(at(30 + 16 * 60)).left
    expect(waiting).toEqual([{ stop: 3, minutes: 16, goesOn: true }])
    const late = hand.to(3, at(30 + 16 * 60)).out(at(30 + 16 * 60 + 10))
    const after = late.state(at(30 + 16 * 60 + 10))
    expect(after.left).toEqual([{ stop: 3, minutes: 16, goesOn: false }])
    expect(after.zones[1]?.wait).toBeCloseTo(16, 9)
    expect(after.zones[0]?.wait).toBeLessThan(1)
  })

  it('is not told where no neighbour was worked, and not after its neighbour was worked again', () => {
    expect(new ExampleWalk(examplePlan()).state(at(3600)).left).toEqual([])
    const hand = walked(3)
      .to(2, at(30 + 14 * 60))
      .out(at(30 + 14 * 60 + 10))
    expect(hand.state(at(30 + 16 * 60)).left).toEqual([])
  })

  it('waits for the layer above too', () => {
    const hand = walked(3, examplePlan({ layers: 2 }))
    expect(
      hand
        .state(at(30 + 20 * 60))
        .left.map(({ stop }) => stop)
        .sort(),
    ).toEqual([3, 4, 5, 6])
  })
})

describe('layers', () => {
  it('are worked zone by zone, the lower one first; the picture shows the layer in work', () => {
    const plan = examplePlan({ layers: 2 })
    expect(stopsOf(plan).map(({ insertion, layer }) => [insertion, layer])).toEqual([
      [0, 1],
      [1, 1],
      [2, 1],
      [0, 2],
      [1, 2],
      [2, 2],
      [3, 1],
      [4, 1],
      [5, 1],
      [3, 2],
      [4, 2],
      [5, 2],
    ])
    const state = walked(4, plan).state(at(40))
    expect(state.insertions.slice(0, 3)).toEqual(['reached', 'waiting', 'waiting'])
    expect(state.zones[0]).toMatchObject({ reached: 4, of: 6, layers: 1, done: false })
  })
})

describe('several vibrators, a device each', () => {
  const plan = examplePlan({ vibrators: 2 })

  it('each goes along its own share; what the other reached comes from the record', () => {
    const first = new ExampleWalk(plan, 1)
    for (let i = 0; i < 5; i += 1) first.onward(at(i * 10))
    first.out(at(50))
    const own = first.state(at(50))
    expect(own.done).toBe(true)
    expect(own.missed).toEqual([])
    expect(own.zones.map(({ reached, of, own: mine }) => [reached, of, mine])).toEqual([
      [2, 3, { reached: 2, of: 2 }],
      [2, 3, { reached: 2, of: 2 }],
    ])
    const rows = [0, 1].flatMap((zone) => zoneRows(first.walk, plan, zone))
    const recorded = recordedVisits({ 'walk:0-900:a': { value: rows } })
    const second = new ExampleWalk(plan, 2, recorded).onward(at(20)).onward(at(30)).out(at(40))
    expect(second.state(at(50)).zones.every(({ done }) => done)).toBe(true)
  })

  it('the merged state is the same on both devices, whatever was recorded first', () => {
    const [a, b] = [
      new ExampleWalk(plan, 1).onward(at(0)).out(at(9)),
      new ExampleWalk(plan, 2).onward(at(1)).out(at(9)),
    ]
    const both = (own: ExampleWalk, other: ExampleWalk) => {
      const merged = mergedVisits(
        own.walk.visits,
        recordedVisits({ 'walk:z:o': { value: zoneRows(other.walk, plan, 0) } }),
      )
      const { visits } = reachedOf({ plan, visits: merged, rings: [] })
      return visits.map((list) => list.length)
    }
    expect(both(a, b)).toEqual(both(b, a))
  })
})

describe('rows for the record', () => {
  it('keep insertion, place, layer, begin, length and reach', () => {
    const { walk, plan } = walked(4)
    expect(zoneRows(walk, plan, 1)).toEqual([[4, 1050, 100, 1, START / 1000 + 30, 10, 200]])
  })

  it('read again are the same visits, and counted once beside the device’s own', () => {
    const { walk, plan } = walked(4)
    const rows = [0, 1].flatMap((zone) => zoneRows(walk, plan, zone))
    const read = recordedVisits({ 'walk:0-900:test': { value: rows }, 'zone:0-900': { value: true } })
    expect(read).toEqual(walk.visits)
    expect(mergedVisits(walk.visits, read)).toBe(walk.visits)
  })

  it('of another form are passed over', () => {
    expect(recordedVisits({ 'walk:1': { value: [[1, 0, 10]] }, 'walk:2': { value: 'x' } })).toEqual([])
  })
})

describe('a pattern that changes under the walk', () => {
  const outline: Point[] = [
    [0, 0],
    [3000, 0],
    [3000, 2000],
    [0, 2000],
  ]
  const region = subtract(outline, [])
  const planned = (chute: Point, radius: number): CompactionPlan => {
    const found = compact({ region, thickness: 150, radius, chute, quick: true })
    if (!found.known) throw new Error(found.gaps.join())
    return found.value
  }
  const visitsOf = (plan: CompactionPlan, least: number) =>
    stopsOf(plan)
      .filter(({ at: [x] }) => x >= least)
      .map(({ at: place, layer, radius }, i) => ({
        at: place,
        layer,
        radius,
        from: at(i * 13),
        to: at(i * 13 + 10),
      }))

  it('another stand turns the order round and loses nothing: visits and zones keep their places', () => {
    const [before, after] = [planned([0, 0], 200), planned([3000, 0], 200)]
    expect(after.zones.map(({ id }) => id).sort()).toEqual(before.zones.map(({ id }) => id).sort())
    const visits = visitsOf(before, 1500)
    const { visits: reached } = reachedOf({ plan: after, visits, rings: [outline] })
    expect(reached.flat()).toHaveLength(visits.length)
    expect(
      stopsOf(after)
        .filter((_, i) => (reached[i]?.length ?? 0) > 0)
        .every(({ at: [x] }) => x >= 1500),
    ).toBe(true)
  })

  it('other heads: a stop counts only where old visits reach all round it', () => {
    const [before, after] = [planned([0, 0], 250), planned([0, 0], 200)]
    const found = reachedOf({ plan: after, visits: visitsOf(before, 1200), rings: [outline] })
    const counted = stopsOf(after).filter((_, i) => found.before[i] === 1)
    expect(counted.length).toBeGreaterThan(20)
    // Left of the worked part lies concrete that nobody reached: within a radius of it nothing counts.
    expect(counted.every(({ at: [x] }) => x > 1200)).toBe(true)
    expect(reachedOf({ plan: after, visits: [], rings: [outline] }).before.every((one) => one === 0)).toBe(
      true,
    )
  })

  it('not across an opening', () => {
    const wide = examplePlan({ count: 1 })
    const slot: Point[] = [
      [190, -10],
      [200, -10],
      [200, 210],
      [190, 210],
    ]
    const visit = { at: [60, 100] as Point, layer: 1, radius: 600, from: at(0), to: at(10) }
    const rings: Point[][] = [
      [
        [0, 0],
        [400, 0],
        [400, 200],
        [0, 200],
      ],
    ]
    expect(reachedOf({ plan: wide, visits: [visit], rings }).before[0]).toBe(1)
    expect(reachedOf({ plan: wide, visits: [visit], rings: [...rings, slot] }).before[0]).toBe(0)
  })
})

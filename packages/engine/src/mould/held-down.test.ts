import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { parseDrawing } from '../panel/drawing.ts'
import { panelOf } from '../panel/panel.ts'
import type { Point } from '../panel/point.ts'
import { distanceToRing } from '../panel/polygon.ts'
import { starRing } from '../panel/random-shapes.ts'
import { planSteel } from '../steel/plan-steel.ts'
import { judge } from '../working/asked.ts'
import { replay } from '../working/replay.ts'
import { parseYard, type Yard } from '../yard/yard.ts'
import { heldDuct, heldVoid } from './held-down.ts'
import { planMould } from './plan-mould.ts'
import { longWay, strapPlaces } from './strap-places.ts'

const seed = 20261129

function box(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

const FOAM = { mark: 'V1', outline: box(2500, 1000, 1000, 600), depth: 100, above: 50, density: 20 }
const DUCT = {
  mark: 'P1',
  line: [
    [0, 2500],
    [6000, 2500],
  ] as [number, number][],
  diameter: 100,
  height: 100,
}
const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: box(0, 0, 6000, 3000),
  thickness: 200,
  concrete: { strength: 40, density: 2500 },
  cover: { mould: 30, top: 30, edge: 35 },
  voids: [FOAM],
  ducts: [DUCT],
}
const YARD = {
  format: 'castwright.yard/1',
  name: 'Test yard',
  code: 'eu',
  timezone: 'Pacific/Fiji',
  strap: { rated: 0.8 },
}
const eu = codeFamily('eu')

function planned(change: object = {}, yard: Yard | null = parseYard(YARD)) {
  const panel = panelOf(parseDrawing({ ...DRAWING, ...change }))
  return planMould({ panel, yard, family: eu, steel: planSteel({ panel, yard, family: eu }) })
}

function held(change: object = {}, strap: { rated: number; longest?: number } | null = { rated: 0.8 }) {
  const found = heldVoid({ former: { ...FOAM, ...change }, thickness: 200, strap })
  if (!found.known) throw new Error(found.gaps.join())
  return found.value
}

describe('a void former held down', () => {
  // Computed, second method: Archimedes by hand, 24 kN/m³ on 0.06 m³ less 1.2 kg; straps by hand.
  it('foam 1.0 × 0.6 × 0.1 m: 1.440 kN gross, 1.428 net, 2.142 to hold, three straps of 0.8 kN', () => {
    const { gross, net, hold, straps, spacing, load, firstLayer, holdInTwo, at } = held()
    expect([gross, net, hold]).toEqual([1.44, 1.428, 2.142].map((value) => expect.closeTo(value, 3)))
    expect([straps, firstLayer]).toEqual([3, 100])
    expect(spacing).toBeCloseTo(1000 / 3, 9)
    expect(load).toBeCloseTo(2.142 / 3, 3)
    // Half the uplift, the same own weight.
    expect(holdInTwo).toBeCloseTo(1.5 * (0.72 - 0.01177), 4)
    expect(at.map(([a]) => a[0])).toEqual(
      [1, 3, 5].map((sixth) => expect.closeTo(2500 + (1000 * sixth) / 6, 6)),
    )
  })

  // Computed, second method: the pressure on a metre of side added up over its height.
  it('is pushed sideways by the head on one side', () => {
    let sum = 0
    for (let i = 0; i < 1000; i += 1) sum += 24 * (0.05 + (0.1 * (i + 0.5)) / 1000) * 0.0001
    expect(held().push).toBeCloseTo(sum, 9)
  })

  it('on the bed is sealed and does not float; its leak is still told', () => {
    const found = held({ above: 0 })
    expect([found.hold, found.straps, found.load]).toEqual([0, 0, null])
    expect(found.gross).toBeCloseTo(1.44, 3)
  })

  it('has two straps at least, more by their spacing, and none known without a rating', () => {
    expect(held({}, { rated: 50 }).straps).toBe(2)
    expect(held({}, { rated: 50, longest: 200 }).straps).toBe(5)
    expect(held({}, null)).toMatchObject({ straps: null, load: null, at: [] })
  })

  it('heavier than what it displaces needs none', () => {
    expect(held({ density: 2600 })).toMatchObject({ hold: 0, straps: 0 })
  })

  it(`straps of any former reach its outline on both sides, evenly along it (seed ${seed})`, () => {
    fc.assert(
      fc.property(starRing({ least: 200, most: 900 }), fc.integer({ min: 1, max: 7 }), (ring, count) => {
        const places = strapPlaces(ring, count)
        const { along, length, width } = longWay(ring)
        expect(places).toHaveLength(count)
        expect(length).toBeGreaterThanOrEqual(width - 1e-9)
        for (const [i, [a, b]] of places.entries()) {
          expect(distanceToRing(a, ring)).toBeLessThan(1e-6)
          expect(distanceToRing(b, ring)).toBeLessThan(1e-6)
          const next = places[i + 1]
          const station = (p: Point) => p[0] * along[0] + p[1] * along[1]
          expect(Math.abs(station(a) - station(b))).toBeLessThan(1e-6)
          if (next !== undefined)
            expect(Math.abs(station(next[0]) - station(a) - length / count)).toBeLessThan(1e-6)
        }
      }),
      { seed, numRuns: 200 },
    )
  })
})

describe('a duct tied down', () => {
  const tied = (change: object, strap: { rated: number; longest?: number } | null = { rated: 0.8 }) => {
    const found = heldDuct({ duct: { ...DUCT, ...change }, strap })
    if (!found.known) throw new Error(found.gaps.join())
    return found.value
  }

  // Computed, second method: 24 π 0.1²/4 by hand.
  it('⌀100 lifts by 0.188 kN/m; ties 1000 mm apart by spacing, closer by strength', () => {
    expect(tied({}).gross).toBeCloseTo(0.188, 3)
    expect(tied({})).toMatchObject({ spacing: 1000, ties: 6, by: 'longest spacing' })
    // 0.1 kN on 0.2827 kN/m: 353.7 mm, 17 pieces of 352.9.
    const weak = tied({}, { rated: 0.1 })
    expect(weak).toMatchObject({ ties: 17, by: 'strength of a tie' })
    expect(weak.spacing).toBeCloseTo(6000 / 17, 6)
    expect(weak.load).toBeLessThanOrEqual(0.1)
    expect(tied({}, null)).toMatchObject({ spacing: null, ties: null, by: null, at: [] })
  })

  it('heavier than its concrete is still tied, by spacing', () => {
    expect(tied({ mass: 40 })).toMatchObject({ hold: 0, ties: 6, by: 'longest spacing' })
  })
})

describe('void formers and ducts in the plan of a mould', () => {
  it('are checked and asked before the pour, and asked while placing', () => {
    const plan = planned()
    const own = plan.checks.filter(({ id }) => /^(void|duct)-/.test(id))
    expect(own.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['void-hold:V1', 'pass'],
      ['duct-hold:P1', 'pass'],
      ['void-cover:V1:mould', 'pass'],
      ['void-cover:V1:top', 'pass'],
      ['void-cover:V1:edge', 'pass'],
      ['duct-cover:P1:mould', 'pass'],
      ['duct-cover:P1:top', 'pass'],
      ['duct-cover:P1:edge', 'pass'],
    ])
    expect(own.find(({ id }) => id === 'duct-cover:P1:edge')?.demand).toBeCloseTo(450, 6)
    expect(plan.toRecord.filter(({ id }) => /void|duct/.test(id)).map(({ step, id }) => [step, id])).toEqual([
      ['set', 'void:V1'],
      ['set', 'void-height:V1'],
      ['set', 'void-straps:V1'],
      ['set', 'duct:P1'],
      ['set', 'duct-ties:P1'],
      ['place', 'void-layers:V1'],
      ['place', 'voids-in-place'],
    ])
    const straps = plan.toRecord.find(({ id }) => id === 'void-straps:V1')
    expect(straps && [judge(straps, 2), judge(straps, 3)]).toEqual(['fail', 'pass'])
    expect(plan.assumed.map(({ field }) => field)).toEqual(
      expect.arrayContaining([
        'uplift of void formers and ducts: weight',
        'uplift of void formers and ducts: factor',
        'longest spacing of straps and ties',
      ]),
    )
  })

  it('without a strap in the yard, or without cover on the drawing, are not known', () => {
    const plan = planned({ cover: { mould: 30 } }, parseYard({ ...YARD, strap: undefined }))
    const verdicts = Object.fromEntries(plan.checks.map(({ id, verdict }) => [id, verdict]))
    expect(verdicts).toMatchObject({
      'void-hold:V1': 'unknown',
      'duct-hold:P1': 'unknown',
      'void-cover:V1:mould': 'pass',
      'void-cover:V1:top': 'unknown',
    })
    expect(plan.unknown).toContain('yard.strap: working load of one strap or tie-down')
    const straps = plan.toRecord.find(({ id }) => id === 'void-straps:V1')
    expect(straps && judge(straps, 20)).toBe('unknown')
  })

  // Computed, second method: 3200 · 9.80665 / 1000 = 31.381 kN/m³ by hand.
  it('float higher in concrete that the drawing gives as heavier', () => {
    const plan = planned({ concrete: { strength: 40, density: 3200 } })
    expect(plan.voids[0]?.gross).toBeCloseTo(31.38128 * 0.06, 6)
    expect(plan.ducts[0]?.gross).toBeCloseTo((31.38128 * Math.PI * 0.01) / 4, 6)
    expect(plan.assumed.map(({ field }) => field)).not.toContain('uplift of void formers and ducts: weight')
  })

  it('too near a face fail', () => {
    const verdicts = Object.fromEntries(
      planned({ voids: [{ ...FOAM, above: 25, outline: box(30, 1000, 1000, 600) }] }).checks.map(
        ({ id, verdict }) => [id, verdict],
      ),
    )
    expect(verdicts).toMatchObject({
      'void-cover:V1:mould': 'fail',
      'void-cover:V1:edge': 'fail',
      'void-cover:V1:top': 'pass',
    })
  })

  it('a full panel has none of it', () => {
    const plan = planned({ voids: undefined, ducts: undefined })
    expect([plan.voids, plan.ducts]).toEqual([[], []])
    expect([...plan.checks, ...plan.toRecord].filter(({ id }) => /void|duct/.test(id))).toEqual([])
  })

  it('every step replays', () => {
    for (const step of planned().working) {
      const again = replay(step)
      if (again !== null)
        expect(Math.abs(again - Number(step.result))).toBeLessThanOrEqual(1e-9 * Math.abs(again) + 1e-12)
    }
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily, FAMILIES, type FamilyId } from '../codes/index.ts'
import { FAMILY_IDS } from '../panel/drawing.ts'
import type { Point } from '../panel/point.ts'
import { replay } from '../working/replay.ts'
import type { Step, Worked } from '../working/worked.ts'
import { craneRating } from './crane-rating.ts'
import { hookMass } from './hook-mass.ts'
import { drawnKinds } from './insert-kinds.ts'
import { liftReport } from './lift-report.ts'
import { loadFactor } from './load-factor.ts'
import { fittingBeds, mouldFace } from './mould-face.ts'
import { planLift } from './plan-lift.ts'
import { leastStrengthFor, ratedLoad } from './rated-load.ts'
import { casting, liftYard } from './reference-panels.ts'
import { slingAngle, tilt } from './sling.ts'
import { inOneLine, type Support, supportLoads } from './supports.ts'
import { LEAST_STRENGTH_LIMIT, wantedStrength } from './wanted-strength.ts'

const seed = 20261128
const eu = codeFamily('eu')

function gapsOf(found: Worked<unknown>): string {
  return found.known ? '' : found.gaps.join('; ')
}

const face = (...at: Point[]): Support[] =>
  at.map((point, index) => ({ mark: `${index}`, at: point, kind: 'face' }))
const edge = (...at: Point[]): Support[] =>
  at.map((point, index) => ({ mark: `${index}`, at: point, kind: 'edge' }))

describe('loads on supports', () => {
  const point = fc.tuple(fc.integer({ min: 0, max: 9000 }), fc.integer({ min: 0, max: 4000 }))

  it(`of three are in equilibrium: forces and both moments (seed ${seed})`, () => {
    fc.assert(
      fc.property(
        fc.tuple(point, point, point),
        point,
        fc.integer({ min: 1, max: 300 }),
        (at, centre, weight) => {
          fc.pre(!inOneLine(at))
          const found = supportLoads({ weight, centre, supports: face(...at), equalised: false })
          expect(found.known).toBe(true)
          if (!found.known) return
          const sum = (of: (index: number) => number) =>
            found.value.reduce((all, load, k) => all + load * of(k), 0)
          const scale = found.value.reduce((all, load) => all + Math.abs(load), 0) * 9000
          expect(Math.abs(sum(() => 1) - weight) * 9000).toBeLessThan(1e-9 * scale)
          expect(Math.abs(sum((k) => at[k]?.[0] ?? 0) - weight * centre[0])).toBeLessThan(1e-9 * scale)
          expect(Math.abs(sum((k) => at[k]?.[1] ?? 0) - weight * centre[1])).toBeLessThan(1e-9 * scale)
        },
      ),
      { seed, numRuns: 500 },
    )
  })

  it('a support past the centre of gravity would have to push down, and is shown so', () => {
    const found = supportLoads({
      weight: 10,
      centre: [100, 100],
      supports: face([200, 0], [1000, 0], [200, 1000]),
      equalised: false,
    })
    expect(found.known && Math.min(...found.value)).toBeLessThan(0)
  })

  it.each<[string, Support[], boolean, RegExp]>([
    ['none', [], false, /none drawn/],
    ['one', face([1000, 1000]), false, /one insert/],
    ['two faces beside the centre of gravity', face([1000, 1000], [5000, 1000]), false, /not on their line/],
    ['two at one place', face([1000, 1000], [1000, 1000]), false, /one place/],
    ['a face and an edge insert', [...face([1000, 1000]), ...edge([5000, 3000])], false, /not on their line/],
    ['three in one line', face([1000, 1000], [3000, 1000.5], [5000, 1000]), false, /in one line/],
    ['four rigid', face([1243, 621], [4757, 621], [4757, 2379], [1243, 2379]), false, /needs plate bending/],
    [
      'four equalised in one line',
      face([1000, 1000], [2000, 1000], [3000, 1000], [5000, 1000]),
      true,
      /in one line/,
    ],
    [
      'four equalised far from the centre of gravity',
      face([1243, 621], [3000, 621], [3000, 2379], [1243, 2379]),
      true,
      /too far/,
    ],
    ['five equalised', face([0, 0], [1, 0], [1, 1], [0, 1], [5, 5]), true, /needs plate bending/],
    ['a position that is no number', face([Number.NaN, 0], [1, 0], [0, 1]), false, /finite/],
  ])('of %s are not known', (_, supports, equalised, gap) => {
    expect(gapsOf(supportLoads({ weight: 67.5, centre: [3000, 1500], supports, equalised }))).toMatch(gap)
  })

  it('of two edge inserts, hanging upright, go by levers', () => {
    const found = supportLoads({
      weight: 60,
      centre: [3000, 1500],
      supports: edge([2000, 3000], [5000, 3000]),
      equalised: false,
    })
    expect(found.known && found.value).toEqual([40, 20])
  })

  it('weight must be above nothing', () => {
    expect(
      supportLoads({ weight: 0, centre: [0, 0], supports: face([0, 0], [1, 0], [0, 1]), equalised: false })
        .known,
    ).toBe(false)
  })
})

describe('sling', () => {
  const rigging = { mark: 'R4', legs: 4, length: 4000, rated: 8000 }
  const picks: Point[] = [
    [-1757, -879],
    [1757, -879],
    [1757, 879],
    [-1757, 879],
  ]

  it.each<[string, object, RegExp]>([
    ['has two legs', { legs: 2 }, /2 legs for 4 inserts/],
    ['is too short', { length: 1900 }, /does not reach/],
    ['just spans the diagonal', { length: Math.hypot(1757, 879) }, /does not reach/],
    ['has a spreader of unknown length', { spreader: true }, /length of the spreader/],
  ])('that %s has no angle', (_, change, gap) => {
    expect(gapsOf(slingAngle({ rigging: { ...rigging, ...change }, hook: [0, 0], picks }))).toMatch(gap)
  })

  it('with a spreader as long as the picks are apart leans only across', () => {
    const found = slingAngle({ rigging: { ...rigging, spreader: 3514 }, hook: [0, 0], picks })
    expect(found.known && found.value.angle).toBeCloseTo((Math.asin(879 / 4000) * 180) / Math.PI, 9)
  })

  it('from two edge inserts hangs below their line: only the distance along it counts', () => {
    const two = slingAngle({
      rigging: { ...rigging, legs: 2 },
      hook: [3000, 1500],
      picks: [
        [1000, 3000],
        [5000, 3000],
      ],
    })
    expect(two.known && two.value.angle).toBeCloseTo(30, 9)
  })

  it('takes the leg farthest from the hook', () => {
    const near = slingAngle({ rigging, hook: [0, 0], picks })
    const off = slingAngle({ rigging, hook: [300, 0], picks })
    expect(near.known && off.known && off.value.angle > near.value.angle).toBe(true)
  })

  it(`steeper with longer legs, always (seed ${seed})`, () => {
    fc.assert(
      fc.property(fc.integer({ min: 2000, max: 9000 }), fc.integer({ min: 1, max: 3000 }), (length, more) => {
        const [short, long] = [length, length + more].map((leg) =>
          slingAngle({ rigging: { ...rigging, length: leg }, hook: [0, 0], picks }),
        )
        expect(short?.known && long?.known && long.value.angle < short.value.angle).toBe(true)
      }),
      { seed, numRuns: 100 },
    )
  })

  it('a hook below the centre of gravity has no tilt', () => {
    expect(tilt({ centre: [0, 0], hook: [50, 0], height: -100, depth: 75 }).known).toBe(false)
  })
})

describe('rated load', () => {
  const insert = { mark: 'F1', rated: 50, ratedStrength: 15, leastStrength: 10 }

  it('is not known just below the maker’s least strength, and known at it', () => {
    expect(gapsOf(ratedLoad({ insert, strength: 9.999 }))).toMatch(/below 10 MPa/)
    expect(ratedLoad({ insert, strength: 10 }).known).toBe(true)
  })

  it(`is never above the table and never falls with strength (seed ${seed})`, () => {
    const strength = fc.double({ min: 10, max: 120, noNaN: true })
    fc.assert(
      fc.property(strength, strength, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((f) => ratedLoad({ insert, strength: f }))
        if (!low?.known || !high?.known) throw new Error('known from 10 MPa')
        expect(high.value).toBeLessThanOrEqual(50)
        expect(low.value).toBeLessThanOrEqual(high.value)
      }),
      { seed, numRuns: 300 },
    )
  })

  it(`and the strength for a load are each other’s inverse (seed ${seed})`, () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 50, noNaN: true }), (load) => {
        const strength = leastStrengthFor({ insert, load })
        if (!strength.known) throw new Error('within the table')
        const back = ratedLoad({ insert, strength: strength.value })
        expect(back.known && back.value).toBeGreaterThanOrEqual(load * (1 - 1e-12))
        expect(strength.value).toBeGreaterThanOrEqual(insert.leastStrength)
      }),
      { seed, numRuns: 300 },
    )
  })

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('is not known at a strength of %f', (strength) => {
    expect(ratedLoad({ insert, strength }).known).toBe(false)
    expect(leastStrengthFor({ insert, load: strength }).known).toBe(false)
  })
})

describe('crane', () => {
  const crane = {
    mark: 'C1',
    chart: [
      [9000, 9000],
      [6000, 12_000],
      [12_000, 6000],
    ] as [number, number][],
  }
  it.each([
    [3000, 12_000],
    [6000, 12_000],
    [6001, 9000],
    [9000, 9000],
    [11_999, 6000],
    [12_000, 6000],
  ])('at %i mm is rated by the next row out: %i kg', (radius, rating) => {
    const found = craneRating({ crane, radius })
    expect(found.known && found.value).toBe(rating)
  })
  it.each([12_001, 0, -5, Number.NaN])('at %f mm is not known', (radius) => {
    expect(craneRating({ crane, radius }).known).toBe(false)
  })
  it('with a chart that rises takes the smaller neighbour', () => {
    const found = craneRating({
      crane: {
        mark: 'C',
        chart: [
          [5000, 4000],
          [8000, 6000],
        ],
      },
      radius: 6000,
    })
    expect(found.known && found.value).toBe(4000)
  })
})

describe('wanted strength', () => {
  const { drawing } = casting()

  it('is the greatest of design, family and maker', () => {
    const strong = liftYard({
      insertKinds: [{ mark: 'F1', kind: 'face', rated: 50, ratedStrength: 25, leastStrength: 20 }],
    })
    const byMaker = wantedStrength({ drawing, yard: strong, family: eu })
    expect(byMaker.known && byMaker.value).toMatchObject({ strength: 20, from: 'maker of F1' })
    const design = { ...drawing, lifting: { strength: 22, load: 25, reference: 'LD', by: 'N' } }
    const byDesign = wantedStrength({ drawing: design, yard: strong, family: eu })
    expect(byDesign.known && byDesign.value.from).toBe('lifting design LD')
    const low = { ...drawing, lifting: { strength: 8, load: 25, reference: 'LD', by: 'N' } }
    const byFamily = wantedStrength({ drawing: low, yard: liftYard(), family: eu })
    expect(byFamily.known && byFamily.value).toMatchObject({ strength: 15, from: 'code family eu' })
  })

  it.each<FamilyId>(['nz', 'au', 'us'])('of %s waits for an engineer to enter the least strength', (id) => {
    const family = codeFamily(id)
    expect(gapsOf(wantedStrength({ drawing, yard: liftYard(), family }))).toMatch(/no confirmed value/)
    const by = { id: 'e', name: 'Ada Roe', role: 'engineer' as const }
    const limit = { entry: 'x', value: 18, unit: 'MPa', standard: 'Local rule', edition: '2020', by }
    const found = wantedStrength({
      drawing,
      yard: liftYard(),
      family,
      limits: { [LEAST_STRENGTH_LIMIT]: limit },
    })
    expect(found.known && found.value).toMatchObject({ strength: 18, from: 'limit entered by Ada Roe' })
    for (const bad of [{ value: -1 }, { value: Number.NaN }, { unit: 'psi' }]) {
      const limits = { [LEAST_STRENGTH_LIMIT]: { ...limit, ...bad } }
      expect(wantedStrength({ drawing, yard: liftYard(), family, limits }).known).toBe(false)
    }
  })

  it('an entered limit never lowers what the family asks', () => {
    const by = { id: 'e', name: 'Ada Roe', role: 'engineer' as const }
    const limits = {
      [LEAST_STRENGTH_LIMIT]: { entry: 'x', value: 5, unit: 'MPa', standard: 'S', edition: '', by },
    }
    const low = { ...drawing, lifting: { strength: 8, load: 25, reference: 'LD', by: 'N' } }
    const found = wantedStrength({ drawing: low, yard: liftYard(), family: eu, limits })
    expect(found.known && found.value.strength).toBe(15)
  })

  it('is not known without design, yard or insert type', () => {
    const { lifting: _, ...bare } = drawing
    expect(gapsOf(wantedStrength({ drawing: bare, yard: liftYard(), family: eu }))).toMatch(
      /no lifting design/,
    )
    expect(gapsOf(wantedStrength({ drawing, yard: null, family: eu }))).toMatch(/no kind F1/)
    const untyped = {
      ...drawing,
      inserts: [{ mark: 'A', at: [1000, 1000] as [number, number], kind: 'face' as const }],
    }
    expect(gapsOf(wantedStrength({ drawing: untyped, yard: liftYard(), family: eu }))).toMatch(/no type/)
  })

  it('a face insert of an edge kind is of no kind', () => {
    const yard = liftYard({
      insertKinds: [{ mark: 'F1', kind: 'edge', rated: 50, ratedStrength: 15, leastStrength: 10 }],
    })
    expect(drawnKinds({ drawing, yard }).gaps).toHaveLength(4)
  })
})

describe('load factor', () => {
  it.each([
    ['oiled steel', 'smooth'],
    ['film-coated ply', 'smooth'],
    ['planed boards', 'planed'],
    ['varnished timber', 'planed'],
    ['rough timber', 'rough'],
    ['concrete bed', 'concrete'],
    ['timber', null],
    [undefined, null],
  ] as const)('a face of %s is %s', (words, kind) => {
    expect(mouldFace(words)).toBe(kind)
  })

  it('is that of the worst bed the panel fits on, and of hanging free at least', () => {
    const panel = casting()
    const bed = { mark: 'B1', length: 12_000, width: 4000, face: 'oiled steel' }
    const on = (...beds: object[]) =>
      loadFactor({ panel, yard: liftYard({ beds }), family: eu, of: 'inserts' })
    const steel = on(bed)
    expect(steel.known && steel.value).toMatchObject({ factor: 1.3, stage: 'handling' })
    const mixed = on(bed, { ...bed, mark: 'B2', face: 'rough timber' })
    expect(mixed.known && mixed.value.stage).toBe('release')
    expect(mixed.known && mixed.value.factor).toBeCloseTo((panel.weight + 54) / panel.weight, 12)
    const small = on(bed, { ...bed, mark: 'B2', length: 5000, face: 'rough timber' })
    expect(small.known && small.value.factor).toBe(1.3)
    expect(on(bed, { ...bed, mark: 'B2', face: 'timber' }).known).toBe(false)
    expect(on().known).toBe(false)
  })

  it('a panel fits a bed lying either way', () => {
    const bed = { mark: 'B', length: 3000, width: 6000 }
    expect(fittingBeds([bed], { length: 6000, width: 3000 })).toHaveLength(1)
    expect(fittingBeds([bed], { length: 6000.1, width: 3000 })).toHaveLength(0)
  })

  it.each(FAMILY_IDS)('every factor that %s gives is at least 1 and comes with a source', (id) => {
    const { lift } = FAMILIES[id]
    for (const stage of ['release', 'handling'] as const) {
      for (const kind of ['smooth', 'planed', 'rough', 'concrete', null] as const) {
        for (const rule of [lift.factor, lift.bendingFactor]) {
          const found = rule({ stage, face: kind, weight: 67.5, faceArea: 18 })
          if (found.known) {
            expect(found.value).toBeGreaterThanOrEqual(1)
            expect(found.working.every(({ source }) => source.standard !== '')).toBe(true)
          } else expect(found.gaps.length).toBeGreaterThan(0)
        }
      }
    }
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(lift.tension({ strength: bad, thickness: 150 }).known).toBe(false)
    }
  })

  it.each([0, -1, Number.NaN])('adhesion on a weight of %f is not known', (weight) => {
    expect(eu.lift.factor({ stage: 'release', face: 'smooth', weight, faceArea: 18 }).known).toBe(false)
  })
})

describe('plan of a lift', () => {
  const verdicts = (change: object = {}, yard = liftYard(), family = eu) =>
    Object.fromEntries(
      planLift({ panel: casting(change), yard, family }).checks.map(({ id, verdict }) => [id, verdict]),
    )

  it('of four equalised inserts knows every stage but the road, where the family gives no factor', () => {
    expect(verdicts()).toMatchObject({
      'insert-position': 'pass',
      'lift-angle': 'pass',
      'lift-uplift': 'pass',
      'lift-peak:release': 'pass',
      'lift-peak:store': 'pass',
      'lift-peak:travel': 'unknown',
      'lift-peak:erect': 'pass',
      'design-load:F1': 'pass',
    })
    const plan = planLift({ panel: casting(), yard: liftYard(), family: eu })
    expect(plan.inserts.map(({ load }) => load)).toEqual(Array.from({ length: 4 }, () => plan.weight / 4))
    expect(plan.inserts[0]?.rated).toBe(50)
    expect(plan.angle).toBeCloseTo(29.42, 1)
    expect(plan.peak).toBe(plan.stages[0]?.peak?.stress)
  })

  it('of four rigid inserts takes the loads from the bending of the panel', () => {
    const rigid = liftYard({ rigging: [{ mark: 'R4', legs: 4, length: 4000, rated: 8000 }] })
    expect(verdicts({}, rigid)).toMatchObject({ 'lift-uplift': 'pass', 'lift-angle': 'pass' })
    const plan = planLift({ panel: casting(), yard: rigid, family: eu })
    const sum = plan.inserts.reduce((all, { load }) => all + (load ?? Number.NaN), 0)
    expect(sum).toBeCloseTo(plan.weight, 6)
  })

  it('without yard, inserts or rigging fails closed', () => {
    for (const found of [verdicts({ inserts: undefined }), verdicts({ rigging: undefined })]) {
      expect(found['lift-angle']).toBe('unknown')
    }
    expect(verdicts({ inserts: undefined })['lift-peak:release']).toBe('unknown')
    const bare = planLift({ panel: casting(), yard: null, family: eu })
    expect(bare.checks.filter(({ step, verdict }) => step === 'strip' && verdict === 'pass')).toEqual([])
    const none = planLift({ panel: casting({ inserts: undefined }), yard: liftYard(), family: eu })
    expect(none.unknown.join()).toMatch(/proposals come with the picks/)
  })

  it('a rating too small, an angle too flat and a maker’s distance not kept fail', () => {
    const weak = {
      mark: 'F1',
      kind: 'face',
      rated: 20,
      ratedStrength: 15,
      leastStrength: 10,
      leastEdge: 700,
      leastSpacing: 2000,
    }
    expect(verdicts({}, liftYard({ insertKinds: [weak] }))).toMatchObject({
      'design-load:F1': 'fail',
      'insert-edge:F1': 'fail',
      'insert-spacing:F1': 'fail',
    })
    const short = { mark: 'R4', legs: 4, length: 2100, equalised: true, rated: 8000 }
    expect(verdicts({}, liftYard({ rigging: [short] }))['lift-angle']).toBe('fail')
  })

  it('an insert in an opening fails at set and hangs nothing', () => {
    const hole = {
      mark: 'W',
      outline: [
        [1000, 400],
        [1500, 400],
        [1500, 900],
        [1000, 900],
      ],
    }
    expect(verdicts({ openings: [hole] })).toMatchObject({
      'insert-position': 'fail',
      'lift-peak:release': 'unknown',
    })
  })

  it('of two edge inserts hanging upright knows the loads, and is turned up from the mould', () => {
    const edgeKind = {
      mark: 'E1',
      kind: 'edge',
      rated: 60,
      ratedStrength: 15,
      leastStrength: 10,
      leastEdge: 300,
    }
    const twoLegs = { mark: 'R2', legs: 2, length: 4000, rated: 8000 }
    const yard = liftYard({ insertKinds: [edgeKind], rigging: [twoLegs] })
    const at = (x: number, mark: string) => ({ mark, at: [x, 3000], kind: 'edge', type: 'E1' })
    const change = { rigging: 'R2', inserts: [at(1500, 'A'), at(4500, 'B')] }
    const plan = planLift({ panel: casting(change), yard, family: eu })
    expect(plan.inserts.map(({ load }) => load)).toEqual([plan.weight / 2, plan.weight / 2])
    expect(verdicts(change, yard)).toMatchObject({
      'lift-angle': 'pass',
      'insert-edge:E1': 'pass',
      'lift-peak:hang': 'pass',
    })
    expect(plan.stages.map(({ id }) => id)).toEqual(['release', 'turn', 'hang', 'store', 'travel', 'erect'])
    expect(plan.stages[0]?.how).toBe('pitched off the mould about its bottom edge')
  })

  it('an insert that would push down fails', () => {
    const at = (...points: Point[]) =>
      points.map((point, k) => ({ mark: `${k}`, at: point, kind: 'face', type: 'F1' }))
    const found = verdicts({ inserts: at([4000, 500], [5500, 500], [4000, 2500]) })
    expect(found['lift-uplift']).toBe('fail')
  })

  it('names every insert, check and asked item once', () => {
    const plan = planLift({ panel: casting({ rigging: undefined }), yard: liftYard(), family: eu })
    const ids = [...plan.checks, ...plan.toRecord].map(({ step, id }) => `${step} ${id}`)
    expect(new Set(ids).size).toBe(ids.length)
    expect(plan.toRecord.map(({ id }) => id)).toContain('rigging')
  })
})

describe('working', () => {
  it('of everything in this room replays', () => {
    const steps: Step[] = []
    const take = (found: Worked<unknown>): void => {
      if (found.known) steps.push(...found.working)
    }
    for (const id of FAMILY_IDS) {
      for (const thickness of [100, 150, 650]) {
        for (const change of [
          {},
          {
            openings: [
              {
                mark: 'O',
                outline: [
                  [2500, 1000],
                  [3100, 1000],
                  [3100, 1900],
                  [2500, 1900],
                ],
              },
            ],
          },
        ]) {
          const plan = planLift({
            panel: casting({ thickness, ...change }),
            yard: liftYard(),
            family: codeFamily(id),
          })
          steps.push(...plan.working, ...plan.checks.flatMap(({ working }) => working))
        }
      }
      for (const kind of ['smooth', 'planed', 'rough', 'concrete'] as const) {
        take(FAMILIES[id].lift.factor({ stage: 'release', face: kind, weight: 67.5, faceArea: 18 }))
      }
      for (const strength of [10, 25, 50]) take(FAMILIES[id].lift.tension({ strength, thickness: 150 }))
    }
    take(
      supportLoads({ weight: 40, centre: [0, 0], supports: face([-1200, 0], [1800, 0]), equalised: false }),
    )
    take(
      supportLoads({
        weight: 58.5,
        centre: [2692, 1361],
        supports: face([1200, 600], [1200, 2400], [4600, 900]),
        equalised: false,
      }),
    )
    take(tilt({ centre: [0, 0], hook: [50, 20], height: 3000, depth: 75 }))
    take(
      leastStrengthFor({ insert: { mark: 'F', rated: 50, ratedStrength: 15, leastStrength: 10 }, load: 45 }),
    )
    take(hookMass({ mass: 6750 }))
    steps.push(...liftReport({ panel: casting(), yard: liftYard(), factor: 1.3 }).working)
    let replayed = 0
    for (const step of steps) {
      const again = replay(step)
      if (again === null) continue
      replayed += 1
      const result = Number(step.result)
      expect(Math.abs(again - result), `${step.symbol} = ${step.formula}`).toBeLessThanOrEqual(
        1e-9 * Math.max(Math.abs(result), 1e-9),
      )
    }
    expect(replayed).toBeGreaterThan(100)
  })
})

import { describe, expect, it } from 'vitest'
import { codeFamily, type FamilyId } from '../../codes/index.ts'
import { panelOf, parseDrawing } from '../../panel/index.ts'
import { replay } from '../../working/index.ts'
import { planSteel } from '../plan-steel.ts'
import { type ChairsInput, planChairs } from './plan-chairs.ts'

const GRADES: Readonly<Record<FamilyId, string>> = { nz: '500E', au: '500N', eu: 'B500B', us: '60' }

const planned = (
  family: FamilyId,
  more: Partial<ChairsInput> = {},
  drawing: Record<string, unknown> = {},
) => {
  const grade = GRADES[family]
  const panel = panelOf(
    parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'W1',
      outline: [
        [0, 0],
        [6000, 0],
        [6000, 3000],
        [0, 3000],
      ],
      thickness: 180,
      concrete: { strength: 40 },
      cover: { mould: 30, top: 35, edge: 40 },
      steel: [
        { layer: 'mould', direction: 'x', diameter: family === 'us' ? 13 : 12, grade, spacing: 200 },
        { layer: 'mould', direction: 'y', diameter: 10, grade, spacing: 200 },
        { layer: 'top', direction: 'y', diameter: 10, grade, spacing: 250 },
        { layer: 'top', direction: 'x', diameter: 12, grade, spacing: 200 },
      ],
      ...drawing,
    }),
  )
  const rules = codeFamily(family)
  const steel = planSteel({ panel, yard: null, family: rules })
  return planChairs({ panel, steel, family: rules, ...more })
}

describe('chairs of a panel', () => {
  it('eu: the rule sets the spacing, and the sag is told beside it', () => {
    const { layers, checks, unknown } = planned('eu')
    expect(unknown).toEqual([])
    // Mould: 12 mm along x lies on the chairs; top: mats go down from the face, so 12 mm along x is the lower one.
    expect(layers.map(({ layer, diameter, spacing }) => [layer, diameter, spacing])).toEqual([
      ['mould', 12, 600],
      ['top', 12, 600],
    ])
    expect(layers[0]?.height).toBe(30)
    expect(layers[1]?.height).toBe(180 - 35 - 10 - 12)
    expect(layers[0]?.sag).toBeGreaterThan(0)
    expect(checks.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['chair-spacing:mould', 'pass'],
      ['chair-spacing:top', 'pass'],
    ])
  })

  it('au: the widest spacing at which the mat sags no more than the cover tolerance', () => {
    const { layers, checks, assumed } = planned('au')
    const [mould, top] = layers
    expect(mould?.sag).toBeLessThanOrEqual(5)
    expect(top?.sag).toBeLessThanOrEqual(10)
    expect(top?.spacing).toBeGreaterThanOrEqual(mould?.spacing ?? Number.NaN)
    expect(checks.every(({ verdict }) => verdict === 'pass')).toBe(true)
    expect(assumed.map(({ field }) => field)).toContain('chairs.person')
    // 50 mm more and it would be too much.
    const wider = planned('au', { spacing: (mould?.spacing ?? 0) + 50 })
    const fails = wider.checks.filter(({ id, verdict }) => id.endsWith(':mould') && verdict === 'fail')
    expect(fails.length).toBeGreaterThan(0)
  })

  it('nz allows nothing under the cover: chairs stand higher, and it is said', () => {
    const { layers, assumed } = planned('nz')
    expect(layers[0]).toMatchObject({ layer: 'mould', raise: 5, height: 35 })
    expect(layers[0]?.sag).toBeLessThanOrEqual(5)
    expect(assumed).toContainEqual(expect.objectContaining({ field: 'chairs.raise', value: 5 }))
  })

  it('us: top steel may come down by what its depth may lack, 3/8 in', () => {
    const { layers, checks } = planned('us')
    expect(layers.map(({ layer }) => layer)).toEqual(['mould', 'top'])
    expect(checks.find(({ id }) => id === 'chair-sag:top')?.limit).toBeCloseTo(9.525, 9)
  })

  it('bars without a mat are left to the hand, a layer without steel has no chairs', () => {
    const path = [
      [700, 2300],
      [2100, 2300],
    ]
    const { layers, unknown } = planned(
      'eu',
      {},
      { steel: [{ bar: 'T', diameter: 16, grade: 'B500B', layer: 'mould', path }] },
    )
    expect(layers).toEqual([])
    expect(unknown).toEqual(['chairs, mould layer: bars without a mat; place them by hand'])
  })

  it('top chairs that would have no height are not known', () => {
    expect(planned('eu', {}, { thickness: 57 }).layers.map(({ layer }) => layer)).toEqual(['mould'])
    expect(planned('eu', {}, { thickness: 58 }).layers).toHaveLength(2)
  })

  it('a lighter person allows wider chairs, and an entered weight is no assumption', () => {
    const light = planned('au', { person: 0.5 })
    expect(light.layers[0]?.spacing).toBeGreaterThan(planned('au').layers[0]?.spacing ?? Number.NaN)
    expect(light.assumed.map(({ field }) => field)).not.toContain('chairs.person')
  })

  it('without cover no height is known, so there are no chairs', () => {
    const { layers, unknown } = planned('eu', {}, { cover: { edge: 40 } })
    expect(layers).toEqual([])
    expect(unknown).toEqual([
      'cover.mould: sets the height of the chairs',
      'cover.top: sets the height of the chairs',
    ])
  })

  it('tells where bars stay bent under a person', () => {
    // 12 and 10 mm on chairs at 600: far beyond 500 MPa under 1 kN; under a tenth of that they come back.
    const [mould] = planned('eu').layers
    expect(mould?.yield).toBe(500)
    expect(mould?.stress).toBeGreaterThan(500)
    expect(planned('eu', { person: 0.1 }).layers[0]?.stress).toBeLessThan(500)
  })

  it('a grade of no family leaves the yield unknown, not the chairs', () => {
    const { layers } = planned(
      'au',
      {},
      {
        steel: [
          { layer: 'mould', direction: 'x', diameter: 12, grade: 'X', spacing: 200 },
          { layer: 'mould', direction: 'y', diameter: 12, grade: 'X', spacing: 200 },
        ],
      },
    )
    expect(layers[0]).toMatchObject({ yield: null, layer: 'mould' })
  })

  it('bad entries are named, not used', () => {
    expect(planned('eu', { person: 0 }).unknown).toEqual(['person: a number above 0'])
    expect(planned('eu', { spacing: Number.NaN }).unknown).toEqual(['spacing: a number above 0'])
  })

  it('every printed step replays', () => {
    for (const family of ['nz', 'au', 'eu', 'us'] as const) {
      const { working, checks } = planned(family)
      const steps = [...working, ...checks.flatMap((check) => check.working)]
      for (const step of steps) {
        const again = replay(step)
        if (again !== null) expect(again).toBeCloseTo(Number(step.result), 6)
      }
      expect(steps.length).toBeGreaterThan(0)
    }
  })
})

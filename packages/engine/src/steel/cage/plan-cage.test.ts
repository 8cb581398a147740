import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { panelOf, parseDrawing } from '../../panel/index.ts'
import { replay } from '../../working/index.ts'
import { planSteel } from '../plan-steel.ts'
import { hungBeam, leastSag } from './hung-beam.ts'
import { weakestSection } from './mat-stiffness.ts'
import { type CageInput, planCage } from './plan-cage.ts'

const GRADE = 'B500B'
const MATS = [
  { layer: 'mould', direction: 'x', diameter: 12, grade: GRADE, spacing: 200 },
  { layer: 'mould', direction: 'y', diameter: 12, grade: GRADE, spacing: 200 },
]

const caged = (more: Partial<CageInput> = {}, drawing: Record<string, unknown> = {}) => {
  const family = codeFamily('eu')
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
      steel: MATS,
      ...drawing,
    }),
  )
  return planCage({ steel: planSteel({ panel, yard: null, family }), family, ...more })
}

describe('mass and centre of a cage', () => {
  it('one even mat: its middle, between the two directions', () => {
    const { mass, centre } = caged()
    // computed, second method: 16 × 5.92 + 31 × 2.92 m = 185.24 m of 12 mm at 0.888 kg/m.
    expect(mass).toBeCloseTo(164.5, 0)
    expect(centre).toMatchObject({ known: true })
    if (!centre.known) return
    expect(centre.value[0]).toBeCloseTo(3000, 6)
    expect(centre.value[1]).toBeCloseTo(1500, 6)
    const z = (16 * 5.92 * 36 + 31 * 2.92 * 48) / 185.24
    expect(centre.value[2]).toBeCloseTo(z, 6)
  })

  it('a bar whose place is not drawn leaves the centre unknown and says which', () => {
    const listed = {
      bar: 'U1',
      diameter: 10,
      grade: GRADE,
      role: 'stirrup',
      legs: [400, 110, 400],
      count: 12,
    }
    const { centre, placedCentre, placed, mass } = caged({}, { steel: [...MATS, listed] })
    expect(centre).toMatchObject({ known: false, gaps: ['place of 12 of the 12 bars U1'] })
    expect(placedCentre?.[0]).toBeCloseTo(3000, 6)
    expect(placed).toBeLessThan(mass ?? 0)
  })

  it('without cover nothing is known of the height', () => {
    expect(caged({}, { cover: { edge: 40 } }).centre.known).toBe(false)
  })

  it('no steel, no cage', () => {
    expect(caged({}, { steel: [] })).toMatchObject({ centre: { known: false }, craning: { known: false } })
  })
})

describe('craning in', () => {
  it('sag and stress by hand, 3 × 2 hooks', () => {
    const { craning, mass } = caged({ picks: { x: 3, y: 2 }, hoist: 2 })
    expect(craning.known).toBe(true)
    if (!craning.known || mass === null) return
    const inertia = (Math.PI * 12 ** 4) / 64
    const [bx, by] = [leastSag(3), leastSag(2)]
    const sag = (c: number, length: number, bars: number): number =>
      (c * ((mass * 9.80665) / length) * length ** 4) / (200_000 * bars * inertia)
    expect(craning.value.sagX).toBeCloseTo(sag(bx.sag, 5920, 16), 6)
    expect(craning.value.sagY).toBeCloseTo(sag(by.sag, 2920, 31), 6)
    expect(craning.value.sag).toBeCloseTo(craning.value.sagX + craning.value.sagY, 9)
    const pull = (mass * 9.80665 * 2 * Math.max(...bx.shares) * Math.max(...by.shares)) / 1000
    expect(craning.value.pull).toBeCloseTo(pull, 9)
    expect(craning.value.at).toHaveLength(6)
  })

  it('a stricter sag takes more hooks, and what it gives keeps the limit', () => {
    let last = 0
    for (const sag of [400, 100, 40, 15]) {
      const { fewest, craning, checks } = caged({ sag })
      expect(fewest.known).toBe(true)
      if (!fewest.known || !craning.known) return
      expect(craning.value.sag).toBeLessThanOrEqual(sag)
      const count = fewest.value.x * fewest.value.y
      expect(count).toBeGreaterThanOrEqual(last)
      last = count
      expect(checks.map(({ verdict }) => verdict)).toEqual(['pass', 'pass'])
    }
    expect(last).toBeGreaterThan(4)
  })

  it('too few hooks fail the limit that was entered', () => {
    const { checks } = caged({ sag: 5, picks: { x: 2, y: 2 } })
    expect(checks[0]).toMatchObject({ id: 'cage-sag', verdict: 'fail' })
  })

  it('without hooks and without a limit nothing is said, and no check is made', () => {
    const { craning, fewest, checks } = caged()
    expect(craning).toEqual({
      known: false,
      gaps: ['cage.sag: the largest sag between hooks that the yard allows, mm'],
    })
    expect(fewest.known).toBe(false)
    expect(checks).toEqual([])
  })

  it('bars one way alone: what the other way does is not known', () => {
    const { craning } = caged({ picks: { x: 3, y: 2 } }, { steel: MATS.slice(0, 1) })
    expect(craning).toEqual({
      known: false,
      gaps: ['cage: no bars along y, so its sag that way is not known'],
    })
  })

  it('hooks lie on crossings, the centre of mass beside their middle by what a door takes', () => {
    const door = {
      mark: 'D1',
      outline: [
        [4000, 0],
        [5500, 0],
        [5500, 2200],
        [4000, 2200],
      ],
    }
    const { hooks, aside, craning } = caged({ picks: { x: 4, y: 3 } }, { openings: [door] })
    expect(craning.known).toBe(true)
    expect(hooks).toHaveLength(12)
    for (const [x, y] of hooks) expect(x > 4000 && x < 5500 && y < 2200).toBe(false)
    expect(aside?.[0]).toBeLessThan(0)
    expect(aside?.[1]).toBeGreaterThan(0)
  })

  it('two layers: the hooked one carries alone unless somebody says they are held together', () => {
    const top = MATS.map((mat) => ({ ...mat, layer: 'top' }))
    const steel = [...MATS, ...top]
    const alone = caged({ picks: { x: 3, y: 2 } }, { steel })
    const both = caged({ picks: { x: 3, y: 2 }, together: true }, { steel })
    expect(alone.assumed.map(({ field }) => field)).toContain('cage.together')
    if (!alone.craning.known || !both.craning.known) throw new Error('not known')
    expect(both.craning.value.sag).toBeCloseTo(alone.craning.value.sag / 2, 6)
  })

  it('bad entries are named', () => {
    expect(caged({ sag: Number.NaN }).craning).toMatchObject({
      known: false,
      gaps: ['sag: a number above 0'],
    })
    expect(caged({ picks: { x: 1, y: 2 } }).craning).toMatchObject({
      known: false,
      gaps: ['picks.x: a whole number, 2 or more'],
    })
  })

  it('every printed step replays', () => {
    const { working } = caged({ picks: { x: 3, y: 2 } })
    let replayed = 0
    for (const step of working) {
      const again = replay(step)
      if (again === null) continue
      replayed += 1
      expect(Math.abs(again / Number(step.result) - 1)).toBeLessThan(1e-9)
    }
    expect(replayed).toBe(6)
  })
})

it('the weakest section is where an opening cuts bars', () => {
  const bar = (from: number, to: number, at: number) => ({ row: 0, at, from, to, diameter: 12 })
  const own = (Math.PI * 12 ** 4) / 64
  const lines = [bar(0, 1000, 0), bar(0, 400, 100), bar(600, 1000, 100)]
  expect(weakestSection(lines, 0, 1000)?.inertia).toBeCloseTo(own, 6)
  expect(weakestSection(lines, 0, 300)?.inertia).toBeCloseTo(2 * own, 6)
  expect(weakestSection([bar(0, 400, 0), bar(600, 1000, 0)], 0, 1000)).toBeNull()
  expect(weakestSection([], 0, 1000)).toBeNull()
})

it('a beam that hangs level keeps its sums', () => {
  expect(hungBeam(5, 0.1).shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
})

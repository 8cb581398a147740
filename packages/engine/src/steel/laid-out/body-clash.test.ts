import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { parseDrawing } from '../../panel/drawing.ts'
import { panelOf } from '../../panel/panel.ts'
import { planChairs } from '../chairs/plan-chairs.ts'
import { planSteel } from '../plan-steel.ts'

function box(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

const family = codeFamily('eu')
const mat = (layer: string, direction: string) => ({
  layer,
  direction,
  diameter: 10,
  grade: 'B500B',
  spacing: 200,
})
const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: box(0, 0, 5000, 3000),
  thickness: 200,
  concrete: { strength: 40 },
  cover: { mould: 30, top: 30, edge: 35 },
  steel: [mat('mould', 'x'), mat('mould', 'y'), mat('top', 'x'), mat('top', 'y')],
}
/** Mats lie from 30 to 50 and from 150 to 170 mm. */
const FOAM = { mark: 'V1', outline: box(2000, 1000, 1000, 600), depth: 90, above: 55 }
const DUCT = {
  mark: 'P1',
  line: [
    [0, 2500],
    [5000, 2500],
  ],
  diameter: 60,
  height: 100,
}

function steel(change: object) {
  const panel = panelOf(parseDrawing({ ...DRAWING, ...change }))
  const plan = planSteel({ panel, yard: null, family })
  const checks = plan.checks.filter(({ id }) => /^(void|duct)-clash/.test(id))
  return {
    panel,
    plan,
    checks: checks.map(({ id, demand, verdict, note }) => ({ id, demand, verdict, note })),
  }
}

describe('bars beside void formers and ducts', () => {
  it('mats above and below are clear', () => {
    expect(steel({ voids: [FOAM], ducts: [DUCT] }).checks).toEqual([
      { id: 'void-clash:V1', demand: 0, verdict: 'pass', note: undefined },
      { id: 'duct-clash:P1', demand: 0, verdict: 'pass', note: undefined },
    ])
  })

  // Rows 200 mm apart: five or six of them cross 1000 mm.
  it('a former into the mat, and a duct into the mat, are told with the bars', () => {
    const [former, duct] = steel({ voids: [{ ...FOAM, above: 48 }], ducts: [{ ...DUCT, height: 75 }] }).checks
    expect(former).toMatchObject({ id: 'void-clash:V1', verdict: 'fail' })
    expect(former?.demand).toBeGreaterThanOrEqual(5)
    expect(former?.demand).toBeLessThanOrEqual(6)
    // All bars across it, 26 rows of 5000 mm, and those along it where it lies that near.
    expect(duct?.verdict).toBe('fail')
    expect(duct?.demand).toBeGreaterThanOrEqual(25)
  })

  it('a listed bar through a duct is told by its mark', () => {
    const bar = {
      bar: 'K1',
      diameter: 16,
      grade: 'B500B',
      layer: 'mould',
      path: [
        [1000, 2000],
        [1000, 2900],
      ],
    }
    const low = { ...DUCT, height: 62 + 30 }
    const with_ = steel({ steel: [bar], ducts: [{ ...low, height: 70 }] }).checks[0]
    expect(with_).toMatchObject({ id: 'duct-clash:P1', verdict: 'fail', note: 'K1' })
    expect(steel({ steel: [bar], ducts: [low] }).checks[0]?.verdict).toBe('pass')
  })

  it('without cover the height of bars is not known, nor whether they meet', () => {
    const [former] = steel({ cover: { edge: 35 }, voids: [FOAM] }).checks
    expect(former?.verdict).toBe('unknown')
  })

  it('no chair stands in a former, and the plan says so', () => {
    const { panel, plan } = steel({ voids: [FOAM] })
    const chairs = planChairs({ panel, steel: plan, family })
    const top = chairs.layers.find(({ layer }) => layer === 'top')
    const mould = chairs.layers.find(({ layer }) => layer === 'mould')
    expect([top?.formers, mould?.formers]).toEqual([['V1'], []])
    expect(top?.at.some(([x, y]) => x > 2000 && x < 3000 && y > 1000 && y < 1600)).toBe(false)
    expect(chairs.unknown.join()).toContain('over void former V1 the mat is carried off it')
  })
})

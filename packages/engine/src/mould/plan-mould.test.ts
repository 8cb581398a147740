import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { parseDrawing } from '../panel/drawing.ts'
import { panelOf } from '../panel/panel.ts'
import type { Ring } from '../panel/point.ts'
import { distanceToRing } from '../panel/polygon.ts'
import { covers, distanceToEdge } from '../panel/region.ts'
import { planSteel } from '../steel/plan-steel.ts'
import { replay } from '../working/replay.ts'
import { parseYard } from '../yard/yard.ts'
import { diagonalTolerance, lengthTolerance } from './mould-asked.ts'
import { type MouldInput, planMould } from './plan-mould.ts'
import { propsAlong } from './props.ts'
import { putOnRate, releaseAgent } from './release-agent.ts'

const WALL = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  openings: [
    {
      mark: 'D1',
      outline: [
        [900, 0],
        [1900, 0],
        [1900, 2100],
        [900, 2100],
      ],
    },
  ],
  concrete: { strength: 40 },
  cover: { mould: 30, top: 35, edge: 30 },
  steel: [
    { layer: 'mould', direction: 'x', diameter: 12, grade: '500E', spacing: 200 },
    { layer: 'mould', direction: 'y', diameter: 10, grade: '500E', spacing: 200 },
    { layer: 'top', direction: 'x', diameter: 10, grade: '500E', spacing: 200 },
    { layer: 'top', direction: 'y', diameter: 12, grade: '500E', spacing: 200 },
  ],
  inserts: [{ mark: 'A', at: [1242, 2500], kind: 'face' }],
}
const YARD = {
  format: 'castwright.yard/1',
  name: 'Test yard',
  code: 'nz',
  timezone: 'Pacific/Fiji',
  beds: [{ mark: '1', length: 12000, width: 4000, face: 'steel' }],
  forms: [
    { mark: 'tall', height: 300, modulus: 200000, inertia: 4e6 },
    { mark: 'rail', height: 150, modulus: 8000, inertia: 1_139_062 },
    { mark: 'low', height: 120, modulus: 8000, inertia: 1e6 },
  ],
}
const nz = codeFamily('nz')
const panel = panelOf(parseDrawing(WALL))
const moulded = (input: Omit<MouldInput, 'steel'>) => planMould({ ...input, steel: planSteel(input) })
const plan = moulded({ panel, yard: parseYard(YARD), family: nz })

describe('plan of a mould', () => {
  it('takes the full head, the lowest form that is high enough, and props that keep the bow', () => {
    expect(plan.pressure).toBe(3.75)
    expect(plan.thrust).toBe(0.28125)
    expect(plan.form).toBe('rail')
    expect(plan.bow).toBeLessThanOrEqual(1.5)
    expect(plan.propSpacing).toBeLessThanOrEqual(2000)
    expect(plan.checks.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['side-form-height', 'pass'],
      ['side-form-bow', 'pass'],
      ['chair-sag:mould', 'pass'],
      ['chair-sag:top', 'pass'],
    ])
    for (const prop of plan.props)
      expect(distanceToRing(prop, WALL.outline as unknown as Ring)).toBeLessThan(1e-9)
  })

  it('one prop fewer on the long side would bow too far', () => {
    const outline = WALL.outline as unknown as Ring
    const rail = { modulus: 8000, inertia: 1_139_062 }
    const line = propsAlong({ outline, thrust: 0.28125, rail, limit: 1.5 })
    // 6000 mm: 4 spans of 1500 bow 1.076 mm, 3 of 2000 bow 3.4 mm (by hand, 0.006884 w L⁴ / E I)
    expect(line.at.filter(([, y]) => y === 0)).toHaveLength(5)
    expect(line.bow).toBeCloseTo(1.0757, 3)
  })

  it('chairs: a little over the cover at the mould, up to the lowest top mat above', () => {
    const [mould, top] = plan.chairs
    // Nothing may lie under the drawn cover here: chairs 5 higher.
    expect(mould?.height).toBe(30 + 5)
    expect(top?.height).toBe(150 - 35 - 22)
    const eu = moulded({ panel, yard: null, family: codeFamily('eu') }).chairs
    expect(eu.map(({ height, spacing }) => [height, spacing])).toEqual([
      [30, 600],
      [150 - 35 - 22, 600],
    ])
  })

  it('every chair stands in concrete, clear of edges and openings', () => {
    for (const grid of plan.chairs) {
      expect(grid.at.length).toBeGreaterThan(40)
      for (const at of grid.at) {
        expect(covers(panel.region, at)).toBe(true)
        expect(distanceToEdge(panel.region, at)).toBeGreaterThan(29.9)
      }
    }
  })

  it('oiled area is the face and all sides; agent at the thirsty end for steel', () => {
    // 18 − 2.1 m² and a way round of 18 + 2 · 2.1 m
    expect(plan.oiledArea).toBeCloseTo(15.9 + 22.2 * 0.15, 9)
    expect(plan.releaseAgent).toBeCloseTo((15.9 + 3.33) / 30, 9)
  })

  it('the plate of the form is checked where the yard says its plate: 5 mm steel, 150 mm high', () => {
    const plated = (plate: object) =>
      moulded({
        panel,
        yard: parseYard({ ...YARD, forms: [{ mark: 'r', height: 150, modulus: 2e5, inertia: 1e6, plate }] }),
        family: nz,
      }).checks.filter(({ id }) => id.startsWith('form-plate'))
    const [bow, stress] = plated({ thickness: 5, modulus: 200_000, bending: 165, held: 'foot' })
    // By hand: p0 = 0.00375 MPa; δ = p0 t⁴ / (30 E I), I = 125 / 12; σ = p0 t² / s²
    expect(bow?.demand).toBeCloseTo((0.00375 * 150 ** 4) / (30 * 200_000 * (125 / 12)), 9)
    expect(stress?.demand).toBeCloseTo((0.00375 * 150 ** 2) / 25, 9)
    expect([bow?.verdict, stress?.verdict]).toEqual(['pass', 'pass'])
    const [, open] = plated({ thickness: 5, modulus: 200_000 })
    expect(open?.unknown).toEqual(['yard.forms.plate.bending: stress allowed at work, MPa'])
    expect(open?.assumed?.map(({ field }) => field)).toContain('plate')
    const [weak] = plated({ thickness: 1.2, modulus: 200_000, bending: 165, held: 'foot' })
    expect(weak?.verdict).toBe('fail')
  })

  it('heavy concrete pushes with its own weight', () => {
    const heavy = panelOf(parseDrawing({ ...WALL, concrete: { strength: 40, density: 3500 } }))
    const found = moulded({ panel: heavy, yard: parseYard(YARD), family: nz })
    expect(found.weight).toBeCloseTo(3500 * 9.80665e-3, 9)
    expect(found.thrust).toBeCloseTo((found.weight * 0.15 ** 2) / 2, 9)
    expect(found.assumed.map(({ field }) => field)).not.toContain('weight')
  })

  it('says for each face of the beds which product goes on, and how much', () => {
    const yard = parseYard({
      ...YARD,
      beds: [...YARD.beds, { mark: '4', length: 9000, width: 4000, face: 'coated plywood' }],
      agents: [
        { mark: 'thin', kind: 'reactive', rates: [{ face: 'steel', rate: 45 }], dryingMinutes: 10 },
        { mark: 'cream', kind: 'water-in-oil cream', rates: [{ face: 'plywood', rate: 18 }] },
      ],
    })
    const found = moulded({ panel, yard, family: nz })
    expect(found.agents.map(({ face, agent, beds }) => [face, agent, beds.join()])).toEqual([
      ['steel', 'thin', '1'],
      ['coated plywood', 'cream', '4'],
    ])
    expect(found.agents[0]?.litres).toBeCloseTo(19.23 / 45, 6)
    expect(found.releaseAgent).toBeCloseTo(19.23 / 18, 6)
    expect(found.assumed.map(({ field }) => field)).not.toContain('put-on rate')
    expect(found.toRecord.find(({ id }) => id === 'mould-oiled')?.note).toBe(
      'No pools; none on reinforcement or construction joints. Let it dry: thin 10 minutes.',
    )
  })

  it('asks for cover with the family’s sign policy', () => {
    const low = (family: 'nz' | 'au' | 'eu' | 'us', thickness = 150) => {
      const asked = moulded({
        panel: panelOf(parseDrawing({ ...WALL, thickness })),
        yard: null,
        family: codeFamily(family),
      }).toRecord.find(({ id }) => id === 'cover:mould')
      return asked?.low
    }
    expect(low('nz')).toBe(30)
    expect(low('au')).toBe(25)
    expect(low('eu')).toBe(20)
    expect(low('us')).toBeCloseTo(30 - 9.525, 9)
    expect(low('us', 203.2)).toBeCloseTo(30 - 9.525, 9)
    expect(low('us', 203.3)).toBeCloseTo(30 - 10, 9)
  })

  it('a cover that is not drawn cannot pass', () => {
    const bare = moulded({
      panel: panelOf(parseDrawing({ ...WALL, cover: { mould: 30 } })),
      yard: parseYard(YARD),
      family: nz,
    })
    const top = bare.toRecord.find(({ id }) => id === 'cover:top')
    expect(top?.unknown).toEqual(['cover.top: not on the drawing'])
    expect(bare.unknown).toContain('cover.top: sets the height of the chairs')
  })

  it('without a yard, or without a form that is high enough, the bow is not known or the height fails', () => {
    const none = moulded({ panel, yard: null, family: nz })
    expect(none.checks.slice(0, 2).map(({ verdict }) => verdict)).toEqual(['unknown', 'unknown'])
    expect(none.releaseAgent).toBeNull()
    expect(none.unknown.join()).toContain('yard.forms')
    const thick = moulded({
      panel: panelOf(parseDrawing({ ...WALL, thickness: 301 })),
      yard: parseYard(YARD),
      family: nz,
    })
    expect(thick.checks.slice(0, 2).map(({ verdict }) => verdict)).toEqual(['fail', 'unknown'])
  })

  it('asked items have ids of their own, and step set holds only what can be seen before the pour', () => {
    const ids = plan.toRecord.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(plan.toRecord.filter(({ step }) => step === 'set').map(({ id }) => id)).toEqual([
      'chairs:mould',
      'chairs:top',
      'cover:mould',
      'cover:top',
      'cover:edge',
      'insert:A',
      'inserts-fixed',
      'opening:D1',
      'steel-clean',
      'mould-empty',
    ])
  })

  it('sides, diagonals and form height carry set-up tolerances on both sides of each edge', () => {
    expect([3000, 3001, 6000, 6001, 10_000, 10_001].map(lengthTolerance)).toEqual([5, 6, 6, 8, 8, null])
    expect([3000, 3001, 6000, 6001, 10_000, 10_001].map(diagonalTolerance)).toEqual([6, 10, 10, 12, 12, null])
    expect(plan.toRecord.find(({ id }) => id === 'form-heights')).toMatchObject({
      kind: 'readings',
      low: 145,
      high: 155,
      least: 4,
    })
    expect(plan.toRecord.find(({ id }) => id === 'side:2')).toMatchObject({ low: 2995, high: 3005 })
  })

  it('a gable is taped at every side and three diagonals, which the shape as a whole judges', () => {
    const gable = panelOf(
      parseDrawing({
        ...WALL,
        openings: [],
        outline: [
          [0, 0],
          [6000, 0],
          [6000, 2500],
          [3000, 4200],
          [0, 2500],
        ],
      }),
    )
    const asked = moulded({ panel: gable, yard: null, family: nz }).toRecord
    expect(asked.filter(({ id }) => id.startsWith('side:'))).toHaveLength(5)
    const diagonals = asked.filter(({ id }) => id.startsWith('diagonal:'))
    expect(diagonals).toHaveLength(3)
    expect(diagonals.every(({ recordOnly }) => recordOnly === true)).toBe(true)
    expect(diagonals[0]?.note).toBe('Drawn 6500 mm. Judged with the other lengths as one shape.')
  })

  it('an outline of many corners is taped at six of them, with its overall sizes', () => {
    const round = panelOf(
      parseDrawing({
        ...WALL,
        openings: [],
        inserts: [],
        steel: [],
        outline: Array.from({ length: 24 }, (_, k) => [
          Math.round(2000 + 2000 * Math.cos((k * Math.PI) / 12)),
          Math.round(2000 + 2000 * Math.sin((k * Math.PI) / 12)),
        ]),
      }),
    )
    const asked = moulded({ panel: round, yard: null, family: nz }).toRecord.map(({ id }) => id)
    expect(asked).toContain('overall-length')
    expect(asked.filter((id) => id.startsWith('diagonal:'))).toHaveLength(10)
  })

  it('every step replays', () => {
    for (const step of plan.working) {
      const again = replay(step)
      if (again !== null)
        expect(Math.abs(again - (step.result as number))).toBeLessThanOrEqual(1e-9 * Math.abs(again) + 1e-15)
    }
  })
})

describe('release agent', () => {
  it('knows steel and timber faces, nothing else', () => {
    expect([putOnRate('steel, tilting'), putOnRate('coated plywood'), putOnRate('rubber')]).toEqual([
      30,
      20,
      null,
    ])
  })
  it('is not known without an area or a rate', () => {
    expect(releaseAgent({ area: 0, rate: 30 }).known).toBe(false)
    expect(releaseAgent({ area: 10, rate: Number.NaN }).known).toBe(false)
  })
})

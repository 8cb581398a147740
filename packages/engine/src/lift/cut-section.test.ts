import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { parseDrawing } from '../panel/drawing.ts'
import { GRAVITY, panelOf } from '../panel/panel.ts'
import { replay } from '../working/replay.ts'
import { parseYard } from '../yard/yard.ts'
import { bodiesNear } from './bodies-near.ts'
import { ownWeight } from './body-forces.ts'
import { cutSection } from './cut-section.ts'
import { liftReport } from './lift-report.ts'
import { picks } from './picks/index.ts'
import { liftStages } from './stages/lift-stages.ts'
import { stageChecks } from './stages/stage-checks.ts'

function box(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

const WALL = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: box(0, 0, 6000, 3000),
  thickness: 200,
  concrete: { strength: 40, density: 2500 },
  inserts: [
    { mark: 'A', at: [1242, 621], kind: 'face' },
    { mark: 'B', at: [4758, 621], kind: 'face' },
    { mark: 'C', at: [4758, 2379], kind: 'face' },
    { mark: 'D', at: [1242, 2379], kind: 'face' },
  ],
}
const FOAM = { mark: 'V1', outline: box(3300, 1200, 1000, 600), depth: 80, above: 60, density: 20 }
const DUCT = {
  mark: 'P1',
  line: [
    [0, 1500],
    [2800, 1500],
  ],
  diameter: 60,
  height: 100,
  mass: 1,
}
const panel = (change: object = {}) => panelOf(parseDrawing({ ...WALL, ...change }))
const yard = parseYard({
  format: 'castwright.yard/1',
  name: 'Test yard',
  code: 'eu',
  timezone: 'Pacific/Fiji',
  beds: [{ mark: '1', length: 12_000, width: 4000, face: 'steel' }],
})
const eu = codeFamily('eu')
const stages = (change: object = {}) => liftStages({ panel: panel(change), yard, family: eu })

describe('own weight of a panel with voids, as the plate is loaded', () => {
  it('sums to the weight, with its centre where the panel has it', () => {
    const voided = panel({
      voids: [
        FOAM,
        {
          ...FOAM,
          mark: 'V2',
          above: 0,
          outline: [
            [500, 300],
            [1200, 400],
            [700, 1100],
          ],
        },
      ],
      ducts: [DUCT],
    })
    const { pressure, forces } = ownWeight(voided)
    const even = pressure * voided.faceArea * 1e6
    const sum = forces.reduce((all, { force }) => all + force, even)
    expect(sum / 1000).toBeCloseTo(voided.weight, 9)
    for (const axis of [0, 1] as const) {
      const moment = forces.reduce(
        (all, { at, force }) => all + force * at[axis],
        even * voided.faceCentre[axis],
      )
      expect(moment / sum).toBeCloseTo(voided.centre[axis], 1)
    }
    expect(forces.length).toBeGreaterThan(100)
  })

  it('of a full panel is even and as before', () => {
    const { pressure, forces } = ownWeight(panel())
    expect(forces).toEqual([])
    expect(pressure).toBeCloseTo((2500 * GRAVITY * 0.2) / 1e6, 12)
  })

  it('the plate shares it as statics does: three inserts have one answer', () => {
    const three = WALL.inserts.slice(0, 3)
    const found = liftReport({ panel: panel({ inserts: three, ducts: [DUCT] }), yard: null })
    expect(found.inserts.reduce((sum, { load }) => sum + (load ?? 0), 0)).toBeCloseTo(found.weight, 6)
  })
})

describe('tension of a panel with voids', () => {
  it('without the designer’s section of a void former is not known, and shuts its checks', () => {
    const found = stages({ voids: [FOAM] })
    for (const stage of found) {
      expect(stage.peak, stage.id).toBeNull()
      expect(stage.unknown.join(), stage.id).toContain('voids[0].section of V1')
    }
    const strength = { known: true as const, value: 30, working: [] }
    const checks = stageChecks({ stages: found, family: eu, strength, thickness: 200 })
    const peaks = checks.filter(({ id }) => id.startsWith('lift-peak:'))
    expect(peaks.length).toBeGreaterThan(0)
    for (const check of peaks) expect(check.verdict).toBe('unknown')
    const report = liftReport({ panel: panel({ voids: [FOAM] }), yard: null })
    expect([report.peak.stress, report.verdict]).toEqual([null, 'unknown'])
    expect(report.unknown).toContain('peak')
    // The loads are statics: they stay.
    expect(report.inserts.every(({ load }) => load !== null)).toBe(true)
  })

  it('with it, every bending tension is that of the plate over the share', () => {
    const half = stages({ voids: [{ ...FOAM, section: 0.5 }] })[0]
    const most = stages({ voids: [{ ...FOAM, section: 0.9 }] })[0]
    expect(half?.peak?.stress).toBeGreaterThan(0)
    expect((half?.peak?.stress ?? 0) / (most?.peak?.stress ?? 1)).toBeCloseTo(0.9 / 0.5, 9)
    expect(half?.working.map(({ symbol }) => symbol)).toContain('σ cut')
    expect(half?.assumed.map(({ field }) => field)).toContain('stiffness at void formers and ducts')
  })

  // Computed, second method: (t³ − d³)/12 over half a thickness, the duct at mid-thickness.
  it('a duct cuts the section along its line', () => {
    const cut = cutSection(panel({ ducts: [DUCT] }))
    if (!cut.known) throw new Error(cut.gaps.join())
    expect(cut.value.bending).toBeCloseTo(1 - (60 / 200) ** 3, 12)
    expect(cut.value.pulled).toBeCloseTo(1 - 60 / 200, 12)
    for (const step of cut.working) {
      const again = replay(step)
      if (again !== null) expect(Math.abs(again - Number(step.result))).toBeLessThanOrEqual(1e-9)
    }
    // A duct on the axis of symmetry moves little weight: the tension goes up by the section, nearly.
    const [with_, without] = [stages({ ducts: [DUCT] })[0], stages()[0]]
    const grown = (with_?.peak?.stress ?? 0) / (without?.peak?.stress ?? 1)
    expect(grown).toBeGreaterThan(1.01)
    expect(grown).toBeLessThan(1 / (1 - 0.3 ** 3) + 1e-9)
  })

  it('two over each other are not known', () => {
    const over = cutSection(
      panel({
        ducts: [
          DUCT,
          {
            ...DUCT,
            mark: 'P2',
            height: 35,
            line: [
              [2000, 500],
              [2000, 2500],
            ],
          },
        ],
      }),
    )
    expect(over.known).toBe(false)
    if (!over.known) expect(over.gaps[0]).toMatch(/^duct P1 and duct P2 lie over each other/)
  })

  it('a full panel keeps its section', () => {
    expect(cutSection(panel())).toMatchObject({ value: { bending: 1, pulled: 1 } })
  })
})

describe('an insert beside a void', () => {
  it('is not known within one and a half embedments, and is beyond', () => {
    const near = (x: number) =>
      bodiesNear({
        panel: panel({ voids: [{ ...FOAM, outline: box(x, 300, 500, 600) }] }),
        insert: { at: [1242, 621], kind: 'face' },
        depth: 100,
      })
    expect(near(1242 + 149)).toEqual(['void former V1'])
    expect(near(1242 + 151)).toEqual([])
    expect(near(1000)).toEqual(['void former V1'])
  })

  it('of an edge counts along its axis', () => {
    const near = (y: number) =>
      bodiesNear({
        panel: panel({
          ducts: [
            {
              ...DUCT,
              line: [
                [500, y],
                [2500, y],
              ],
            },
          ],
        }),
        insert: { at: [1242, 3000], kind: 'edge' },
        depth: 200,
      })
    expect(near(3000 - 200 - 300 - 29)).toEqual(['duct P1'])
    expect(near(3000 - 200 - 300 - 31)).toEqual([])
  })

  it('shuts its stage', () => {
    const found = stages({
      ducts: [
        {
          ...DUCT,
          line: [
            [0, 700],
            [2800, 700],
          ],
        },
      ],
    })[0]
    expect(found?.inserts.find(({ mark }) => mark === 'A')?.gaps.join()).toContain(
      'duct P1 in the concrete that it pulls on',
    )
  })
})

it('the search of picks stays off voids, and says what it leaves out', () => {
  const found = picks({
    panel: panel({ voids: [{ ...FOAM, outline: box(700, 400, 900, 500) }] }),
    count: 4,
    seed: 1,
  } as Parameters<typeof picks>[0])
  for (const { at } of found.inserts)
    expect(at[0] > 700 && at[0] < 1600 && at[1] > 400 && at[1] < 900).toBe(false)
  expect(found.unknown.join()).toContain('void formers and ducts: the search takes the weight as even')
})

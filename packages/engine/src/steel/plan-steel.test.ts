import { describe, expect, it } from 'vitest'
import { codeFamily, FAMILIES, type FamilyId, type LapInput } from '../codes/index.ts'
import { panelOf, parseDrawing } from '../panel/index.ts'
import { replay, type Step } from '../working/index.ts'
import { parseYard } from '../yard/index.ts'
import { barMass } from './bar-mass.ts'
import { checkBend } from './bend.ts'
import { cutLength } from './cut-length.ts'
import { planSteel } from './plan-steel.ts'
import type { SteelPlan } from './steel-plan.ts'

const GRADES: Readonly<Record<FamilyId, string>> = { nz: '500E', au: '500N', eu: 'B500B', us: '60' }

const drawingOf = (family: FamilyId, more: Record<string, unknown> = {}): Record<string, unknown> => ({
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [9000, 0],
    [9000, 3000],
    [0, 3000],
  ],
  thickness: 180,
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
  concrete: { strength: 40, aggregate: 19 },
  cover: { mould: 30, top: 35, edge: 40 },
  steel: [
    { layer: 'mould', direction: 'x', diameter: 13, grade: GRADES[family], spacing: 200 },
    { layer: 'mould', direction: 'y', diameter: 13, grade: GRADES[family], spacing: 250 },
    { layer: 'top', direction: 'y', diameter: 10, grade: GRADES[family], spacing: 250 },
    { layer: 'top', direction: 'x', diameter: 10, grade: GRADES[family], spacing: 200 },
    {
      bar: 'T1',
      diameter: 16,
      grade: GRADES[family],
      layer: 'mould',
      path: [
        [700, 2200],
        [2100, 2200],
        [2100, 2900],
      ],
      count: 2,
    },
    { bar: 'U1', diameter: 10, grade: GRADES[family], role: 'stirrup', legs: [400, 110, 400], count: 12 },
  ],
  ...more,
})

const YARD = {
  format: 'castwright.yard/1',
  name: 'Kettle Lane',
  code: 'nz',
  timezone: 'Pacific/Fiji',
  stock: [10, 13, 16].flatMap((diameter) =>
    Object.values(GRADES).map((grade) => ({ diameter, grade, lengths: [4000, 6000] })),
  ),
}

function plan(family: FamilyId, more: Record<string, unknown> = {}, yard: unknown = YARD): SteelPlan {
  return planSteel({
    panel: panelOf(parseDrawing(drawingOf(family, more))),
    yard: yard === null ? null : parseYard(yard),
    family: codeFamily(family),
  })
}

function check(found: SteelPlan, id: string) {
  const one = found.checks.find((each) => each.id === id)
  if (one === undefined) throw new Error(`no check ${id} among ${found.checks.map((each) => each.id).join()}`)
  return one
}

function expectReplays(steps: readonly Step[]): void {
  for (const step of steps) {
    const value = replay(step)
    if (value === null) continue
    expect(Math.abs(value - Number(step.result)), `${step.symbol} = ${step.formula}`).toBeLessThanOrEqual(
      1e-9 * Math.abs(Number(step.result)),
    )
  }
}

describe('steel of a panel', () => {
  it('total mass is that of its lines; every placed bar has a line and every line is placed or counted', () => {
    const found = plan('nz')
    expect(found.mass).toBeCloseTo(
      found.bars.reduce((sum, bar) => sum + bar.mass, 0),
      9,
    )
    for (const bar of found.bars) {
      const placed = found.placed.filter(({ mark }) => mark === bar.mark).length
      if (bar.mark.startsWith('M') || bar.mark.startsWith('T') === false) {
        if (bar.mark !== 'U1' && bar.mark !== 'T1') expect(placed, bar.mark).toBe(bar.count)
      }
    }
    expect(new Set(found.bars.map(({ mark }) => mark)).size).toBe(found.bars.length)
    expect(found.unknown).toEqual([])
  })

  it('the first mat of a layer has the stated cover, the next lies on it', () => {
    const { placed } = plan('nz')
    const height = (prefix: string) => placed.find(({ mark }) => mark.startsWith(prefix))?.height
    expect(height('MX')).toBe(36.5)
    expect(height('MY')).toBe(49.5)
    expect(height('TY')).toBe(180 - 40)
    expect(height('TX')).toBe(180 - 50)
    expect(height('T1')).toBe(30 + 26 + 8)
  })

  it('rows longer than the stock are lapped, by the drawing’s lap held against the code', () => {
    const short = plan('nz', { lap: { length: 300 } })
    expect(check(short, 'lap:mould-x')).toMatchObject({ demand: 300, verdict: 'fail' })
    const long = plan('nz', { lap: { length: 700 } })
    expect(check(long, 'lap:mould-x')).toMatchObject({ demand: 700, verdict: 'pass' })
    expect(long.laps.filter(({ mark }) => mark === 'mould-x').length).toBeGreaterThan(0)
    expect(long.laps.every(({ length }) => length === 700)).toBe(true)
    expect(check(long, 'stagger:mould-x').verdict).toBe('pass')
    expect(long.checks.some(({ id }) => id === 'lap:mould-y')).toBe(false)
    const code = plan('nz')
    expect(check(code, 'lap:mould-x').note).toMatch(/by the code/)
    expect(code.bars.every(({ cutLength: length }) => length <= 6000)).toBe(true)
  })

  it('without a lap that can be known, long rows stay whole and say so', () => {
    const found = plan('nz', { cover: { edge: 40 } })
    expect(found.unknown.join()).toMatch(/mould-x: lap: \d+ rows are longer than the stock/)
    expect(check(found, 'lap:mould-x')).toMatchObject({ verdict: 'unknown' })
    expect(check(found, 'bond-cover:mould-x').unknown?.join()).toContain('cover.mould')
    expect(found.placed.every(({ height }) => height === null)).toBe(true)
  })

  it('without a yard the stock is not known; without edge cover nothing is laid out', () => {
    const bare = plan('nz', {}, null)
    expect(check(bare, 'stock:13-500E')).toMatchObject({
      verdict: 'unknown',
      unknown: ['yard: its bar stock'],
    })
    expect(bare.laps).toEqual([])
    const open = plan('nz', { cover: { mould: 30, top: 30 } })
    expect(open).toMatchObject({ mass: null, ties: null, wire: null })
    expect(open.unknown.join()).toContain('cover.edge')
    expect(check(open, 'spacing:mould-x').verdict).toBe('unknown')
  })

  it('bends are held against the code; an inside not given is the least and is listed as assumed', () => {
    const found = plan('nz')
    expect(check(found, 'bend:T1')).toMatchObject({ demand: 80, limit: 80, verdict: 'pass' })
    expect(found.assumed.map(({ field }) => field)).toContain('steel.T1.inside')
    const tight = plan('nz', {
      steel: [{ bar: 'S1', diameter: 16, grade: '500E', legs: [500, 300], inside: 64 }],
    })
    expect(check(tight, 'bend:S1')).toMatchObject({ demand: 64, limit: 80, verdict: 'fail' })
    expect(tight.ties).toBeNull()
  })

  it('a bar that cannot be bent, or whose bend is not known, is left out and named', () => {
    const steel = [
      { bar: 'S1', diameter: 16, grade: '500E', legs: [500, 30], inside: 80 },
      { bar: 'S2', diameter: 28, grade: '500E', role: 'stirrup', legs: [500, 300] },
    ]
    const found = plan('nz', { steel })
    expect(found.bars).toEqual([])
    expect(found.mass).toBeNull()
    expect(check(found, 'cut:S1').verdict).toBe('unknown')
    expect(check(found, 'cut:S2').unknown?.join()).toContain('inside')
    expect(check(found, 'bend:S2').verdict).toBe('unknown')
  })

  it('bars of one name and one make are one line, another make gets its own', () => {
    const bar = { bar: 'T', diameter: 16, grade: '500E', layer: 'mould' }
    const found = plan('nz', {
      steel: [
        {
          ...bar,
          path: [
            [2200, 300],
            [2200, 2700],
          ],
        },
        {
          ...bar,
          path: [
            [2300, 300],
            [2300, 2700],
          ],
        },
        {
          ...bar,
          path: [
            [300, 2300],
            [4300, 2300],
          ],
        },
      ],
    })
    expect(found.bars.map(({ mark, count, cutLength: length }) => [mark, count, length])).toEqual([
      ['T', 2, 2400],
      ['T-2', 1, 4000],
    ])
    expect(found.placed).toHaveLength(3)
  })

  it('a straight listed bar longer than the stock is lapped as drawn', () => {
    const found = plan('nz', {
      lap: { length: 800 },
      steel: [
        {
          bar: 'E',
          diameter: 16,
          grade: '500E',
          layer: 'mould',
          path: [
            [100, 100],
            [8900, 100],
          ],
        },
      ],
    })
    expect(found.bars.map(({ mark }) => mark)).toEqual(['E/1', 'E/2'])
    expect(found.laps).toHaveLength(1)
    expect(found.bars.reduce((sum, each) => sum + each.cutLength, 0)).toBeCloseTo(8800 + 800, 6)
  })

  it('a grade or a size of another family is not known', () => {
    const found = plan('eu', {
      steel: [{ layer: 'mould', direction: 'x', diameter: 12, grade: '500E', spacing: 200 }],
    })
    expect(check(found, 'stock:12-500E').unknown?.join()).toContain('500E is no grade')
    const us = plan('us', {
      steel: [{ layer: 'mould', direction: 'x', diameter: 12, grade: '60', spacing: 200 }],
    })
    expect(us.mass).toBeNull()
    expect(us.unknown.join()).toContain('no US bar')
  })

  it('what to record has its limits and unique ids', () => {
    for (const family of Object.keys(FAMILIES) as FamilyId[]) {
      const found = plan(family, { lap: { length: 900 } })
      const ids = [...found.checks, ...found.toRecord].map(({ id }) => id)
      expect(new Set(ids).size, family).toBe(ids.length)
      const grade = GRADES[family]
      const mass = found.toRecord.find(({ id }) => id === `mass:10-${grade}`)
      expect(mass?.low, family).toBeGreaterThan(0.5)
      const mark = found.toRecord.find(({ id }) => id === `mark:13-${grade}`)
      expect(mark?.choices?.filter(({ good }) => good).map(({ value }) => value)).toEqual([grade])
      expect(found.toRecord.find(({ id }) => id === 'lap:mould-x:measured')?.low).toBe(900)
    }
  })

  it('every printed step replays from its own numbers, in every family', () => {
    for (const family of Object.keys(FAMILIES) as FamilyId[]) {
      const { steel: rules } = codeFamily(family)
      for (const more of [{}, { lap: { length: 900 } }, { thickness: 700 }]) {
        const found = plan(family, more)
        expectReplays([...found.working, ...found.checks.flatMap(({ working }) => working)])
      }
      for (const below of [50, 260, 400]) {
        for (const concrete of [25, 40, 60, 80]) {
          for (const apart of [0, 80, 140]) {
            const bar: LapInput = {
              diameter: 16,
              yield: 500,
              concrete,
              cover: 28,
              gap: 90,
              below,
              bond: below > 250 ? 'poor' : 'good',
              share: 60,
              apart,
            }
            const lap = rules.lap(bar)
            expect(lap.known).toBe(true)
            expectReplays(lap.working ?? [])
          }
        }
      }
      for (const diameter of [10, 16, 25, 32]) {
        const bend = checkBend({
          rules,
          diameter,
          grade: GRADES[family],
          role: 'main',
          plain: false,
          galvanised: family !== 'eu',
          inside: 100,
          temperature: 5,
        })
        expectReplays(bend.working)
        expectReplays(barMass({ rules, diameter, cutLength: 5432 }).working ?? [])
        expectReplays(rules.clearSpacing({ diameter, aggregate: 20 }).working ?? [])
        expectReplays(rules.bondCover?.({ diameter, aggregate: 40 }).working ?? [])
      }
    }
    for (const turns of [[30, 90, 135], [180], [60]]) {
      const cut = cutLength({ diameter: 12, inside: 60, legs: [500, 400, 300, 200], turns })
      expectReplays(cut.working ?? [])
    }
  })

  it('a 12 × 4 m panel with six openings is planned in milliseconds', () => {
    const openings = Array.from({ length: 6 }, (_, i) => {
      const left = 800 + i * 1900
      return {
        mark: `O${i}`,
        outline: [
          [left, 1000],
          [left + 1200, 1000],
          [left + 1200, 2600],
          [left, 2600],
        ],
      }
    })
    const big = panelOf(
      parseDrawing(
        drawingOf('nz', {
          outline: [
            [0, 0],
            [12000, 0],
            [12000, 4000],
            [0, 4000],
          ],
          openings,
        }),
      ),
    )
    const yard = parseYard(YARD)
    const run = () => planSteel({ panel: big, yard, family: codeFamily('nz') })
    for (let i = 0; i < 10; i += 1) run()
    const start = performance.now()
    for (let i = 0; i < 10; i += 1) run()
    // Some 3 ms alone; the bound only catches a change of order on a busy machine.
    expect((performance.now() - start) / 10).toBeLessThan(100)
  })
})

import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { panelOf, parseDrawing } from '../../panel/index.ts'
import { parseYard } from '../../yard/index.ts'
import { planSteel } from '../plan-steel.ts'
import { lapShares } from './lap-share.ts'

const wall = (more: Record<string, unknown> = {}) => ({
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [9000, 0],
    [9000, 3000],
    [0, 3000],
  ],
  thickness: 180,
  concrete: { strength: 30, aggregate: 16 },
  cover: { mould: 25, top: 25, edge: 25 },
  steel: [{ layer: 'mould', direction: 'x', diameter: 12, grade: 'B500B', spacing: 200 }],
  ...more,
})

const yard = parseYard({
  format: 'castwright.yard/1',
  name: 'Kettle Lane',
  code: 'eu',
  timezone: 'UTC',
  stock: [{ diameter: 12, grade: 'B500B', lengths: [6000] }],
})

const plan = (more: Record<string, unknown> = {}) =>
  planSteel({ panel: panelOf(parseDrawing(wall(more))), yard, family: codeFamily('eu') })

describe('laps with the share that is lapped at one section', () => {
  it('rows that take turns lap half of the bars: α6 = √(50/25) = 1.414 in the lap of the plan', () => {
    // EN 1992-1-1:2004 8.7.3, Table 8.3: 50 % gives 1.4, by the formula 1.414. 12 mm in C30, cover 25, good bond: anchorage 364.1 mm
    // with fctk 2.0 (Table 3.1), 0.7 · 0.30 · 30^(2/3) = 2.0276 not rounded gives 364.1 · 2 / 2.0276 = 359.2 and a lap of 507.9 mm.
    const found = plan()
    const check = found.checks.find(({ id }) => id === 'lap:mould-x')
    expect(found.laps.every(({ share }) => share === 50)).toBe(true)
    expect(Math.abs((check?.limit ?? 0) - 507.9)).toBeLessThan(0.5)
    // Rounded up to the next 10 mm (common practice, no source).
    expect(check).toMatchObject({ demand: 510, verdict: 'pass' })
  })

  it('a drawn lap that is enough for half the bars is not lengthened to that for all', () => {
    const check = plan({ lap: { length: 520 } }).checks.find(({ id }) => id === 'lap:mould-x')
    // All at one section would ask for 1.5 · 359.2 = 538.8 (EN 1992-1-1:2004 Table 8.3).
    expect(check).toMatchObject({ demand: 520, verdict: 'pass' })
    expect(plan({ lap: { length: 500 } }).checks.find(({ id }) => id === 'lap:mould-x')?.verdict).toBe('fail')
  })

  it('of four bars two with laps inside 0.65 of a lap, two outside: 50 %', () => {
    // EN 1992-1-1:2004 Figure 8.8: bars whose laps lie outside 0.65 l0 of the middle of the lap looked at do not count.
    const l0 = 500
    const row = (at: number) => ({ from: 0, to: 9000, laps: [at] })
    const rows = [row(3000), row(3000 + 0.66 * l0), row(3000 - 0.66 * l0), row(3000 + 0.64 * l0)]
    expect(lapShares(rows, 0.65 * l0)[0]).toEqual([50])
  })
})

describe('clear distance beside a listed bar', () => {
  const beside = (at: number, more: Record<string, unknown> = {}) => {
    const bar = { bar: 'L', diameter: 12, grade: 'B500B', layer: 'mould' }
    const path = (y: number) => [
      [500, y],
      [3500, y],
    ]
    const steel = [
      { ...bar, path: path(1000) },
      { ...bar, bar: 'M', path: path(1000 + 12 + at) },
    ]
    return plan({ steel, ...more }).checks.find(({ id }) => id === 'side-by-side')
  }

  // EN 1992-1-1:2004 8.2(2): the greatest of k1 φ, dg + k2 and 20 mm; recommended k1 1, k2 5 mm.
  it.each([
    [16, 21],
    [10, 20],
    [32, 37],
  ])('EN 1992-1-1 8.2(2), aggregate %d: %d mm', (aggregate, clear) => {
    const concrete = { strength: 30, aggregate }
    expect(beside(clear, { concrete })?.verdict).toBe('pass')
    const near = beside(clear - 0.1, { concrete })
    expect(near).toMatchObject({
      verdict: 'fail',
      demand: 1,
      source: { clause: expect.stringMatching(/^8\.2/) },
    })
    expect(near?.working.at(-1)?.result).toBe(clear)
  })

  it('EN 1992-1-1 8.2(4): the bars of a lap may touch within it', () => {
    const path = [
      [100, 1000],
      [8900, 1000],
    ]
    const steel = [{ bar: 'L', diameter: 12, grade: 'B500B', layer: 'mould', path }]
    const found = plan({ steel, lap: { length: 600 } })
    expect(found.laps).toHaveLength(1)
    expect(found.checks.find(({ id }) => id === 'side-by-side')).toMatchObject({ demand: 0, verdict: 'pass' })
  })
})

describe('starters with a foot', () => {
  const starters = (foot: number, more: Record<string, unknown> = {}) => ({
    starters: [
      [500, 500],
      [2000, 500],
    ],
    diameter: 12,
    grade: 'B500B',
    spacing: 300,
    embed: 140,
    project: 500,
    foot,
    ...more,
  })
  const anchor = (steel: unknown, family: 'eu' | 'nz' = 'eu') => {
    const panel = panelOf(parseDrawing(wall({ steel: [steel] })))
    const found = planSteel({ panel, yard, family: codeFamily(family) })
    return found.checks.find(({ id }) => id === 'anchor:starters-1')
  }

  it('eu: along the centreline against lbd of a bent bar (EN 1992-1-1:2004 8.4.4, Table 8.2, from memory)', () => {
    // Computed, second method: 12 mm in C30, cover 25 is no more than 3 φ, so α1 and α2 are 1.
    const fbd = (2.25 * 0.7 * 0.3 * 30 ** (2 / 3)) / 1.5
    const lbd = (3 * (500 / 1.15)) / fbd
    // Two straights past a bend of 48 mm inside and a quarter turn of its centreline.
    const along = 140 - 36 + (400 - 36) + (Math.PI / 2) * 30
    const found = anchor(starters(400))
    expect(found?.limit).toBeCloseTo(lbd, 6)
    expect(found?.demand).toBeCloseTo(along, 6)
    expect(found?.verdict).toBe('pass')
    expect(anchor(starters(200))?.verdict).toBe('fail')
  })

  it('a foot shorter than a standard hook leaves it unknown', () => {
    // EN 1992-1-1:2004 Figure 8.1: 5 φ past the bend, with what the bend takes up 60 + 36 mm.
    expect(anchor(starters(90))).toMatchObject({ verdict: 'unknown', limit: null })
    expect(anchor(starters(90))?.unknown?.join()).toContain('foot: 90 mm is no standard hook')
  })

  it('nz: from the top face to the outside of the foot (NZS 3101:2006 8.6, from memory)', () => {
    // Computed, second method: 0.24 · 500 · 12 / √30 by hand.
    const found = anchor(starters(250, { grade: '500E' }), 'nz')
    expect(found).toMatchObject({ demand: 140, verdict: 'fail' })
    expect(Math.abs((found?.limit ?? 0) - 262.9)).toBeLessThan(0.05)
  })
})

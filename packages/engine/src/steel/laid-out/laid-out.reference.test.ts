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

import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { panelOf, parseDrawing } from '../../panel/index.ts'
import { parseYard } from '../../yard/index.ts'
import { planSteel } from '../plan-steel.ts'
import type { SteelPlan } from '../steel-plan.ts'

/** Bars side by side as the layout places them, and what is told where it may not move them; invented sizes. */

const GRADE = 'B500B'
const box = (left: number, bottom: number, width: number, height: number) => [
  [left, bottom],
  [left + width, bottom],
  [left + width, bottom + height],
  [left, bottom + height],
]
const mat = (direction: 'x' | 'y', layer: 'mould' | 'top' = 'mould') => ({
  layer,
  direction,
  diameter: 12,
  grade: GRADE,
  spacing: 200,
})

/** 4 m by 3.012 m: rows along y at 36, 231, 426 …, along x at 36, 232, 428 … where the spacing needs no row more. */
function plan(steel: readonly unknown[], more: Record<string, unknown> = {}): SteelPlan {
  const drawing = {
    format: 'castwright.drawing/1',
    mark: 'S1',
    outline: box(0, 0, 4000, 3012),
    thickness: 200,
    concrete: { strength: 40, aggregate: 16 },
    cover: { mould: 30, top: 30, edge: 30 },
    steel,
    ...more,
  }
  const yard = {
    format: 'castwright.yard/1',
    name: 'Kettle Lane',
    code: 'eu',
    timezone: 'UTC',
    stock: [10, 12, 16].map((diameter) => ({ diameter, grade: GRADE, lengths: [6000] })),
  }
  return planSteel({
    panel: panelOf(parseDrawing(drawing)),
    yard: parseYard(yard),
    family: codeFamily('eu'),
  })
}

const check = (found: SteelPlan) => found.checks.find(({ id }) => id === 'side-by-side')
const rowsAt = (found: SteelPlan, axis: 0 | 1) =>
  [
    ...new Set(
      found.placed
        .filter(({ use, path }) => use === 'mat' && path[0]?.[axis] === path[1]?.[axis])
        .map(({ path }) => path[0]?.[axis] ?? 0),
    ),
  ].sort((a, b) => a - b)

describe('trimmers', () => {
  const trim = (count: number) => ({
    trim: 'D1',
    layer: 'mould',
    diameter: 12,
    grade: GRADE,
    count,
    beyond: 500,
  })

  it.each([1, 2])(
    '%i a side lie clear of every row or in contact with it, wherever the opening is',
    (count) => {
      for (let left = 1000; left < 1200; left += 17) {
        const openings = [{ mark: 'D1', outline: box(left, 900 + left / 10, 1000, 1000) }]
        const found = plan([mat('x'), mat('y'), trim(count)], { openings })
        expect(check(found)?.verdict, `${left}`).toBe('pass')
        expect(found.placed.filter(({ use }) => use === 'trimmer')).toHaveLength(4 * count)
        expect(found.checks.find(({ id }) => id === 'same-place')?.verdict).toBe('pass')
      }
    },
  )

  it('move away from the opening, never nearer, and by no more than 40 mm', () => {
    for (let left = 1000; left < 1200; left += 17) {
      const openings = [{ mark: 'D1', outline: box(left, 1000, 1000, 1000) }]
      const found = plan([mat('x'), mat('y'), trim(1)], { openings })
      const jambs = found.placed
        .filter(({ use, path }) => use === 'trimmer' && path[0]?.[0] === path[1]?.[0])
        .map(({ path }) => path[0]?.[0] ?? 0)
        .sort((a, b) => a - b)
      // Edge cover and half a bar from the opening: 36 mm.
      expect(jambs[0]).toBeLessThanOrEqual(left - 36 + 1e-6)
      expect(jambs[0]).toBeGreaterThanOrEqual(left - 36 - 40 - 1e-6)
      expect(jambs[1]).toBeGreaterThanOrEqual(left + 1000 + 36 - 1e-6)
    }
  })

  it('without the aggregate they lie against the opening and it is not known whether they are clear', () => {
    const openings = [{ mark: 'D1', outline: box(1000, 1000, 1000, 1000) }]
    const found = plan([mat('x'), mat('y'), trim(1)], { openings, concrete: { strength: 40 } })
    expect(check(found)).toMatchObject({ verdict: 'unknown' })
    expect(check(found)?.unknown?.join()).toContain('concrete.aggregate')
  })
})

describe('U-bars and starters', () => {
  it('stand clear of the rows or in contact with them, at no more than their spacing', () => {
    for (const spacing of [150, 175, 190, 200, 240]) {
      const found = plan([
        mat('x'),
        mat('y'),
        mat('x', 'top'),
        mat('y', 'top'),
        { edge: 'all', form: 'u', diameter: 10, grade: GRADE, spacing, leg: 400 },
      ])
      expect(check(found), `${spacing}`).toMatchObject({ demand: 0, verdict: 'pass' })
      expect(found.checks.find(({ id }) => id === 'spacing:edge-1')?.verdict).toBe('pass')
      expect(found.toRecord.some(({ id }) => id === 'contacts:tied')).toBe(found.contacts.length > 0)
    }
  })
})

describe('rows of a mat beside listed bars', () => {
  const bar = (x: number, more: Record<string, unknown> = {}) => ({
    bar: 'L',
    diameter: 16,
    grade: GRADE,
    layer: 'mould',
    path: [
      [x, 100],
      [x, 2900],
    ],
    ...more,
  })

  it('a row moves aside, its neighbours follow, and no distance exceeds the spacing', () => {
    const bare = rowsAt(plan([mat('x'), mat('y')]), 0)
    const row = bare[6] as number
    const found = plan([mat('x'), mat('y'), bar(row - 13)])
    expect(check(found)).toMatchObject({ demand: 0, verdict: 'pass' })
    const rows = rowsAt(found, 0)
    expect(rows).toHaveLength(bare.length)
    for (const [i, at] of rows.entries()) {
      // The placing tolerance, 20 mm.
      expect(Math.abs(at - (bare[i] as number))).toBeLessThanOrEqual(20 + 1e-6)
      if (i > 0) expect(at - (rows[i - 1] as number)).toBeLessThanOrEqual(200 + 1e-6)
    }
    // Computed, second method: 16 over 12 mm, 14 mm up; 21 + 14 mm between middles: sqrt(35² − 14²) = 32.08 mm aside.
    expect(Math.min(...rows.map((at) => Math.abs(at - (row - 13))))).toBeGreaterThanOrEqual(32.07)
  })

  it('where the rows have no room to move it is told with both marks, the distance and the place', () => {
    const bare = rowsAt(plan([mat('x'), { ...mat('y'), spacing: 196.4 }]), 0)
    const found = plan([mat('x'), { ...mat('y'), spacing: 196.4 }, bar((bare[6] as number) - 4)])
    expect(check(found)).toMatchObject({ demand: 1, limit: 0, verdict: 'fail' })
    expect(found.crowded[0]?.marks).toEqual(['MY1', 'L'])
    // Computed, second method: 14 mm up and 4 aside, less half of both bars.
    expect(found.crowded[0]?.clear).toBeCloseTo(Math.hypot(4, 14) - 14, 6)
    expect(check(found)?.note).toMatch(/MY1 and L touch and are not drawn tied/)
  })

  it('a bar drawn tied lies on its row, and the cage is looked at for its ties', () => {
    const bare = rowsAt(plan([mat('x'), mat('y')]), 0)
    const found = plan([mat('x'), mat('y'), bar((bare[6] as number) - 3, { tied: true })])
    expect(check(found)).toMatchObject({ demand: 0, verdict: 'pass' })
    expect(found.contacts.map(({ marks }) => marks)).toEqual([['MY1', 'L']])
    expect(rowsAt(found, 0)).toEqual(bare)
    expect(found.toRecord.find(({ id }) => id === 'contacts:tied')).toMatchObject({
      step: 'cage',
      kind: 'tick',
      note: 'MY1 with L',
    })
  })
})

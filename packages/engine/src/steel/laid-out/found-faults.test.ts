import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { panelOf, parseDrawing } from '../../panel/index.ts'
import { parseYard } from '../../yard/index.ts'
import { planSteel } from '../plan-steel.ts'
import type { Corner, PlacedBar, SteelPlan } from '../steel-plan.ts'
import { faceCover } from './face-cover.ts'
import { emptySpace, solidsOf } from './space.ts'

/** Each drawing here once came out wrong; invented sizes. */

const GRADE = 'B500B'
const MATS = (['mould', 'top'] as const).flatMap((layer) =>
  (['x', 'y'] as const).map((direction) => ({ layer, direction, diameter: 12, grade: GRADE, spacing: 200 })),
)

const box = (left: number, bottom: number, width: number, height: number) => [
  [left, bottom],
  [left + width, bottom],
  [left + width, bottom + height],
  [left, bottom + height],
]

function plan(steel: readonly unknown[], more: Record<string, unknown> = {}, stock = 6000): SteelPlan {
  const drawing = {
    format: 'castwright.drawing/1',
    mark: 'F1',
    outline: box(0, 0, 6000, 3000),
    thickness: 180,
    concrete: { strength: 40, aggregate: 16 },
    cover: { mould: 30, top: 35, edge: 30 },
    steel,
    ...more,
  }
  const yard = {
    format: 'castwright.yard/1',
    name: 'Kettle Lane',
    code: 'eu',
    timezone: 'UTC',
    stock: [8, 10, 12, 16, 20].map((diameter) => ({ diameter, grade: GRADE, lengths: [stock] })),
  }
  return planSteel({
    panel: panelOf(parseDrawing(drawing)),
    yard: parseYard(yard),
    family: codeFamily('eu'),
  })
}

const check = (found: SteelPlan, id: string) => found.checks.find((each) => each.id === id)

/** Points along a bar of right-angled bends, its arcs walked in steps of one degree: a second way to where it lies. */
function walked({ centreline, inside, diameter }: PlacedBar): Corner[] {
  const corners = centreline ?? []
  const radius = ((inside ?? 0) + diameter) / 2
  const towards = (from: Corner, to: Corner, by: number): Corner => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])
    return [0, 1, 2].map((axis) => {
      const [a, b] = [from[axis] as number, to[axis] as number]
      return a + ((b - a) * by) / length
    }) as unknown as Corner
  }
  return corners.flatMap((corner, i): Corner[] => {
    const [before, after] = [corners[i - 1], corners[i + 1]]
    if (before === undefined || after === undefined) return [corner]
    const [start, end] = [towards(corner, before, radius), towards(corner, after, radius)]
    const centre = [0, 1, 2].map(
      (axis) => (start[axis] as number) + (end[axis] as number) - (corner[axis] as number),
    )
    return Array.from({ length: 91 }, (_, degrees) => {
      const [sine, cosine] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)]
      return [0, 1, 2].map((axis) => {
        const middle = centre[axis] as number
        return middle + ((start[axis] as number) - middle) * cosine + ((end[axis] as number) - middle) * sine
      }) as unknown as Corner
    })
  })
}

/** From a point to a straight bar's centreline, mm. */
function fromBar([x, y, z]: Corner, { centreline }: PlacedBar): number {
  const [a, b] = centreline as readonly [Corner, Corner]
  const [u, v, w] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
  const part = ((x - a[0]) * u + (y - a[1]) * v + (z - a[2]) * w) / (u * u + v * v + w * w)
  const t = Math.min(1, Math.max(0, part))
  return Math.hypot(x - a[0] - t * u, y - a[1] - t * v, z - a[2] - t * w)
}

describe('bends where they really are', () => {
  it.each(['u', 'hook'] as const)('no row lies in the bend of a %s', (form) => {
    const edge = { edge: 'all', form, diameter: 10, grade: GRADE, spacing: 200, leg: 400 }
    const outline = box(0, 0, 2400, 1800)
    const found = plan([...MATS, form === 'hook' ? { ...edge, layer: 'mould' } : edge], { outline })
    expect(check(found, 'same-place')?.verdict).toBe('pass')
    const rows = found.placed.filter(({ use }) => use === 'mat')
    for (const bent of found.placed.filter(({ use }) => use === 'edge')) {
      const points = walked(bent)
      for (const row of rows) {
        const least = points.reduce(
          (near, point) => Math.min(near, fromBar(point, row)),
          Number.POSITIVE_INFINITY,
        )
        // Half of each bar, less what bars may touch by.
        if (least < 11 - 0.6) expect.fail(`${bent.id} and ${row.id} ${least} mm apart`)
      }
    }
    expect(check(found, 'spacing:mould-x')?.verdict).toBe('pass')
    expect(check(found, 'spacing:mould-y')?.verdict).toBe('pass')
  })

  it('a bend that a bar of the other layer lies in is told', () => {
    const hook = { edge: 'bottom', form: 'hook', layer: 'mould', diameter: 10, grade: GRADE, inside: 60 }
    const mats = [MATS[1], MATS[2]]
    const found = plan([...mats, { ...hook, spacing: 250, leg: 150 }], {
      thickness: 90,
      cover: { mould: 25, top: 25, edge: 25 },
    })
    // Computed, second method: the bend turns round y 65, z 65 at 35 mm; the first row of the top lies at y 41, z 59: 10.3 of 11 mm.
    expect(check(found, 'same-place')).toMatchObject({ verdict: 'fail' })
  })

  it('the depths of a U leave it a height, or it is told and drawn at the nearest', () => {
    const u = { edge: 'outer', form: 'u', diameter: 12, grade: GRADE, spacing: 250, leg: 400 }
    const thick = MATS.map((mat) => ({ ...mat, diameter: 16 }))
    const found = plan([...thick, u], { thickness: 150 })
    for (const { legs } of found.bars.filter(({ mark }) => mark.startsWith('EU')))
      expect(legs[1]).toBeGreaterThan(24)
  })
})

describe('cover of the faces', () => {
  it('a mat that its cover puts out of the concrete is told', () => {
    const [mat] = MATS
    const found = plan([mat], { cover: { mould: 170, top: 30, edge: 30 } })
    expect(check(found, 'face-cover:top')).toMatchObject({ demand: -2, limit: 30, verdict: 'fail' })
  })

  it('without a cover of the other face bars still lie in the concrete', () => {
    const [mat] = MATS
    expect(check(plan([mat], { cover: { mould: 170, edge: 30 } }), 'face-cover:top')?.verdict).toBe('fail')
    expect(check(plan([mat], { cover: { mould: 30, edge: 30 } }), 'face-cover:top')).toBeUndefined()
  })

  it('is not known where the drawing does not say it, and fails where a bar sticks out', () => {
    const { placed } = plan(MATS)
    const top = (thickness: number) => {
      const drawing = {
        format: 'castwright.drawing/1',
        mark: 'F1',
        outline: box(0, 0, 6000, 3000),
        thickness,
      }
      return faceCover(parseDrawing({ ...drawing, concrete: { strength: 40 } }), placed, 'top', [])
    }
    expect(top(200)).toMatchObject({ limit: null, verdict: 'unknown' })
    expect(top(200)?.unknown).toEqual(['cover.top: cover to this face, mm'])
    expect(top(40)).toMatchObject({ limit: 0, verdict: 'fail' })
  })

  it('two mats in a panel too thin for the cover of the other face', () => {
    const found = plan(MATS.slice(0, 2), { thickness: 80 })
    expect(check(found, 'face-cover:top')).toMatchObject({ demand: 26, limit: 35, verdict: 'fail' })
    expect(check(found, 'face-cover:mould')).toBeUndefined()
  })

  it('bars of every kind keep it', () => {
    const found = plan([
      ...MATS,
      { edge: 'all', form: 'u', diameter: 10, grade: GRADE, spacing: 200, leg: 400 },
      { edge: 'left', form: 'hook', layer: 'top', diameter: 8, grade: GRADE, spacing: 400, leg: 300 },
    ])
    expect(check(found, 'face-cover:mould')).toMatchObject({ demand: 30, verdict: 'pass' })
    expect(check(found, 'face-cover:top')).toMatchObject({ demand: 35, verdict: 'pass' })
  })
})

describe('listed bars', () => {
  const bar = (path: unknown, more: Record<string, unknown> = {}) => ({
    bar: 'A',
    diameter: 12,
    grade: GRADE,
    layer: 'mould',
    path,
    ...more,
  })
  const openings = [{ mark: 'O1', outline: box(2000, 800, 1000, 1200) }]

  it.each([
    ['out of the panel', [-500, 300], [3000, 300], 0],
    ['through an opening', [1500, 1500], [4000, 1500], 0],
    ['too near the edge', [500, 20], [4000, 20], 14],
    ['at its cover', [30, 36], [5970, 36], 30],
  ] as const)('%s', (_, from, to, clear) => {
    const found = check(plan([bar([from, to])], { openings }), 'edge-cover:A')
    expect(found?.demand).toBeCloseTo(clear, 9)
    expect(found?.verdict).toBe(clear < 30 ? 'fail' : 'pass')
  })

  it('without a cover at edges it is not known', () => {
    const found = plan(
      [
        bar([
          [500, 300],
          [3000, 300],
        ]),
      ],
      { cover: { mould: 30 } },
    )
    expect(check(found, 'edge-cover:A')?.unknown?.join()).toContain('cover.edge')
  })

  it('the drawing’s lap is held against the code', () => {
    const long = bar([
      [100, 300],
      [8800, 300],
    ])
    const wide = { outline: box(0, 0, 9000, 3000) }
    expect(check(plan([long], { ...wide, lap: { length: 100 } }), 'lap:A')?.verdict).toBe('fail')
    const found = check(plan([long], { ...wide, lap: { length: 600 } }), 'lap:A')
    // Computed, second method: 12 mm in C40, cover 30 governs. fbd = 2.25 · 0.7 · 0.3 · 40^(2/3) / 1.5, α2 = 0.775, α6 = 1.5.
    const bond = (2.25 * 0.7 * 0.3 * 40 ** (2 / 3)) / 1.5
    expect(found?.limit).toBeCloseTo((0.775 * 1.5 * 3 * (500 / 1.15)) / bond, 6)
    expect(found?.verdict).toBe('pass')
    const several = bar(
      [
        [100, 300],
        [8800, 300],
      ],
      { count: 3 },
    )
    expect(check(plan([several], { ...wide, lap: { length: 600 } }), 'lap:A')?.verdict).toBe('unknown')
  })
})

describe('laps', () => {
  it('bars in line of which one ends where the other begins are not in the same place', () => {
    const bar = (id: string, from: number, to: number) =>
      solidsOf({
        id,
        diameter: 16,
        centreline: [
          [from, 100, 48],
          [to, 100, 48],
        ],
      })
    const space = emptySpace()
    space.add(bar('A', 3972, 6900))
    expect(space.clash(bar('B', 6900, 9900))).toBeNull()
    expect(space.clash(bar('B', 9900, 6900))).toBeNull()
    expect(space.clash(bar('B', 6890, 9900))?.id).toBe('A')
  })

  it('those that find no place away from an opening are counted', () => {
    const openings = [{ mark: 'O1', outline: box(600, 1200, 4800, 500) }]
    const note = check(plan([MATS[0]], { openings, lap: { length: 500 } }, 3500), 'lap:mould-x')?.note
    expect(note).toMatch(/\d+ laps have no place away from an opening/)
    expect(check(plan([MATS[0]], { lap: { length: 500 } }, 3500), 'lap:mould-x')?.note).not.toContain('place')
  })
})

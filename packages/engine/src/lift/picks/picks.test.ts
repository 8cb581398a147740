import { describe, expect, it } from 'vitest'
import { type Panel, panelOf } from '../../panel/panel.ts'
import { distance, type Point } from '../../panel/point.ts'
import { distanceToEdge } from '../../panel/region.ts'
import { InputError } from '../../working/issue.ts'
import { replay } from '../../working/replay.ts'
import { liftedPlate } from '../plate/lifted-plate.ts'
import { forcesOf } from './forces.ts'
import { Influence } from './influence.ts'
import { picks } from './picks.ts'
import type { PicksInput } from './picks-input.ts'
import { proposedInserts } from './proposed.ts'
import { Table } from './table.ts'

const WALL: number[][] = [
  [0, 0],
  [7200, 0],
  [7200, 3200],
  [0, 3200],
]
const HOLES = [box(900, 300, 1900, 2400), box(4200, 900, 5700, 2100)]
const ELL: number[][] = [
  [0, 0],
  [6000, 0],
  [6000, 1800],
  [4000, 1800],
  [4000, 3000],
  [0, 3000],
]

function box(left: number, bottom: number, right: number, top: number): number[][] {
  return [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ]
}

function panel(outline: number[][], openings: number[][][] = [], change: object = {}): Panel {
  return panelOf({
    format: 'castwright.drawing/1',
    mark: 'P',
    outline,
    thickness: 160,
    concrete: { strength: 40, density: 2500 },
    openings: openings.map((ring, i) => ({ mark: `O${i}`, outline: ring })),
    ...change,
  } as never)
}

const find = (input: Partial<PicksInput> & { readonly panel: Panel }) => picks({ count: 4, ...input })
const places = (found: { readonly inserts: readonly { readonly at: Point }[] }): Point[] =>
  found.inserts.map(({ at }) => at)

describe('the search model', () => {
  it.each([true, false])('reads loads and disc stresses as a fine mesh does (split off: %s)', (split) => {
    const one = panel(WALL, HOLES)
    const input = { piece: one.region[0]!, thickness: 160, modulus: 30_000, poisson: 0.2, pressure: 0.004 }
    const at: Point[] = [
      [500, 663],
      [6200, 663],
      [6200, 2537],
      [500, 2537],
    ]
    const influence = new Influence({ ...input, split })
    const table = new Table(influence, influence.responses(at))
    const forces = forcesOf(table, [0, 1, 2, 3], 'rigid')!
    const fine = liftedPlate({ ...input, supports: at.map((place) => ({ at: place })) })
    for (const [k, force] of forces.entries()) {
      expect(force / fine.reactions[k]!).toBeCloseTo(1, 2)
      const stress = table.discStress([0, 1, 2, 3], forces, k)
      expect(Math.abs(stress / fine.supportMoments[k]!.stress - 1)).toBeLessThan(split ? 0.01 : 0.15)
    }
  })
})

describe('picks', () => {
  it('keeps every limit, holds the weight, every load downward, and each formula replays', () => {
    const one = panel(WALL, HOLES)
    const found = find({ panel: one })
    for (const { at } of found.inserts)
      expect(distanceToEdge(one.region, at)).toBeGreaterThanOrEqual(300 - 1e-3)
    for (const [i, p] of places(found).entries())
      for (const q of places(found).slice(0, i)) expect(distance(p, q)).toBeGreaterThanOrEqual(600 - 1e-3)
    expect(found.inserts.reduce((sum, { load }) => sum + load, 0)).toBeCloseTo(one.weight, 6)
    for (const { load } of found.inserts) expect(load).toBeGreaterThan(0)
    for (const step of found.working) {
      const again = replay(step)
      if (again !== null) expect(again / (step.result as number)).toBeCloseTo(1, 9)
    }
    expect(found.assumed.map(({ field }) => field)).toContain('edge')
  })

  it('same input, same answer; the factor scales the peak and leaves the places', () => {
    const [once, again, heavy] = [
      find({ panel: panel(ELL) }),
      find({ panel: panel(ELL) }),
      find({ panel: panel(ELL), factor: 1.5 }),
    ]
    expect(again).toEqual(once)
    expect(heavy.peak.stress / once.peak.stress).toBeCloseTo(1.5, 2)
  })

  it('the whole drawn twice as large: the peak grows as q L² / t², twice', () => {
    const large = panel(
      ELL.map(([x, y]) => [2 * x!, 2 * y!]),
      [],
      { thickness: 320 },
    )
    const [one, two] = [find({ panel: panel(ELL) }), find({ panel: large, edge: 600 })]
    expect(Math.abs(two.peak.stress / one.peak.stress / 2 - 1)).toBeLessThan(0.03)
  })

  it('a turned drawing gives the same peak', () => {
    const [co, si] = [Math.cos(0.5), Math.sin(0.5)]
    const turned = panel(ELL.map(([x, y]) => [x! * co - y! * si, x! * si + y! * co]))
    expect(
      Math.abs(find({ panel: turned }).peak.stress / find({ panel: panel(ELL) }).peak.stress - 1),
    ).toBeLessThan(0.03)
  })

  it('never above the classical rule or the drawn inserts, and says by how much', () => {
    const inserts = [
      [1491, 663],
      [5709, 663],
      [5709, 2537],
      [1491, 2537],
    ].map((at, k) => ({ mark: `${k}`, at, kind: 'face' }))
    const found = find({ panel: panel(WALL, [], { inserts }) })
    expect(found.peak.stress).toBeLessThanOrEqual(found.before!)
    expect(found.peak.stress).toBeLessThanOrEqual(found.classical!.peak)
    expect(found.gain.before).toBeCloseTo(1 - found.peak.stress / found.before!, 9)
  })

  it('a symmetric panel has mirrored places', () => {
    const found = find({ panel: panel(WALL) })
    expect(found.mirrors).toBe(4)
    for (const [x, y] of places(found)) {
      expect(places(found).some(([u, v]) => Math.hypot(u - (7200 - x), v - y) < 3)).toBe(true)
      expect(places(found).some(([u, v]) => Math.hypot(u - x, v - (3200 - y)) < 3)).toBe(true)
    }
  })

  it.each([6, 8])('%i bend the panel less than four', (count) => {
    const found = find({ panel: panel(WALL, HOLES), count })
    expect(found.inserts).toHaveLength(count)
    expect(found.peak.stress).toBeLessThan(find({ panel: panel(WALL, HOLES) }).peak.stress)
  })

  it('two hang on a line through the centre of gravity', () => {
    const one = panel(ELL)
    const [p, q] = places(find({ panel: one, count: 2 })) as [Point, Point]
    const [cx, cy] = one.centre
    expect(Math.abs((p[0] - cx) * (q[1] - cy) - (p[1] - cy) * (q[0] - cx)) / distance(p, q)).toBeLessThan(
      0.01,
    )
    expect((p[0] - cx) * (q[0] - cx) + (p[1] - cy) * (q[1] - cy)).toBeLessThan(0)
  })

  it('equalised: the middle of the picks under the hook, loads alike', () => {
    const one = panel(ELL)
    const found = find({ panel: one, sharing: 'equalised' })
    for (const axis of [0, 1] as const)
      expect(places(found).reduce((sum, at) => sum + at[axis] / 4, 0)).toBeCloseTo(one.centre[axis], 1)
    for (const { load } of found.inserts) expect(load).toBeCloseTo(one.weight / 4, 2)
  })

  it('on a grid, clear of a bar, on an edge', () => {
    const one = panel(ELL)
    for (const at of places(find({ panel: one, grid: [250, 200] }))) {
      expect(at[0] % 250).toBeCloseTo(0, 6)
      expect(at[1] % 200).toBeCloseTo(0, 6)
    }
    const clear = [{ what: 'T1', path: [[0, 800] as const, [6000, 800] as const], distance: 400 }]
    for (const at of places(find({ panel: one, clear }))) expect(Math.abs(at[1] - 800)).toBeGreaterThan(399.9)
    for (const at of places(find({ panel: one, kind: 'edge' })))
      expect(distanceToEdge(one.region, at)).toBeLessThan(0.1)
  })

  it.each<[string, Partial<PicksInput>, RegExp]>([
    ['a count of five', { count: 5 }, /count/],
    ['a count of nothing', { count: Number.NaN }, /count/],
    ['an edge distance below nothing', { edge: -1 }, /edge/],
    ['no room', { edge: 1600 }, /edge/],
    ['a grid with no place on it', { grid: [9000, 9000] }, /grid/],
    ['a Poisson’s ratio of a half', { poisson: 0.5 }, /poisson/],
    ['symmetry of a panel that has none', { symmetric: true }, /symmetric/],
  ])('refuses %s', (_, change, message) => {
    const asked = () => find({ panel: panel(ELL), ...change })
    expect(asked).toThrow(InputError)
    expect(asked).toThrow(message)
  })

  it('proposes four for a drawing without inserts', () => {
    for (const outline of [WALL, ELL]) {
      const found = proposedInserts({ panel: panel(outline) })
      expect(found.known && found.value.inserts.length).toBe(4)
    }
    expect(proposedInserts({ panel: panel(box(0, 0, 150, 150)) }).known).toBe(false)
  })
})

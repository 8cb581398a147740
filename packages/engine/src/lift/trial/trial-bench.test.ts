import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { DRAWING_FORMAT, type Drawing, parseDrawing } from '../../panel/drawing.ts'
import { panelOf } from '../../panel/panel.ts'
import type { Point } from '../../panel/point.ts'
import { liftStages } from '../stages/lift-stages.ts'
import { TrialBench, type TrialView, turnedShare } from './trial-bench.ts'

const family = codeFamily('us')

function wall(change: Partial<Drawing> = {}): Drawing {
  return parseDrawing({
    format: DRAWING_FORMAT,
    mark: 'W1',
    outline: [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [0, 3000],
    ],
    thickness: 150,
    concrete: { strength: 40 },
    inserts: PLACES.map(([x, y], i) => ({ mark: 'ABCD'[i], at: [x, y], kind: 'face' })),
    handling: { factors: { release: 2 } },
    ...change,
  })
}

const PLACES: readonly Point[] = [
  [1250, 625],
  [4750, 625],
  [4750, 2375],
  [1250, 2375],
]

function benchOf(drawing: Drawing): TrialBench {
  return new TrialBench({ panel: panelOf(drawing), yard: null, family, limits: LIMITS })
}

/** An engineer's factor, so that no rule of a family is in these numbers. */
const LIMITS = {
  'lift.factor:release': {
    value: 2,
    standard: 'test',
    edition: '',
    reason: 'test',
    entry: 'e',
    by: { id: 'p', name: 'P', role: 'engineer' },
    at: '2026-01-01T00:00:00.000Z',
  },
} as never

function known<T>(
  found:
    | { readonly known: true; readonly value: T }
    | { readonly known: false; readonly gaps: readonly string[] },
): T {
  if (!found.known) throw new Error(found.gaps.join('; '))
  return found.value
}

function loads({ supports }: TrialView): number[] {
  return supports.map(({ load }) => load ?? Number.NaN)
}

describe('an insert that is moved', () => {
  it('is first where it is drawn, with the loads and the peak of the stage itself', () => {
    const drawing = wall()
    const view = known(benchOf(drawing).settle({ stage: 'release', places: PLACES, angle: 0 }))
    const [stage] = liftStages({ panel: panelOf(drawing), yard: null, family, limits: LIMITS })
    expect(benchOf(drawing).stages(PLACES)[0]?.peak).toEqual(stage?.peak)
    expect(view.quality).toBe('full')
    expect(view.factor).toBe(stage?.factor)
    expect(view.peak?.stress).toBeCloseTo(stage?.peak?.stress ?? Number.NaN, 9)
    for (const [i, load] of loads(view).entries())
      expect(load).toBeCloseTo(stage?.supports[i]?.load ?? Number.NaN, 9)
  })

  it('carries with the others the whole weight, wherever it goes', () => {
    const bench = benchOf(wall())
    const whole =
      bench.panel.weight * (known(bench.settle({ stage: 'release', places: PLACES, angle: 0 })).factor ?? 0)
    for (const at of [
      [800, 500],
      [2100, 1130],
      [1250.5, 2000],
    ] as const) {
      const view = known(bench.move({ stage: 'release', places: [at, ...PLACES.slice(1)], angle: 0 }))
      expect(view.quality).toBe('quick')
      expect(loads(view).reduce((a, b) => a + b)).toBeCloseTo(whole, 6)
    }
  })

  it('while it moves is within a few percent of what it is when let go', () => {
    const bench = benchOf(wall())
    known(bench.settle({ stage: 'release', places: PLACES, angle: 0 }))
    const places: Point[] = [[900, 800], ...PLACES.slice(1)]
    const quick = known(bench.move({ stage: 'release', places, angle: 0 }))
    const full = known(bench.settle({ stage: 'release', places, angle: 0 }))
    expect(full.quality).toBe('full')
    for (const [i, load] of loads(quick).entries()) {
      expect(Math.abs(load - (loads(full)[i] ?? Number.NaN))).toBeLessThan(0.01 * 67)
    }
    expect(quick.peak?.stress ?? 0).toBeGreaterThan(0.95 * (full.peak?.stress ?? Number.NaN))
    expect(quick.peak?.stress ?? 0).toBeLessThan(1.05 * (full.peak?.stress ?? Number.NaN))
  })

  it('keeps the levels of the contours until it is let go', () => {
    const bench = benchOf(wall())
    const levels = ({ field }: TrialView): number[] => field?.bands.map(({ level }) => level) ?? []
    const before = known(bench.settle({ stage: 'release', places: PLACES, angle: 0 }))
    const places: Point[] = [[300, 300], ...PLACES.slice(1)]
    const quick = known(bench.move({ stage: 'release', places, angle: 0 }))
    expect(levels(before).length).toBeGreaterThan(2)
    expect(levels(quick)).toEqual(levels(before))
  })

  it('is refused in words off the concrete, two at one point and all in one line', () => {
    const bench = benchOf(wall())
    const gapsAt = (places: readonly Point[]): string => {
      const found = bench.move({ stage: 'release', places, angle: 0 })
      return found.known ? '' : found.gaps.join('; ')
    }
    expect(gapsAt([[-50, 300], ...PLACES.slice(1)])).toMatch(/inside the concrete/)
    expect(gapsAt([PLACES[1]!, ...PLACES.slice(1)])).toMatch(/a point of its own/)
    expect(gapsAt(PLACES.map(([x]): Point => [x + (x > 3000 ? 1 : 0), 1500]))).not.toBe('')
  })
})

describe('a drawing without inserts', () => {
  it('is tried with those proposed, and says so', () => {
    const { inserts: _, ...bare } = wall()
    const bench = benchOf(bare as Drawing)
    expect(bench.proposed).toBe(true)
    expect(bench.inserts.map(({ mark }) => mark)).toEqual(['A', 'B', 'C', 'D'])
    const places = bench.inserts.map(({ at }): Point => [at[0], at[1]])
    expect(known(bench.settle({ stage: 'release', places, angle: 0 })).supports).toHaveLength(4)
  })
})

describe('a panel that is turned', () => {
  const drawing = wall({
    inserts: [
      { mark: 'E', at: [1250, 3000], kind: 'edge' },
      { mark: 'F', at: [4750, 3000], kind: 'edge' },
    ],
  })
  const places: Point[] = [
    [1250, 3000],
    [4750, 3000],
  ]

  it('bends by the cosine of its angle while the loads stay', () => {
    const bench = benchOf(drawing)
    const flat = known(bench.settle({ stage: 'turn', places, angle: 0 }))
    const half = known(bench.move({ stage: 'turn', places, angle: 60 }))
    expect(half.quality).toBe('full')
    expect(half.peak?.stress).toBeCloseTo((flat.peak?.stress ?? Number.NaN) / 2, 9)
    expect(loads(half)).toEqual(loads(flat))
    const upright = known(bench.move({ stage: 'turn', places, angle: 90 }))
    expect(upright.peak?.stress).toBe(0)
    expect(upright.field).toBeNull()
  })

  it('hangs at the end without bending', () => {
    const view = known(benchOf(drawing).settle({ stage: 'hang', places, angle: 0 }))
    expect(view.field).toBeNull()
  })

  it('does not go beyond flat and upright', () => {
    expect(turnedShare(60)).toBeCloseTo(0.5, 12)
    expect(() => turnedShare(91)).toThrow(/0 to 90/)
    expect(() => turnedShare(Number.NaN)).toThrow(/0 to 90/)
  })
})

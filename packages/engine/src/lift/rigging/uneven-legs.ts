import { solveDense } from '../../numeric/dense.ts'
import type { Point } from '../../panel/point.ts'
import type { LegRun } from './balanced-shares.ts'
import { meanOf } from './leg-places.ts'

export interface UnevenInput {
  /** kN */
  readonly load: number
  readonly centre: Point
  readonly points: readonly Point[]
  readonly hang: 'flat' | 'row'
  readonly runs: readonly LegRun[]
  /** Share of each leg on points that do not give, kN; null with a panel that does not bend. */
  readonly shares: readonly number[] | null
  /** mm/kN between legs; null: the panel does not bend. */
  readonly compliance: readonly (readonly number[])[] | null
  /** Vertical give of each leg, mm/kN; 0: rigid. */
  readonly give: readonly number[]
  /** How far each leg may be off, up and down at its pick, mm: half the greatest difference over the cosine of its angle. */
  readonly off: readonly number[]
}

export interface UnevenShares {
  /** With legs of the right length, kN a leg. */
  readonly even: readonly number[]
  readonly least: readonly number[]
  readonly most: readonly number[]
  /** How many times the offs of `off` bring the first leg to nothing; null where lengths change nothing. */
  readonly slackAt: number | null
  /** Whether a leg goes slack within the offs. */
  readonly slack: boolean
}

/**
 * Loads of legs of uneven length under a panel that bends: each leg longer or shorter by its `off`, in the pattern that is worst for each.
 * A leg cannot push: where one would, it is slack and the others carry.
 *
 * The loads R hold the balance, and at each leg that carries `(C (R − S))ᵢ + gᵢ Rᵢ + dᵢ` is a rigid motion of the panel. As long as no leg is slack
 * the loads go with the offs, so that the worst pattern follows from one solve a leg. Where a leg goes slack and there is one way only to be
 * uneven (four legs), the loads go that way until it is slack and no farther.
 *
 * Null where the runs leave nothing to be uneven, and where a leg goes slack with more ways than one: the worst pattern is then not found by trying
 * all, since loads may rise and fall again between them. Then the balance alone limits the loads: `holdings`.
 *
 * Source: method of forces, statics.
 */
export function unevenShares(input: UnevenInput): UnevenShares | null {
  const { runs, off } = input
  const system = systemOf(input)
  if (system === null) return null
  const none = runs.map(() => 0)
  const free = forcesOf(system, none)
  if (free === null) return null
  const swing = none.slice()
  for (const [j, { legs }] of runs.entries()) {
    const runOff = legs.reduce((sum, i) => sum + off[i]!, 0)
    const one = forcesOf(
      system,
      none.map((_, k) => (k === j ? runOff : 0)),
    )
    if (one === null) return null
    for (const [i, force] of one.entries()) swing[i]! += Math.abs(force - free[i]!)
  }
  const slack = free.some((force, i) => force - swing[i]! < -1e-9 * system.load)
  const found = slack ? untilSlack(system, free, swing) : { even: free, swings: [swing, swing] as const }
  if (found === null) return null
  const [down, up] = found.swings
  const perLeg = (values: readonly number[]): number[] => {
    const legs = off.map(() => 0)
    for (const [g, run] of runs.entries()) for (const i of run.legs) legs[i] = Math.max(0, values[g]!)
    return legs
  }
  return {
    even: perLeg(found.even),
    least: perLeg(found.even.map((force, i) => force - down[i]!)),
    most: perLeg(found.even.map((force, i) => force + up[i]!)),
    slackAt: slackAt(free, swing, system.load),
    slack,
  }
}

/** How many times the swings bring the first load to nothing. */
function slackAt(free: readonly number[], swing: readonly number[], load: number): number | null {
  const times = free.map((force, i) => (swing[i]! > 1e-12 * load ? Math.max(0, force) / swing[i]! : Infinity))
  const first = Math.min(...times)
  return Number.isFinite(first) ? first : null
}

interface UntilSlack {
  readonly even: readonly number[]
  /** How far each load goes down and up from there, kN. */
  readonly swings: readonly [readonly number[], readonly number[]]
}

/** Four legs: loads R + v p, p from −P to P as far as none of them pushes. */
function untilSlack(
  { rows, load }: System,
  free: readonly number[],
  swing: readonly number[],
): UntilSlack | null {
  if (free.length !== rows.length + 1) return null
  const mode = nullVector(rows)
  if (mode === null) return null
  const most = mode.reduce((best, v, i) => (Math.abs(v) > Math.abs(mode[best]!) ? i : best), 0)
  const p = swing[most]! / Math.abs(mode[most]!)
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const [i, v] of mode.entries()) {
    if (Math.abs(v) <= 1e-9) continue
    if (v > 0) low = Math.max(low, -free[i]! / v)
    else high = Math.min(high, -free[i]! / v)
  }
  if (!(low <= high + 1e-9 * load)) return null
  const within = (value: number): number => Math.min(high, Math.max(low, value))
  const [from, at, to] = [within(-p), within(0), within(p)]
  const even = free.map((force, i) => force + mode[i]! * at)
  const ends = mode.map((v): [number, number] => [v * (from - at), v * (to - at)])
  return { even, swings: [ends.map(([a, b]) => -Math.min(a, b)), ends.map(([a, b]) => Math.max(a, b))] }
}

/** The one set of loads that the rows of the balance do not see, its greatest ±1. Null where there are more. */
function nullVector(rows: readonly (readonly number[])[]): number[] | null {
  const n = rows.length + 1
  for (let fixed = 0; fixed < n; fixed += 1) {
    const others = Array.from({ length: n }, (_, i) => i).filter((i) => i !== fixed)
    const solved = solveDense(
      rows.map((row) => others.map((i) => row[i]!)),
      rows.map((row) => -row[fixed]!),
    )
    if (solved === null) continue
    const mode = Array.from({ length: n }, (_, i) => (i === fixed ? 1 : solved[others.indexOf(i)]!))
    const size = Math.max(...mode.map(Math.abs))
    return mode.map((v) => v / size)
  }
  return null
}

/** Runs in balance: forces are those of one leg of a run. */
interface System {
  readonly load: number
  /** Give between runs, mm/kN. */
  readonly give: readonly (readonly number[])[]
  /** What the bending of the panel asks of each run on points that do not give, mm. */
  readonly start: readonly number[]
  /** Rows of the balance over the runs. */
  readonly rows: readonly (readonly number[])[]
  readonly right: readonly number[]
}

function systemOf({
  load,
  centre,
  points,
  hang,
  runs,
  shares,
  compliance,
  give,
}: UnevenInput): System | null {
  if (compliance !== null && shares === null) return null
  const n = points.length
  const bends = (i: number, j: number): number => compliance?.[i]?.[j] ?? 0
  // Rows scaled to the size of the pattern, about the centre of gravity.
  const middle = meanOf(points)
  const size = Math.max(1, ...points.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1])))
  const axes: readonly (0 | 1)[] = hang === 'row' ? [0] : [0, 1]
  const arm = (i: number, axis: 0 | 1): number => (points[i]![axis] - centre[axis]) / size
  const rows = [
    runs.map(({ legs }) => legs.length),
    ...axes.map((axis) => runs.map(({ legs }) => legs.reduce((sum, i) => sum + arm(i, axis), 0))),
  ]
  if (runs.length <= rows.length) return null
  const matrix = runs.map((a, g) =>
    runs.map((b, h) => {
      let sum = 0
      for (const i of a.legs) for (const j of b.legs) sum += bends(i, j)
      if (g === h) for (const i of a.legs) sum += give[i]!
      return sum
    }),
  )
  const start = runs.map(({ legs }) =>
    legs.reduce((sum, i) => {
      let bent = 0
      for (let j = 0; j < n; j += 1) bent += bends(i, j) * (shares?.[j] ?? 0)
      return sum + bent
    }, 0),
  )
  if (matrix.every((row) => row.every((value) => value === 0))) return null
  return { load, give: matrix, start, rows, right: [load, ...axes.map(() => 0)] }
}

/** Forces of the runs, all carrying: they may push. */
function forcesOf({ give, start, rows, right, load }: System, off: readonly number[]): number[] | null {
  const scale = give.reduce((most, row, i) => Math.max(most, Math.abs(row[i]!)), 0) || 1
  const matrix = give.map((own, i) => [...own.map((value) => value / scale), ...rows.map((row) => -row[i]!)])
  for (const row of rows) matrix.push([...row, ...rows.map(() => 0)])
  const solved = solveDense(matrix, [
    ...off.map((value, i) => (start[i]! - value) / (scale * load)),
    ...right.map((value) => value / load),
  ])
  return solved === null ? null : off.map((_, i) => solved[i]! * load)
}

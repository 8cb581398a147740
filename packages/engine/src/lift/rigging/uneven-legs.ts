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

/** Sign patterns of up to this many runs are all tried. */
const ALL_PATTERNS = 8

/**
 * Loads of legs of uneven length under a panel that bends: each leg longer or shorter by its `off`, in the pattern that is worst for each.
 * A leg cannot push: where one would, it is slack and the others carry.
 *
 * The loads R hold the balance, and at each leg that carries `(C (R − S))ᵢ + gᵢ Rᵢ + dᵢ` is a rigid motion of the panel. As long as no leg is slack
 * the loads go with the offs, so that the worst pattern follows from one solve a leg; else all patterns are tried, and null is given above
 * `ALL_PATTERNS` runs: then only the balance limits the loads. Null too where the runs leave nothing to be uneven.
 *
 * Source: method of forces, statics.
 */
export function unevenShares(input: UnevenInput): UnevenShares | null {
  const { runs, off } = input
  const system = systemOf(input)
  if (system === null) return null
  const m = runs.length
  const runOff = runs.map(({ legs }) => legs.reduce((sum, i) => sum + off[i]!, 0))
  const none = runs.map(() => 0)
  const even = solveRuns(system, none)
  if (even === null) return null
  const free = allCarrying(system, none)
  const unit = runs.map((_, j) =>
    allCarrying(
      system,
      none.map((__, k) => (k === j ? runOff[j]! : 0)),
    ),
  )
  let [least, most]: [number[], number[]] = [[...even], [...even]]
  let slackAt: number | null = null
  let linear = free !== null && unit.every((one) => one !== null)
  if (linear) {
    const swing = runs.map((_, i) => unit.reduce((sum, one) => sum + Math.abs(one![i]! - free![i]!), 0))
    linear = swing.every((change, i) => free![i]! - change >= -1e-9 * system.load)
    least = free!.map((force, i) => force - swing[i]!)
    most = free!.map((force, i) => force + swing[i]!)
    const times = free!.map((force, i) =>
      swing[i]! > 1e-12 * system.load ? Math.max(0, force) / swing[i]! : Infinity,
    )
    const first = Math.min(...times)
    slackAt = Number.isFinite(first) ? first : null
  }
  if (!linear) {
    if (m > ALL_PATTERNS) return null
    ;[least, most] = [[...even], [...even]]
    for (let pattern = 1; pattern < 2 ** m - 1; pattern += 1) {
      const forces = solveRuns(
        system,
        runOff.map((value, i) => ((pattern >> i) & 1 ? value : -value)),
      )
      if (forces === null) return null
      for (const [i, force] of forces.entries()) {
        least[i] = Math.min(least[i]!, force)
        most[i] = Math.max(most[i]!, force)
      }
    }
  }
  const spread = (values: readonly number[]): number[] => {
    const legs = off.map(() => 0)
    for (const [g, { legs: members }] of runs.entries())
      for (const i of members) legs[i] = Math.max(0, values[g]!)
    return legs
  }
  return { even: spread(even), least: spread(least), most: spread(most), slackAt, slack: !linear }
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

function allCarrying(system: System, off: readonly number[]): number[] | null {
  return (
    forcesOf(
      system,
      off,
      off.map((_, i) => i),
    )?.forces ?? null
  )
}

/** Forces of the runs that carry; the motion of the panel that goes with them. */
function forcesOf(
  { give, start, rows, right, load }: System,
  off: readonly number[],
  carrying: readonly number[],
): { forces: number[]; motion: number[] } | null {
  const scale = carrying.reduce((most, i) => Math.max(most, Math.abs(give[i]![i]!)), 0) || 1
  const matrix = carrying.map((i) => [
    ...carrying.map((j) => give[i]![j]! / scale),
    ...rows.map((row) => -row[i]!),
  ])
  for (const row of rows) matrix.push([...carrying.map((j) => row[j]!), ...rows.map(() => 0)])
  const solved = solveDense(matrix, [
    ...carrying.map((i) => (start[i]! - off[i]!) / (scale * load)),
    ...right.map((value) => value / load),
  ])
  if (solved === null) return null
  const forces = off.map(() => 0)
  for (const [k, i] of carrying.entries()) forces[i] = solved[k]! * load
  return { forces, motion: solved.slice(carrying.length).map((value) => value * scale * load) }
}

/** Legs that would push are slack until the panel comes down on them again. */
function solveRuns(system: System, off: readonly number[]): number[] | null {
  const { give, start, rows, load } = system
  let carrying = off.map((_, i) => i)
  for (let round = 0; round < 8 * off.length; round += 1) {
    const solved = forcesOf(system, off, carrying)
    if (solved === null) return null
    const { forces, motion } = solved
    const pushing = carrying.filter((i) => forces[i]! < -1e-9 * load)
    if (pushing.length > 0) {
      const worst = pushing.reduce((a, b) => (forces[b]! < forces[a]! ? b : a))
      carrying = carrying.filter((i) => i !== worst)
      continue
    }
    // A slack leg must hang longer than the panel reaches down.
    const gap = (i: number): number => {
      let down = off[i]! - start[i]!
      for (const j of carrying) down += give[i]![j]! * forces[j]!
      return rows.reduce((sum, row, k) => sum - motion[k]! * row[i]!, down)
    }
    const scale = off.reduce((most, value) => Math.max(most, Math.abs(value)), 1e-3)
    const tight = off.map((_, i) => i).filter((i) => !carrying.includes(i) && gap(i) < -1e-7 * scale)
    if (tight.length === 0) return forces.map((force) => Math.max(0, force))
    carrying = [...carrying, tight.reduce((a, b) => (gap(b) < gap(a) ? b : a))].sort((a, b) => a - b)
  }
  return null
}

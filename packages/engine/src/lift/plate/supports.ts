import { solveDense } from '../../numeric/dense.ts'
import type { Point } from '../../panel/point.ts'
import { InputError } from '../../working/issue.ts'
import { PlateField } from './field.ts'
import { addForce, assertBalance, assertNothingHeld, type PlateModel, solvePlate } from './model.ts'

/** A point that carries the plate. */
export interface PlateSupport {
  readonly at: Point
  /** Stiffness of the leg, N/mm; absent: rigid. */
  readonly stiffness?: number
  /** How much longer the leg is than the others, mm; absent: none. */
  readonly longer?: number
  /** Supports with the same word carry equal forces: one sling runs through them. */
  readonly equalised?: string
}

/** What one force does to the plate, kept so that supports can be mixed without a new solve. */
export interface Candidate {
  readonly at: Point
  readonly nodes: readonly [number, number, number]
  readonly weights: Float64Array
  /** Nodal deflections under 1 N downward. */
  readonly bent: Float64Array
}

export interface LoadCase {
  /** Nodal loads, N; downward positive. */
  readonly loads: Float64Array
  /** Nodal deflections under them, the rigid motions held. */
  readonly bent: Float64Array
  /** What the loads do on each rigid motion of the model. */
  readonly work: readonly number[]
  /** Sum of the sizes of all loads, N. */
  readonly size: number
}

/** Uniform load, N/mm², and forces, N, downward. */
export function loadCase(
  model: PlateModel,
  {
    pressure,
    forces = [],
  }: { readonly pressure: number; readonly forces?: readonly { at: Point; force: number }[] },
): LoadCase {
  const loads = model.unitLoad.map((value) => value * pressure)
  for (const { at, force } of forces) addForce(model, loads, at, force)
  let size = 0
  for (let i = 0; i < loads.length; i += 6) size += Math.abs(loads[i]!)
  const work = model.motions.map((motion) => motion.reduce((sum, value, i) => sum + value * loads[i]!, 0))
  return { loads, bent: solvePlate(model, loads), work, size }
}

/** One solve with the factor at hand, or none where the point is being dragged about in a triangle. @throws InputError where the point lies off the concrete. */
export function candidate(model: PlateModel, at: Point): Candidate {
  const { nodes, weights } = model.locator.weightsAt(at)
  const added = model.units.under(model, nodes, weights)
  if (added !== null) return { at, nodes, weights, bent: added }
  const loads = new Float64Array(model.unitLoad.length)
  for (let i = 0; i < 18; i += 1) loads[nodes[(i / 6) | 0]! * 6 + (i % 6)]! += weights[i]!
  return { at, nodes, weights, bent: solvePlate(model, loads) }
}

export interface Supported {
  /** Upward force of each support on the plate, N, in their order; negative: it would have to push down. */
  readonly reactions: readonly number[]
  readonly field: PlateField
}

export interface SupportedInput {
  readonly model: PlateModel
  readonly load: LoadCase
  readonly supports: readonly PlateSupport[]
  /** In the order of the supports; made where absent. */
  readonly candidates?: readonly Candidate[]
}

/**
 * Reactions and bending of the plate on any supports: u = u0 − Σ r g + Φ a with u = r / k + longer at the supports and r, load in balance.
 *
 * @throws InputError where the supports do not hold the plate: fewer than three or all in one line, two rigid at one point,
 * equalised legs that the load does not leave level.
 */
export function supported(input: SupportedInput): Supported {
  const { model, load, supports } = input
  const candidates = input.candidates ?? supports.map(({ at }) => candidate(model, at))
  refuseSame(supports)
  const at = (values: Float64Array, { nodes, weights }: Candidate): number => {
    let sum = 0
    for (let i = 0; i < 18; i += 1) sum += weights[i]! * values[nodes[(i / 6) | 0]! * 6 + (i % 6)]!
    return sum
  }
  const { motions } = model
  const compliance = candidates.map((one) => candidates.map((other) => at(other.bent, one)))
  const moved = candidates.map((one) => motions.map((motion) => at(motion, one)))
  const free = candidates.map((one) => at(load.bent, one))
  const { work } = load
  const groups = groupsOf(supports)
  const { forces, motion } = balance({ supports, groups, compliance, moved, free, work })

  const u = load.bent.slice()
  const loads = load.loads.slice()
  for (const [k, one] of candidates.entries()) {
    const force = forces[k]!
    for (let i = 0; i < u.length; i += 1) u[i]! -= force * one.bent[i]!
    for (let i = 0; i < 18; i += 1) loads[one.nodes[(i / 6) | 0]! * 6 + (i % 6)]! -= force * one.weights[i]!
  }
  for (const [k, rigid] of motions.entries())
    for (let i = 0; i < u.length; i += 1) u[i]! += motion[k]! * rigid[i]!
  // Candidates that were kept are balanced already: together they are, if the nodes held for the factor carry nothing.
  if (input.candidates === undefined) assertBalance(model, u, loads)
  const size = forces.reduce((sum, force) => sum + Math.abs(force), load.size)
  assertNothingHeld(model, u, loads, size)
  return { reactions: forces, field: new PlateField(model, u) }
}

function refuseSame(supports: readonly PlateSupport[]): void {
  for (const [i, { at }] of supports.entries()) {
    const other = supports.findIndex((one) => Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) < SAME_POINT)
    if (other < i) {
      const found = `[${at[0]}, ${at[1]}] as supports[${other}]`
      throw new InputError([{ path: `supports[${i}].at`, found, expected: 'a point of its own' }])
    }
  }
}

/** Supports closer than this stand at one point, mm. */
export const SAME_POINT = 1

function groupsOf(supports: readonly PlateSupport[]): number[][] {
  const groups = new Map<string, number[]>()
  for (const [i, { equalised }] of supports.entries()) {
    const key = equalised === undefined ? `own ${i}` : `run ${equalised}`
    groups.set(key, [...(groups.get(key) ?? []), i])
  }
  return [...groups.values()]
}

interface Balance {
  readonly supports: readonly PlateSupport[]
  readonly groups: readonly (readonly number[])[]
  readonly compliance: readonly (readonly number[])[]
  readonly moved: readonly (readonly number[])[]
  readonly free: readonly number[]
  readonly work: readonly number[]
}

function balance(parts: Balance): { forces: number[]; motion: number[] } {
  const { supports, groups, compliance, moved, free, work } = parts
  const modes = work.length
  const joint = groups.map((group) => work.map((_, m) => group.reduce((sum, i) => sum + moved[i]![m]!, 0)))
  if (groups.length < modes && groups.every((group) => group.length > 1)) return floating(parts, joint)
  const scale = compliance.reduce((most, row, i) => Math.max(most, Math.abs(row[i]!)), 0) || 1
  const matrix = groups.map((group, g) => [
    ...groups.map((other, h) => {
      let sum = 0
      for (const i of group) for (const j of other) sum += compliance[i]![j]!
      if (g === h) for (const i of group) sum += flexibility(supports[i]!)
      return sum / scale
    }),
    ...joint[g]!.map((value) => -value),
  ])
  for (let m = 0; m < modes; m += 1) {
    matrix.push([...joint.map((row) => row[m]!), ...work.map(() => 0)])
  }
  const right = [
    ...groups.map((group) => group.reduce((sum, i) => sum + free[i]! - (supports[i]!.longer ?? 0), 0)),
    ...work.map((value) => value * scale),
  ]
  const solved = groups.length < modes ? null : solveDense(matrix, right)
  if (solved === null) {
    throw new InputError([
      {
        path: 'supports',
        found: `${supports.length} that leave the plate free to move`,
        expected: 'three or more, not in one line',
      },
    ])
  }
  const forces = supports.map(() => 0)
  for (const [g, group] of groups.entries()) for (const i of group) forces[i] = solved[g]! / scale
  return { forces, motion: solved.slice(groups.length) }
}

function flexibility({ stiffness }: PlateSupport): number {
  return stiffness === undefined ? 0 : 1 / stiffness
}

/**
 * Fewer equalised runs than motions: the forces follow from balance alone. Equal pulls to a hook over the centre of gravity have
 * vertical parts that differ along x and y by as much as balance asks; beyond `UNEVEN` the plate would not hang level.
 */
function floating(
  { supports, groups, compliance, moved, free, work }: Balance,
  joint: readonly (readonly number[])[],
): { forces: number[]; motion: number[] } {
  const shares = solveDense(
    groups.map((_, g) => groups.map((__, h) => dot(joint[g]!, joint[h]!))),
    groups.map((_, g) => dot(joint[g]!, work)),
  )
  const square = work.map((_, m) =>
    work.map((__, n) => moved.reduce((sum, row) => sum + row[m]! * row[n]!, 0)),
  )
  const rest = work.map(
    (value, m) => value - (shares ?? []).reduce((sum, share, g) => sum + share * joint[g]![m]!, 0),
  )
  const slope = solveDense(square, rest)
  if (shares === null || slope === null) {
    throw new InputError([
      { path: 'supports', found: 'all in one line', expected: 'supports not in one line' },
    ])
  }
  const forces = supports.map(() => 0)
  for (const [g, group] of groups.entries()) {
    for (const i of group) {
      const uneven = dot(moved[i]!, slope)
      forces[i] = shares[g]! + uneven
      if (Math.abs(uneven) <= UNEVEN * Math.abs(shares[g]!)) continue
      throw new InputError([
        {
          path: 'supports',
          found: 'equalised legs off the centre of gravity',
          expected: 'legs that hang the plate level',
        },
      ])
    }
  }
  // The running slings leave the plate free to settle: shown nearest to level at the supports.
  const bent = free.map((w, i) => (supports[i]!.longer ?? 0) - w + dot(compliance[i]!, forces))
  const motion = solveDense(
    square,
    work.map((_, m) => moved.reduce((sum, row, i) => sum + row[m]! * bent[i]!, 0)),
  )
  if (motion === null) {
    throw new InputError([
      { path: 'supports', found: 'all in one line', expected: 'supports not in one line' },
    ])
  }
  return { forces, motion }
}

/** Equalised legs may differ by this share of their pull before the plate counts as not level. */
export const UNEVEN = 0.1

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0)
}

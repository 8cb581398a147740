import { NotPositiveError } from '../../numeric/front-elimination.ts'
import { distance, type Point } from '../../panel/point.ts'
import { bounds, distanceToRing, edges, nearestOnSegment, placeInRing } from '../../panel/polygon.ts'
import type { Piece } from '../../panel/region.ts'
import { InputError, type InputIssue } from '../../working/issue.ts'
import type { HeldEdge } from './held-edges.ts'
import { type PlateMesh, plateMesh } from './mesh.ts'
import { type PlateModel, plateModel } from './model.ts'
import { type DiscMoments, discMoments, type PlatePeak, platePeak, reentrantCorners } from './peak.ts'
import { loadCase, type PlateSupport, type Supported, supported } from './supports.ts'

export interface PlateInput {
  readonly piece: Piece
  /** mm */
  readonly thickness: number
  /** Young's modulus, MPa. */
  readonly modulus: number
  readonly poisson: number
  /** Points that the mesh is made fine around: the supports of the drawing. */
  readonly supports: readonly Point[]
  /** Points that the mesh goes through without being finer there: what lies on a line. */
  readonly along?: readonly Point[]
  readonly edges?: readonly HeldEdge[]
  /** Side lengths times this; 1 where absent. */
  readonly fineness?: number
}

/** Side length at a support, in thicknesses: moments on the circle of half a thickness are then right to 2 % of the panel's greatest. */
export const SUPPORT_SIZE = 0.22
/** Side length at a re-entrant corner, in thicknesses. */
export const CORNER_SIZE = 0.18
/** Up to this many re-entrant corners each has its full fineness. */
export const MANY_CORNERS = 64
/** Growth of the side length per mm away from a fine place. */
export const GROWTH = 0.55
/** Longest side, as a share of the panel's shorter extent. */
export const COARSEST = 0.18

/** A point closer to an edge than this stands on it, mm; as for the inserts of a drawing. */
export const ON_EDGE = 1

/** The point itself, its foot on the edge where it stands within `ON_EDGE` of one, or null off the concrete. */
export function inConcrete({ outline, holes }: Piece, at: Point): Point | null {
  let [nearest, least] = [at, ON_EDGE]
  for (const side of [outline, ...holes].flatMap(edges)) {
    const foot = nearestOnSegment(at, side)
    const off = distance(at, foot)
    if (off <= least) [nearest, least] = [foot, off]
  }
  if (nearest !== at) return nearest
  const inside =
    placeInRing(at, outline) !== 'outside' && holes.every((hole) => placeInRing(at, hole) !== 'inside')
  return inside ? at : null
}

/** Mesh at the default sizes, factored: ready for any supports, best for those it was made fine around. */
export function plateOf(input: PlateInput): PlateModel {
  const { thickness, modulus, poisson, edges: held } = input
  refuse(input)
  const mesh = meshOf(input)
  try {
    return plateModel({ mesh, thickness, modulus, poisson, ...(held === undefined ? {} : { edges: held }) })
  } catch (fault) {
    if (!(fault instanceof NotPositiveError)) throw fault
    // Spikes a thousand times longer than wide: the digits of floating numbers end before the plate's stiffness shows.
    const near =
      fault.node < mesh.x.length ? ` at (${at(mesh.x, fault.node)}, ${at(mesh.y, fault.node)})` : ''
    throw new InputError([
      {
        path: 'outline',
        found: `a part${near} too narrow to compute`,
        expected: 'an outline without such spikes',
      },
    ])
  }
}

function at(values: Float64Array, node: number): string {
  return (values[node] as number).toFixed(1)
}

function meshOf({ piece, thickness, supports, along = [], fineness = 1 }: PlateInput): PlateMesh {
  const box = bounds(piece.outline)
  const shorter = Math.min(box.right - box.left, box.top - box.bottom)
  const corners = reentrantCorners(piece)
  // Very many openings: coarser at their corners, so that the whole stays solvable; the error estimate tells.
  const many = Math.max(1, Math.sqrt(corners.length / MANY_CORNERS))
  const fine = [
    ...supports.map((at) => ({ at, size: SUPPORT_SIZE * thickness * fineness })),
    ...corners.map((at) => ({ at, size: cornerSize(piece, at, many * thickness) * fineness })),
  ]
  const coarsest = Math.max(COARSEST * shorter, thickness / 2) * fineness
  return plateMesh({
    piece,
    points: [...supports, ...along],
    fine,
    coarsest,
    growth: GROWTH * Math.min(fineness, Math.sqrt(fineness)),
  })
}

/** Where an opening is many small corners, their sides set the size. */
function cornerSize(piece: Piece, at: Point, thickness: number): number {
  const others = [piece.outline, ...piece.holes].filter((ring) => !ring.includes(at))
  const room = others.reduce(
    (least, ring) => Math.min(least, distanceToRing(at, ring)),
    Number.POSITIVE_INFINITY,
  )
  return Math.max(2, Math.min(CORNER_SIZE * thickness, room / 2))
}

function refuse({ piece, thickness, modulus, poisson, supports }: PlateInput): void {
  const issues: InputIssue[] = []
  for (const [path, value] of Object.entries({ thickness, modulus })) {
    if (!(Number.isFinite(value) && value > 0))
      issues.push({ path, found: `${value}`, expected: 'a number above 0' })
  }
  if (!(poisson >= 0 && poisson < 0.5)) {
    issues.push({ path: 'poisson', found: `${poisson}`, expected: 'from 0 to below 0.5' })
  }
  for (const [i, at] of supports.entries()) {
    if (!at.every(Number.isFinite) || inConcrete(piece, at) === null) {
      issues.push({
        path: `supports[${i}].at`,
        found: `[${at[0]}, ${at[1]}]`,
        expected: 'a point in the concrete',
      })
    }
  }
  if (issues.length > 0) throw new InputError(issues)
}

export interface LiftedPlateInput extends Omit<PlateInput, 'supports'> {
  readonly supports: readonly PlateSupport[]
  /** Own weight with its factor, N/mm² of face; downward. */
  readonly pressure: number
  /** Forces beside it, N downward. */
  readonly forces?: readonly { readonly at: Point; readonly force: number }[]
  /** Whether to solve on a coarser mesh too, for an estimate of the error. */
  readonly estimate?: boolean
}

export interface LiftedPlate extends Supported {
  readonly model: PlateModel
  readonly peak: PlatePeak
  readonly supportMoments: readonly DiscMoments[]
  readonly corners: readonly DiscMoments[]
  /** How far the same stress on a coarser mesh is off the peak, MPa: an estimate of its error, on the high side. Null if not asked for. */
  readonly peakError: number | null
}

/** How much coarser the second mesh is. */
const COARSER = 2

/**
 * Reactions, moments and peak of a plate on points, thin-plate theory.
 *
 * @throws InputError for sizes not above 0, points off the concrete, supports that do not hold the plate.
 */
export function liftedPlate(input: LiftedPlateInput): LiftedPlate {
  const issues: InputIssue[] = []
  if (!Number.isFinite(input.pressure)) {
    issues.push({ path: 'pressure', found: `${input.pressure}`, expected: 'a finite number' })
  }
  const supports = input.supports.map((support, i) => {
    const { stiffness, longer } = support
    const at = support.at.every(Number.isFinite) ? inConcrete(input.piece, support.at) : null
    const path = `supports[${i}]`
    if (at === null) {
      issues.push({
        path: `${path}.at`,
        found: `[${support.at.join(', ')}]`,
        expected: 'a point in the concrete',
      })
    }
    if (stiffness !== undefined && !(Number.isFinite(stiffness) && stiffness > 0)) {
      issues.push({ path: `${path}.stiffness`, found: `${stiffness}`, expected: 'a number above 0' })
    }
    if (longer !== undefined && !Number.isFinite(longer)) {
      issues.push({ path: `${path}.longer`, found: `${longer}`, expected: 'a finite number' })
    }
    return { ...support, at: at ?? support.at }
  })
  if (issues.length > 0) throw new InputError(issues)
  const points = supports.map(({ at }) => at)
  const { model, reactions, field } = solved(input, supports, points)
  const found = platePeak({ field, supports: points, corners: reentrantCorners(input.piece) })
  const peakError =
    input.estimate === true
      ? Math.abs(found.peak.stress - coarserAt(found.peak, input, supports, points))
      : null
  return {
    model,
    reactions,
    field,
    peak: found.peak,
    supportMoments: found.supports,
    corners: found.corners,
    peakError,
  }
}

function solved(
  input: LiftedPlateInput,
  supports: readonly PlateSupport[],
  points: readonly Point[],
): Supported & { readonly model: PlateModel } {
  const model = plateOf({ ...input, supports: points })
  return { model, ...supported({ model, load: loadCase(model, input), supports }) }
}

/** Stress at the place of a peak, averaged as that was, on the second mesh; nothing else is read there. */
function coarserAt(
  { of, at }: PlatePeak,
  input: LiftedPlateInput,
  supports: readonly PlateSupport[],
  points: readonly Point[],
): number {
  const { field } = solved({ ...input, fineness: (input.fineness ?? 1) * COARSER }, supports, points)
  const found = of === 'plate' ? field.at(at) : discMoments(field, [at])[0]
  if (!found) throw new Error(`peak at [${at[0]}, ${at[1]}]: expected concrete there`)
  return found.stress
}

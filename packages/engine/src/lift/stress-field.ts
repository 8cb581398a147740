import { reachedRings } from './contour.ts'
import type { PlateField } from './plate/field.ts'
import { fineMesh, finePoints, type TensionFace } from './stress-points.ts'

export interface StressFieldInput {
  readonly field: PlateField
  readonly face: TensionFace
  /** On the stresses and deflections of the field; 1 where they have it in them. */
  readonly factor: number
  /** Ascending, MPa; see `stressLevels`. */
  readonly levels: readonly number[]
}

/** Where the tension reaches a level. */
export interface StressBand {
  /** MPa */
  readonly level: number
  /** Closed rings x, y, x, y …, mm of the panel, for the even-odd rule. */
  readonly rings: readonly Float32Array[]
}

/**
 * Tension all over a bent panel, small enough to send from a worker while a finger moves: typed arrays alone. Bands lie over each
 * other, the lowest level first. Right at a pick and in a re-entrant corner the thin plate has no bound: the bands show that there
 * is a peak, never how high it is.
 */
export interface StressField {
  readonly face: TensionFace
  readonly bands: readonly StressBand[]
  /** Nodes, mm; their tension on the face, MPa; their deflection, mm, downward positive. */
  readonly x: Float32Array
  readonly y: Float32Array
  readonly stress: Float32Array
  readonly deflection: Float32Array
  /** Three nodes a triangle, counter-clockwise. */
  readonly triangles: Uint16Array
}

/** A ring may leave the true contour by this share of the panel's longer side. */
const TOLERANCE = 1 / 2500

/**
 * Filled contours of the tension on a face. Moments are the element's own at nodes and middles of sides and parabolas between them.
 *
 * @throws Error where factor or levels are not finite, not above 0 or not ascending: a defect of the caller.
 */
export function stressField({ field, face, factor, levels }: StressFieldInput): StressField {
  const ascending = levels.every((level, i) => level > (i === 0 ? 0 : levels[i - 1]!) && level < Infinity)
  if (!ascending || !(factor > 0 && factor < Infinity)) {
    throw new Error(`levels ${levels.join(', ')}, factor ${factor}: expected numbers above 0, ascending`)
  }
  const { mesh } = field.model
  const fine = fineMesh(mesh)
  const values = finePoints(field, face, factor)
  const tolerance = TOLERANCE * Math.max(extent(mesh.x), extent(mesh.y))
  const nodes = mesh.x.length
  const rings = reachedRings({ mesh: fine, values, levels, tolerance })
  const deflection = new Float32Array(nodes)
  for (let i = 0; i < nodes; i += 1) deflection[i] = factor * field.unknowns[6 * i]!
  return {
    face,
    bands: levels.map((level, i) => ({ level, rings: rings[i] ?? [] })),
    x: new Float32Array(mesh.x),
    y: new Float32Array(mesh.y),
    stress: new Float32Array(values.subarray(0, nodes)),
    deflection,
    triangles: new Uint16Array(mesh.triangles),
  }
}

function extent(values: Float64Array): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of values) {
    least = Math.min(least, value)
    most = Math.max(most, value)
  }
  return most - least
}

/** Where the bands of a picture begin, as shares of the greatest tension: closer together low down, where most of the panel is. */
const SHARES = [0.12, 0.25, 0.4, 0.55, 0.75, 0.95] as const

/**
 * Six tensions at which the bands of a picture begin, rounded so that they can be read, the last at or below the greatest, MPa. For
 * 0.82 these are 0.1, 0.2, 0.35, 0.45, 0.6, 0.8. Empty where the greatest is not above 0.
 */
export function stressLevels(most: number): number[] {
  if (!(most > 0 && most < Infinity)) return []
  // A tenth of the power of ten at or below twice the greatest, halved: 0.05 from 0.5 to 5.
  const unit = 10 ** Math.floor(Math.log10(most * 2) + 1e-9) / 20
  return SHARES.map((share) => Number((Math.round((share * most) / unit) * unit).toPrecision(6)))
}

import type { Point, Ring } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'
import { SAMPLES } from './element.ts'
import type { PlateField, PlatePoint } from './field.ts'
import { type Moments, peakTension } from './moments.ts'

/** Turn of an edge into the concrete from which its corner counts as re-entrant, radians: 20°. */
export const REENTRANT = Math.PI / 9

/** Corners where the concrete turns by more than 180° and the thin-plate moment has no bound. */
export function reentrantCorners({ outline, holes }: Piece): Point[] {
  return [outline, ...holes].flatMap((ring: Ring) =>
    ring.filter((corner, i) => {
      const [before, after] = [ring[(i + ring.length - 1) % ring.length]!, ring[(i + 1) % ring.length]!]
      const [ux, uy] = [corner[0] - before[0], corner[1] - before[1]]
      const [vx, vy] = [after[0] - corner[0], after[1] - corner[1]]
      return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) < -REENTRANT
    }),
  )
}

/** Moments averaged over the concrete in the disc of one thickness in diameter around a point, and the stress of them. */
export interface DiscMoments extends Moments {
  readonly at: Point
  /** MPa */
  readonly stress: number
}

export interface PlatePeak extends DiscMoments {
  /** What it was found at: the averages at a support or re-entrant corner, else the plate's own value. */
  readonly of: 'support' | 'corner' | 'plate'
  /** Which support or re-entrant corner; −1 for the plate. */
  readonly index: number
}

export interface PeakInput {
  readonly field: PlateField
  readonly supports: readonly Point[]
  readonly corners: readonly Point[]
}

/** Averages at each point over half a thickness around. */
export function discMoments(field: PlateField, points: readonly Point[]): DiscMoments[] {
  const { thickness } = field.model
  return points.map((at) => {
    const moments = field.discMean(at, thickness / 2)
    if (moments === null) throw new Error(`disc at [${at[0]}, ${at[1]}]: expected concrete in it`)
    return { at, ...moments, stress: peakTension(moments, thickness) }
  })
}

function pick({ mx, my, mxy, stress }: PlatePoint): Omit<DiscMoments, 'at'> {
  return { mx, my, mxy, stress }
}

/**
 * Largest principal tension of the whole plate. Nodes, middles of sides and of triangles and the circles around the discs are read, free edges at their own
 * value; nothing is left out: inside the discs of supports and re-entrant corners the averages stand for the unbounded values.
 */
export function platePeak({ field, supports, corners }: PeakInput): {
  readonly peak: PlatePeak
  readonly supports: readonly DiscMoments[]
  readonly corners: readonly DiscMoments[]
} {
  const { mesh, thickness } = field.model
  const radius = thickness / 2
  const atSupports = discMoments(field, supports)
  const atCorners = discMoments(field, corners)
  const singular = [...supports, ...corners]
  const averaged = (x: number, y: number): boolean =>
    singular.some((at) => (at[0] - x) ** 2 + (at[1] - y) ** 2 < radius * radius * (1 - 1e-9))
  let peak: PlatePeak | null = null
  let most = Number.NEGATIVE_INFINITY
  const take = (found: DiscMoments, of: PlatePeak['of'], index: number): void => {
    if (peak !== null && found.stress <= most) return
    peak = { ...found, of, index }
    most = found.stress
  }
  for (const [i, found] of atSupports.entries()) take(found, 'support', i)
  for (const [i, found] of atCorners.entries()) take(found, 'corner', i)
  for (let i = 0; i < mesh.x.length; i += 1) {
    const { mx, my, mxy, stress } = field.atNode(i)
    const at: Point = [mesh.x[i]!, mesh.y[i]!]
    if (stress <= most || averaged(at[0], at[1])) continue
    take({ at, mx, my, mxy, stress }, 'plate', -1)
  }
  for (let e = 0; e < mesh.triangles.length / 3; e += 1) {
    if (field.sampleStress(e) <= most) continue
    for (const [s, moments] of field.samples(e).entries()) {
      const stress = peakTension(moments, thickness)
      if (stress <= most) continue
      const weights = SAMPLES[s]!
      let [x, y] = [0, 0]
      for (let v = 0; v < 3; v += 1) {
        x += weights[v]! * mesh.x[mesh.triangles[3 * e + v]!]!
        y += weights[v]! * mesh.y[mesh.triangles[3 * e + v]!]!
      }
      if (!averaged(x, y)) take({ at: [x, y], ...moments, stress }, 'plate', -1)
    }
  }
  // The plate's own value is largest close to the discs: read all along their circles.
  for (const centre of singular) {
    for (const at of field.onCircle(centre, radius)) {
      const found = averaged(at[0], at[1]) ? null : field.at(at)
      if (found !== null && found.stress > most) take({ at, ...pick(found) }, 'plate', -1)
    }
  }
  if (peak === null) throw new Error('plate: expected a point outside every disc')
  return { peak, supports: atSupports, corners: atCorners }
}

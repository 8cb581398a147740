import type { Point } from '../../panel/point.ts'
import { SAMPLES } from '../plate/element.ts'
import type { PlateField } from '../plate/field.ts'
import { type Moments, principalMoments } from '../plate/moments.ts'
import { type DiscMoments, discMoments } from '../plate/peak.ts'
import type { StagePeak } from './stage.ts'

export interface PickForce {
  readonly mark: string
  readonly at: Point
  /** Upward, N. */
  readonly force: number
}

/** Points that stand for a line support. */
export interface LinePoints {
  readonly points: readonly PickForce[]
  /** Unit vector along the line. */
  readonly direction: Point
  /** Between two points, mm. */
  readonly spacing: number
}

export interface StagePeaksInput {
  readonly field: PlateField
  readonly picks: readonly PickForce[]
  readonly lines: readonly LinePoints[]
  readonly corners: readonly Point[]
  /** Unit vector along the panel: strips are taken across and along it. */
  readonly axis: Point
}

/** Strip of the handbook, in thicknesses. */
export const STRIP_THICKNESSES = 15

/** Width of the strip that resists at a pick: fifteen thicknesses, at most half of the width that is there; mm. */
export function stripWidth(thickness: number, run: number): number {
  return Math.min(STRIP_THICKNESSES * thickness, run / 2)
}

/** Where an average speaks for the hogging around a support: half its width either way, along its axes. */
interface Zone {
  readonly at: Point
  /** Unit vector. */
  readonly axis: Point
  /** Half widths along the axis and across it, mm. */
  readonly half: readonly [along: number, across: number]
}

/**
 * Tensions that open or shut a stage, greatest first, each by the way its limit is meant:
 * - at a pick the moment averaged over the strip of `stripWidth`, along the panel and across it;
 * - at a re-entrant corner the average over a disc of one thickness in diameter, in concrete;
 * - on a timber or an edge that carries, the average along it over the distance of two of the points that stand for it: the moment under the even line;
 * - elsewhere the plate's own value, free edges at theirs. Within half a strip's width of a pick the strip stands for the hogging; sagging there
 *   is read as everywhere.
 */
export function stagePeaks(input: StagePeaksInput): StagePeak[] {
  const { field, picks, lines, corners, axis } = input
  const { thickness } = field.model
  const zones: Zone[] = []
  const found: StagePeak[] = []
  for (const pick of picks) {
    const [peak, zone] = atPick(field, pick, axis)
    if (peak !== null) found.push(peak)
    zones.push(zone)
  }
  const onLines = lines.flatMap((line) => {
    zones.push(
      ...line.points.map(
        ({ at }): Zone => ({ at, axis: line.direction, half: [line.spacing, line.spacing] }),
      ),
    )
    return alongLine(field, line)
  })
  const greatest = onLines.sort((a, b) => b.stress - a.stress)[0]
  if (greatest !== undefined) found.push(greatest)
  for (const corner of discMoments(field, corners)) found.push(atCorner(corner, thickness))
  const plate = atPlate(field, zones, corners)
  if (plate !== null) found.push(plate)
  return found.sort((a, b) => b.stress - a.stress)
}

function atPick(field: PlateField, { mark, at, force }: PickForce, axis: Point): [StagePeak | null, Zone] {
  const { thickness } = field.model
  let peak: StagePeak | null = null
  const half: [number, number] = [0, 0]
  const directions: readonly Point[] = [axis, [-axis[1], axis[0]]]
  for (const [way, direction] of directions.entries()) {
    const place = inside(field, at, direction)
    const run = place === null ? null : field.runAt(place, direction)
    if (place === null || run === null) continue
    const width = stripWidth(thickness, run[1] - run[0])
    half[way] = width / 2
    if (!(width > 0)) continue
    const mean = field.stripMean({ at: place, direction, width, force, radius: thickness / 2 })
    if (mean === null) continue
    // The strip lies along `direction`; what bends it is the moment of the stress square to its width.
    const [nx, ny] = [-direction[1], direction[0]]
    const moment = mean.mx * nx * nx + mean.my * ny * ny + 2 * mean.mxy * nx * ny
    const stress = (6 * Math.abs(moment)) / thickness ** 2
    if (peak === null || stress > peak.stress) {
      peak = { of: 'pick', at, mark, stress, face: moment > 0 ? 'mould' : 'top', ...perMetre(mean), width }
    }
  }
  return [peak, { at, axis, half }]
}

/** A point that stands on an edge, moved into the concrete by a hundredth of a thickness, so that a line along or from that edge runs in it. */
function inside(field: PlateField, at: Point, direction: Point): Point | null {
  const off = field.model.thickness / 100
  const [dx, dy] = direction
  for (const [along, across] of [
    [0, 0],
    [0, off],
    [0, -off],
    [off, 0],
    [-off, 0],
  ] as const) {
    const place: Point = [at[0] + along * dx - across * dy, at[1] + along * dy + across * dx]
    const run = field.runAt(place, direction)
    if (run !== null && run[1] - run[0] > 4 * off) return place
  }
  return null
}

function alongLine(field: PlateField, { points, direction, spacing }: LinePoints): StagePeak[] {
  const { thickness } = field.model
  return points.flatMap(({ at, force }): StagePeak[] => {
    const place = inside(field, at, direction)
    if (place === null) return []
    const mean = field.stripMean({
      at: place,
      direction,
      width: spacing,
      force,
      radius: Math.min(thickness, spacing) / 2,
    })
    if (mean === null) return []
    const [most, least] = principalMoments(mean)
    const stress = (6 * Math.max(most, -least, 0)) / thickness ** 2
    return [{ of: 'plate', at, mark: '', stress, face: faceOf(mean), ...perMetre(mean), width: spacing }]
  })
}

function atCorner(corner: DiscMoments, thickness: number): StagePeak {
  return {
    of: 'corner',
    at: corner.at,
    mark: '',
    stress: corner.stress,
    face: faceOf(corner),
    ...perMetre(corner),
    width: thickness,
  }
}

function atPlate(field: PlateField, zones: readonly Zone[], corners: readonly Point[]): StagePeak | null {
  const { mesh, thickness } = field.model
  const radius = thickness / 2
  let peak: StagePeak | null = null
  const look = (x: number, y: number, moments: Moments): void => {
    const [most, least] = principalMoments(moments)
    const byStrip = -least > most && zones.some((zone) => within(zone, x, y))
    const moment = byStrip ? most : Math.max(most, -least)
    const stress = (6 * Math.max(moment, 0)) / thickness ** 2
    if (peak !== null && stress <= peak.stress) return
    if (corners.some((at) => Math.hypot(at[0] - x, at[1] - y) < radius * (1 - 1e-9))) return
    const face = byStrip ? 'mould' : faceOf(moments)
    peak = { of: 'plate', at: [x, y], mark: '', stress, face, ...perMetre(moments), width: 0 }
  }
  for (let i = 0; i < mesh.x.length; i += 1) look(mesh.x[i]!, mesh.y[i]!, field.atNode(i))
  for (let e = 0; e < mesh.triangles.length / 3; e += 1) {
    for (const [s, moments] of field.samples(e).entries()) {
      let [x, y] = [0, 0]
      for (const [v, weight] of SAMPLES[s]!.entries()) {
        x += weight * mesh.x[mesh.triangles[3 * e + v]!]!
        y += weight * mesh.y[mesh.triangles[3 * e + v]!]!
      }
      look(x, y, moments)
    }
  }
  return peak
}

function within({ at, axis: [ax, ay], half }: Zone, x: number, y: number): boolean {
  const [dx, dy] = [x - at[0], y - at[1]]
  return Math.abs(dx * ax + dy * ay) <= half[0] && Math.abs(dy * ax - dx * ay) <= half[1]
}

function faceOf(moments: Moments): 'mould' | 'top' {
  const [most, least] = principalMoments(moments)
  return most >= -least ? 'mould' : 'top'
}

/** N·mm/mm to kN·m/m. */
function perMetre({ mx, my, mxy }: Moments): Pick<StagePeak, 'mx' | 'my' | 'mxy'> {
  return { mx: mx / 1000, my: my / 1000, mxy: mxy / 1000 }
}

import { InputError, type InputIssue } from '../working/issue.ts'
import { enteredBy, GEOMETRY } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Drawing } from './drawing.ts'
import type { Point, Ring } from './point.ts'
import { bounds, centroid, counterClockwise, placeInRing, signedArea } from './polygon.ts'
import { covers, distanceToEdge, intersect, type Region, regionArea, ringsOf, subtract } from './region.ts'
import { bodiesOf, bodyAssumed, bodyIssues, bodySteps, type VoidBody } from './void-bodies.ts'

/** Density of the reinforced panel where the drawing gives none, kg/m³; always listed as assumed. */
export const ASSUMED_DENSITY = 2500

/** Standard gravity, m/s². */
export const GRAVITY = 9.80665

/** A drawing with what follows from its shape. */
export interface Panel {
  readonly drawing: Drawing
  /** Outline less openings: one piece, possibly with holes. */
  readonly region: Region
  /** Bounding sizes along x and y, mm. */
  readonly length: number
  readonly width: number
  readonly left: number
  readonly bottom: number
  /** Surface of one face, openings taken off, m². */
  readonly faceArea: number
  /** Concrete, m³; void formers and ducts taken off, steel and other cast-ins not. */
  readonly volume: number
  /** What void formers and ducts displace; empty for a full panel. */
  readonly bodies: readonly VoidBody[]
  /** kg/m³ of the reinforced panel. */
  readonly density: number
  /** kg */
  readonly mass: number
  /** Own weight, kN. */
  readonly weight: number
  /** Centre of gravity in plan, mm. */
  readonly centre: Point
  /** Centre of the face, openings taken off, mm: the centre of gravity of a full panel. */
  readonly faceCentre: Point
  /** Centre of gravity above the mould face, mm. */
  readonly centreHeight: number
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

/**
 * Mass, volume, centre of gravity and bounding sizes of a drawing.
 *
 * @throws InputError where nothing is left of the concrete, where it falls into pieces, where an opening lies outside the
 * outline, or a void former or duct outside the concrete or in another. Inserts out of place are found by `misplacedInserts`.
 */
export function panelOf(drawing: Drawing, from = ''): Panel {
  const outline = counterClockwise(drawing.outline as unknown as Ring)
  const region = subtract(
    outline,
    (drawing.openings ?? []).map((opening) => opening.outline as unknown as Ring),
  )
  if (region.length !== 1) {
    const found = region.length === 0 ? 'no concrete left' : `${region.length} separate pieces`
    throw new InputError([{ path: 'openings', found, expected: 'outline less openings in one piece' }], from)
  }
  const issues = openingIssues(drawing, outline)
  if (issues.length > 0) throw new InputError(issues, from)
  const box = bounds(region[0]?.outline ?? outline)
  const area = regionArea(region)
  const density = drawing.concrete.density ?? ASSUMED_DENSITY
  const inside = bodyIssues(drawing, region)
  if (inside.length > 0) throw new InputError(inside, from)
  const bodies = bodiesOf(drawing)
  const displaced = bodies.reduce((sum, body) => sum + body.volume, 0)
  const full = (area * drawing.thickness) / 1e9
  const volume = full - displaced
  const own = bodies.reduce((sum, body) => sum + body.mass, 0)
  const mass = volume * density + own
  const weight = (mass * GRAVITY) / 1000
  const centre = centreOf(region)
  // Full concrete at its centre, less what is displaced, with what the formers weigh.
  const shifts = bodies.map(({ volume: taken, mass: weighs, ...place }) => ({
    ...place,
    mass: weighs - taken * density,
  }))
  const moved = (from: number, to: (place: Pick<VoidBody, 'at' | 'height'>) => number): number =>
    shifts.length === 0
      ? from
      : (full * density * from + shifts.reduce((sum, one) => sum + one.mass * to(one), 0)) / mass
  const gravity: Point = [moved(centre[0], ({ at }) => at[0]), moved(centre[1], ({ at }) => at[1])]
  return {
    drawing,
    region,
    bodies,
    length: box.right - box.left,
    width: box.top - box.bottom,
    left: box.left,
    bottom: box.bottom,
    faceArea: area / 1e6,
    volume,
    density,
    mass,
    weight,
    centre: gravity,
    faceCentre: centre,
    centreHeight: moved(drawing.thickness / 2, ({ height }) => height),
    working: [
      {
        symbol: 'A',
        formula: 'Σ outline − Σ openings',
        given: { corners: ringsOf(region).flat().length },
        result: area,
        unit: 'mm²',
        source: GEOMETRY,
        by: 'search',
        note: 'polygon areas, openings cut out exactly',
      },
      ...bodySteps(drawing),
      {
        symbol: 'V',
        formula: bodies.length === 0 ? 'A t / 10⁹' : 'A t / 10⁹ − ΣV',
        given: { A: area, t: drawing.thickness, ...(bodies.length === 0 ? {} : { ΣV: displaced }) },
        result: volume,
        unit: 'm³',
        source: GEOMETRY,
        ...(bodies.length === 0 ? {} : { note: 'less void formers and ducts' }),
      },
      {
        symbol: 'm',
        formula: own > 0 ? 'V ρ + Σm' : 'V ρ',
        given: { V: volume, ρ: density, ...(own > 0 ? { Σm: own } : {}) },
        result: mass,
        unit: 'kg',
        source: drawing.concrete.density === undefined ? ASSUMED_DENSITY_SOURCE : enteredBy('the drawing'),
      },
      {
        symbol: 'W',
        formula: 'm g / 1000',
        given: { m: mass, g: GRAVITY },
        result: weight,
        unit: 'kN',
        source: GEOMETRY,
      },
      ...(bodies.length === 0
        ? []
        : ([0, 1] as const).map((axis) =>
            centreStep({ axis, from: centre[axis], to: gravity[axis], full: full * density, shifts, mass }),
          )),
    ],
    assumed: [
      ...(drawing.concrete.density === undefined
        ? [
            {
              field: 'concrete.density',
              value: ASSUMED_DENSITY,
              unit: 'kg/m³',
              why: 'the drawing gives no density of the reinforced panel',
            },
          ]
        : []),
      ...bodyAssumed(drawing),
    ],
  }
}

interface Shift {
  readonly axis: 0 | 1
  readonly from: number
  readonly to: number
  /** Of the full section, kg. */
  readonly full: number
  readonly shifts: readonly { readonly mass: number; readonly at: Point }[]
  readonly mass: number
}

/** The centre of gravity along one axis: full concrete and each thing in it, by their masses. */
function centreStep({ axis, from, to, full, shifts, mass }: Shift): Step {
  const name = axis === 0 ? 'x' : 'y'
  return {
    symbol: `${name} centre`,
    formula: '(M s + S) / m',
    given: { M: full, s: from, S: shifts.reduce((sum, one) => sum + one.mass * one.at[axis], 0), m: mass },
    result: to,
    unit: 'mm',
    source: GEOMETRY,
    note: `M the full section, its centre at s; S over void formers and ducts: own mass less displaced concrete, times ${name}`,
  }
}

const ASSUMED_DENSITY_SOURCE = {
  standard: 'common practice, no source',
  clause: 'reinforced normal-weight concrete',
  status: 'common practice',
} as const

/** How far an edge insert may stand off its edge, and how far inside a face insert must at least stand, mm. */
export const ON_EDGE = 1

function openingIssues(drawing: Drawing, outline: Ring): InputIssue[] {
  return (drawing.openings ?? []).flatMap((opening, index) =>
    takesConcrete(opening.outline as unknown as Ring, outline)
      ? []
      : [
          {
            path: `openings[${index}].outline`,
            found: `opening ${opening.mark} outside the outline`,
            expected: 'an opening inside the outline or across its edge',
          },
        ],
  )
}

function takesConcrete(opening: Ring, outline: Ring): boolean {
  return (
    opening.some((corner) => placeInRing(corner, outline) === 'inside') ||
    regionArea(intersect([outline], [opening])) > 0
  )
}

/**
 * Inserts that are not where their kind says: a face insert not inside the concrete, an edge insert not on an edge of it.
 * Empty where all are in place. A panel is still planned with them; nothing may hang from them.
 */
export function misplacedInserts({ drawing, region }: Pick<Panel, 'drawing' | 'region'>): InputIssue[] {
  return (drawing.inserts ?? []).flatMap(({ mark, at, kind }, index) => {
    const off = distanceToEdge(region, at)
    const fits = kind === 'edge' ? off <= ON_EDGE : covers(region, at) && off >= ON_EDGE
    if (fits) return []
    const expected =
      kind === 'edge'
        ? `a point on an edge of the concrete, within ${ON_EDGE} mm`
        : 'a point inside the concrete'
    return [
      { path: `inserts[${index}].at`, found: `[${at[0]}, ${at[1]}] for ${kind} insert ${mark}`, expected },
    ]
  })
}

function centreOf(region: Region): Point {
  let [sum, x, y] = [0, 0, 0]
  for (const ring of ringsOf(region)) {
    const size = signedArea(ring) // holes run clockwise: they take off
    const middle = centroid(ring)
    if (middle === null) continue
    sum += size
    x += size * middle[0]
    y += size * middle[1]
  }
  return [x / sum, y / sum]
}

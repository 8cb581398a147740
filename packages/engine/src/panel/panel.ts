import { InputError, type InputIssue } from '../working/issue.ts'
import { enteredBy, GEOMETRY } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Drawing } from './drawing.ts'
import type { Point, Ring } from './point.ts'
import { bounds, centroid, counterClockwise, placeInRing, signedArea } from './polygon.ts'
import { covers, distanceToEdge, intersect, type Region, regionArea, ringsOf, subtract } from './region.ts'

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
  /** Concrete, m³; steel and cast-ins not taken off. */
  readonly volume: number
  /** kg/m³ of the reinforced panel. */
  readonly density: number
  /** kg */
  readonly mass: number
  /** Own weight, kN. */
  readonly weight: number
  /** Centre of gravity in plan, mm. */
  readonly centre: Point
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

/**
 * Mass, volume, centre of gravity and bounding sizes of a drawing.
 *
 * @throws InputError where nothing is left of the concrete, where it falls into pieces or where an opening lies outside the
 * outline. Inserts out of place are found by `misplacedInserts`.
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
  const volume = (area * drawing.thickness) / 1e9
  const mass = volume * density
  const weight = (mass * GRAVITY) / 1000
  return {
    drawing,
    region,
    length: box.right - box.left,
    width: box.top - box.bottom,
    left: box.left,
    bottom: box.bottom,
    faceArea: area / 1e6,
    volume,
    density,
    mass,
    weight,
    centre: centreOf(region),
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
      {
        symbol: 'V',
        formula: 'A t / 10⁹',
        given: { A: area, t: drawing.thickness },
        result: volume,
        unit: 'm³',
        source: GEOMETRY,
      },
      {
        symbol: 'm',
        formula: 'V ρ',
        given: { V: volume, ρ: density },
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
    ],
    assumed:
      drawing.concrete.density === undefined
        ? [
            {
              field: 'concrete.density',
              value: ASSUMED_DENSITY,
              unit: 'kg/m³',
              why: 'the drawing gives no density of the reinforced panel',
            },
          ]
        : [],
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

import type { AnchorRules } from '../../codes/anchor-rules.ts'
import { distance, type Point } from '../../panel/point.ts'
import { covers, distanceToEdge, type Region } from '../../panel/region.ts'
import { belowZero, notAboveZero, notFinite } from '../../working/guard.ts'
import { type Known, known, type Unknown, unknown, type Worked } from '../../working/worked.ts'
import { type AnchorFound, anchorModes } from './anchor-modes.ts'
import { type EdgeFace, edgeFace } from './edge-face.ts'

export interface AnchorResistanceInput {
  readonly rules: AnchorRules
  /** Places on the panel, mm: inside the concrete for `face`, on an edge for `edge`. */
  readonly at: readonly Point[]
  /** Outline of the panel less its openings: `panel.region`, or `subtract(outline, openings)`. */
  readonly region: Region
  readonly thickness: number
  /** Embedment, mm: for `face` into the thickness, for `edge` into the plane of the panel. */
  readonly depth: number
  /** Bearing area of the head, mm²; null where not known. */
  readonly head: number | null
  readonly shaft?: number | null
  /** Steel of one insert along its axis at failure, kN. */
  readonly steel?: number | null
  /** Cylinder strength of the hour, MPa. */
  readonly strength: number
  readonly cracked: boolean
  readonly kind: 'face' | 'edge'
  /** Along the axis, whole group, every load, stage and angle factor in it, kN. */
  readonly tension: number
  /**
   * Across the axis, whole group, kN. `direction`, degrees: for `face` from x of the drawing; for `edge` 0 along the edge, 90 across toward
   * a face of the panel; not given: toward each edge in turn.
   */
  readonly shear?: { readonly force: number; readonly direction?: number | null } | null
  /** Resultant from the centroid of the inserts, mm. Only for `face`. */
  readonly eccentricity?: Point
  readonly splitting?: { readonly edge: number; readonly spacing: number } | null
  readonly supplementary?: boolean
}

/**
 * Resistance of the inserts of a panel in its concrete: each mode with nominal, design and demand, and `governingNominal`, the mode with
 * the greatest demand over nominal, for the family's handling margin.
 *
 * Unknown for impossible values, for a place off the concrete and where the depth is not below the concrete that is there. A mode whose
 * data is missing is unknown in the list, and `unknown` names it.
 */
export function anchorResistance(input: AnchorResistanceInput): Known<AnchorFound> | Unknown {
  const { at, region, thickness, depth, strength, kind, shear } = input
  const gaps = [
    ...notAboveZero({ thickness, depth, strength }),
    ...notAboveZero(given({ head: input.head, shaft: input.shaft, steel: input.steel })),
    ...belowZero({ tension: input.tension, ...(shear ? { 'shear.force': shear.force } : {}) }),
    ...notFinite(given({ 'shear.direction': shear?.direction })),
    ...notFinite(
      Object.fromEntries(at.flatMap(([x, y], k) => [[`at[${k}].x`, x] as const, [`at[${k}].y`, y] as const])),
    ),
    ...(at.length === 0 ? ['at: at least one insert'] : []),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const entered =
    kind === 'edge' ? edgeFace({ region, at, depth, thickness }) : onFace({ region, at, thickness })
  if (!entered.known) return entered
  const face = entered.value
  const twin = face.at.findIndex((point, k) =>
    face.at.slice(0, k).some((other) => distance(point, other) < 1),
  )
  if (twin >= 0) return unknown(`at[${twin}]: inserts at least 1 mm apart`)
  if (depth >= face.thickness) {
    return unknown(`depth: below the concrete behind the insert, ${face.thickness} mm, found ${depth}`)
  }
  const found = anchorModes({
    rules: input.rules,
    group: {
      at: face.at,
      region: face.region,
      thickness: face.thickness,
      depth,
      head: input.head,
      shaft: input.shaft ?? null,
      steel: input.steel ?? null,
      strength,
      cracked: input.cracked,
      splitting: input.splitting ?? null,
    },
    eccentricity: kind === 'face' ? (input.eccentricity ?? [0, 0]) : [0, 0],
    tension: input.tension,
    shear: shear ? { force: shear.force, direction: shear.direction ?? null } : null,
    supplementary: input.supplementary ?? false,
    ductile: null,
    yieldRatio: null,
  })
  return { known: true, value: found, working: found.working, assumed: found.assumed }
}

function onFace({
  region,
  at,
  thickness,
}: {
  readonly region: Region
  readonly at: readonly Point[]
  readonly thickness: number
}): Worked<EdgeFace> {
  const off = at.findIndex((point) => !covers(region, point) || !(distanceToEdge(region, point) > 0))
  if (off >= 0) return unknown(`at[${off}]: a face insert inside the concrete`)
  return known({ region, at, thickness }, [])
}

/** Only what is given at all. */
function given(fields: Readonly<Record<string, number | null | undefined>>): Record<string, number> {
  return Object.fromEntries(
    Object.entries(fields).filter((entry): entry is [string, number] => entry[1] != null),
  )
}

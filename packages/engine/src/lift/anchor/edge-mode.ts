import type { AnchorRules } from '../../codes/anchor-rules.ts'
import type { Point } from '../../panel/point.ts'
import { GEOMETRY, STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import type { LaidGroup, ModeFound } from './anchor-group.ts'
import { facing } from './blowout-mode.ts'
import { dot, fromTo, middle } from './frame.ts'
import { partsOf } from './parts.ts'
import { type SideFace, type Sight, sightOf, straightTo, unionLength } from './side-face.ts'

/** Inserts that lie this much farther from an edge than the nearest still stand in its row, mm. */
const IN_ROW = 1

/** Angle from which a force counts as pulling straight away from an edge, degrees. */
const AWAY = 180 - 1e-6

/** An insert with a side face in sight. */
interface Fronting {
  readonly index: number
  readonly point: Point
  readonly edge: number
}

/**
 * Concrete edge failure of the whole group in shear, of every edge in sight: the inserts within three edge distances of each other push as
 * one, and the row nearest to the edge is taken to carry all of their shear. Null where no edge is in the way of the shear.
 *
 * `direction`: of the shear, degrees from x; null: not known, straight at each edge in turn.
 */
export function edgeMode(
  rules: AnchorRules,
  group: LaidGroup,
  direction: number | null,
): Worked<ModeFound> | null {
  const { shaft } = group
  if (shaft === null) return unknown('shaft: diameter of the shank')
  let least: { readonly nominal: number; readonly working: readonly Step[] } | null = null
  for (const face of group.faces) {
    const angle = direction === null ? 0 : angleTo(face, direction)
    if (angle >= AWAY) continue
    const fronting = frontingAt(group, face)
    const parts = partsOf(
      fronting.map(({ point }) => point),
      (a, b) => 3 * Math.max(fronting[a]?.edge ?? 0, fronting[b]?.edge ?? 0),
    )
    for (const part of parts) {
      const inserts = part.map((k) => fronting[k] as Fronting)
      const found = partResistance(rules, { ...group, shaft }, face, inserts, angle)
      if (found === null) continue
      if (!found.known) return found
      if (least === null || found.value < least.nominal)
        least = { nominal: found.value, working: found.working }
    }
  }
  return least === null ? null : known({ nominal: least.nominal, share: 1 }, least.working)
}

/** Between a direction and the way straight out through a side face, degrees from 0 to 180. */
function angleTo({ outward }: SideFace, direction: number): number {
  const out = (Math.atan2(outward[1], outward[0]) * 180) / Math.PI
  const turn = Math.abs((((direction - out) % 360) + 360) % 360)
  const angle = Math.min(turn, 360 - turn)
  // Along an edge is along it, whatever the last digit of the arctangent says.
  return Math.abs(angle - 90) < 1e-9 ? 90 : angle < 1e-9 ? 0 : angle
}

function frontingAt(group: LaidGroup, face: SideFace): Fronting[] {
  return group.at.flatMap((point, index) => {
    const edge = straightTo(face, point)
    if (!(edge > 0)) return []
    const sight = sightOf({ sides: group.sides, face, point, edge, half: 1.5 * edge })
    return sight.open && facing(face, point, sight) ? [{ index, point, edge }] : []
  })
}

function partResistance(
  rules: AnchorRules,
  group: LaidGroup & { readonly shaft: number },
  face: SideFace,
  inserts: readonly Fronting[],
  angle: number,
): Worked<number> | null {
  const shares = inserts.map(({ index }) => group.shares[index] ?? 0)
  const share = shares.reduce((sum, one) => sum + one, 0)
  if (!(share > 0)) return null
  const edge = Math.min(...inserts.map((one) => one.edge))
  const row = inserts.filter((one) => one.edge <= edge + IN_ROW)
  const along = row.map(({ point }) => dot(fromTo(face.from, point), face.along)).sort((a, b) => a - b)
  const spacing = Math.max(0, ...along.slice(1).map((t, k) => t - (along[k] ?? t)))
  const look = (to: number): Sight[] =>
    row.map(({ point }) => sightOf({ sides: group.sides, face, point, edge: to, half: 1.5 * to }))
  const narrow = rules.narrowEdge({
    edge,
    sides: bothSides(look(edge)),
    thickness: group.thickness,
    spacing,
  })
  if (!narrow.known) return narrow
  const counted = narrow.value
  const sights = look(counted)
  const width = unionLength(
    sights.flatMap(({ spans }, k) => {
      const at = dot(fromTo(face.from, (row[k] as Fronting).point), face.along)
      return spans.map(([p, q]): [number, number] => [at + p, at + q])
    }),
  )
  const deep = Math.min(1.5 * counted, group.thickness)
  const area = width * deep
  const sides = bothSides(sights).filter((side) => side !== null)
  const side = sides.length > 0 ? Math.min(...sides) : null
  const points = row.map(({ point }) => point)
  const load = middle(
    inserts.map(({ point }) => point),
    shares,
  )
  const centre = middle(
    points,
    points.map(() => 1),
  )
  const eccentricity = row.length > 1 ? Math.abs(dot(fromTo(centre, load), face.along)) : 0
  const found = rules.edge({
    strength: group.strength,
    cracked: group.cracked,
    edge: counted,
    depth: group.depth,
    shaft: group.shaft,
    thickness: group.thickness,
    area,
    side,
    eccentricity,
    angle,
  })
  if (!found.known) return found
  return known(found.value / share, [
    placeStep(face, row, edge, angle),
    ...narrow.working,
    {
      symbol: 'AV',
      formula: 'b min(1.5 c1, h)',
      given: { b: width, c1: counted, h: group.thickness },
      result: area,
      unit: 'mm²',
      source: GEOMETRY,
      note: 'b: what the row sees of the side face, 1.5 c1 either way',
    },
    ...found.working,
    ...(share < 1 - 1e-12
      ? [
          {
            symbol: 'V of all',
            formula: 'Vp / p',
            given: { Vp: found.value, p: share },
            result: found.value / share,
            unit: 'kN',
            source: STATICS,
            note: 'these inserts carry p of the shear',
          },
        ]
      : []),
  ])
}

/** Nearest edge to each side over all inserts of a row. */
function bothSides(sights: readonly Sight[]): [number | null, number | null] {
  const nearest = (which: 0 | 1): number | null => {
    const found = sights.flatMap(({ sides }) => (sides[which] === null ? [] : [sides[which]]))
    return found.length > 0 ? Math.min(...found) : null
  }
  return [nearest(0), nearest(1)]
}

function placeStep({ from, to }: SideFace, row: readonly Fronting[], edge: number, angle: number): Step {
  return {
    symbol: 'c1',
    formula: 'distance of the row to the edge',
    given: {
      'row of inserts': row.map(({ index }) => index + 1).join(', '),
      edge: `${from.join(', ')} to ${to.join(', ')}`,
      'shear to it, degrees': angle,
    },
    result: edge,
    unit: 'mm',
    source: GEOMETRY,
    by: 'search',
    note: 'the row nearest to the edge is taken to carry the shear of its group',
  }
}

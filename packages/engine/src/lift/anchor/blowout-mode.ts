import type { AnchorRules } from '../../codes/anchor-rules.ts'
import type { Point } from '../../panel/point.ts'
import { GEOMETRY, STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import type { LaidGroup, ModeFound } from './anchor-group.ts'
import { dot, fromTo } from './frame.ts'
import { type SideFace, type Sight, sightOf, straightTo, unionLength } from './side-face.ts'

/** An insert near a side face. */
interface Near {
  readonly index: number
  /** Distance to the side face, mm. */
  readonly edge: number
  /** Along the side face, from the first corner of it, mm. */
  readonly along: number
  readonly sight: Sight
}

/**
 * Side-face blow-out of the insert that is nearest to it, of every side face: in rows along the face and, for each insert of a row, by
 * itself. Null where no side face is near enough for the code to ask. A row's resistance is shared as its load is.
 */
export function blowoutMode(rules: AnchorRules, group: LaidGroup): Worked<ModeFound> | null {
  const rows = group.faces.flatMap((face) => rowsAt(rules, group, face).map((row) => ({ face, row })))
  if (rows.length === 0) return null
  const { head } = group
  if (head === null) return unknown('head: bearing area of the head')
  let worst: { readonly found: ModeFound; readonly working: readonly Step[] } | null = null
  for (const { face, row } of rows) {
    const sets = row.length > 1 ? [row, ...row.map((one) => [one])] : [row]
    for (const set of sets) {
      const found = rowResistance(rules, { ...group, head }, face, set)
      if (!found.known) return found
      const { nominal, share } = found.value
      if (worst === null || share / nominal > worst.found.share / worst.found.nominal) {
        worst = { found: found.value, working: found.working }
      }
    }
  }
  return worst === null ? null : known(worst.found, worst.working)
}

/** Rows of loaded inserts that a side face is near to. */
function rowsAt(rules: AnchorRules, group: LaidGroup, face: SideFace): Near[][] {
  const near = group.at.flatMap((point, index): Near[] => {
    const edge = straightTo(face, point)
    if (!(edge > 0) || !((group.shares[index] ?? 0) > 0)) return []
    if (!rules.blowoutAsked({ edge, depth: group.depth })) return []
    const sight = sightOf({ sides: group.sides, face, point, edge, half: 2 * edge })
    return sight.open && facing(face, point, sight)
      ? [{ index, edge, along: dot(fromTo(face.from, point), face.along), sight }]
      : []
  })
  const rows: Near[][] = []
  for (const one of near.sort((a, b) => a.along - b.along)) {
    const row = rows.at(-1)
    const last = row?.at(-1)
    const reach = last === undefined ? 0 : rules.blowoutRow * Math.min(last.edge, one.edge)
    if (row !== undefined && last !== undefined && one.along - last.along < reach) row.push(one)
    else rows.push([one])
  }
  return rows
}

/** Whether a part of the side face itself, and not only of its line, is in sight. */
export function facing(face: SideFace, point: Point, sight: Sight): boolean {
  const from = dot(fromTo(point, face.from), face.along)
  const to = dot(fromTo(point, face.to), face.along)
  return sight.spans.some(([p, q]) => Math.min(q, to) - Math.max(p, from) > 1e-6)
}

function rowResistance(
  rules: AnchorRules,
  group: LaidGroup & { readonly head: number },
  face: SideFace,
  row: readonly Near[],
): Worked<ModeFound> {
  const edge = Math.min(...row.map((one) => one.edge))
  const first = Math.min(...row.map(({ along }) => along))
  const last = Math.max(...row.map(({ along }) => along))
  const shares = row.map(({ index }) => group.shares[index] ?? 0)
  const all = shares.reduce((sum, share) => sum + share, 0)
  const centre = row.reduce((sum, { along }) => sum + along, 0) / row.length
  const loaded = row.reduce((sum, { along }, k) => sum + (along * (shares[k] ?? 0)) / all, 0)
  const sides = row.flatMap(({ sight }) => sight.sides).filter((side) => side !== null)
  const side = sides.length > 0 ? Math.min(...sides) : null
  const width = unionLength(
    row.flatMap(({ along, sight }) =>
      sight.spans.flatMap(([p, q]): [number, number][] => {
        const [from, to] = [Math.max(p, -2 * edge), Math.min(q, 2 * edge)]
        return to > from ? [[along + from, along + to]] : []
      }),
    ),
  )
  const found = rules.blowout({
    strength: group.strength,
    cracked: group.cracked,
    depth: group.depth,
    head: group.head,
    edge,
    side,
    count: row.length,
    length: last - first,
    width,
    below: group.thickness - group.depth,
    eccentricity: Math.abs(loaded - centre),
  })
  if (!found.known) return found
  const share = Math.max(...shares)
  const nominal = (found.value * share) / all
  return known({ nominal, share }, [
    placeStep(face, row, { edge, side, width }),
    ...found.working,
    ...(row.length > 1
      ? [
          {
            symbol: 'Nsb of one',
            formula: 'N si / S',
            given: { N: found.value, si: share, S: all },
            result: nominal,
            unit: 'kN',
            source: STATICS,
            note: 'the most loaded insert of the row, shared as the load is',
          },
        ]
      : []),
  ])
}

function placeStep(
  { from, to }: SideFace,
  row: readonly Near[],
  { edge, side, width }: { readonly edge: number; readonly side: number | null; readonly width: number },
): Step {
  return {
    symbol: 'c1',
    formula: 'distance to the side face',
    given: {
      inserts: row.map(({ index }) => index + 1).join(', '),
      'side face': `${from.join(', ')} to ${to.join(', ')}`,
      'end of it after': side ?? 'none near',
      'width of it': width,
    },
    result: edge,
    unit: 'mm',
    source: GEOMETRY,
    by: 'search',
  }
}

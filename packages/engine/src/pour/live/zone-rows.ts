import { placeInRing } from '../../panel/polygon.ts'
import type { CompactionPlan } from '../pour-plan.ts'
import { stopAt, stopsOf } from './stops.ts'
import type { Visit, Walk } from './walk.ts'

/** A visit as the record keeps it: insertion from 1 (0 where the pattern has none there), x, y, layer, begin in seconds since 1970, length in s, radius. */
export type VisitRow = readonly [
  insertion: number,
  x: number,
  y: number,
  layer: number,
  begin: number,
  seconds: number,
  radius: number,
]

/** Begin of the ids under which the record keeps the rows of a zone, one id a zone and walk. */
export const WALK_ROWS = 'walk:'

/** The rows of a walk that lie in a zone: visits at its stops, and those of an earlier pattern in its concrete. */
export function zoneRows({ visits }: Pick<Walk, 'visits'>, plan: CompactionPlan, zone: number): VisitRow[] {
  const stops = stopsOf(plan)
  const outlines = plan.zones[zone]?.outlines ?? []
  return visits.flatMap((visit): VisitRow[] => {
    const { at, layer, radius, from, to } = visit
    const stop = stops[stopAt(plan, visit) ?? -1]
    const inside =
      stop === undefined ? outlines.some((ring) => placeInRing(at, ring) !== 'outside') : stop.zone === zone
    if (!inside) return []
    const tenth = (ms: number): number => Math.round(ms / 100) / 10
    const number = stop === undefined ? 0 : stop.insertion + 1
    return [
      [
        number,
        Math.round(at[0]),
        Math.round(at[1]),
        layer,
        tenth(from),
        tenth(to - from),
        Math.round(radius * 10) / 10,
      ],
    ]
  })
}

/** Visits of every walk that the record holds of a panel. Rows of another form are passed over. */
export function recordedVisits(values: Readonly<Record<string, { readonly value: unknown }>>): Visit[] {
  return Object.entries(values).flatMap(([id, { value }]) =>
    id.startsWith(WALK_ROWS) && Array.isArray(value) ? value.filter(isRow).map(visitOf) : [],
  )
}

/** Begin of the ids under which the record keeps the tick of a zone. */
const ZONE_TICK = 'zone:'

/** Zones that stand ticked as placed and vibrated for a revision. */
export function tickedZones(
  values: Readonly<Record<string, { readonly value: unknown; readonly revision: string | null }>>,
  revision: string | null,
): ReadonlySet<string> {
  return new Set(
    Object.entries(values).flatMap(([id, recorded]) =>
      id.startsWith(ZONE_TICK) && recorded.value === true && recorded.revision === revision
        ? [id.slice(ZONE_TICK.length)]
        : [],
    ),
  )
}

/** Visits of this device and of the record, each once. */
export function mergedVisits(own: readonly Visit[], recorded: readonly Visit[]): readonly Visit[] {
  const keyOf = ({ at: [x, y], layer, from }: Visit): string =>
    `${Math.round(x)} ${Math.round(y)} ${layer} ${Math.round(from / 100)}`
  const known = new Set(own.map(keyOf))
  const others = recorded.filter((visit) => {
    const key = keyOf(visit)
    return known.has(key) ? false : known.add(key) !== undefined
  })
  return others.length === 0 ? own : [...own, ...others]
}

function isRow(row: unknown): row is VisitRow {
  return Array.isArray(row) && row.length === 7 && row.every((each) => typeof each === 'number')
}

function visitOf([, x, y, layer, begin, seconds, radius]: VisitRow): Visit {
  const from = Math.round(begin * 1000)
  return { at: [x, y], layer, radius, from, to: from + Math.round(seconds * 1000) }
}

import { type BarListMap, type ColumnRef, EMPTY_MAP } from './column-map.ts'
import type { ColumnAt, Columns } from './columns.ts'
import { FIELDS } from './fields.ts'

/** The map by which a list was read, to be kept for the next list of its kind: columns by name, by letter where a name is not their own. */
export function mapOf(columns: Columns, map: BarListMap = EMPTY_MAP): BarListMap {
  const { of, legs, allLegs, all } = columns
  const ref = ({ name, letter }: ColumnAt): NonNullable<ColumnRef> =>
    name !== '' && all.filter((other) => other.name === name).length === 1 ? name : { letter }
  const found: Record<string, unknown> = {}
  for (const field of FIELDS) {
    if (field === 'legs') {
      found[field] = legs.length > 0 ? legs.map(ref) : allLegs === null ? null : ref(allLegs)
    } else {
      const column = of[field]
      found[field] = column === undefined ? null : ref(column)
    }
  }
  return {
    ...map,
    ...(columns.header === 0 ? { header: 0 } : {}),
    columns: found as NonNullable<BarListMap['columns']>,
  }
}

import {
  type BarListMap,
  type ColumnAt,
  type ColumnRef,
  type Columns,
  FIELDS,
  type Field,
} from '@castwright/documents/bar-list'

/** Where the legs of a list stand: one column a leg by letter, or one column for all. */
export interface LegChoice {
  readonly all: string | null
  readonly each: readonly string[]
}

export function legChoice({ legs, allLegs }: Columns): LegChoice {
  return { all: allLegs?.letter ?? null, each: legs.map(({ letter }) => letter) }
}

/** The map as it was found, every field said, so that a change to one leaves the others where they are. */
export function spelledMap(columns: Columns, map: BarListMap): BarListMap {
  const { all, each } = legChoice(columns)
  const found: Record<string, ColumnRef> = {}
  for (const field of FIELDS) if (field !== 'legs') found[field] = ref(columns.of[field])
  const legs = each.length > 0 ? each.map((letter) => ({ letter })) : all === null ? null : { letter: all }
  return { ...map, columns: { ...found, legs } }
}

/** The map with one field in another column, or in none. */
export function withField(map: BarListMap, field: Exclude<Field, 'legs'>, letter: string | null): BarListMap {
  return { ...map, columns: { ...map.columns, [field]: letter === null ? null : { letter } } }
}

/** The map with other columns of legs. */
export function withLegs(map: BarListMap, { all, each }: LegChoice): BarListMap {
  const legs = all !== null ? { letter: all } : each.length === 0 ? null : each.map((letter) => ({ letter }))
  return { ...map, columns: { ...map.columns, legs } }
}

function ref(column: ColumnAt | undefined): ColumnRef {
  return column === undefined ? null : { letter: column.letter }
}

import type { DrawnBar } from '@castwright/engine/panel'
import type { Assumed } from '@castwright/engine/working'
import type { BarListMap } from './column-map.ts'
import type { Columns } from './columns.ts'

/** Rows in which something was taken that the list does not say. */
export interface AssumedRows {
  readonly role: number[]
  readonly turns: number[]
  /** By `16 mm 500E, main`: the least inside diameter of the family, mm. */
  readonly inside: Map<string, { readonly value: number; readonly rows: number[] }>
}

export function noteAssumed(
  rows: AssumedRows,
  row: number,
  { diameter, grade, role }: DrawnBar,
  assumed: { readonly role: boolean; readonly turns: boolean; readonly inside: number | null },
): void {
  if (assumed.role) rows.role.push(row)
  if (assumed.turns) rows.turns.push(row)
  if (assumed.inside === null) return
  const key = `${diameter} mm ${grade}, ${role}`
  const known = rows.inside.get(key) ?? { value: assumed.inside, rows: [] }
  rows.inside.set(key, known)
  known.rows.push(row)
}

/** What was taken for all that the list does not say. */
export function assumedOf(
  { role, turns, inside }: AssumedRows,
  { of, legs, allLegs }: Columns,
  { map, tolerance }: { readonly map: BarListMap; readonly tolerance: number | undefined },
): Assumed[] {
  const lengths = [of.diameter, of.cutLength, ...legs, allLegs ?? undefined, of.inside]
  const silent = lengths.flatMap((column) => (column?.unit === null ? [column.letter] : []))
  const taken: (Assumed | null)[] = [
    silent.length === 0 || map.unit !== undefined
      ? null
      : { field: 'unit', value: 'mm', unit: '', why: `columns ${silent.join(', ')} name none` },
    of.cutLength === undefined || tolerance !== undefined
      ? null
      : { field: 'tolerance', value: 'the cut tolerance of the family', unit: '', why: 'not given' },
    role.length === 0
      ? null
      : { field: 'role', value: 'main', unit: '', why: `not given in ${rowsText(role)}` },
    turns.length === 0
      ? null
      : {
          field: 'turns',
          value: 90,
          unit: '°',
          why: `not given in ${rowsText(turns)}: right angles are meant`,
        },
    ...[...inside].map(([bar, { value, rows }]) => ({
      field: 'inside',
      value,
      unit: 'mm',
      why: `not given in ${rowsText(rows)}: the least of the family for ${bar}`,
    })),
  ]
  return taken.filter((each) => each !== null)
}

/** Example: `rows 3, 4, 9`. */
function rowsText(rows: readonly number[]): string {
  const shown = rows.slice(0, 8).join(', ')
  if (rows.length === 1) return `row ${shown}`
  return `rows ${shown}${rows.length > 8 ? ` and ${rows.length - 8} more` : ''}`
}

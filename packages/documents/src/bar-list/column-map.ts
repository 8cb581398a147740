import { foundText, InputError, parseInput, readJson } from '@castwright/engine/working'
import * as z from 'zod'
import { columnIndex } from './table.ts'

export const MAP_FORMAT = 'castwright.barlist-map/1'

const letter = z
  .string()
  .refine((text) => columnIndex(text) !== null, { error: 'letters of a column, such as C' })

/** A column by its name as written in the list, or by its letter; null: the list has none. */
const column = z.union([z.string().min(1).max(200), z.strictObject({ letter })]).nullable()
const word = z.string().min(1).max(40)

const mapSchema = z.strictObject({
  format: z.literal(MAP_FORMAT),
  /** Row of the column names, from 1; 0 where the list has none. */
  header: z.number().int().min(0).max(1000).optional(),
  columns: z
    .strictObject({
      job: column.optional(),
      panel: column.optional(),
      mark: column.optional(),
      shape: column.optional(),
      shapeCode: column.optional(),
      diameter: column.optional(),
      grade: column.optional(),
      role: column.optional(),
      count: column.optional(),
      cutLength: column.optional(),
      /** One column with all legs of a bar, or one column a leg in their order. */
      legs: z.union([column, z.array(column.unwrap()).max(50)]).optional(),
      turns: column.optional(),
      inside: column.optional(),
    })
    .optional(),
  decimal: z.enum(['point', 'comma']).optional(),
  /** Unit of legs and cut lengths where the name of the column has none. */
  unit: z.enum(['mm', 'cm', 'm', 'in']).optional(),
  /** What counts for every bar whose own cell is empty. */
  given: z.strictObject({ grade: word.optional(), role: z.enum(['main', 'stirrup']).optional() }).optional(),
})

/** Which column of a list holds what, and how its numbers are written. */
export type BarListMap = z.output<typeof mapSchema>
export type ColumnRef = z.output<typeof column>

export const EMPTY_MAP: BarListMap = { format: MAP_FORMAT }

/** @throws InputError naming the field. */
export function parseBarListMap(value: unknown, from = ''): BarListMap {
  return parseInput(mapSchema, value, from)
}

/** @throws InputError, also where the text is not JSON. */
export function readBarListMap(text: string, from = ''): BarListMap {
  const value = readJson(text, from)
  if (value !== null && typeof value === 'object') return parseBarListMap(value, from)
  throw new InputError(
    [{ path: '', found: foundText(value), expected: `an object of format ${MAP_FORMAT}` }],
    from,
  )
}

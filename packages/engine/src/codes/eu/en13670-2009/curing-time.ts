import { notFinite } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { CuringTimeInput } from '../../cure-rules.ts'

const STANDARD = 'EN 13670:2009'

/** Days of curing: rows by surface temperature from, columns by strength development rapid, medium, slow. */
const TABLES: Readonly<
  Record<
    CuringTimeInput['curingClass'],
    { readonly clause: string; readonly rows: readonly (readonly [from: number, ...days: number[]])[] }
  >
> = {
  2: {
    clause: 'Table F.1',
    rows: [
      [25, 1, 1.5, 2.5],
      [15, 1, 2.5, 5],
      [10, 1.5, 4, 8],
      [5, 2, 5, 11],
    ],
  },
  3: {
    clause: 'Table F.2',
    rows: [
      [25, 1.5, 2.5, 3.5],
      [15, 2, 4, 7],
      [10, 2.5, 7, 12],
      [5, 3.5, 9, 18],
    ],
  },
  4: {
    clause: 'Table F.3',
    rows: [
      [25, 3, 5, 6],
      [15, 5, 9, 12],
      [10, 7, 13, 21],
      [5, 9, 18, 30],
    ],
  },
}

/**
 * Least curing time by curing class, surface temperature and strength development: days. Unknown below 5 °C, where hours
 * do not count, and below a development of 0.15.
 *
 * Source: EN 13670:2009, Annex F (from memory). Example: class 3, 18 °C, development 0.4: 4 days.
 */
export function curingTime({ curingClass, surface, development }: CuringTimeInput): Worked<number> {
  const gaps = notFinite({ surface, development })
  if (gaps.length > 0) return unknown(...gaps)
  const { clause, rows } = TABLES[curingClass]
  const source: Source = { standard: STANDARD, clause, status: 'from memory' }
  const row = rows.find(([from]) => surface >= from)
  if (row === undefined) return unknown(`surface: at least 5 °C in ${clause}, found ${surface}`)
  const column = development >= 0.5 ? 1 : development >= 0.3 ? 2 : development >= 0.15 ? 3 : 0
  const days = column === 0 ? undefined : row[column]
  if (days === undefined) return unknown(`development: at least 0.15 in ${clause}, found ${development}`)
  return known(days, [
    {
      symbol: 't',
      formula: 'row by surface temperature, column by strength development',
      given: { class: curingClass, surface, development },
      result: days,
      unit: 'd',
      source,
      by: 'table',
    },
  ])
}

import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'

export const ASTM_C39_AGE: Source = {
  standard: 'ASTM C39',
  clause: 'permissible tolerance on the test age',
  status: 'from memory',
}

/** Test age and what it may miss by, h. */
const TOLERANCES: readonly (readonly [age: number, within: number])[] = [
  [24, 0.5],
  [72, 2],
  [168, 6],
  [672, 20],
  [2160, 48],
]

/**
 * By how much a test may miss its age, h, to each side. Ages of the table only: 24 h, 3, 7, 28 and 90 days.
 *
 * Source: ASTM C39 (from memory). Example: 28 days: 20 h.
 */
export function testAgeC39(age: number): Worked<number> {
  const found = TOLERANCES.find(([each]) => Math.abs(each - age) < 1e-9)
  return found === undefined
    ? unknown('tolerance on the test age: the table has 24 h, 3, 7, 28 and 90 days only')
    : known(found[1], [])
}

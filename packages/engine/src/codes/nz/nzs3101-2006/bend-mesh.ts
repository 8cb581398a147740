import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import type { Worked } from '../../../working/worked.ts'
import { bendMultiple } from '../../bend-multiple.ts'

const MESH: Source = { standard: 'NZS 3101:2006', clause: '8.4.2', status: 'from memory' }

/** Bends of mesh tighter than this many diameters stay clear of welds. */
const TIGHT = 8
/** By this many diameters. */
const CLEAR_OF_WELD = 4

/** Least inside diameter of a bend in mesh that serves as ties, mm. Example: 8 mm deformed wire: 32 mm. */
export function leastBendOfMesh({
  diameter,
  plain,
}: {
  readonly diameter: number
  readonly plain: boolean
}): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  const thick = !plain && diameter > 7
  return bendMultiple({
    diameter,
    times: thick ? 4 : 2,
    source: MESH,
    note: thick ? 'mesh of deformed wire over 7 mm' : 'mesh of plain or thinner wire',
  })
}

/** Least distance of a bend in mesh from the nearest weld, mm; 0 where the bend is wide enough. */
export function meshWeldClear({
  diameter,
  inside,
}: {
  readonly diameter: number
  readonly inside: number
}): Worked<number> {
  const gaps = notAboveZero({ diameter, inside })
  if (gaps.length > 0) return { known: false, gaps }
  const tight = inside < TIGHT * diameter * (1 - 1e-9)
  return bendMultiple({
    diameter,
    times: tight ? CLEAR_OF_WELD : 0,
    source: MESH,
    note: tight ? `bend under ${TIGHT} diameters` : `bend of ${TIGHT} diameters or more`,
  })
}

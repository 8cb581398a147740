import type { Source } from '../../../working/source.ts'
import type { Tolerance, TwoSided } from '../../steel-rules.ts'

const TABLE_7: Source = { standard: 'BS 8666:2020', clause: 'Table 7', status: 'from memory' }

/** Cut length of a straight bar, mm. */
export function cutTolerance(): TwoSided {
  return { minus: 25, plus: 25, source: TABLE_7 }
}

/** A bent dimension, mm: under 1000, 1000 to 2000 included, over 2000. */
export function legTolerance({ leg }: { readonly leg: number }): Tolerance {
  if (leg < 1000) return { minus: 5, plus: 5, source: TABLE_7 }
  return leg <= 2000 ? { minus: 10, plus: 5, source: TABLE_7 } : { minus: 25, plus: 5, source: TABLE_7 }
}

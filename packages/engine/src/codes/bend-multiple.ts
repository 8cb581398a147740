import type { Source } from '../working/source.ts'
import { known, type Step, type Worked } from '../working/worked.ts'

export interface BendMultiple {
  readonly diameter: number
  readonly times: number
  readonly source: Source
  readonly note: string
}

/** A least inside diameter given as a multiple of the bar's, mm, with its working. */
export function bendMultiple({ diameter, times, source, note }: BendMultiple): Worked<number> {
  const limit = times * diameter
  const step: Step = {
    symbol: 'D',
    formula: 'n d',
    given: { n: times, d: diameter },
    result: limit,
    unit: 'mm',
    source,
    note,
  }
  return known(limit, [step])
}

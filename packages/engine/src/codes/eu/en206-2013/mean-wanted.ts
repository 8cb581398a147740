import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { MeanWanted, MeanWantedInput } from '../../quality-rules.ts'

const MEAN: Source = { standard: 'EN 206:2013+A2', clause: '8.2.1.3, Table 14', status: 'from memory' }
/** Results that a deviation must rest on, at least. */
const LEAST = 35

/**
 * Mean that the rule of conformity for continuous production asks for: specified + 1.48 times the deviation of at least 35 results.
 * Unknown with fewer, or where a strength or deviation is not above 0. Example: 37 MPa, 3.0: 41.44.
 */
export function meanWantedEn206({ specified, deviation, tests }: MeanWantedInput): Worked<MeanWanted> {
  if (deviation === null || tests < LEAST)
    return unknown(`results: at least ${LEAST} for a deviation, found ${tests}`)
  const gaps = notAboveZero({ specified, deviation })
  if (gaps.length > 0) return unknown(...gaps)
  const mean = specified + 1.48 * deviation
  return known({ mean, source: MEAN }, [
    {
      symbol: 'fcm',
      formula: 'fck + 1.48 σ',
      given: { fck: specified, σ: deviation },
      result: mean,
      unit: 'MPa',
      source: MEAN,
    },
  ])
}

import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { Sampling, SamplingInput } from '../../quality-rules.ts'

const SOURCE: Source = { standard: 'ACI 318-19', clause: '26.12.2.1(a)', status: 'seen' }
/** A test for each so much concrete and so much surface of slabs or walls, of one class and day. */
const VOLUME = 115
const AREA = 465

/**
 * Strength tests of one class of concrete for a day: at least one, one for each 115 m³, one for each 465 m² of slabs or
 * walls. A test is two cylinders of 150 × 300 mm or three of 100 × 200 mm at 28 days.
 *
 * Unknown without volume and surface of the day. Left out: at least five tests for a class in all.
 * Source: ACI 318-19, 26.12.2.1(a) (seen). Example: 60 m³ and 500 m²: two.
 */
export function samplingAci318({ volume, area }: SamplingInput): Worked<Sampling> {
  if (area === undefined) return unknown('area: the surface poured that day, m²')
  const gaps = notAboveZero({ volume, area })
  if (gaps.length > 0) return unknown(...gaps)
  const tests = Math.max(1, Math.ceil(volume / VOLUME - 1e-9), Math.ceil(area / AREA - 1e-9))
  return known({ tests, source: SOURCE }, [
    {
      symbol: 'n',
      formula: 'max(1, ⌈V / 115⌉, ⌈A / 465⌉)',
      given: { V: volume, A: area },
      result: tests,
      unit: '',
      source: SOURCE,
      by: 'search',
    },
  ])
}

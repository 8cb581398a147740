import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { Sampling, SamplingInput } from '../../quality-rules.ts'

const SOURCE: Source = { standard: 'EN 206:2013+A2', clause: 'Table 17', status: 'from memory' }
/** Without certified production control: a sample for each so much concrete, and one a production day. */
const VOLUME = 150

/**
 * Samples of a concrete for a day: one a production day and one for each 150 m³, as without certified control of
 * production, which is the stricter and listed as assumed. The first 50 m³ of a new concrete want three.
 *
 * Unknown without the volume of the day. Source: EN 206:2013+A2, Table 17 (from memory). Example: 60 m³: one.
 */
export function samplingEn206({ volume }: SamplingInput): Worked<Sampling> {
  const gaps = notAboveZero({ volume })
  if (gaps.length > 0) return unknown(...gaps)
  const tests = Math.max(1, Math.ceil(volume / VOLUME - 1e-9))
  return known(
    { tests, source: SOURCE },
    [
      {
        symbol: 'n',
        formula: 'max(1, ⌈V / 150⌉)',
        given: { V: volume },
        result: tests,
        unit: '',
        source: SOURCE,
        by: 'search',
      },
    ],
    [
      {
        field: 'production',
        value: 'control not certified',
        unit: '',
        why: 'nobody said otherwise: with certified control fewer samples are wanted',
      },
    ],
  )
}

import type { Source } from '../../../working/source.ts'
import { known, type Worked } from '../../../working/worked.ts'
import { lapGaps } from '../../lap-limits.ts'
import type { LapInput, LapLength } from '../../steel-rules.ts'
import { RANGE } from './lap.ts'

const DEVELOPMENT: Source = { standard: 'NZS 3101:2006', clause: '8.6', status: 'from memory' }

/**
 * Development of a deformed bar in compression, mm; of the lap no value is confirmed: `length` is null.
 *
 * Unknown outside the ranges of the bar in tension. Example: HD12, 500 MPa in 30 MPa: 241.0 mm.
 */
export function compressionLap(input: LapInput): Worked<LapLength> {
  const gaps = lapGaps(input, RANGE)
  if (gaps.length > 0) return { known: false, gaps }
  const { diameter: db, yield: fy, concrete: fc } = input
  const development = Math.max((0.22 * fy * db) / Math.sqrt(Math.min(fc, 70)), 0.04 * fy * db, 200)
  return known(
    {
      development,
      length: null,
      factors: [],
      gaps: ['length: no confirmed compression lap in NZS 3101'],
      source: DEVELOPMENT,
    },
    [
      {
        symbol: 'Ld',
        formula: 'max(0.22 · fy · db / √(min(fc, 70)), 0.040 · fy · db, 200)',
        given: { fy, db, fc },
        result: development,
        unit: 'mm',
        source: DEVELOPMENT,
        note: 'compression',
      },
    ],
  )
}

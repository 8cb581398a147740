import type { Source } from '../../../working/source.ts'
import { known, type Worked } from '../../../working/worked.ts'
import { lapGaps } from '../../lap-limits.ts'
import type { LapInput, LapLength } from '../../steel-rules.ts'
import { RANGE } from './lap.ts'

const DEVELOPMENT: Source = { standard: 'AS 3600:2018', clause: '13.1.5', status: 'seen' }
const LAP: Source = {
  standard: 'Concrete Institute of Australia Z6-2010',
  clause: 'compression laps',
  status: 'seen',
}

/**
 * Development and lap of a deformed bar in compression, mm; without credit for close fitments.
 *
 * Unknown outside the ranges of the bar in tension. Example: N16 in 40 MPa: 348 and 640 mm.
 */
export function compressionLap(input: LapInput): Worked<LapLength> {
  const gaps = lapGaps(input, RANGE)
  if (gaps.length > 0) return { known: false, gaps }
  const { diameter: db, yield: fsy, concrete: fc } = input
  const development = Math.max((0.22 * fsy * db) / Math.sqrt(Math.min(fc, 65)), 0.0435 * fsy * db, 200)
  const length = Math.max(40 * db, development)
  return known({ development, length, factors: [], gaps: [], source: LAP }, [
    {
      symbol: 'Lsy.c',
      formula: 'max(0.22 · fsy · db / √(min(fc, 65)), 0.0435 · fsy · db, 200)',
      given: { fsy, db, fc },
      result: development,
      unit: 'mm',
      source: DEVELOPMENT,
    },
    {
      symbol: 'Lsy.c.lap',
      formula: 'max(40 · db, Lsy.c)',
      given: { db, 'Lsy.c': development },
      result: length,
      unit: 'mm',
      source: LAP,
    },
  ])
}

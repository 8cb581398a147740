import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import { lapGaps } from '../../lap-limits.ts'
import type { LapInput, LapLength } from '../../steel-rules.ts'
import { usBar } from '../astm/bars.ts'
import { RANGE } from './lap.ts'

const DEVELOPMENT: Source = { standard: 'ACI 318-19', clause: '25.4.9', status: 'from memory' }
const LAP: Source = { standard: 'ACI 318-19', clause: '25.5.5.1', status: 'seen' }

/** 1 psi in MPa. */
const PSI = 0.006894757293168
const INCH = 25.4

const GRADE_60 = 60_000
const GRADE_80 = 80_000

/** Grades are called by round figures: 420 and 550 MPa are 60 and 80 ksi. */
const ROUNDED = 1.02

/**
 * Development and lap of a deformed bar in compression, mm; normal-weight concrete, without credit for ties.
 *
 * `length` is null over grade 80. Unknown for diameters that are no US bar and for No. 14 and 18. Example: No. 8, grade 60: 30 in.
 */
export function compressionLap(input: LapInput): Worked<LapLength> {
  const gaps = lapGaps(input, RANGE)
  if (gaps.length > 0) return { known: false, gaps }
  const bar = usBar(input.diameter)
  if (bar === null) return unknown(`diameter: no US bar within 0.5 mm of ${input.diameter} mm`)
  if (bar.number > 11) return unknown(`diameter: No. ${bar.number} is left to special rules`)
  const db = bar.inches
  const fy = input.yield / PSI
  const fc = input.concrete / PSI
  const root = Math.min(Math.sqrt(fc), 100)
  const development = Math.max((fy * db) / (50 * root), 0.0003 * fy * db, 8) * INCH
  const weak = fc < 3000 * (1 - 1e-9) ? 4 / 3 : 1
  const high = fy > GRADE_60 * ROUNDED
  const [a, b] = high ? [0.0009, 24] : [0.0005, 0]
  const length = Math.max((a * fy - b) * db * weak, 12) * INCH
  const tooStrong = fy > GRADE_80 * ROUNDED
  const value: LapLength = {
    development,
    length: tooStrong ? null : length,
    factors: [],
    gaps: tooStrong ? ['yield: no confirmed compression lap over grade 80'] : [],
    source: LAP,
  }
  return known(value, [
    {
      symbol: 'ldc',
      formula: 'max(fy · db / (50 · root), 0.0003 · fy · db, 8) · 25.4',
      given: { fy, db, root },
      result: development,
      unit: 'mm',
      source: DEVELOPMENT,
    },
    {
      symbol: 'lsc',
      formula: 'max((a · fy − b) · db · k, 12) · 25.4',
      given: { a, fy, b, db, k: weak },
      result: length,
      unit: 'mm',
      source: high || weak > 1 ? { ...LAP, status: 'from memory' } : LAP,
      note: `${high ? 'over grade 60' : 'grade 60 or less'}${weak > 1 ? ', a third more under 3000 psi' : ''}`,
    },
  ])
}

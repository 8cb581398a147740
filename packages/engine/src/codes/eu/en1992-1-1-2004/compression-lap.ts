import type { Source } from '../../../working/source.ts'
import { known, type Worked } from '../../../working/worked.ts'
import type { LapInput, LapLength } from '../../steel-rules.ts'
import { lap } from './lap.ts'

const ANCHORAGE: Source = { standard: 'EN 1992-1-1:2004', clause: '8.4.4(1), (8.7)', status: 'seen' }
const LAP: Source = { standard: 'EN 1992-1-1:2004', clause: '8.7.3(1)', status: 'seen' }

/**
 * Anchorage and lap of a straight ribbed bar in compression, mm: all factors 1 but that of the share lapped.
 *
 * Unknown as the bar in tension is; `length` is null where the bars of the lap do not touch. Example: 12 mm in C30, all lapped: 428.9 and 643.3 mm.
 */
export function compressionLap(input: LapInput): Worked<LapLength> {
  const tension = lap(input)
  if (!tension.known) return tension
  const steps = tension.working.slice(
    0,
    tension.working.findIndex(({ symbol }) => symbol === 'α2'),
  )
  const lb = Number(steps.find(({ symbol }) => symbol === 'lb,rqd')?.result)
  const { diameter: φ, share, apart } = input
  const development = Math.max(lb, 0.6 * lb, 10 * φ, 100)
  const α6 = Math.max(1, Math.min(1.5, Math.sqrt(share / 25)))
  const length = Math.max(α6 * lb, 15 * φ, 200)
  const value: LapLength = {
    development,
    length: apart > 0 ? null : length,
    factors: [{ symbol: 'α6', value: α6 }],
    gaps: apart > 0 ? ['apart: no confirmed compression lap of bars that do not touch'] : [],
    source: LAP,
  }
  return known(value, [
    ...steps,
    {
      symbol: 'lbd',
      formula: 'max(lb, 0.6 · lb, 10 · φ, 100)',
      given: { lb, φ },
      result: development,
      unit: 'mm',
      source: ANCHORAGE,
      note: 'compression',
    },
    {
      symbol: 'l0',
      formula: 'max(α6 · lb, 15 · φ, 200)',
      given: { α6, lb, φ },
      result: length,
      unit: 'mm',
      source: LAP,
      note: 'compression',
    },
  ])
}

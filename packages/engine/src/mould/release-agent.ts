import { notAboveZero } from '../working/guard.ts'
import { commonPractice, GEOMETRY, type Source } from '../working/source.ts'
import { known, unknown, type Worked } from '../working/worked.ts'

export const PUT_ON_RATES: Source = commonPractice(
  'put-on rate of a reactive release agent; the product sheet overrules',
)

/** Put-on rate of a chemically reactive agent by mould face, m²/L, at the thirsty end: what is ordered must suffice. */
const RATES: readonly { readonly word: RegExp; readonly rate: number }[] = [
  { word: /steel/i, rate: 30 },
  { word: /ply|timber|wood/i, rate: 20 },
]

/** m² a litre covers on a face described in words; null where the words name no face that is listed. */
export function putOnRate(face: string): number | null {
  return RATES.find(({ word }) => word.test(face))?.rate ?? null
}

/** Mean film of a put-on rate, µm; rate m²/L. Example: 40 m²/L: 25 µm. */
export function filmThickness(rate: number): number {
  return 1000 / rate
}

/**
 * Release agent for an area, litres. Unknown where area or rate is not above 0. Example: 20.7 m² at 30 m²/L: 0.69 L.
 */
export function releaseAgent({
  area,
  rate,
  source = PUT_ON_RATES,
}: {
  /** m² */
  readonly area: number
  /** m²/L */
  readonly rate: number
  /** Where the rate is from. */
  readonly source?: Source
}): Worked<number> {
  const gaps = notAboveZero({ area, rate })
  if (gaps.length > 0) return unknown(...gaps)
  return known(area / rate, [
    {
      symbol: 'V_oil',
      formula: 'A / r',
      given: { A: area, r: rate },
      result: area / rate,
      unit: 'L',
      source,
    },
    {
      symbol: 't_film',
      formula: '1000 / r',
      given: { r: rate },
      result: filmThickness(rate),
      unit: 'µm',
      source: GEOMETRY,
      note: 'mean film; more pools and stains',
    },
  ])
}

import { type Check, compare } from '../working/check.ts'
import type { Source } from '../working/source.ts'
import { type Assumed, type Step, unknown, type Worked } from '../working/worked.ts'

/** Rate at which precautions start on plain concrete, kg/m²/h; always listed as assumed where none is given. */
export const ASSUMED_DRYING_LIMIT = 1.0
const LIMIT_SOURCE: Source = {
  standard: 'ACI 305R, edition not noted',
  clause: 'plastic shrinkage',
  status: 'seen',
}

export const UNO: Source = { standard: 'Uno, ACI Materials Journal 95-M34', clause: '1998', status: 'seen' }
const MENZEL: Source = {
  standard: 'Menzel formula, ACI 305R, edition not noted',
  clause: '',
  status: 'from memory',
}

export interface DryingInput {
  /** Air, °C */
  readonly air: number
  /** Relative humidity, % */
  readonly humidity: number
  /** Half a metre above the surface, km/h */
  readonly wind: number
  /** Concrete surface, °C */
  readonly concrete: number
  /** kg/m²/h */
  readonly limit?: number | undefined
}

export interface Drying {
  /** By Uno 1998, kg/m²/h; below 0: water condenses. */
  readonly rate: number
  /** By Menzel, kg/m²/h. */
  readonly other: number
  readonly check: Check
}

/** Evaporation by Uno 1998, kg/m²/h; °C, %, km/h. */
export function unoRate({ air, humidity, wind, concrete }: DryingInput): number {
  return 5e-6 * ((concrete + 18) ** 2.5 - (humidity / 100) * (air + 18) ** 2.5) * (wind + 4)
}

/** Saturation pressure of water vapour, kPa, at °C. */
export function saturation(celsius: number): number {
  return 0.61 * Math.exp((17.3 * celsius) / (237.3 + celsius))
}

/** Evaporation by Menzel, kPa and km/h form, kg/m²/h. */
export function menzelRate({ air, humidity, wind, concrete }: DryingInput): number {
  return 0.315 * (saturation(concrete) - (humidity / 100) * saturation(air)) * (0.253 + 0.06 * wind)
}

/**
 * Evaporation from a wet surface, kg/m²/h, by two formulas, and whether it asks for precautions.
 *
 * About ±40 % right (Hover 2020): the tolerable rate is a property of the mix. Unknown where a value is not finite, humidity is
 * outside 0 to 100, wind is below 0, or a temperature is outside −10 to 60 °C. Example: concrete 30, air 25 °C, 50 %, 20 km/h: Uno 1.188,
 * Menzel 1.220.
 */
export function drying(input: DryingInput): Worked<Drying> {
  const gaps = dryingGaps(input)
  if (gaps.length > 0) return unknown(...gaps)
  const { air, humidity, wind, concrete } = input
  const limit = input.limit ?? ASSUMED_DRYING_LIMIT
  const assumed: Assumed[] =
    input.limit === undefined
      ? [{ field: 'limit', value: limit, unit: 'kg/m²/h', why: 'usual line for plain concrete' }]
      : []
  const [rate, other] = [unoRate(input), menzelRate(input)]
  const [ec, ea] = [saturation(concrete), saturation(air)]
  const working: Step[] = [
    {
      symbol: 'E',
      formula: '5 ((Tc + 18)^2.5 − r (Ta + 18)^2.5) (V + 4) / 10⁶',
      given: { Tc: concrete, Ta: air, r: humidity / 100, V: wind },
      result: rate,
      unit: 'kg/m²/h',
      source: UNO,
      note: rate < 0 ? 'below 0: water condenses' : 'about: the estimate is within 40 % at best',
    },
    saturationStep('e_c', concrete, ec),
    saturationStep('e_a', air, ea),
    {
      symbol: 'E_M',
      formula: '0.315 (e_c − r e_a) (0.253 + 0.060 V)',
      given: { e_c: ec, e_a: ea, r: humidity / 100, V: wind },
      result: other,
      unit: 'kg/m²/h',
      source: MENZEL,
    },
  ]
  const check = compare({
    id: 'drying',
    step: 'finish',
    what: 'Evaporation from the fresh surface',
    demand: rate,
    limit,
    unit: 'kg/m²/h',
    sense: 'at most',
    source:
      input.limit === undefined ? LIMIT_SOURCE : { standard: 'entered limit', clause: '', status: 'entered' },
    working,
    assumed,
    note: 'Shade, wind-break, fog or retarder, and cover at once.',
  })
  return { known: true, value: { rate, other, check }, working, assumed }
}

function saturationStep(symbol: string, celsius: number, result: number): Step {
  return {
    symbol,
    formula: '0.61 exp(17.3 T / (237.3 + T))',
    given: { T: celsius },
    result,
    unit: 'kPa',
    source: MENZEL,
  }
}

/** What keeps the formulas from being used; empty where they may be. */
export function dryingGaps({ air, humidity, wind, concrete, limit }: DryingInput): string[] {
  const gaps: string[] = []
  if (!(air >= -10 && air <= 60)) gaps.push('air: the formulas are used from −10 to 60 °C')
  if (!(concrete >= -10 && concrete <= 60)) gaps.push('concrete: the formulas are used from −10 to 60 °C')
  if (!(humidity >= 0 && humidity <= 100)) gaps.push('humidity: 0 to 100 %')
  if (!(wind >= 0 && Number.isFinite(wind))) gaps.push('wind: not below 0 km/h')
  if (limit !== undefined && !(limit > 0 && Number.isFinite(limit))) gaps.push('limit: above 0 kg/m²/h')
  return gaps
}

import { notAboveZero } from '../working/guard.ts'
import type { Assumed, Step } from '../working/worked.ts'
import { assumedWeight, headOfWeight } from './hydrostatic.ts'
import { assume, type ElementKind, type PressureFound } from './pressure-found.ts'

const SOURCE = { standard: 'CIRIA Report 108', clause: '1985', status: 'seen' } as const

const LARGEST_RATE = 10
const COLDEST = 5
const WARMEST = 30

export interface Ciria108Input {
  /** Height of form and of pour, mm. */
  readonly height: number
  /** m/h */
  readonly rate?: number | undefined
  /** °C */
  readonly temperature?: number | undefined
  /** kN/m³ */
  readonly weight?: number | undefined
  readonly kind?: ElementKind | undefined
  readonly c1?: number | undefined
  readonly c2?: number | undefined
}

/** Bare formula, kPa, before the full head caps it; height m, rate m/h, temperature °C. Null where C1 √R is over the height. */
export function ciriaPressure({
  height,
  rate,
  temperature,
  weight,
  c1,
  c2,
}: {
  readonly height: number
  readonly rate: number
  readonly temperature: number
  readonly weight: number
  readonly c1: number
  readonly c2: number
}): number | null {
  const rise = c1 * Math.sqrt(rate)
  if (rise > height) return null
  return weight * (rise + c2 * (36 / (temperature + 16)) ** 2 * Math.sqrt(height - rise))
}

/**
 * Lateral pressure by CIRIA Report 108, internal vibration, kPa: D [C1 √R + C2 K √(H − C1 √R)] with K = (36/(T + 16))², never over
 * D h.
 *
 * Unknown without rate or temperature, over 10 m/h and outside 5 to 30 °C. Form height and pour height are taken as equal.
 * Example: D 25, H 9.05 m, R 1, T 12.5, C1 1.5, C2 0.45: K 1.60, 86.82 kPa.
 */
export function ciria108(input: Ciria108Input): PressureFound {
  const assumed: Assumed[] = []
  const weight = assumedWeight(assumed, input.weight)
  const c1 = coefficientOfShape(assumed, input)
  const c2 = assume(assumed, input.c2, {
    field: 'c2',
    value: 0.3,
    unit: '',
    why: 'Portland cement without retarder; 0.45 with retarder or for blends, 0.60 for blends with retarder',
  })
  const sizes = notAboveZero({ height: input.height, weight, c1, c2 })
  const base = { source: SOURCE, assumed }
  if (sizes.length > 0) return { ...base, maximum: null, hydrostatic: null, working: [], unknown: sizes }

  const head = headOfWeight(weight, input.height)
  const { rate, temperature } = input
  const gaps = rangeGaps(rate, temperature)
  if (gaps.length > 0 || rate === undefined || temperature === undefined) {
    return { ...base, maximum: null, hydrostatic: head.result, working: [head], unknown: gaps }
  }
  const height = input.height / 1000
  const value = ciriaPressure({ height, rate, temperature, weight, c1, c2 })
  if (value === null) {
    const whole: Step = {
      symbol: 'p_max',
      formula: 'p_h',
      given: { p_h: head.result },
      result: head.result,
      unit: 'kPa',
      source: SOURCE,
      note: 'C1 √R is over the height: full head',
    }
    return { ...base, maximum: head.result, hydrostatic: head.result, working: [head, whole], unknown: [] }
  }
  const k = (36 / (temperature + 16)) ** 2
  const maximum = Math.min(head.result, value)
  return {
    ...base,
    maximum,
    hydrostatic: head.result,
    working: [
      head,
      {
        symbol: 'K',
        formula: '(36 / (T + 16))²',
        given: { T: temperature },
        result: k,
        unit: '',
        source: SOURCE,
      },
      {
        symbol: 'p_r',
        formula: 'D (C1 √R + C2 K √(H − C1 √R))',
        given: { D: weight, C1: c1, C2: c2, K: k, R: rate, H: height },
        result: value,
        unit: 'kPa',
        source: SOURCE,
      },
      {
        symbol: 'p_max',
        formula: 'min(p_h, p_r)',
        given: { p_h: head.result, p_r: value },
        result: maximum,
        unit: 'kPa',
        source: SOURCE,
        note: maximum === value ? 'formula governs' : 'full head governs',
      },
    ],
    unknown: [],
  }
}

function coefficientOfShape(assumed: Assumed[], input: Ciria108Input): number {
  if (input.c1 !== undefined) return input.c1
  const kind = assume<ElementKind>(assumed, input.kind, {
    field: 'kind',
    value: 'wall',
    unit: '',
    why: 'no kind given',
  })
  return assume(assumed, undefined, {
    field: 'c1',
    value: kind === 'wall' ? 1 : 1.5,
    unit: '',
    why: `coefficient of a ${kind}`,
  })
}

function rangeGaps(rate: number | undefined, temperature: number | undefined): string[] {
  const gaps: string[] = []
  if (rate === undefined) gaps.push('rate: rate of rise, m/h')
  else if (!(rate > 0 && rate <= LARGEST_RATE))
    gaps.push(`rate: the report holds above 0 and up to ${LARGEST_RATE} m/h`)
  if (temperature === undefined) gaps.push('temperature: concrete temperature, °C')
  else if (!(temperature >= COLDEST && temperature <= WARMEST))
    gaps.push(`temperature: the report holds from ${COLDEST} to ${WARMEST} °C`)
  return gaps
}

import { notAboveZero } from '../working/guard.ts'
import type { Assumed, Step } from '../working/worked.ts'
import { assumedWeight, headOfWeight } from './hydrostatic.ts'
import { assume, type PressureFound } from './pressure-found.ts'

const SOURCE = {
  standard: 'DIN 18218:2010',
  clause: 'pressure by flow class',
  status: 'from memory',
} as const

export const DIN_FLOWS = ['F1', 'F2', 'F3', 'F4', 'F5', 'F6', 'SCC'] as const
export type DinFlow = (typeof DIN_FLOWS)[number]

/** Reference temperature of the formulas, °C. */
const REFERENCE = 15
const LARGEST_RATE = 7
const SETTING_RANGE = [5, 20] as const

/** σ = (a v + b) K1, K1 = 1 + k (t_E − 5). */
const STIFF: Readonly<Record<'F1' | 'F2' | 'F3' | 'F4', { a: number; b: number; k: number }>> = {
  F1: { a: 5, b: 21, k: 0.03 },
  F2: { a: 10, b: 19, k: 0.053 },
  F3: { a: 14, b: 18, k: 0.077 },
  F4: { a: 17, b: 17, k: 0.14 },
}

/** σ = 25 + a v K1, K1 = t_E / 5. */
const FLOWING: Readonly<Record<'F5' | 'F6' | 'SCC', { a: number }>> = {
  F5: { a: 30 },
  F6: { a: 38 },
  SCC: { a: 33 },
}

const LEAST_STIFF = 25
const LEAST_FLOWING = 30

export interface Din18218Input {
  /** mm */
  readonly height: number
  /** m/h */
  readonly rate?: number | undefined
  /** °C */
  readonly temperature?: number | undefined
  /** kN/m³ */
  readonly weight?: number | undefined
  readonly flow?: DinFlow | undefined
  /** End of setting, h. */
  readonly setting?: number | undefined
}

/** Bare formula at 25 kN/m³, lower bound included, full head not: kPa; rate m/h, setting h. */
export function dinPressure(flow: DinFlow, rate: number, setting: number): number {
  if (isFlowing(flow)) return Math.max(LEAST_FLOWING, 25 + (FLOWING[flow].a * rate * setting) / 5)
  const { a, b, k } = STIFF[flow]
  return Math.max(LEAST_STIFF, (a * rate + b) * (1 + k * (setting - 5)))
}

/**
 * Lateral pressure by DIN 18218:2010, internal vibration, kPa, never over γ h.
 *
 * Unknown without a rate, over 7 m/h, for an end of setting outside 5 to 20 h, and for concrete known to be colder than 15 °C: the
 * addition for cold concrete has no confirmed value. Warmer concrete gets no reduction, so the temperature is not
 * needed for it.
 */
export function din18218(input: Din18218Input): PressureFound {
  const assumed: Assumed[] = []
  const weight = assumedWeight(assumed, input.weight)
  const flow = assume<DinFlow>(assumed, input.flow, {
    field: 'flow',
    value: 'F3',
    unit: '',
    why: 'no flow class given',
  })
  const setting = assume(assumed, input.setting, {
    field: 'setting',
    value: 5,
    unit: 'h',
    why: 'no end of setting given; a later one raises the pressure',
  })
  const base = { source: SOURCE, assumed }
  const sizes = notAboveZero({ height: input.height, weight, setting })
  if (sizes.length > 0) return { ...base, maximum: null, hydrostatic: null, working: [], unknown: sizes }

  const head = headOfWeight(weight, input.height)
  const { rate } = input
  const gaps = rangeGaps(rate, setting, input.temperature)
  if (gaps.length > 0 || rate === undefined) {
    return { ...base, maximum: null, hydrostatic: head.result, working: [head], unknown: gaps }
  }
  const steps = formulaSteps(flow, rate, setting, weight)
  const value = steps.value
  const maximum = Math.min(head.result, value)
  return {
    ...base,
    maximum,
    hydrostatic: head.result,
    working: [
      head,
      ...steps.working,
      {
        symbol: 'p_max',
        formula: 'min(p_h, p_r)',
        given: { p_h: head.result, p_r: value },
        result: maximum,
        unit: 'kPa',
        source: SOURCE,
        note: `${maximum === value ? 'formula governs' : 'full head governs'}; holds for concrete at ${REFERENCE} °C or warmer`,
      },
    ],
    unknown: [],
  }
}

function formulaSteps(
  flow: DinFlow,
  rate: number,
  setting: number,
  weight: number,
): { readonly value: number; readonly working: readonly Step[] } {
  const value = (dinPressure(flow, rate, setting) * weight) / 25
  const common = { unit: 'kPa', source: SOURCE } as const
  if (isFlowing(flow)) {
    const { a } = FLOWING[flow]
    return {
      value,
      working: [
        {
          symbol: 'K1',
          formula: 't_E / 5',
          given: { t_E: setting },
          result: setting / 5,
          unit: '',
          source: SOURCE,
        },
        {
          ...common,
          symbol: 'p_r',
          formula: 'max(30, 25 + a v K1) γ / 25',
          given: { a, v: rate, K1: setting / 5, γ: weight },
          result: value,
          note: `class ${flow}`,
        },
      ],
    }
  }
  const { a, b, k } = STIFF[flow]
  const k1 = 1 + k * (setting - 5)
  return {
    value,
    working: [
      {
        symbol: 'K1',
        formula: '1 + k (t_E − 5)',
        given: { k, t_E: setting },
        result: k1,
        unit: '',
        source: SOURCE,
      },
      {
        ...common,
        symbol: 'p_r',
        formula: 'max(25, (a v + b) K1) γ / 25',
        given: { a, b, v: rate, K1: k1, γ: weight },
        result: value,
        note: `class ${flow}`,
      },
    ],
  }
}

function isFlowing(flow: DinFlow): flow is 'F5' | 'F6' | 'SCC' {
  return flow === 'F5' || flow === 'F6' || flow === 'SCC'
}

function rangeGaps(rate: number | undefined, setting: number, temperature: number | undefined): string[] {
  const gaps: string[] = []
  if (rate === undefined) gaps.push('rate: rate of rise, m/h')
  else if (!(rate > 0 && rate <= LARGEST_RATE))
    gaps.push(`rate: the standard holds above 0 and up to ${LARGEST_RATE} m/h`)
  if (setting < SETTING_RANGE[0] || setting > SETTING_RANGE[1])
    gaps.push(`setting: the standard holds from ${SETTING_RANGE[0]} to ${SETTING_RANGE[1]} h`)
  if (temperature !== undefined && !(temperature >= REFERENCE))
    gaps.push(`temperature: colder than ${REFERENCE} °C raises the pressure; no confirmed value`)
  return gaps
}

import { belowZero, notAboveZero } from '../working/guard.ts'
import { commonPractice, STATICS } from '../working/source.ts'
import { type Assumed, known, type Step, unknown, type Worked } from '../working/worked.ts'

/** On the net uplift, against vibration and what is not seen. Common practice, no source. */
export const UPLIFT_FACTOR = 1.5

/** Weight of fresh concrete as a fluid, kN/m³. */
const FLUID = 24
const G = 9.80665

export interface VoidFormerInput {
  /** Volume that it takes from the concrete, m³. */
  readonly volume: number
  /** Mass of the former itself, kg. */
  readonly mass: number
  /** Concrete gets underneath; a blockout sealed to the bed has no uplift. */
  readonly floats: boolean
  /** kN/m³; 24 assumed. */
  readonly weight?: number | undefined
  readonly factor?: number | undefined
  /** Working load of one strap or tie-down, kN; without it their number is not known. */
  readonly strap?: number | undefined
}

export interface VoidFormer {
  /** Of the fluid alone, kN. */
  readonly gross: number
  /** Less the former's own weight, not below 0, kN. */
  readonly net: number
  /** To be held down, kN. */
  readonly hold: number
  /** Straps; null where their load is not given. */
  readonly straps: number | null
}

/**
 * Uplift of a void former or duct while the concrete is fluid under vibration, and what must hold it down. Unknown for a volume that is not above 0 or a mass below 0.
 *
 * Left out: bending of the former between straps; the peak comes as the concrete just covers it, and pouring in two layers halves it. Example: foam block 1.0 × 0.6 × 0.1 m of 20 kg/m³:
 * 1.440 kN gross, 1.428 net, 2.142 to hold.
 */
export function voidFormer({
  volume,
  mass,
  floats,
  weight: given,
  factor: asked,
  strap,
}: VoidFormerInput): Worked<VoidFormer> {
  const assumed: Assumed[] = []
  const weight = given ?? FLUID
  const factor = asked ?? UPLIFT_FACTOR
  if (given === undefined)
    assumed.push({ field: 'weight', value: FLUID, unit: 'kN/m³', why: 'fresh concrete as a fluid' })
  if (asked === undefined)
    assumed.push({ field: 'factor', value: UPLIFT_FACTOR, unit: '', why: 'usual factor on the net uplift' })
  const gaps = [
    ...notAboveZero({ volume, weight, factor, ...(strap === undefined ? {} : { strap }) }),
    ...belowZero({ mass }),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const gross = floats ? weight * volume : 0
  const net = Math.max(0, gross - (mass * G) / 1000)
  const hold = factor * net
  const working: Step[] = [
    floats
      ? {
          symbol: 'U',
          formula: 'γ V',
          given: { γ: weight, V: volume },
          result: gross,
          unit: 'kN',
          source: STATICS,
        }
      : {
          symbol: 'U',
          formula: 'sealed to the bed',
          given: {},
          result: 0,
          unit: 'kN',
          source: STATICS,
          by: 'table',
        },
    {
      symbol: 'U_net',
      formula: 'max(0, U − m g / 1000)',
      given: { U: gross, m: mass, g: G },
      result: net,
      unit: 'kN',
      source: STATICS,
    },
    {
      symbol: 'F',
      formula: 'f U_net',
      given: { f: factor, U_net: net },
      result: hold,
      unit: 'kN',
      source: commonPractice('hold-down of void formers'),
    },
  ]
  return known(
    { gross, net, hold, straps: strap === undefined ? null : Math.ceil(hold / strap - 1e-9) },
    working,
    assumed,
  )
}

/** Net push on a former that stands between unequal heads of fresh concrete, kN a metre; heads mm, weight kN/m³. */
export function unequalPush({
  high,
  low,
  weight = FLUID,
}: {
  readonly high: number
  readonly low: number
  readonly weight?: number
}): Worked<number> {
  const gaps = [...belowZero({ high, low }), ...notAboveZero({ weight })]
  if (low > high) gaps.push('low: not above high')
  if (gaps.length > 0) return unknown(...gaps)
  const push = (weight * ((high / 1000) ** 2 - (low / 1000) ** 2)) / 2
  return known(push, [
    {
      symbol: 'P',
      formula: 'γ ((h / 1000)² − (l / 1000)²) / 2',
      given: { γ: weight, h: high, l: low },
      result: push,
      unit: 'kN/m',
      source: STATICS,
    },
  ])
}

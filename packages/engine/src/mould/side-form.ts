import { type Check, compare } from '../working/check.ts'
import { notAboveZero } from '../working/guard.ts'
import { commonPractice, type Source, STATICS } from '../working/source.ts'
import { type Assumed, type Step, unknown, type Worked } from '../working/worked.ts'
import { assumedWeight } from './hydrostatic.ts'
import { assume } from './pressure-found.ts'

/** Equal spans of the rail between props: 3 stands for three or more. */
export type SpanCount = 1 | 2 | 3

/** Bow limit where none is given, mm; always listed as assumed. */
export const ASSUMED_BOW_LIMIT = 1.5

export const BOW_LIMIT_SOURCE: Source = commonPractice('bow of a side form between props on visible edges')

/**
 * Largest bow over w L⁴ / (E I) of a rail on equal spans under an even load, by the three-moment equation: middle of a simple
 * span, 0.4215 L of two spans, 0.446 L in the end span of three. Computed; second method: root of the slope by bisection.
 */
export const BOW_COEFFICIENT: Readonly<Record<SpanCount, number>> = {
  1: 5 / 384,
  2: 0.00541612160583,
  3: 0.00688421328021,
}

export interface SideFormInput {
  /** Depth of fresh concrete against the form, mm. */
  readonly thickness: number
  /** MPa */
  readonly modulus: number
  /** mm⁴, bending sideways */
  readonly inertia: number
  /** Between props, mm. */
  readonly spacing: number
  readonly spans: SpanCount
  /** kN/m³ */
  readonly weight?: number | undefined
  /** Largest bow, mm. */
  readonly limit?: number | undefined
}

export interface SideForm {
  /** Line load on the rail, kN/m, acting at a third of the depth. */
  readonly thrust: number
  /** Overturning about the bed, kN·m/m. */
  readonly overturning: number
  /** mm */
  readonly bow: number
  /** Longest spacing at which the bow meets its limit, mm. */
  readonly spacingAtLimit: number
  readonly check: Check
}

const BEYOND =
  'thickness, modulus, inertia, spacing, weight, limit: sizes of a rail; these are beyond computing'

/** Line load of a triangular head on a side form, kN/m; thickness mm, weight kN/m³. */
export function sideThrust(thickness: number, weight: number): number {
  return (weight * (thickness / 1000) ** 2) / 2
}

/** Bow between props, mm; thrust kN/m (= N/mm), modulus MPa, inertia mm⁴, spacing mm. */
export function railBow(
  spans: SpanCount,
  thrust: number,
  rail: { readonly modulus: number; readonly inertia: number },
  spacing: number,
): number {
  return (BOW_COEFFICIENT[spans] * thrust * spacing ** 4) / (rail.modulus * rail.inertia)
}

/** Spacing at which the bow is `limit`, mm. */
export function spacingForBow(
  spans: SpanCount,
  thrust: number,
  rail: { readonly modulus: number; readonly inertia: number },
  limit: number,
): number {
  return ((limit * rail.modulus * rail.inertia) / (BOW_COEFFICIENT[spans] * thrust)) ** 0.25
}

/**
 * Thrust, bow and longest prop spacing of the side form of a flat mould under the full head.
 *
 * The rail is taken as held at props only, the whole thrust on it as an even line load. Left out: a screed or a person
 * leaning on it, slip of magnets, twist of the rail, strength of rail and props.
 *
 * Unknown where a size is missing or not above 0, or so far from any rail that its numbers overflow. Example: 150 mm, 25 kN/m³, E 8000, I 1 139 000, L 1000, one span: 0.2812 kN/m,
 * 0.402 mm.
 */
export function sideForm(input: SideFormInput): Worked<SideForm> {
  const assumed: Assumed[] = []
  const weight = assumedWeight(assumed, input.weight)
  const limit = assume(assumed, input.limit, {
    field: 'limit',
    value: ASSUMED_BOW_LIMIT,
    unit: 'mm',
    why: 'usual yard limit on visible edges',
  })
  const { thickness, modulus, inertia, spacing, spans } = input
  const gaps = notAboveZero({ thickness, modulus, inertia, spacing, weight, limit })
  const k: number | undefined = BOW_COEFFICIENT[spans]
  if (k === undefined) gaps.push('spans: 1, 2 or 3')
  if (gaps.length > 0 || k === undefined) return unknown(...gaps)

  const thrust = sideThrust(thickness, weight)
  const overturning = (weight * (thickness / 1000) ** 3) / 6
  const bow = railBow(spans, thrust, { modulus, inertia }, spacing)
  const spacingAtLimit = spacingForBow(spans, thrust, { modulus, inertia }, limit)
  if (![thrust, overturning, bow, spacingAtLimit].every(Number.isFinite)) return unknown(BEYOND)
  const working: Step[] = [
    {
      symbol: 'w',
      formula: 'γ (t / 1000)² / 2',
      given: { γ: weight, t: thickness },
      result: thrust,
      unit: 'kN/m',
      source: STATICS,
    },
    {
      symbol: 'm',
      formula: 'γ (t / 1000)³ / 6',
      given: { γ: weight, t: thickness },
      result: overturning,
      unit: 'kN·m/m',
      source: STATICS,
      note: 'about the bed; braces or magnets must hold it',
    },
    {
      symbol: 'δ',
      formula: 'k w L⁴ / (E I)',
      given: { k, w: thrust, L: spacing, E: modulus, I: inertia },
      result: bow,
      unit: 'mm',
      source: STATICS,
      note:
        spans === 3 ? 'three or more equal spans, end span' : `${spans} equal span${spans === 1 ? '' : 's'}`,
    },
    {
      symbol: 'L_max',
      formula: '(δ_lim E I / (k w))^0.25',
      given: { δ_lim: limit, E: modulus, I: inertia, k, w: thrust },
      result: spacingAtLimit,
      unit: 'mm',
      source: STATICS,
    },
  ]
  const check = compare({
    id: 'side-form-bow',
    step: 'mould',
    what: 'Bow of the side form between props',
    demand: bow,
    limit,
    unit: 'mm',
    sense: 'at most',
    source:
      input.limit === undefined
        ? BOW_LIMIT_SOURCE
        : { ...BOW_LIMIT_SOURCE, standard: 'entered limit', status: 'entered', clause: '' },
    working,
    assumed,
  })
  return { known: true, value: { thrust, overturning, bow, spacingAtLimit, check }, working, assumed }
}

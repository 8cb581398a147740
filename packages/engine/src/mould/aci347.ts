import { GRAVITY } from '../panel/panel.ts'
import { notAboveZero } from '../working/guard.ts'
import { STATICS } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import { assume, type ElementKind, type PressureFound } from './pressure-found.ts'

const SOURCE = { standard: 'ACI 347R-14', clause: '4.2.2.1', status: 'from memory' } as const

/** Limits of the two wall formulas, m/h and m. At an edge the lower range's formula holds. */
const SLOW = 2.1
const FAST = 4.5
const LOW_WALL = 4.2
/** Floor of the reduced formulas, kPa times Cw: the SI text, not the conversion of 600 psf. */
const FLOOR = 30

export interface Aci347Input {
  /** mm */
  readonly height: number
  /** m/h */
  readonly rate?: number | undefined
  /** °C */
  readonly temperature?: number | undefined
  /** kg/m³ */
  readonly density?: number | undefined
  readonly kind?: ElementKind | undefined
  readonly cw?: number | undefined
  readonly cc?: number | undefined
}

/**
 * Unit-weight coefficient Cw of a density, kg/m³: 0.5 (1 + ρ/2320) but not below 0.80 under 2240, 1 up to 2400, ρ/2320 above;
 * it steps at 2400.
 */
export function unitWeightCoefficient(density: number): number {
  if (density < 2240) return Math.max(0.8, 0.5 * (1 + density / 2320))
  return density <= 2400 ? 1 : density / 2320
}

/** Bare formula for slow and low walls and for columns, kPa; rate m/h, temperature °C. */
export function slowPour(rate: number, temperature: number, cw: number, cc: number): number {
  return cw * cc * (7.2 + (785 * rate) / (temperature + 17.8))
}

/** Bare formula for high or faster walls, kPa; rate m/h, temperature °C. */
export function fastPour(rate: number, temperature: number, cw: number, cc: number): number {
  return cw * cc * (7.2 + 1156 / (temperature + 17.8) + (244 * rate) / (temperature + 17.8))
}

/**
 * Rate of rise at which the slow-wall formula gives `pressure`, m/h. Null where that comes out at or above 2.1 m/h or
 * not above 0: the formula does not hold there.
 */
export function largestRise({
  pressure,
  temperature,
  cw,
  cc,
}: {
  readonly pressure: number
  readonly temperature: number
  readonly cw: number
  readonly cc: number
}): number | null {
  const rate = ((pressure / (cw * cc) - 7.2) * (temperature + 17.8)) / 785
  return rate > 0 && rate < SLOW ? rate : null
}

/**
 * Lateral pressure by ACI 347R-14, internal vibration, slump up to 175 mm, kPa.
 *
 * Unknown without rate or temperature. Walls rising faster than 4.5 m/h take the full head. Example: wall, 1.5 m/h, 20 °C, 3 m,
 * 2400 kg/m³: 7.2 + 785·1.5/37.8 = 38.35 kPa.
 */
export function aci347(input: Aci347Input): PressureFound {
  const assumed: Assumed[] = []
  const density = assume(assumed, input.density, {
    field: 'density',
    value: 2400,
    unit: 'kg/m³',
    why: 'usual density of normal-weight concrete',
  })
  const kind = assume<ElementKind>(assumed, input.kind, {
    field: 'kind',
    value: 'wall',
    unit: '',
    why: 'no kind given',
  })
  const cw = assume(assumed, input.cw, {
    field: 'cw',
    value: unitWeightCoefficient(density),
    unit: '',
    why: 'unit-weight coefficient from the density',
  })
  const cc = assume(assumed, input.cc, {
    field: 'cc',
    value: 1,
    unit: '',
    why: 'chemistry coefficient of cement without slag, ash or retarder',
  })
  const sizes = notAboveZero({ height: input.height, density, cw, cc })
  if (sizes.length > 0) return notKnown(null, [], assumed, sizes)

  const head: Step & { result: number } = {
    symbol: 'p_h',
    formula: 'ρ g h / 10⁶',
    given: { ρ: density, g: GRAVITY, h: input.height },
    result: (density * GRAVITY * input.height) / 1e6,
    unit: 'kPa',
    source: STATICS,
  }
  const { rate, temperature } = input
  const gaps = [
    ...(rate === undefined ? ['rate: rate of rise, m/h'] : notAboveZero({ rate })),
    ...(temperature === undefined || !Number.isFinite(temperature)
      ? ['temperature: concrete temperature, °C']
      : temperature < 0
        ? ['temperature: the rule does not hold below 0 °C']
        : []),
  ]
  if (gaps.length > 0 || rate === undefined || temperature === undefined) {
    return notKnown(head.result, [head], assumed, gaps)
  }
  if (kind === 'wall' && rate > FAST) {
    const whole: Step = {
      symbol: 'p_max',
      formula: 'p_h',
      given: { p_h: head.result },
      result: head.result,
      unit: 'kPa',
      source: SOURCE,
      note: `wall rising faster than ${FAST} m/h: full head`,
    }
    return found(head.result, head.result, [head, whole], assumed)
  }
  const slow = kind === 'column' || (rate <= SLOW && input.height / 1000 <= LOW_WALL)
  const value = slow ? slowPour(rate, temperature, cw, cc) : fastPour(rate, temperature, cw, cc)
  const reduced: Step = {
    symbol: 'p_r',
    formula: slow
      ? 'Cw Cc (7.2 + 785 R / (T + 17.8))'
      : 'Cw Cc (7.2 + 1156 / (T + 17.8) + 244 R / (T + 17.8))',
    given: { Cw: cw, Cc: cc, R: rate, T: temperature },
    result: value,
    unit: 'kPa',
    source: SOURCE,
    note: branchNote(kind, slow),
  }
  const maximum = Math.min(head.result, Math.max(FLOOR * cw, value))
  const governing: Step = {
    symbol: 'p_max',
    formula: 'min(p_h, max(30 Cw, p_r))',
    given: { p_h: head.result, Cw: cw, p_r: value },
    result: maximum,
    unit: 'kPa',
    source: SOURCE,
    note:
      maximum === head.result ? 'full head governs' : maximum === value ? 'formula governs' : 'floor governs',
  }
  return found(maximum, head.result, [head, reduced, governing], assumed)
}

function branchNote(kind: ElementKind, slow: boolean): string {
  if (kind === 'column') return 'column: no side over 2.0 m in plan'
  return slow
    ? `wall, up to ${SLOW} m/h and up to ${LOW_WALL} m`
    : `wall, over ${LOW_WALL} m high or rising at ${SLOW} to ${FAST} m/h`
}

function found(
  maximum: number,
  hydrostatic: number,
  working: readonly Step[],
  assumed: readonly Assumed[],
): PressureFound {
  return { maximum, hydrostatic, source: SOURCE, working, assumed, unknown: [] }
}

function notKnown(
  hydrostatic: number | null,
  working: readonly Step[],
  assumed: readonly Assumed[],
  gaps: readonly string[],
): PressureFound {
  return { maximum: null, hydrostatic, source: SOURCE, working, assumed, unknown: gaps }
}

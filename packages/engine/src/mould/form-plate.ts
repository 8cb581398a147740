import { notAboveZero } from '../working/guard.ts'
import { STATICS } from '../working/source.ts'
import type { Assumed } from '../working/worked.ts'
import { known, unknown, type Worked } from '../working/worked.ts'
import { assumedWeight } from './hydrostatic.ts'

export interface FormPlateInput {
  /** Depth of fresh concrete, mm. */
  readonly thickness: number
  /** Of the plate, mm. */
  readonly plate: number
  /** MPa */
  readonly modulus: number
  /** `foot`: it stands fixed at the bed and is free above; `both`: held at the bed and at the top edge. */
  readonly held: 'foot' | 'both'
  /** kN/m³; 25 assumed. */
  readonly weight?: number | undefined
}

export interface FormPlate {
  /** mm: at the top edge, or the largest between its edges. */
  readonly bow: number
  /** Largest bending stress, MPa. */
  readonly stress: number
}

/** Largest moment over p0 t² and bow over p0 t⁴ / E I of a plate held at both edges under a triangle of pressure. */
export const STRIP_HELD = { moment: 1 / (9 * Math.sqrt(3)), bow: 0.0065222 } as const

/**
 * A thin upright form plate under the triangle of pressure of fresh concrete, a strip 1 m wide. Unknown for sizes that are not above 0. Example: steel plate of
 * 5 mm standing 200 mm: 0.128 mm, 8.0 MPa.
 */
export function formPlate({
  thickness,
  plate,
  modulus,
  held,
  weight: given,
}: FormPlateInput): Worked<FormPlate> {
  const assumed: Assumed[] = []
  const weight = assumedWeight(assumed, given)
  const gaps = notAboveZero({ thickness, plate, modulus, weight })
  if (gaps.length > 0) return unknown(...gaps)
  const pressure = (weight * thickness) / 1e6 // MPa at the bed
  const inertia = plate ** 3 / 12 // mm⁴ a mm of width
  const factors = held === 'foot' ? { moment: 1 / 6, bow: 1 / 30 } : STRIP_HELD
  const moment = factors.moment * pressure * thickness ** 2
  const stress = (6 * moment) / plate ** 2
  const bow = (factors.bow * pressure * thickness ** 4) / (modulus * inertia)
  return known(
    { bow, stress },
    [
      {
        symbol: 'p0',
        formula: 'γ t / 10⁶',
        given: { γ: weight, t: thickness },
        result: pressure,
        unit: 'MPa',
        source: STATICS,
      },
      {
        symbol: 'σ',
        formula: '6 k p0 t² / s²',
        given: { k: factors.moment, p0: pressure, t: thickness, s: plate },
        result: stress,
        unit: 'MPa',
        source: STATICS,
      },
      {
        symbol: 'δ',
        formula: '12 c p0 t⁴ / (E s³)',
        given: { c: factors.bow, p0: pressure, t: thickness, E: modulus, s: plate },
        result: bow,
        unit: 'mm',
        source: STATICS,
      },
    ],
    assumed,
  )
}

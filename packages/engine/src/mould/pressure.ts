import { aci347 } from './aci347.ts'
import { ciria108 } from './ciria108.ts'
import { type DinFlow, din18218 } from './din18218.ts'
import { hydrostatic } from './hydrostatic.ts'
import type { ElementKind, PressureFound } from './pressure-found.ts'

export const PRESSURE_METHODS = ['hydrostatic', 'aci347', 'ciria108', 'din18218'] as const
export type PressureMethod = (typeof PRESSURE_METHODS)[number]

export interface PressureInput {
  readonly method: PressureMethod
  /** Height of fresh concrete, mm; above 0. */
  readonly height: number
  /** Rate of rise, m/h. Never assumed. */
  readonly rate?: number | undefined
  /** Concrete temperature, °C. Never assumed. */
  readonly temperature?: number | undefined
  /** Density of the mix, kg/m³: aci347 only. */
  readonly density?: number | undefined
  /** Weight density, kN/m³: the other methods. */
  readonly weight?: number | undefined
  /** Column: no side over 2 m in plan. */
  readonly kind?: ElementKind | undefined
  readonly cw?: number | undefined
  readonly cc?: number | undefined
  readonly c1?: number | undefined
  readonly c2?: number | undefined
  readonly flow?: DinFlow | undefined
  /** End of setting, h. */
  readonly setting?: number | undefined
}

/**
 * Largest lateral pressure of fresh concrete on a mould, kPa, and the fluid head it never exceeds.
 *
 * Unknown where rate or temperature is missing or outside the method's range; `hydrostatic` is still given then. Left
 * out: external vibration, pumping from below, self-compacting mixes unless DIN 18218 is chosen: design those for the
 * full head.
 */
export function pressure(input: PressureInput): PressureFound {
  switch (input.method) {
    case 'hydrostatic':
      return hydrostatic(input)
    case 'aci347':
      return aci347(input)
    case 'ciria108':
      return ciria108(input)
    case 'din18218':
      return din18218(input)
  }
}

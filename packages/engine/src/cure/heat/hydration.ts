import type { Source } from '../../working/source.ts'
import { GAS_CONSTANT, ICE_POINT } from '../age-method.ts'

export const HYDRATION_SOURCE: Source = {
  standard: 'Schindler and Folliard, ACI Materials Journal 102-M04, 2005',
  clause: 'degree of hydration of three parameters',
  status: 'from memory',
}

/** How a binder gives off its heat. */
export interface Hydration {
  /** Binder, kg/m³; 0 gives no heat. */
  readonly binder: number
  /** Heat of all of it, J/g. */
  readonly heat: number
  /** Degree of hydration in the end, above 0 and at most 1. */
  readonly ultimate: number
  /** Time parameter, h at the reference temperature. */
  readonly tau: number
  /** Shape parameter. */
  readonly beta: number
  /** Activation energy, J/mol. */
  readonly activation: number
  /** Temperature that tau and the activation energy belong to, °C. */
  readonly reference: number
}

/** Beyond this power of e the degree is 0 to the last digit of a double. */
const NOTHING_YET = 700

/**
 * Degree of hydration at an equivalent age, h: αu exp(−(τ/te)^β), and 0 at no age, its limit.
 *
 * Source: Schindler and Folliard 2005 (from memory). Example: αu 0.70, τ 14 h, β 0.90, te 14 h: 0.2575.
 */
export function degreeAt(hydration: Hydration, age: number): number {
  const power = age > 0 ? (hydration.tau / age) ** hydration.beta : Number.POSITIVE_INFINITY
  return power < NOTHING_YET ? hydration.ultimate * Math.exp(-power) : 0
}

/** Hours of age gained in one hour at a temperature, °C, by the activation energy. */
export function agingAt({ activation, reference }: Hydration, celsius: number): number {
  return Math.exp((activation / GAS_CONSTANT) * (1 / (reference + ICE_POINT) - 1 / (celsius + ICE_POINT)))
}

/** Rise of temperature, K, of concrete that loses no heat, at an equivalent age, h. Heat capacity in kJ/m³K. */
export function adiabaticRise(hydration: Hydration, heatCapacity: number, age: number): number {
  return (hydration.binder * hydration.heat * degreeAt(hydration, age)) / heatCapacity
}

import { ageFactorEn1992 } from '../codes/eu/en1992-1-1-2004/temperature-age.ts'
import { notAboveZero, notFinite } from '../working/guard.ts'
import type { Source } from '../working/source.ts'

/** Gas constant as the maturity practice rounds it, J/(mol·K). */
export const GAS_CONSTANT = 8.314
/** 0 °C in kelvin. */
export const ICE_POINT = 273.15

/**
 * How a temperature history becomes an age at the reference temperature. `arrhenius`: activation energy, J/mol.
 * `nurse-saul`: degree-hours above a datum, °C. `ec2`: EN 1992-1-1:2004, B.10, with its own reference of 20 °C.
 */
export type AgeMethod =
  | { readonly kind: 'arrhenius'; readonly reference: number; readonly activation: number }
  | { readonly kind: 'nurse-saul'; readonly reference: number; readonly datum: number }
  | { readonly kind: 'ec2' }

export const ASTM_MATURITY: Source = {
  standard: 'ASTM C1074, edition not noted',
  clause: 'temperature-time factor',
  status: 'from memory',
}
export const ASTM_AGE: Source = {
  standard: 'ASTM C1074, edition not noted',
  clause: 'equivalent age',
  status: 'from memory',
}

/** Why a method cannot be used; empty where it can. */
export function methodGaps(method: AgeMethod): string[] {
  switch (method.kind) {
    case 'ec2':
      return []
    case 'arrhenius': {
      const gaps = [
        ...notFinite({ reference: method.reference }),
        ...notAboveZero({ activation: method.activation }),
      ]
      return gaps.length > 0 || method.reference > -ICE_POINT ? gaps : ['reference: above −273.15 °C']
    }
    case 'nurse-saul': {
      const gaps = notFinite({ reference: method.reference, datum: method.datum })
      return gaps.length > 0 || method.reference > method.datum ? gaps : ['reference: above the datum']
    }
  }
}

/** Hours of age gained in one hour at a temperature, °C. NaN where the method says nothing of that temperature. */
export function ageRate(method: AgeMethod, celsius: number): number {
  switch (method.kind) {
    case 'ec2':
      return ageFactorEn1992(celsius)
    case 'arrhenius': {
      const [here, there] = [celsius + ICE_POINT, method.reference + ICE_POINT]
      return Math.exp((-method.activation / GAS_CONSTANT) * (1 / here - 1 / there))
    }
    case 'nurse-saul':
      return Math.max(celsius - method.datum, 0) / (method.reference - method.datum)
  }
}

import { commonPractice, type Source } from '../../working/source.ts'
import { settingRate } from '../setting.ts'

/**
 * How a mix bleeds: `plain` concrete; `little`: slag, fume or a low water content; `hardly`: much silica fume, w/b under 0.35,
 * self-compacting.
 */
export type BleedKind = 'plain' | 'little' | 'hardly'

export const BLEED_MODEL: Source = commonPractice('bleed model')
/** Temperature at which the time of bleeding is given, °C. */
const BLEED_REFERENCE = 20
/** Time in which 63 % of the bleed water has come up, at 20 °C, h. */
export const BLEED_TIME = 40 / 60

/** Water that comes up in all, share of the thickness as water. */
export const BLEED_SHARE: Readonly<Record<BleedKind, number>> = {
  plain: 0.005,
  little: 0.002,
  hardly: 0.0005,
}

export interface DryingLine {
  /** kg/m²/h */
  readonly limit: number
  readonly source: Source
}

/** Rate of drying at which precautions start, by how the mix bleeds. */
export const DRYING_LINE: Readonly<Record<BleedKind, DryingLine>> = {
  plain: {
    limit: 1,
    source: { standard: 'ACI 305R, edition not noted', clause: 'plastic shrinkage', status: 'seen' },
  },
  little: {
    limit: 0.5,
    source: { standard: 'ACI 305R, edition not noted', clause: 'concrete with silica fume', status: 'seen' },
  },
  hardly: {
    limit: 0.25,
    source: { standard: 'ACI 305R, edition not noted', clause: 'very low bleed', status: 'from memory' },
  },
}

/** Bleed water at an age since placing, kg/m²: `B (1 − exp(−t/τ))`, t in hours as at 20 °C; thickness in mm. Model, no source. */
export function bledAtAge(age: number, thickness: number, kind: BleedKind): number {
  return bleedTotal(thickness, kind) * (1 - Math.exp(-Math.max(0, age) / BLEED_TIME))
}

/** Hours as at 20 °C that pass in an hour at a temperature: bleeding is scaled with the speed of setting; °C, J/mol. */
export function bleedSpeed(celsius: number, activation: number): number {
  return settingRate(celsius, BLEED_REFERENCE, activation)
}

/** All the water that comes up, kg/m²; thickness in mm. A layer of 1 mm weighs 1 kg/m². */
export function bleedTotal(thickness: number, kind: BleedKind): number {
  return BLEED_SHARE[kind] * thickness
}

import type { Source } from '../../working/source.ts'
import type { SteelGrade, Tolerance } from '../steel-rules.ts'

const TENSILE: Source = { standard: 'AS/NZS 4671:2019', clause: 'tensile properties', status: 'seen' }
const MEMORY: Source = { ...TENSILE, status: 'from memory' }

export const G250N: SteelGrade = { grade: '250N', yield: 250, source: TENSILE }
export const G300E: SteelGrade = { grade: '300E', yield: 300, source: TENSILE }
export const G500E: SteelGrade = { grade: '500E', yield: 500, source: TENSILE }
export const G500N: SteelGrade = { grade: '500N', yield: 500, source: TENSILE }
export const G500L: SteelGrade = { grade: '500L', yield: 500, source: MEMORY }

export const BAR_MASS: Source = {
  standard: 'AS/NZS 4671:2019',
  clause: 'nominal mass: area at 7850 kg/m³',
  status: 'from memory',
}

/** Delivered mass per metre within 4.5 % of nominal. */
export function massTolerance(): Tolerance {
  return {
    minus: 0.045,
    plus: 0.045,
    source: { standard: 'AS/NZS 4671:2001', clause: 'mass per metre', status: 'seen' },
  }
}

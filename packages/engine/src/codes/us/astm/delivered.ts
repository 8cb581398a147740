import { commonPractice, type Source } from '../../../working/source.ts'
import type { DeliveredRules, TensileLimits } from '../../delivered-bar.ts'
import { usBar } from './bars.ts'

const KSI = 6.894757293168
const TENSILE: Source = {
  standard: 'ASTM A615, edition before 2020',
  clause: 'tensile requirements',
  status: 'seen',
}

const LOW_ALLOY: Source = {
  standard: 'ASTM A706/A706M-16',
  clause: 'Table 2, tensile requirements',
  status: 'seen',
}

/** Low-alloy bars by grade: yield from and to, tensile strength, ksi. The strength is at least 1.25 times the yield measured. */
const A706: Readonly<Record<string, readonly [number, number, number]>> = {
  '60': [60, 78, 80],
  '80': [80, 98, 100],
}

function lowAlloyElongation(grade: string, number: number): number {
  if (number >= 14) return 10
  return grade === '60' && number <= 6 ? 14 : 12
}

/** Elongation over 8 in of a Grade 60 bar by bar number, %. */
function elongationOf(number: number): number | null {
  if (number <= 6) return 9
  if (number <= 8) return 8
  return number <= 11 ? 7 : null
}

/** A615, Grade 60 only: the limits of other grades are not confirmed. */
function carbonSteel(grade: string, number: number): TensileLimits | null {
  if (grade !== '60') return null
  return {
    yieldLow: 60 * KSI,
    yieldHigh: null,
    strengthLow: 90 * KSI,
    ratioLow: null,
    ratioHigh: null,
    uniformLow: null,
    elongationLow: elongationOf(number),
    source: TENSILE,
    note: 'Editions from 2020 ask for a lower tensile strength (from memory); the stricter one is held here.',
  }
}

function lowAlloy(grade: string, number: number): TensileLimits | null {
  const row = A706[grade]
  if (row === undefined) return null
  const [low, high, strength] = row
  return {
    yieldLow: low * KSI,
    yieldHigh: high * KSI,
    strengthLow: strength * KSI,
    ratioLow: 1.25,
    ratioHigh: null,
    uniformLow: null,
    elongationLow: lowAlloyElongation(grade, number),
    source: LOW_ALLOY,
  }
}

/** A bar rolled for two standards keeps both. */
function both(one: TensileLimits, other: TensileLimits): TensileLimits {
  const higher = (a: number | null, b: number | null) => (a === null ? b : b === null ? a : Math.max(a, b))
  return {
    ...other,
    ...one,
    strengthLow: higher(one.strengthLow, other.strengthLow),
    elongationLow: higher(one.elongationLow, other.elongationLow),
    note: `The bar names ASTM A615 too: the higher limit of each holds. ${other.note ?? ''}`.trim(),
  }
}

export const delivered: DeliveredRules = {
  sizes: [9.525, 12.7, 15.875, 19.05, 22.225, 25.4, 28.6512, 32.258, 35.814, 43.0022, 57.3278],
  // Without a type letter the common standard holds.
  tensile({ grade, diameter, standards = ['ASTM A615'] }): TensileLimits | null {
    const bar = usBar(diameter)
    if (bar === null) return null
    const carbon = standards.includes('ASTM A615') ? carbonSteel(grade, bar.number) : null
    const alloy = standards.includes('ASTM A706') ? lowAlloy(grade, bar.number) : null
    if (standards.includes('ASTM A706') && alloy === null) return null
    return alloy !== null && carbon !== null ? both(alloy, carbon) : (alloy ?? carbon)
  },
  lengthTolerance: () => ({
    minus: 25.4,
    plus: 25.4,
    source: commonPractice('length of a US bar as supplied, 1 in'),
  }),
}

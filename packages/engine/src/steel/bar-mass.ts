import type { SteelRules } from '../codes/steel-rules.ts'
import { notAboveZero } from '../working/guard.ts'
import { known, type Worked } from '../working/worked.ts'

export interface BarMassInput {
  readonly rules: SteelRules
  /** Nominal diameter, mm; above 0. */
  readonly diameter: number
  /** Length along the centreline before bending, mm; above 0. */
  readonly cutLength: number
}

/**
 * Nominal mass of one bar, straight or bent: kg, not rounded. Rolling tolerance is left out.
 *
 * Unknown when a size is missing or is none of the family's. Example: 16 mm bar, 6 m long: 9.47 kg.
 */
export function barMass({ rules, diameter, cutLength }: BarMassInput): Worked<number> {
  const gaps = notAboveZero({ diameter, cutLength })
  if (gaps.length > 0) return { known: false, gaps }
  const size = rules.barSize({ diameter })
  if (!size.known) return size
  const { massPerMetre } = size.value
  const mass = (massPerMetre * cutLength) / 1000
  const source = size.working.at(-1)?.source
  if (source === undefined) throw new Error('a bar size without its source')
  return known(mass, [
    ...size.working,
    {
      symbol: 'M',
      formula: 'm L / 1000',
      given: { m: massPerMetre, L: cutLength },
      result: mass,
      unit: 'kg',
      source,
    },
  ])
}

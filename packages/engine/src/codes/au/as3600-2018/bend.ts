import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { unknown, type Worked } from '../../../working/worked.ts'
import { bendMultiple } from '../../bend-multiple.ts'
import { SMALLEST } from '../../smallest-bar.ts'
import type { BendRuleInput } from '../../steel-rules.ts'

const PINS: Source = { standard: 'AS 3600:2018', clause: '17.2.3.2', status: 'from memory' }
const GALVANISED: Source = { standard: 'AS 3600:2018', clause: '17.2.3.2', status: 'seen' }

/** Pins of fitments by grade, in bar diameters. */
const FITMENTS: Readonly<Record<string, number | undefined>> = {
  '250N': 3,
  '500L': 3,
  '500N': 4,
}

/** Largest bar of AS/NZS 4671, mm. */
const LARGEST = 50

/**
 * Least inside diameter (pin) of a bend, mm; bends meant to be straightened again need larger pins and are not covered.
 *
 * Unknown under 4 and over 50 mm, for fitments of another grade, and for galvanised bar between 16 and 20 mm. Example: N12 fitment of 500N: 48 mm.
 */
export function leastBend({ diameter, grade, role, galvanised }: BendRuleInput): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  if (diameter < SMALLEST) return unknown(`diameter: no bar under ${SMALLEST} mm, found ${diameter}`)
  if (diameter > LARGEST) return unknown(`diameter: no bar over ${LARGEST} mm in the rule, found ${diameter}`)
  const black = role === 'main' ? 5 : Object.hasOwn(FITMENTS, grade) ? FITMENTS[grade] : undefined
  if (black === undefined) return unknown(`grade: no pin for a fitment of grade ${grade}`)
  if (!galvanised) {
    return bendMultiple({
      diameter,
      times: black,
      source: PINS,
      note: role === 'main' ? 'bar that is not a fitment' : `fitment of ${grade}`,
    })
  }
  const coated = diameter <= 16 ? 5 : diameter >= 20 ? 8 : null
  if (coated === null) return unknown(`diameter: no galvanised rule between 16 and 20 mm, found ${diameter}`)
  return bendMultiple({
    diameter,
    times: Math.max(black, coated),
    source: GALVANISED,
    note: `galvanised bar, ${diameter <= 16 ? 'up to 16 mm' : '20 mm and over'}`,
  })
}

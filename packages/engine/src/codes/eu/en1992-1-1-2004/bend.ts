import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import { bendMultiple } from '../../bend-multiple.ts'
import { SMALLEST } from '../../smallest-bar.ts'
import type { BendRuleInput } from '../../steel-rules.ts'

const TABLE_8_1N: Source = { standard: 'EN 1992-1-1:2004', clause: 'Table 8.1N', status: 'seen' }
const EXPRESSION_8_1: Source = { standard: 'EN 1992-1-1:2004', clause: '8.3(3), (8.1)', status: 'seen' }

/** Largest bar of EN 10080, mm. */
const LARGEST = 50

/**
 * Least mandrel diameter of bars and wire, mm; the same for main bars and links. Bars bent after welding and the crushing of
 * concrete inside the bend (`leastBendByCrushing`) are not covered.
 *
 * Unknown for galvanised bar: the code gives no number; and under 4 and over 50 mm. Example: 20 mm: 140 mm.
 */
export function leastBend({ diameter, galvanised }: BendRuleInput): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  if (galvanised)
    return unknown('galvanised: EN 1992-1-1 gives no bend for galvanised bar, no confirmed value')
  if (diameter < SMALLEST) return unknown(`diameter: no bar under ${SMALLEST} mm, found ${diameter}`)
  if (diameter > LARGEST) return unknown(`diameter: no bar over ${LARGEST} mm in the rule, found ${diameter}`)
  return bendMultiple({
    diameter,
    times: diameter <= 16 ? 4 : 7,
    source: TABLE_8_1N,
    note: diameter <= 16 ? 'up to 16 mm' : 'over 16 mm',
  })
}

/** Design strength of C55/67 with αcc 1, MPa. */
const LARGEST_FCD = 55 / 1.5

/** EN 13670: bars are not bent below −5 °C without further precautions. */
export const COLDEST = {
  temperature: -5,
  source: { standard: 'EN 13670:2009', clause: '6.3', status: 'seen' },
  advised: {
    temperature: 5,
    source: { standard: 'BS 8110 (withdrawn)', clause: '', status: 'seen' },
  },
} as const

export interface CrushingInput {
  /** mm */
  readonly diameter: number
  /** Tension of the bar at the start of the bend, kN. */
  readonly force: number
  /** Half the distance of bars, or cover plus half a diameter at an edge, mm. */
  readonly ab: number
  /** Design strength of the concrete, MPa; not above that of C55/67, 55 / 1.5 (less where αcc is below 1). */
  readonly fcd: number
}

/**
 * Least mandrel diameter against crushing inside the bend where the simple conditions of 8.3(3) are not met, mm.
 *
 * Unknown for concrete over C55/67. Example: 16 mm at 434.8 MPa (87.4 kN), ab 50 mm, fcd 17 MPa: 263.5 mm.
 */
export function leastBendByCrushing({ diameter, force, ab, fcd }: CrushingInput): Worked<number> {
  const gaps = notAboveZero({ diameter, force, ab, fcd })
  if (gaps.length > 0) return { known: false, gaps }
  if (fcd > LARGEST_FCD) {
    return unknown(`fcd: not above that of concrete C55/67, ${LARGEST_FCD.toFixed(1)} MPa, found ${fcd}`)
  }
  const limit = (force * 1000 * (1 / ab + 1 / (2 * diameter))) / fcd
  return known(limit, [
    {
      symbol: 'φm',
      formula: 'Fbt · 1000 (1 / ab + 1 / (2 φ)) / fcd',
      given: { Fbt: force, ab, φ: diameter, fcd },
      result: limit,
      unit: 'mm',
      source: EXPRESSION_8_1,
    },
  ])
}

export interface SimpleBendInput {
  /** mm */
  readonly diameter: number
  /** Length that the anchorage needs past the end of the bend, mm. */
  readonly past: number
  /** The plane of the bend lies at the edge of the concrete. */
  readonly atEdge: boolean
  /** Diameter of a bar across the inside of the bend, mm; 0 where there is none. */
  readonly crossBar: number
}

/** What of the simple conditions of 8.3(3) is not met; empty: the table's mandrel needs no check of the concrete. */
export function crushingAsked({ diameter, past, atEdge, crossBar }: SimpleBendInput): string[] {
  return [
    ...(past <= 5 * diameter * (1 + 1e-9) ? [] : ['the anchorage needs more than 5 φ past the bend']),
    ...(atEdge ? ['the plane of the bend is at an edge'] : []),
    ...(crossBar >= diameter * (1 - 1e-9) ? [] : ['no bar of at least φ across the inside of the bend']),
  ]
}

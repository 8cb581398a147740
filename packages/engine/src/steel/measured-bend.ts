import { notAboveZero } from '../working/guard.ts'
import { commonPractice, GEOMETRY } from '../working/source.ts'
import { joinVerdicts, type Verdict } from '../working/verdict.ts'
import type { Assumed, Step } from '../working/worked.ts'
import { type BendInput, type BendVerdict, checkBend } from './bend.ts'

/** How a bend was measured, mm. `error`: how far each reading may be off, either way. */
export type BendReading =
  /** Straight across the inside of the bend, by gauge or calliper. */
  | { readonly by: 'inside'; readonly inside: number; readonly error: number }
  /** A straight edge laid over the curve: its length between the two contacts, and the depth of the curve at the middle. */
  | {
      readonly by: 'chord'
      /** Which face of the bar the straight edge lies on; inside the curve is hollow, outside the edge stands on two blocks. */
      readonly face: 'inside' | 'outside'
      readonly chord: number
      readonly rise: number
      readonly error: number
    }
  /** Over the outside of both legs of a hook of half a turn. */
  | { readonly by: 'outside'; readonly outside: number; readonly error: number }

export interface MeasuredBendInput extends Omit<BendInput, 'inside'> {
  readonly reading: BendReading
}

export interface MeasuredBend extends Omit<BendVerdict, 'inside'> {
  /** Inside diameter that the reading gives, mm; null where it gives none. */
  readonly inside: number | null
  /** It lies between these, reading error and ribs counted, mm; `most` null where nothing bounds it. */
  readonly least: number | null
  readonly most: number | null
  /** `least` over the limit, mm; below 0 the reading does not prove the bend. */
  readonly margin: number | null
  readonly assumed: readonly Assumed[]
}

/** Over the ribs a deformed bar may be this many times its nominal diameter. */
export const OVER_RIBS = 1.1

const RIBS = commonPractice('over the ribs a deformed bar measures up to 1.1 of its nominal diameter')

/**
 * Go or no-go of a bend from what was measured on it: `pass` only where the whole range that the reading leaves passes, `fail` where all of
 * it fails, else `unknown`: measure closer, or use the gauge.
 *
 * A curve read by chord c and rise h has the diameter c² / 4h + h. Example: 80 mm chord, 20 mm rise: 100 mm.
 */
export function measuredBend(input: MeasuredBendInput): MeasuredBend {
  const { reading, diameter, plain } = input
  const bad = readingGaps(reading)
  const range = bad.length > 0 ? null : rangeOf(reading, diameter, plain)
  // An outside size that leaves no room between the legs was not measured on this bar.
  if (range !== null && !(range.inside > 0))
    bad.push(`${reading.by}: leaves nothing inside a bend of this bar`)
  const found = bad.length > 0 ? null : range
  const check = checkBend({ ...input, inside: found?.inside ?? Number.NaN })
  if (found === null) {
    const unknown = [...bad, ...check.unknown.filter((gap) => !gap.startsWith('inside'))]
    return {
      ...check,
      inside: null,
      least: null,
      most: null,
      margin: null,
      verdict: 'unknown',
      unknown,
      assumed: [],
    }
  }
  const { least, most } = found
  const { limit } = check
  const size = limit === null ? 'unknown' : sizeVerdict(least, most, limit)
  const notes =
    limit !== null && size === 'unknown'
      ? [
          ...check.notes,
          'The reading cannot tell: the limit lies inside its range. Measure closer, or lay the gauge on it.',
        ]
      : check.notes
  return {
    ...check,
    inside: found.inside,
    least,
    most,
    margin: limit === null ? null : least - limit,
    verdict: joinVerdicts(check.cold === null ? [size] : [size, check.cold.verdict]),
    notes,
    working: [...found.working, ...check.working],
    assumed: found.ribs
      ? [
          {
            field: 'overRibs',
            value: OVER_RIBS,
            unit: 'of the diameter',
            why: 'ribs stand out of the bar; not measured',
          },
        ]
      : [],
  }
}

function sizeVerdict(least: number, most: number | null, limit: number): Verdict {
  if (least >= limit) return 'pass'
  return most !== null && most < limit ? 'fail' : 'unknown'
}

function readingGaps(reading: BendReading): string[] {
  const { error } = reading
  const gaps = Number.isFinite(error) && error >= 0 ? [] : ['error: a number not below 0']
  if (reading.by === 'inside') return [...gaps, ...notAboveZero({ inside: reading.inside })]
  if (reading.by === 'outside') return [...gaps, ...notAboveZero({ outside: reading.outside })]
  gaps.push(...notAboveZero({ chord: reading.chord, rise: reading.rise }))
  // Past half a turn the contacts come together again and one chord stands for two curves.
  if (gaps.length === 0 && reading.rise > reading.chord / 2) gaps.push('rise: at most half the chord')
  return gaps
}

interface Range {
  readonly inside: number
  readonly least: number
  readonly most: number | null
  readonly ribs: boolean
  readonly working: readonly Step[]
}

function rangeOf(reading: BendReading, diameter: number, plain: boolean): Range {
  const { error } = reading
  const thickest = plain ? diameter : OVER_RIBS * diameter
  if (reading.by === 'inside') {
    const { inside } = reading
    return { inside, least: Math.max(0, inside - error), most: inside + error, ribs: false, working: [] }
  }
  if (reading.by === 'outside') {
    const { outside } = reading
    const least = Math.max(0, outside - error - 2 * thickest)
    return {
      inside: outside - 2 * diameter,
      least,
      most: outside + error - 2 * diameter,
      ribs: !plain,
      working: [
        step('D', 'W − 2 d', { W: outside, d: diameter }, outside - 2 * diameter),
        leastStep(least, plain),
      ],
    }
  }
  const { chord, rise, face } = reading
  const curve = arcDiameter(chord, rise)
  // A longer chord or a flatter rise is a wider curve.
  const tightest = arcDiameter(Math.max(0, chord - error), Math.min(rise + error, (chord - error) / 2))
  const widest = rise > error ? arcDiameter(chord + error, rise - error) : null
  const off = face === 'inside' ? 0 : 2
  const least = Math.max(0, tightest - off * thickest)
  return {
    inside: curve - off * diameter,
    least,
    most: widest === null ? null : widest - off * diameter,
    ribs: face === 'outside' && !plain,
    working: [
      step('C', 'c² / (4 h) + h', { c: chord, h: rise }, curve),
      step('D', 'C − n d', { C: curve, n: off, d: diameter }, curve - off * diameter),
      leastStep(least, plain || face === 'inside'),
    ],
  }
}

/** Diameter of the circle through both ends of a chord and the top of the arc over it, mm. */
export function arcDiameter(chord: number, rise: number): number {
  return rise > 0 ? (chord * chord) / (4 * rise) + rise : 0
}

function step(symbol: string, formula: string, given: Record<string, number>, result: number): Step {
  return { symbol, formula, given, result, unit: 'mm', source: GEOMETRY }
}

function leastStep(least: number, plain: boolean): Step {
  return {
    symbol: 'D_least',
    formula: 'least that the reading leaves',
    given: {},
    result: least,
    unit: 'mm',
    source: plain ? GEOMETRY : RIBS,
    by: 'search',
  }
}

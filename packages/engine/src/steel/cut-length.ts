import { notAboveZero } from '../working/guard.ts'
import { GEOMETRY } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'

export interface CutLengthInput {
  /** mm */
  readonly diameter: number
  /** Inside diameter of every bend, mm; not read for a straight bar. */
  readonly inside: number | null
  /**
   * Outside dimensions in order along the bar, mm: to the crossing of the outside tangents up to a turn of 90°, to the outermost
   * point of the bend beyond it.
   */
  readonly legs: readonly number[]
  /** Turn of each bend, degrees, above 0 to 180: one for all bends, or one for each. */
  readonly turns: readonly number[]
}

export interface CutLength {
  /** Length of the centreline, mm: what is cut. */
  readonly length: number
  /** What each bend takes off the sum of the legs, mm; below 0 where it adds. */
  readonly deductions: readonly number[]
}

export interface ShortLeg {
  /** Index into the legs. */
  readonly leg: number
  readonly found: number
  /** Length that its bends need, mm. */
  readonly least: number
}

const RADIANS = Math.PI / 180

/** How much of a leg a bend takes up at its end, mm. */
export function setback({ diameter, inside, turn }: OneBend): number {
  const outer = inside / 2 + diameter
  return turn <= 90 ? outer * Math.tan((turn * RADIANS) / 2) : outer
}

export interface OneBend {
  readonly diameter: number
  readonly inside: number
  /** degrees */
  readonly turn: number
}

/** What a bend takes off the sum of its two legs, mm. */
export function bendDeduction(bend: OneBend): number {
  return 2 * setback(bend) - bend.turn * RADIANS * (bend.inside / 2 + bend.diameter / 2)
}

/** Turns, one a bend. */
function eachTurn(legs: readonly number[], turns: readonly number[]): number[] {
  return legs.slice(1).map((_, index) => (turns.length === 1 ? turns[0] : turns[index]) ?? Number.NaN)
}

/** Legs that are shorter than the bends at their ends need: they cannot be bent. */
export function shortLegs({ diameter, inside, legs, turns }: CutLengthInput): ShortLeg[] {
  if (inside === null) return []
  const each = eachTurn(legs, turns)
  return legs.flatMap((found, leg) => {
    const ends = [each[leg - 1], each[leg]].filter((turn) => turn !== undefined)
    const least = ends.reduce((sum, turn) => sum + setback({ diameter, inside, turn }), 0)
    return found < least - 1e-9 * least ? [{ leg, found, least }] : []
  })
}

/**
 * Exact length to cut for a bent bar, mm: the centreline of straights and arcs. Spring-back and stretch are left out.
 *
 * Unknown when a size is missing or not above 0, when the turns are neither one nor one a bend or lie outside 0 to 180°, and when a leg
 * is too short for its bends. Example: 12 mm, inside 60, legs 600 and 300: 872.5 mm.
 */
export function cutLength(input: CutLengthInput): Worked<CutLength> {
  const { diameter, inside, legs, turns } = input
  const bends = legs.length - 1
  const gaps = [
    ...notAboveZero({ diameter, ...(bends > 0 ? { inside } : {}) }),
    ...legs.flatMap((leg, index) => notAboveZero({ [`legs[${index}]`]: leg })),
    ...(legs.length === 0 ? ['legs: at least one'] : []),
    ...(bends > 0 && turns.length !== 1 && turns.length !== bends
      ? [`turns: one, or one for each of ${bends} bends`]
      : []),
    ...turns.flatMap((turn, index) =>
      turn > 0 && turn <= 180 ? [] : [`turns[${index}]: above 0 to 180 degrees`],
    ),
  ]
  if (gaps.length > 0) return { known: false, gaps }
  const short = shortLegs(input)
  if (short.length > 0) {
    return {
      known: false,
      gaps: short.map(
        ({ leg, found, least }) =>
          `legs[${leg}]: ${found} mm is shorter than its bends need, ${least.toFixed(1)} mm`,
      ),
    }
  }
  const sum = legs.reduce((total, leg) => total + leg, 0)
  if (!Number.isFinite(sum)) return unknown('legs: their sum is no length')
  const working: Step[] = []
  const deductions = eachTurn(legs, turns).map((turn, index) => {
    const bend = { diameter, inside: inside ?? 0, turn }
    const deduction = bendDeduction(bend)
    working.push({
      symbol: `Δ${index + 1}`,
      formula:
        turn <= 90
          ? '2 (D / 2 + d) tan(θ° / 2) − π θ / 180 · (D / 2 + d / 2)'
          : '2 (D / 2 + d) − π θ / 180 · (D / 2 + d / 2)',
      given: { D: bend.inside, d: diameter, θ: turn },
      result: deduction,
      unit: 'mm',
      source: GEOMETRY,
      note:
        turn <= 90
          ? 'legs to the crossing of the outside tangents'
          : 'legs to the outermost point of the bend',
    })
    return deduction
  })
  const off = deductions.reduce((total, deduction) => total + deduction, 0)
  working.push({
    symbol: 'L',
    formula: legs.map((_, index) => `l${index + 1}`).join(' + ') + (deductions.length > 0 ? ' − ΣΔ' : ''),
    given: {
      ...Object.fromEntries(legs.map((leg, index) => [`l${index + 1}`, leg])),
      ...(deductions.length > 0 ? { ΣΔ: off } : {}),
    },
    result: sum - off,
    unit: 'mm',
    source: GEOMETRY,
  })
  return known({ length: sum - off, deductions }, working)
}

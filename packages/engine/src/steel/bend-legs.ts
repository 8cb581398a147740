import { leastBetweenBends } from '../codes/eu/bs8666-2005/bend-straights.ts'
import type { BarRole, SteelRules } from '../codes/steel-rules.ts'
import { verdictOf } from '../working/check.ts'
import { notAboveZero } from '../working/guard.ts'
import { GEOMETRY, type Source } from '../working/source.ts'
import type { Verdict } from '../working/verdict.ts'
import { known, unknown, type Worked } from '../working/worked.ts'
import { setback } from './cut-length.ts'

export interface MadeLegInput {
  readonly rules: SteelRules
  /** As scheduled, mm. */
  readonly leg: number
  /** As measured on the bent bar, mm. */
  readonly made: number
  readonly role: BarRole
  readonly plain: boolean
  /** Nominal diameter, mm. */
  readonly diameter: number
  /** Length of the whole bar, mm; null where not known: the tighter tolerance holds. */
  readonly cutLength: number | null
}

export interface MadeLeg {
  /** Good between these, both included, mm; null where that side has no limit or the limit is not known. */
  readonly low: number | null
  readonly high: number | null
  readonly verdict: Verdict
  readonly source: Source | null
  readonly unknown: readonly string[]
}

/**
 * A leg as made against the family's tolerance. Unknown where the family has no confirmed one, and without a size.
 *
 * Example: BS 8666, 1500 mm: 1490 to 1505 mm.
 */
export function madeLeg({ rules, leg, made, role, plain, diameter, cutLength }: MadeLegInput): MadeLeg {
  const gaps = notAboveZero({ leg, made, diameter, ...(cutLength === null ? {} : { cutLength }) })
  const bar = { leg, role, plain, diameter, ...(cutLength === null ? {} : { cutLength }) }
  const tolerance = gaps.length > 0 ? null : rules.legTolerance(bar)
  if (tolerance === null) {
    if (gaps.length === 0) gaps.push('leg: no confirmed tolerance of a bent dimension')
    return { low: null, high: null, verdict: 'unknown', source: null, unknown: gaps }
  }
  const low = tolerance.minus === null ? null : leg - tolerance.minus
  const high = tolerance.plus === null ? null : leg + tolerance.plus
  const within =
    (low === null || verdictOf(made, low, 'at least') === 'pass') &&
    (high === null || verdictOf(made, high, 'at most') === 'pass')
  return { low, high, verdict: within ? 'pass' : 'fail', source: tolerance.source, unknown: [] }
}

export interface EndLegInput {
  readonly rules: SteelRules
  /** mm */
  readonly diameter: number
  /** Inside diameter of the last bend, mm. */
  readonly inside: number
  /** Its turn, degrees. */
  readonly turn: number
  readonly role: BarRole
  readonly plain: boolean
}

/**
 * Least outside dimension of the leg past a bar's last bend, mm: what the bend takes up and the least straight after it; where the family has
 * a table of end legs, not under its row either.
 *
 * Unknown where either is. Example: 12 mm stirrup of New Zealand, inside 48 mm, 135°: 36 + 72 = 108 mm.
 */
export function leastEndLeg({ rules, diameter, inside, turn, role, plain }: EndLegInput): Worked<number> {
  const gaps = notAboveZero({ diameter, inside })
  if (gaps.length > 0) return { known: false, gaps }
  if (!(turn > 0 && turn <= 180)) return unknown(`turn: above 0 to 180 degrees, found ${turn}`)
  const tail = rules.hookTail({ diameter, role, plain, turn, inside })
  const row = rules.endLeg === null ? null : rules.endLeg({ diameter, role, turn })
  const missing = [...(tail.known ? [] : tail.gaps), ...(row === null || row.known ? [] : row.gaps)]
  if (!tail.known || (row !== null && !row.known)) return { known: false, gaps: missing }
  const least = row === null ? 0 : row.value
  const leg = Math.max(setback({ diameter, inside, turn }) + tail.value, least)
  return known(leg, [
    ...tail.working,
    ...(row === null ? [] : row.working),
    {
      symbol: 'leg',
      formula: turn <= 90 ? 'max((D / 2 + d) tan(θ° / 2) + tail, P)' : 'max(D / 2 + d + tail, P)',
      given: { D: inside, d: diameter, θ: turn, tail: tail.value, P: least },
      result: leg,
      unit: 'mm',
      source: GEOMETRY,
      note: turn <= 90 ? 'to the crossing of the outside tangents' : 'to the outermost point of the bend',
    },
  ])
}

export interface LegLimit {
  /** Index into the legs. */
  readonly leg: number
  /** An end leg by its outside dimension, a leg between two bends by its straight. */
  readonly what: 'end leg' | 'straight between bends'
  /** mm; null where a size or a turn is missing. */
  readonly found: number | null
  readonly least: Worked<number>
  readonly verdict: Verdict
}

export interface LegLimitsInput extends Omit<EndLegInput, 'turn'> {
  readonly legs: readonly number[]
  /** One a bend, degrees. */
  readonly turns: readonly number[]
}

/** Every leg of a bent bar against its least; empty for a straight bar. A family without a rule of its own takes 4 d of BS 8666 between bends. */
export function legLimits({ legs, turns, ...bar }: LegLimitsInput): LegLimit[] {
  const { diameter, inside } = bar
  if (legs.length < 2) return []
  return legs.map((found, leg) => {
    const [before, after] = [turns[leg - 1], turns[leg]]
    if (leg > 0 && leg < legs.length - 1) {
      const taken = [before, after].reduce<number>(
        (sum, turn) => sum + (turn === undefined ? Number.NaN : setback({ diameter, inside, turn })),
        0,
      )
      return limitOf(leg, 'straight between bends', found - taken, leastBetweenBends({ diameter }))
    }
    const turn = leg === 0 ? after : before
    const least = turn === undefined ? unknown('turns: one for each bend') : leastEndLeg({ ...bar, turn })
    return limitOf(leg, 'end leg', found, least)
  })
}

function limitOf(leg: number, what: LegLimit['what'], found: number, least: Worked<number>): LegLimit {
  const verdict = least.known ? verdictOf(found, least.value, 'at least') : 'unknown'
  return { leg, what, found: Number.isFinite(found) ? found : null, least, verdict }
}

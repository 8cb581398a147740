import type { SteelRules } from '../../codes/steel-rules.ts'
import { distance, type Point } from '../../panel/point.ts'
import { type Check, compare } from '../../working/check.ts'
import { GEOMETRY } from '../../working/source.ts'
import { type LegLimit, legLimits } from '../bend-legs.ts'
import { bentOutline, enclosingBox } from '../bend-outline.ts'
import type { ListedBar } from '../listed-bars.ts'
import type { ScheduledBar } from '../steel-plan.ts'
import { NO_RULE } from './bend-of.ts'

export interface BarLimitsInput {
  readonly rules: SteelRules
  readonly bars: readonly ScheduledBar[]
  readonly listed: readonly ListedBar[]
}

/** What bending and carrying ask of every bent line of the schedule: its legs, and the rectangle around it. */
export function barLimits({ rules, bars, listed }: BarLimitsInput): Check[] {
  const drawn = new Map(listed.map((bar) => [bar.mark, bar]))
  return bars
    .filter(({ turns }) => turns.length > 0)
    .flatMap((bar) => [...legCheck(bar, rules), ...boxCheck(bar, drawn.get(bar.mark) ?? null, rules)])
}

/** The leg that is shortest against its least; not known where any leg's least is not. */
function legCheck(bar: ScheduledBar, rules: SteelRules): Check[] {
  const { mark, diameter, inside, role, legs, turns } = bar
  if (inside === null) return []
  const limits = legLimits({ rules, diameter, inside, role, plain: false, legs, turns })
  const gaps = [...new Set(limits.flatMap(({ least }) => (least.known ? [] : least.gaps)))]
  const worst = limits.reduce<LegLimit | null>(
    (one, other) => (one === null || shortBy(other) > shortBy(one) ? other : one),
    null,
  )
  // A leg that fails is told though the least of another is not known.
  const fails = worst?.verdict === 'fail'
  return [
    compare({
      id: `leg:${mark}`,
      step: 'cut-bend',
      what: `Shortest leg of ${mark}, ${worst?.what ?? 'end leg'}`,
      demand: worst?.found ?? null,
      limit: worst?.least.known ? worst.least.value : null,
      unit: 'mm',
      sense: 'at least',
      source: worst?.least.known ? (worst.least.working[0]?.source ?? NO_RULE) : NO_RULE,
      working: worst?.least.known ? worst.least.working : [],
      missing: fails ? [] : gaps,
      ...(worst === null ? {} : { note: `leg ${worst.leg + 1} of ${legs.length}` }),
    }),
  ]
}

/** How much of its least a leg lacks, as a part of it; legs without a known least come last. */
function shortBy({ found, least }: LegLimit): number {
  return least.known && found !== null ? 1 - found / least.value : Number.NEGATIVE_INFINITY
}

/** Bends up to which every choice of sides is tried where the drawing does not say them. */
const MOST_BENDS = 8

function boxCheck(bar: ScheduledBar, listed: ListedBar | null, rules: SteelRules): Check[] {
  if (rules.transportBox === null) return []
  const { mark, diameter } = bar
  const short = shorterSide(bar, listed)
  return [
    compare({
      id: `transport:${mark}`,
      step: 'cut-bend',
      what: `Shorter side of the rectangle around ${mark}`,
      demand: short,
      limit: rules.transportBox.most,
      unit: 'mm',
      sense: 'at most',
      source: rules.transportBox.source,
      working:
        short === null
          ? []
          : [
              {
                symbol: 'b',
                formula: 'narrowest rectangle around the bent bar',
                given: { d: diameter },
                result: short,
                unit: 'mm',
                source: GEOMETRY,
                by: 'search',
              },
            ],
      missing: short === null ? [`${mark}: its bends, to see the rectangle around it`] : [],
    }),
  ]
}

/** By the corners where the bar is drawn with its place; else the widest over all sides that its bends may turn to, mm. */
function shorterSide(bar: ScheduledBar, listed: ListedBar | null): number | null {
  const { diameter, inside, legs, turns } = bar
  const [path] = listed?.paths ?? []
  if (path !== undefined) return enclosingBox(path, diameter).short
  const sided = listed !== null && turns.length <= MOST_BENDS
  const choices = sided ? 2 ** (turns.length - 1) : 1
  let widest: number | null = null
  for (let choice = 0; choice < choices; choice += 1) {
    const senses = turns.map((_, i) => (i > 0 && (choice >> (i - 1)) % 2 === 1 ? -1 : 1) as 1 | -1)
    const outline = bentOutline({ diameter, inside, legs, turns, senses })
    if (!outline.known) return null
    widest = Math.max(widest ?? 0, enclosingBox(thinned(outline.value), diameter).short)
  }
  return widest
}

/** Of an arc one corner in this many is kept: the rectangle grows narrower by less than a thousandth of the bend. */
const THIN = 5

/** An outline with every fifth corner of its arcs, and all ends of its straights. */
function thinned(points: readonly Point[]): Point[] {
  const lengths = points.slice(1).map((point, i) => distance(points[i] as Point, point))
  const chord = Math.min(...lengths.filter((length) => length > 0))
  const straight = (i: number) => (lengths[i] ?? Number.POSITIVE_INFINITY) > 2 * chord
  return points.filter((_, i) => i % THIN === 0 || straight(i - 1) || straight(i))
}

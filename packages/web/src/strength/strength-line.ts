import { codeFamily } from '@castwright/engine/codes'
import type { StrengthPrior } from '@castwright/engine/cure'
import type { Plan } from '@castwright/engine/plan'
import {
  CUBE_RATIO_LIMIT,
  type CureNow,
  cureNow,
  type PanelFacts,
  type PourResults,
  pourResults,
  type StripHour,
  stripHour,
  type YardFacts,
} from '@castwright/engine/steps'

const HOUR = 3_600_000
/** Hours of curve beyond now that are looked at. */
const AHEAD = 72

/** How a panel that was cast stands for its strength, at one instant. */
export interface StrengthLine {
  /** Hours from mixing. */
  readonly age: number
  /** Expected strength and its 90 % band now, MPa; null where not known. */
  readonly now: {
    readonly strength: number
    readonly low: number | null
    readonly high: number | null
  } | null
  readonly wanted: number | null
  /** When the strictest condition of the first lift is met by the mix's curve, lowered by results and never raised: ms since 1970; null where not known or not met. */
  readonly met: number | null
  readonly first: StripHour
  /** The curve, brought up to date by the results of the pour. */
  readonly cure: CureNow
  readonly results: PourResults
  /** Last logged temperature of the concrete: °C, and how old it is, h. */
  readonly last: { readonly channel: string; readonly celsius: number; readonly old: number } | null
}

export interface StrengthInput {
  readonly facts: PanelFacts
  readonly plan: Pick<Plan, 'cure' | 'lift' | 'pour'>
  readonly yard: YardFacts
  /** ms since 1970. */
  readonly now: number
  /** What open tests say of the mix, for one that has neither curve nor tests. */
  readonly open?: StrengthPrior
}

/** Null for a panel that is not cast. */
export function strengthLine({ facts, plan, yard, now, open }: StrengthInput): StrengthLine | null {
  if (facts.cast === null) return null
  const mixed = Date.parse(facts.cast.at)
  const age = (now - mixed) / HOUR
  const first = stripHour({ plan, facts, yard, now: new Date(now).toISOString() })
  const wanted = first.strength ?? plan.cure.wanted?.strength ?? null
  const results = resultsOf(facts, yard)
  const cure = curveOf({ facts, plan, yard, wanted, results, until: hoursUntil(age), open })
  return {
    age,
    now: curveAt(cure.curve, age),
    wanted,
    met: first.hour === null ? null : mixed + first.hour * HOUR,
    first,
    cure,
    results,
    last: lastReading(facts, age),
  }
}

/** Last hour that is asked for, in whole days, so that a curve stays the same from one minute to the next. */
function hoursUntil(age: number): number {
  return 24 * Math.ceil(Math.max(24, age + AHEAD) / 24)
}

interface CurveAsked {
  readonly facts: PanelFacts
  readonly plan: StrengthInput['plan']
  readonly yard: YardFacts
  readonly wanted: number | null
  readonly until: number
  readonly open: StrengthPrior | undefined
}

/** The last curve of each panel: a list of panels asks anew every minute, and mostly nothing has changed. */
const curves = new WeakMap<PanelFacts, CurveAsked & { readonly cure: CureNow }>()

function curveOf({ results, ...asked }: CurveAsked & { readonly results: PourResults }): CureNow {
  const { facts, plan, yard, wanted, until, open } = asked
  const last = curves.get(facts)
  if (
    last !== undefined &&
    last.plan.cure === plan.cure &&
    last.yard === yard &&
    last.wanted === wanted &&
    last.until === until &&
    last.open === open
  )
    return last.cure
  const cure = cureNow({
    cure: plan.cure,
    facts,
    yard: yard.yard,
    until,
    wanted,
    results,
    ...(open === undefined ? {} : { open }),
  })
  curves.set(facts, { ...asked, cure })
  return cure
}

/** Results of a pour as its curve can take them in, by what the yard and its code family say of specimens. */
export function resultsOf(
  { specimens }: Pick<PanelFacts, 'specimens'>,
  { yard, limits }: YardFacts,
): PourResults {
  return pourResults({
    specimens,
    cubeRatio: limits[CUBE_RATIO_LIMIT] ?? null,
    standardCuring: yard === null ? null : codeFamily(yard.code).cure.standardCuring,
  })
}

/** The curve between its hours, straight; null outside of it. */
export function curveAt(curve: CureNow['curve'], hour: number): StrengthLine['now'] {
  const after = curve.findIndex(([at]) => at >= hour)
  const [b, a] = [curve[after], curve[after - 1] ?? curve[after]]
  if (a === undefined || b === undefined) return null
  const part = b[0] === a[0] ? 0 : (hour - a[0]) / (b[0] - a[0])
  const between = (x: number | null, y: number | null): number | null =>
    x === null || y === null ? null : x + (y - x) * part
  const strength = between(a[1], b[1])
  return strength === null ? null : { strength, low: between(a[2], b[2]), high: between(a[3], b[3]) }
}

function lastReading({ temperatures }: PanelFacts, age: number): StrengthLine['last'] {
  let last: StrengthLine['last'] = null
  for (const { channel, readings } of temperatures) {
    const reading = readings.at(-1)
    if (reading === undefined || /air/i.test(channel)) continue
    const old = age - reading[0]
    if (last === null || old < last.old) last = { channel, celsius: reading[1], old }
  }
  return last
}

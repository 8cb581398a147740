import type { CurvePoint } from '../cure/cure-plan.ts'
import { type ConditionHour, type LiftHours, liftHours } from '../lift/hour.ts'
import type { Plan } from '../plan.ts'
import { cureNow } from './cure-now.ts'
import type { PanelFacts, YardFacts } from './facts.ts'
import { CUBE_RATIO_LIMIT } from './pour-results.ts'
import { pourStrength } from './pour-strength.ts'
import { countedAtLift, strengthAtLift } from './strength-at-lift.ts'

export interface LiftHoursNowInput {
  readonly plan: Pick<Plan, 'cure' | 'lift' | 'pour'>
  readonly facts: PanelFacts
  readonly yard: YardFacts
  /** UTC instant. */
  readonly now: string
}

export interface ConditionNow extends ConditionHour {
  /** Met by what is on record of this pour at this instant; false without a result of it. */
  readonly met: boolean
}

export interface LiftHoursNow extends LiftHours {
  readonly conditions: readonly ConditionNow[]
  /** `logged`: along this pour's own log; `planned`: at the temperature of the plan. */
  readonly temperature: 'logged' | 'planned'
  /** Share of the curve's low edge that the results of this pour leave, 1 at most. */
  readonly share: number
  /** Hours from mixing to now; null before the pour is on record. */
  readonly age: number | null
  /** Low edge by the record at this instant, MPa; null with no result. */
  readonly low: number | null
}

/** Last hour that is looked at, from mixing. */
const UNTIL = 168

/**
 * The hours of the lift as they stand now: the curve along this pour's own temperatures once they are logged, and lowered by its results
 * where they lie below it at their age. Results above the curve raise nothing: the hold goes by the least of results and the mix's own
 * curve, so the curve that results bring up to date (`cureNow` with results) would show hours at which it stays shut.
 *
 * `met` is what the strip hold sees: a condition whose hour has come is met only once a result of the pour says so.
 */
export function liftHoursNow({ plan, facts, yard, now }: LiftHoursNowInput): LiftHoursNow {
  const cure = cureNow({ cure: plan.cure, facts, yard: yard.yard, until: UNTIL })
  const share = shareOf({ plan, facts, yard, now, curve: cure.curve })
  const strength = pourStrength({ plan, facts, yard, now })
  const low = strength.known ? strength.value.low : null
  const hours = liftHours({
    conditions: plan.lift.conditions,
    wanted: plan.cure.wanted,
    curve: cure.curve,
    gaps: [...cure.unknown, ...(cure.curve.length > 0 ? [] : plan.cure.unknown)],
    share,
  })
  return {
    ...hours,
    conditions: hours.conditions.map((condition) => ({
      ...condition,
      met: condition.strength !== null && low !== null && low >= condition.strength,
    })),
    temperature: cure.temperature,
    share,
    age: ageOf(facts, now),
    low,
  }
}

function ageOf({ cast }: PanelFacts, now: string): number | null {
  if (cast === null) return null
  const hours = (Date.parse(now) - Date.parse(cast.at)) / 3_600_000
  return Number.isFinite(hours) ? hours : null
}

/** Low edge of the latest results over the curve's at their age; 1 where there are none, or they are not below it. */
function shareOf({
  plan,
  facts,
  yard,
  now,
  curve,
}: LiftHoursNowInput & { readonly curve: readonly CurvePoint[] }): number {
  const hour = ageOf(facts, now)
  if (hour === null) return 1
  const cubeRatio = yard.limits[CUBE_RATIO_LIMIT] ?? null
  const past = countedAtLift({ specimens: facts.specimens, hour, cubeRatio })
  const latest = Math.max(...past.map(({ age }) => age))
  const mark = facts.cast?.mix ?? plan.pour.mix
  const scatter = yard.yard?.mixes?.find((mix) => mix.mark === mark)?.scatter ?? null
  const results = strengthAtLift({ specimens: facts.specimens, hour, scatter, cubeRatio, curveLow: null })
  const there = lowAt(curve, latest)
  if (!results.known || there === null || !(there > 0)) return 1
  return Math.min(1, results.value.low / there)
}

/** Low edge of the curve at an hour, a straight line between its points; null outside them. */
function lowAt(curve: readonly CurvePoint[], hour: number): number | null {
  const next = curve.findIndex(([at]) => at >= hour)
  const [after, before] = [curve[next], curve[next - 1]]
  if (after === undefined || after[2] === null) return null
  if (after[0] === hour) return after[2]
  if (before === undefined || before[2] === null) return null
  return before[2] + ((after[2] - before[2]) * (hour - before[0])) / (after[0] - before[0])
}

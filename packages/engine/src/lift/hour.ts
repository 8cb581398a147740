import type { CurvePoint } from '../cure/cure-plan.ts'
import { commonPractice, type Source } from '../working/source.ts'
import type { Step } from '../working/worked.ts'
import type { LiftCondition, LiftStageId } from './stages/stage.ts'

export interface LiftHoursInput {
  /** Of every stage, each with the least strength at which it holds. */
  readonly conditions: readonly LiftCondition[]
  /** Strength asked at the first lift, MPa, and by whom: design, family or maker; null where not known. */
  readonly wanted: { readonly strength: number; readonly from: string } | null
  /** Strength by the hour; its low edge counts. Hours rise. */
  readonly curve: readonly CurvePoint[]
  /** What keeps curve or wanted strength from being known. */
  readonly gaps?: readonly string[]
  /** Results of the pour lie below its curve: share of the low edge that counts, above 0, at most 1. */
  readonly share?: number
}

/**
 * When a condition holds: `at` an hour; `always`, whatever the strength; `never`, at no strength; `beyond` the computed hours; or
 * `unknown`.
 */
export type HourState = 'at' | 'always' | 'never' | 'beyond' | 'unknown'

export interface ConditionHour {
  /** Id of the check; `strength` for what is asked at the first lift. */
  readonly check: string
  /** Null for what is asked at the first lift. */
  readonly stage: LiftStageId | null
  readonly what: string
  /** Least strength at which it holds, MPa; null where not known or where none is enough. */
  readonly strength: number | null
  readonly state: HourState
  /** Hours from mixing, where `at`; 0 where `always`; else null. */
  readonly hour: number | null
  /** Why there is no hour; empty where there is one. */
  readonly why: readonly string[]
  readonly working: readonly Step[]
}

export interface StageHour extends Pick<ConditionHour, 'state' | 'hour' | 'why'> {
  /** `first`: the first lift as a whole, with what is asked of the strength. */
  readonly stage: LiftStageId | 'first'
  /** The condition that is met last or stands in the way; its check and its words. */
  readonly governing: { readonly check: string; readonly what: string } | null
}

export interface LiftHours {
  readonly first: StageHour
  readonly stages: readonly StageHour[]
  readonly conditions: readonly ConditionHour[]
}

/** Stages that make up the first lift. */
export const FIRST_LIFT: readonly LiftStageId[] = ['release', 'turn', 'hang']

/** What stands in the way more goes before what stands in it less. */
const ORDER: readonly HourState[] = ['always', 'at', 'beyond', 'unknown', 'never']

const FORECAST: Source = commonPractice('straight line between two hours of the strength curve, low edge')

/**
 * For each condition of the lift the earliest hour from mixing from which on the low edge of the strength meets it; for each stage
 * and for the first lift as a whole the last of them, and which one that is.
 *
 * A dip later in the curve counts: the hour is one from which the low edge does not fall below again. Nothing is said past the end of
 * the curve. Without a scatter of the mix there is no low edge and no hour is known.
 *
 * It is a forecast: a hold opens on results of the pour, not on this.
 *
 * Example: 12 MPa, low edge 11.0 at 10 h and 13.0 at 11 h: 10.5 h.
 */
export function liftHours(input: LiftHoursInput): LiftHours {
  const { conditions, wanted } = input
  const edge = lowEdge(input)
  const asked = hourOf(
    {
      check: 'strength',
      stage: null,
      what: wanted === null ? 'Strength asked at the first lift' : `Strength asked by the ${wanted.from}`,
      strength: wanted?.strength ?? null,
      never: false,
      gaps: input.gaps ?? [],
    },
    edge,
  )
  const found = conditions.map((condition) => hourOf(condition, edge))
  const stages = [...new Set(conditions.map(({ stage }) => stage))]
  return {
    first: lastOf('first', [
      asked,
      ...found.filter(({ stage }) => stage !== null && FIRST_LIFT.includes(stage)),
    ]),
    stages: stages.map((stage) =>
      lastOf(
        stage,
        found.filter((each) => each.stage === stage),
      ),
    ),
    conditions: [asked, ...found],
  }
}

interface Edge {
  /** Hour and low edge that never falls below again, MPa. */
  readonly points: readonly (readonly [hour: number, low: number])[]
  readonly gaps: readonly string[]
}

function lowEdge({ curve, share = 1, gaps = [] }: LiftHoursInput): Edge {
  const usable = curve.flatMap(([hour, , low]) =>
    low !== null && Number.isFinite(low) && Number.isFinite(hour) ? [[hour, low * share] as const] : [],
  )
  if (!(share > 0) || !(share <= 1) || usable.length === 0) {
    const why = curve.length === 0 ? 'strength by the hour' : 'low edge of the strength: a scatter of the mix'
    return { points: [], gaps: gaps.length > 0 ? gaps : [why] }
  }
  let least = Number.POSITIVE_INFINITY
  const points = usable
    .reverse()
    .map(([hour, low]) => {
      least = Math.min(least, low)
      return [hour, least] as const
    })
    .reverse()
  return { points, gaps: [] }
}

type Wanting = Pick<LiftCondition, 'check' | 'what' | 'strength' | 'never' | 'gaps'> & {
  readonly stage: LiftStageId | null
}

function hourOf(
  { check, stage, what, strength, never, gaps }: Wanting,
  { points, gaps: none }: Edge,
): ConditionHour {
  const base = { check, stage, what, strength, hour: null, working: [] }
  if (never) return { ...base, state: 'never', why: [`${what}: at no strength`] }
  if (strength === null || !Number.isFinite(strength)) {
    return { ...base, state: 'unknown', why: gaps.length > 0 ? gaps : [`${what}: strength not known`] }
  }
  if (strength <= 0) return { ...base, state: 'always', hour: 0, why: [] }
  if (none.length > 0) return { ...base, state: 'unknown', why: none }
  const next = points.findIndex(([, low]) => low >= strength)
  const [after, before] = [points[next], points[next - 1]]
  if (after === undefined) return { ...base, state: 'beyond', why: ['not within the computed hours'] }
  if (before === undefined) return { ...base, state: 'at', hour: after[0], why: [] }
  const hour = before[0] + ((after[0] - before[0]) * (strength - before[1])) / (after[1] - before[1])
  const step: Step = {
    symbol: 'h',
    formula: 'h1 + (h2 − h1) (f − f1) / (f2 − f1)',
    given: { h1: before[0], h2: after[0], f: strength, f1: before[1], f2: after[1] },
    result: hour,
    unit: 'h',
    source: FORECAST,
    note: `hours from mixing; ${what}`,
  }
  return { ...base, state: 'at', hour, why: [], working: [step] }
}

function lastOf(stage: StageHour['stage'], conditions: readonly ConditionHour[]): StageHour {
  const last = conditions.reduce<ConditionHour | null>(
    (worst, next) => (worst === null || later(next, worst) ? next : worst),
    null,
  )
  if (last === null) {
    return { stage, state: 'unknown', hour: null, why: ['conditions of this stage'], governing: null }
  }
  const { state, hour, why, check, what } = last
  return { stage, state, hour, why, governing: { check, what } }
}

function later(one: ConditionHour, other: ConditionHour): boolean {
  const [a, b] = [ORDER.indexOf(one.state), ORDER.indexOf(other.state)]
  return a === b ? (one.hour ?? 0) > (other.hour ?? 0) : a > b
}

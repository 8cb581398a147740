import { FIRST_LIFT } from '../lift/hour.ts'
import { type LiftHoursNowInput, liftHoursNow } from './lift-hours-now.ts'

export interface StripHour {
  /** From mixing, from which on every condition that is known is met by the low edge; null where one never is, or no strength is asked. */
  readonly hour: number | null
  /** Least strength that the governing condition wants, MPa. */
  readonly strength: number | null
  /** The condition that is met last; null where there is no hour. */
  readonly governs: { readonly check: string; readonly what: string } | null
  /** Conditions of the first lift that have no hour, in words. */
  readonly open: readonly string[]
  readonly temperature: 'logged' | 'planned'
}

/**
 * The hour of the first lift for a day's plan: the strictest of the strength asked (design, family, makers) and every condition of the lift itself.
 * What is not known is named and never takes part as met; the hold opens on results, not on this.
 */
export function stripHour(input: LiftHoursNowInput): StripHour {
  const { conditions, temperature } = liftHoursNow(input)
  const first = conditions.filter(({ stage }) => stage === null || FIRST_LIFT.includes(stage))
  const timed = first.filter(({ hour }) => hour !== null)
  const open = first.filter(({ hour }) => hour === null)
  const stands = open.some(
    ({ check, state }) => check === 'strength' || state === 'never' || state === 'beyond',
  )
  const last = timed.reduce<(typeof timed)[number] | null>(
    (latest, each) => ((each.hour ?? 0) > (latest?.hour ?? -1) ? each : latest),
    null,
  )
  const known = !stands && last !== null
  return {
    hour: known ? last.hour : null,
    strength: known ? last.strength : null,
    governs: known ? { check: last.check, what: last.what } : null,
    open: open.map(({ what, state }) => `${what}: ${STANDS[state] ?? state}`),
    temperature,
  }
}

const STANDS: Readonly<Record<string, string>> = {
  never: 'met at no strength',
  beyond: 'not met in the hours computed',
  unknown: 'not known',
}

import type { Load } from './load.ts'

const MINUTE = 60_000

/** Share of the limit from which a load is soon too old: common practice, no source. */
export const AGE_WARNING = 0.75

/**
 * `counting`: on its way or in the yard; `soon`: three quarters of its time are over; `over`: past its limit and not discharged by what is on record;
 * `done`: discharged.
 */
export type AgeState = 'counting' | 'soon' | 'over' | 'done'

export interface LoadAge {
  readonly state: AgeState
  /** From batching to now or to the end of discharge, minutes. */
  readonly minutes: number
  /** To its limit, minutes; below 0 past it. Null where no limit is known. */
  readonly left: number | null
  /** When its limit is reached, UTC; null where none is known. */
  readonly until: string | null
}

export interface LoadAgeInput {
  readonly load: Pick<Load, 'batched' | 'discharged'>
  /** Greatest age at the end of discharge, minutes; null where not known. */
  readonly limit: number | null
  /** UTC instant. */
  readonly now: string
}

/** Age of a load now, from the batching time on its ticket; null where that is not known or still to come. */
export function loadAge({ load, limit, now }: LoadAgeInput): LoadAge | null {
  const batched = Date.parse(load.batched ?? '')
  const end = Date.parse(load.discharged ?? now)
  const minutes = (end - batched) / MINUTE
  if (!Number.isFinite(minutes) || minutes < 0) return null
  const left = limit === null ? null : limit - minutes
  const until = limit === null ? null : new Date(batched + limit * MINUTE).toISOString()
  return { state: stateOf(load, minutes, limit), minutes, left, until }
}

function stateOf({ discharged }: LoadAgeInput['load'], minutes: number, limit: number | null): AgeState {
  if (discharged !== undefined) return 'done'
  if (limit === null) return 'counting'
  return minutes > limit ? 'over' : minutes >= AGE_WARNING * limit ? 'soon' : 'counting'
}

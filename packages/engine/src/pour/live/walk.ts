import type { CompactionPlan } from '../pour-plan.ts'

/** The vibrator was in at one insertion: its place in the plan and from when to when, ms since 1970. */
export interface Visit {
  readonly insertion: number
  readonly from: number
  readonly to: number
}

/** A walk over the insertions of a panel as it goes on. Plain data: kept on the device at every tap. */
export interface Walk {
  readonly visits: readonly Visit[]
  /** Where the vibrator is now, and since when; null while it is out. */
  readonly current: { readonly insertion: number; readonly since: number } | null
}

export const EMPTY_WALK: Walk = { visits: [], current: null }

/** Seconds that an insertion lasts. Source: ACI 309R-05, 7.2 (from memory): 5 to 15 s. */
export const INSERTION_SECONDS = { low: 5, high: 15 } as const

/** Minutes after which fresh concrete beside that waits is told. Common practice, no source: half of the 30 min of warm weather, for thin visible work. */
export const LEFT_TOO_LONG = 15

/** The vibrator goes in at an insertion, or on to it: what it was in before counts until now. */
export function goTo(walk: Walk, insertion: number, now: number): Walk {
  return { visits: pulledOut(walk, now).visits, current: { insertion, since: now } }
}

/** The vibrator comes out. A visit that never lasted is none. */
export function pulledOut({ visits, current }: Walk, now: number): Walk {
  if (current === null || now <= current.since) return { visits, current: null }
  return {
    visits: [...visits, { insertion: current.insertion, from: current.since, to: now }],
    current: null,
  }
}

/** On to the next insertion of the order that was not reached yet; out where none is left. */
export function goOn(walk: Walk, plan: CompactionPlan, now: number): Walk {
  const out = pulledOut(walk, now)
  const next = nextOf(out, plan, walk.current?.insertion ?? -1)
  return next === null ? out : { ...out, current: { insertion: next, since: now } }
}

/** The last visit, or the one that goes on, is taken back. */
export function takeBack({ visits, current }: Walk): Walk {
  return current === null ? { visits: visits.slice(0, -1), current: null } : { visits, current: null }
}

/** The next insertion in the working order after `from` that was not reached, else the first that was missed; null where all are reached. */
export function nextOf({ visits }: Walk, { insertions }: CompactionPlan, from: number): number | null {
  const reached = new Set(visits.map(({ insertion }) => insertion))
  for (let at = from + 1; at < insertions.length; at += 1) if (!reached.has(at)) return at
  for (let at = 0; at <= from && at < insertions.length; at += 1) if (!reached.has(at)) return at
  return null
}

export type InsertionState =
  /** Reached long enough. */
  | 'reached'
  /** Shorter than the least time. */
  | 'short'
  /** Longer than the most. */
  | 'long'
  | 'now'
  /** Passed over: later ones of the order were reached. */
  | 'missed'
  | 'waiting'

export interface WalkState {
  /** One an insertion, in the order of the plan. */
  readonly insertions: readonly InsertionState[]
  readonly reached: number
  readonly missed: readonly number[]
  readonly short: readonly number[]
  readonly long: readonly number[]
  /** Seconds that the vibrator is in now; null while it is out. */
  readonly seconds: number | null
  readonly next: number | null
  /** Minutes since concrete beside what waits was last worked, where that is too long; null otherwise. */
  readonly leftMinutes: number | null
  readonly zones: readonly ZoneState[]
  readonly done: boolean
}

export interface ZoneState {
  readonly order: number
  readonly reached: number
  readonly of: number
  readonly done: boolean
}

/** How a walk stands at one instant. */
export function walkState(walk: Walk, plan: CompactionPlan, now: number): WalkState {
  const count = plan.insertions.length
  const spent = new Float64Array(count)
  for (const { insertion, from, to } of walk.visits) {
    if (insertion >= 0 && insertion < count) spent[insertion] = (spent[insertion] ?? 0) + (to - from) / 1000
  }
  const last = walk.visits.reduce(
    (most, { insertion }) => Math.max(most, insertion),
    walk.current?.insertion ?? -1,
  )
  const insertions = Array.from({ length: count }, (_, at): InsertionState => {
    if (walk.current?.insertion === at) return 'now'
    const seconds = spent[at] ?? 0
    if (seconds === 0) return at < last ? 'missed' : 'waiting'
    if (seconds < INSERTION_SECONDS.low) return 'short'
    return seconds > INSERTION_SECONDS.high * 2 ? 'long' : 'reached'
  })
  const of = (state: InsertionState): number[] =>
    insertions.flatMap((each, at) => (each === state ? [at] : []))
  const reachedAt = (at: number): boolean => (spent[at] ?? 0) > 0 || walk.current?.insertion === at
  const zones = plan.zones.map(({ order, insertions: own }) => {
    const reached = own.filter(reachedAt).length
    return { order, reached, of: own.length, done: own.every((at) => (spent[at] ?? 0) > 0) }
  })
  const next = nextOf(walk, plan, walk.current?.insertion ?? last)
  const done = next === null && walk.current === null && count > 0
  return {
    insertions,
    reached: insertions.filter((_, at) => reachedAt(at)).length,
    missed: of('missed'),
    short: of('short'),
    long: of('long'),
    seconds: walk.current === null ? null : Math.max(0, (now - walk.current.since) / 1000),
    next,
    leftMinutes: done ? null : leftMinutes(walk, now),
    zones,
    done,
  }
}

/** Fresh concrete waits beside the last insertion: so long since anything was worked. */
function leftMinutes({ visits, current }: Walk, now: number): number | null {
  const last = visits.reduce((most, { to }) => Math.max(most, to), Number.NEGATIVE_INFINITY)
  if (current !== null || !Number.isFinite(last)) return null
  const minutes = (now - last) / 60_000
  return minutes >= LEFT_TOO_LONG ? minutes : null
}

/** What the record keeps of a zone: insertion, seconds from the first visit of the walk, and how long, a row a visit. */
export function zoneRows(
  walk: Walk,
  insertions: readonly number[],
): [insertion: number, start: number, seconds: number][] {
  const own = new Set(insertions)
  const begun = walk.visits[0]?.from ?? 0
  return walk.visits
    .filter(({ insertion }) => own.has(insertion))
    .map(({ insertion, from, to }) => [
      insertion + 1,
      Math.round((from - begun) / 1000),
      Math.round((to - from) / 100) / 10,
    ])
}

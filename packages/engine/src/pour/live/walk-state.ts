import { LEFT_TOO_LONG } from '../left-too-long.ts'
import type { CompactionPlan } from '../pour-plan.ts'
import { INSERTION_SECONDS } from '../seconds-in.ts'
import type { Reached } from './reached.ts'
import { stopAt, stopsOf } from './stops.ts'
import { type Wait, waitsOf } from './waits.ts'
import { goTo, pulledOut, type Walk } from './walk.ts'

export type StopState =
  /** Reached long enough. */
  | 'reached'
  /** Shorter than the least time. */
  | 'short'
  /** Longer than twice the most. */
  | 'long'
  | 'now'
  /** Not walked, and its zone was ticked: by that person's word. */
  | 'said'
  /** Passed over: later ones of the same vibrator were reached. */
  | 'missed'
  | 'waiting'

export interface ZoneState {
  readonly id: string
  readonly order: number
  /** Walked stops; what was only said is not among them. */
  readonly reached: number
  /** Stops that were not walked and are said to be reached. */
  readonly said: number
  /** Stops of all vibrators and layers. */
  readonly of: number
  /** Every stop was walked. */
  readonly done: boolean
  /** The same of the vibrator that this device follows. */
  readonly own: { readonly reached: number; readonly of: number }
  /** Layers that are done. */
  readonly layers: number
  /** Longest wait in it, minutes; null where nothing joined worked concrete yet. */
  readonly wait: number | null
}

export interface WalkState {
  /** One a stop, in working order. */
  readonly stops: readonly StopState[]
  /** One an insertion: its state in the lowest layer of its zone that is not done. */
  readonly insertions: readonly StopState[]
  /** Stops, by index. */
  readonly missed: readonly number[]
  readonly short: readonly number[]
  readonly reached: number
  /** Where the vibrator of this device is; null while it is out, or where the pattern has no stop there. */
  readonly current: number | null
  /** Seconds that it is in now; null while it is out. */
  readonly seconds: number | null
  /** The next stop of this device's vibrator; null where all of them are reached or said to be. */
  readonly next: number | null
  /** Waits that were too long, or are, the longest first. */
  readonly left: readonly Wait[]
  readonly zones: readonly ZoneState[]
  /** Every stop of this device's vibrator is reached or said to be, and the vibrator is out. */
  readonly done: boolean
}

export interface WalkStateInput {
  readonly walk: Walk
  readonly plan: CompactionPlan
  /** Own visits and those of the record, put to the plan's stops. */
  readonly reached: Reached
  /** Vibrator that this device follows, from 1; null: all of them. */
  readonly vibrator: number | null
  readonly now: number
}

/** How a walk stands at one instant. */
export function walkState({ walk, plan, reached, vibrator, now }: WalkStateInput): WalkState {
  const all = stopsOf(plan)
  const current = walk.current === null ? null : (stopAt(plan, walk.current) ?? null)
  const isReached = (at: number): boolean => (reached.visits[at]?.length ?? 0) > 0 || reached.before[at] === 1
  const last = new Map<number, number>()
  for (const [at, stop] of all.entries()) if (isReached(at) || at === current) last.set(stop.vibrator, at)
  const stops = all.map((stop, at): StopState => {
    if (at === current) return 'now'
    // Somebody who helps out in another's share has passed nothing over there.
    const followed = vibrator === null || stop.vibrator === vibrator
    if (!isReached(at) && reached.said[at] === 1) return 'said'
    if (!isReached(at)) return followed && at < (last.get(stop.vibrator) ?? -1) ? 'missed' : 'waiting'
    const seconds = (reached.visits[at] ?? []).reduce((sum, { from, to }) => sum + (to - from) / 1000, 0)
    if (reached.before[at] === 1 && seconds === 0) return 'reached'
    if (seconds < INSERTION_SECONDS.low) return 'short'
    return seconds > INSERTION_SECONDS.high * 2 ? 'long' : 'reached'
  })
  const waits = waitsOf(plan, reached, { now, current })
  const zones = zonesOf({ plan, isReached, said: reached.said, vibrator, current, waits })
  const next = nextStop({ plan, reached, vibrator, from: current ?? last.get(vibrator ?? 1) ?? -1, current })
  const of = (state: StopState): number[] => stops.flatMap((each, at) => (each === state ? [at] : []))
  return {
    stops,
    insertions: shown(plan, stops, zones),
    missed: of('missed'),
    short: of('short'),
    reached: stops.filter((state) => state !== 'missed' && state !== 'waiting' && state !== 'said').length,
    current,
    seconds: walk.current === null ? null : Math.max(0, (now - walk.current.since) / 1000),
    next,
    left: waits.filter(({ minutes }) => minutes > LEFT_TOO_LONG).sort((a, b) => b.minutes - a.minutes),
    zones,
    done: next === null && walk.current === null && all.length > 0,
  }
}

/** On to the next stop that was neither reached nor said to be; out where none is left. */
export function goOn({ walk, plan, reached, vibrator, now }: WalkStateInput): Walk {
  const { next } = walkState({ walk, plan, reached, vibrator, now })
  const stop = next === null ? undefined : stopsOf(plan)[next]
  return stop === undefined ? pulledOut(walk, now) : goTo(walk, stop, now)
}

/** The next own stop in working order after `from` that was neither reached nor said to be, else the first that was missed; null where none is left. */
function nextStop({
  plan,
  reached,
  vibrator,
  from,
  current,
}: Pick<WalkStateInput, 'plan' | 'reached' | 'vibrator'> & {
  readonly from: number
  readonly current: number | null
}): number | null {
  const open = stopsOf(plan).flatMap((stop, at) =>
    at !== current &&
    (vibrator === null || stop.vibrator === vibrator) &&
    (reached.visits[at]?.length ?? 0) === 0 &&
    reached.before[at] !== 1 &&
    reached.said[at] !== 1
      ? [at]
      : [],
  )
  return open.find((at) => at > from) ?? open[0] ?? null
}

function zonesOf({
  plan,
  isReached,
  said,
  vibrator,
  current,
  waits,
}: {
  readonly plan: CompactionPlan
  readonly isReached: (stop: number) => boolean
  readonly said: Uint8Array
  readonly vibrator: number | null
  readonly current: number | null
  readonly waits: readonly Wait[]
}): ZoneState[] {
  const all = stopsOf(plan)
  const wait = new Map<number, number>()
  for (const { stop, minutes } of waits) {
    const zone = all[stop]?.zone ?? -1
    wait.set(zone, Math.max(wait.get(zone) ?? 0, minutes))
  }
  return plan.zones.map(({ id, order }, zone) => {
    const own = all.flatMap((stop, at) => (stop.zone === zone ? [{ ...stop, done: isReached(at), at }] : []))
    const mine = own.filter((stop) => vibrator === null || stop.vibrator === vibrator)
    const counted = (list: typeof own): { reached: number; of: number } => ({
      reached: list.filter(({ done, at }) => done || at === current).length,
      of: list.length,
    })
    const open = own.filter(({ done }) => !done).map(({ layer }) => layer)
    const layers = open.length === 0 ? plan.layers.count : Math.min(...open) - 1
    return {
      id,
      order,
      ...counted(own),
      said: own.filter(({ at }) => said[at] === 1 && at !== current).length,
      done: own.every(({ done }) => done),
      own: counted(mine),
      layers,
      wait: wait.get(zone) ?? null,
    }
  })
}

/** What the picture shows of an insertion: its layer in work. */
function shown(plan: CompactionPlan, stops: readonly StopState[], zones: readonly ZoneState[]): StopState[] {
  const states: StopState[] = plan.insertions.map(() => 'waiting')
  for (const [at, { insertion, layer, zone }] of stopsOf(plan).entries())
    if (layer === Math.min(plan.layers.count, (zones[zone]?.layers ?? 0) + 1))
      states[insertion] = stops[at] ?? 'waiting'
  // Wherever the vibrator is, it is seen.
  const here = stops.indexOf('now')
  const insertion = stopsOf(plan)[here]?.insertion
  if (insertion !== undefined) states[insertion] = 'now'
  return states
}

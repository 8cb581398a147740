import type { Point } from '../../panel/point.ts'

/** The vibrator was in at a place: in which layer, with which reach, from when to when, ms since 1970. */
export interface Visit {
  /** Where, mm: a visit keeps its place, whatever becomes of the pattern. */
  readonly at: Point
  /** 1 is the lowest. */
  readonly layer: number
  /** Covering radius that the pattern counted on, mm. */
  readonly radius: number
  readonly from: number
  readonly to: number
}

/** A walk over a panel as it goes on, on one device. Plain data: kept on the device at every tap. */
export interface Walk {
  /** Names the walk in the record, so that rows of several devices stand side by side. */
  readonly id: string
  readonly visits: readonly Visit[]
  /** Where the vibrator is now, and since when; null while it is out. */
  readonly current: (Omit<Visit, 'from' | 'to'> & { readonly since: number }) | null
}

/** A place where the vibrator goes in. */
export type Place = Pick<Visit, 'at' | 'layer' | 'radius'>

export function newWalk(id: string): Walk {
  return { id, visits: [], current: null }
}

/** The vibrator goes in at a place, or on to it: what it was in before counts until now. */
export function goTo(walk: Walk, { at, layer, radius }: Place, now: number): Walk {
  return { ...pulledOut(walk, now), current: { at, layer, radius, since: now } }
}

/** The vibrator comes out. A visit that never lasted is none. */
export function pulledOut(walk: Walk, now: number): Walk {
  const { visits, current } = walk
  if (current === null || now <= current.since) return { ...walk, current: null }
  const { since, ...place } = current
  return { ...walk, visits: [...visits, { ...place, from: since, to: now }], current: null }
}

/** The last visit, or the one that goes on, is taken back. */
export function takeBack(walk: Walk): Walk {
  return walk.current === null ? { ...walk, visits: walk.visits.slice(0, -1) } : { ...walk, current: null }
}

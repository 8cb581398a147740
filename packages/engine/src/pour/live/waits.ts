import type { CompactionPlan } from '../pour-plan.ts'
import type { Reached } from './reached.ts'
import { stopsOf } from './stops.ts'

/** How long concrete waited before what joins it was worked. */
export interface Wait {
  /** Index into the stops. */
  readonly stop: number
  readonly minutes: number
  /** It still waits. */
  readonly goesOn: boolean
}

/**
 * The longest wait at each stop that joins worked concrete: from the last time that a neighbour (reaches overlap, same layer, or the layer
 * below) was worked until this one was, or until now. A stop whose neighbours are all untouched waits for nothing; what was
 * only said to be reached has no time, and nothing is counted from it.
 */
export function waitsOf(
  plan: CompactionPlan,
  { visits, before, said }: Reached,
  { now, current }: { readonly now: number; readonly current: number | null },
): Wait[] {
  const stops = stopsOf(plan)
  const neighbours = neighboursOf(plan)
  return stops.flatMap((_, stop): Wait[] => {
    const begun = visits[stop]?.[0]?.from ?? null
    if (begun === null && (before[stop] === 1 || said[stop] === 1)) return []
    const goesOn = begun === null && stop !== current
    if (begun === null && stop === current) return []
    const until = begun ?? now
    let longest = Number.NEGATIVE_INFINITY
    for (const other of neighbours[stop] ?? []) {
      // The last time that it was worked before this stop was: worked again is fresh again.
      const last = (visits[other] ?? []).reduce(
        (most, { to }) => (to <= until ? Math.max(most, to) : most),
        Number.NEGATIVE_INFINITY,
      )
      if (Number.isFinite(last)) longest = Math.max(longest, (until - last) / 60_000)
    }
    return Number.isFinite(longest) ? [{ stop, minutes: longest, goesOn }] : []
  })
}

const KNOWN = new WeakMap<CompactionPlan, readonly (readonly number[])[]>()

/** Stops whose reaches overlap in one layer, and the same place in the layer below. */
function neighboursOf(plan: CompactionPlan): readonly (readonly number[])[] {
  const known = KNOWN.get(plan)
  if (known !== undefined) return known
  const stops = stopsOf(plan)
  const cell = 2 * plan.radius
  const grid = new Map<string, number[]>()
  const keyOf = (x: number, y: number, layer: number): string =>
    `${layer} ${Math.floor(x / cell)} ${Math.floor(y / cell)}`
  for (const [index, { at, layer }] of stops.entries()) {
    const key = keyOf(at[0], at[1], layer)
    grid.set(key, [...(grid.get(key) ?? []), index])
  }
  const made = stops.map(({ at: [x, y], layer, insertion }, index) => {
    const found: number[] = []
    for (const dx of [-cell, 0, cell])
      for (const dy of [-cell, 0, cell])
        for (const other of grid.get(keyOf(x + dx, y + dy, layer)) ?? []) {
          const at = stops[other]?.at
          if (other !== index && at && Math.hypot(at[0] - x, at[1] - y) < cell) found.push(other)
        }
    for (const other of grid.get(keyOf(x, y, layer - 1)) ?? [])
      if (stops[other]?.insertion === insertion) found.push(other)
    return found
  })
  KNOWN.set(plan, made)
  return made
}

import { EMPTY_WALK, type Walk } from '@castwright/engine/pour/live'

interface TextStorage {
  getItem(key: string): string | null
  setItem(key: string, value: string): void
  removeItem(key: string): void
}

/** A walk is of one panel, its pour and its pattern: another pattern begins anew. */
export function walkKey(panel: string, mixed: string | null, insertions: number): string {
  return `castwright.walk ${panel} ${mixed ?? 'not mixed'} ${insertions}`
}

/** The walk as the device kept it: it goes on after the screen was off, the page closed or the battery dead. */
export function keptWalk(storage: TextStorage, key: string): Walk {
  try {
    const found: unknown = JSON.parse(storage.getItem(key) ?? 'null')
    return isWalk(found) ? found : EMPTY_WALK
  } catch {
    return EMPTY_WALK
  }
}

/** False where the device is full: then the screen says so. */
export function keepWalk(storage: TextStorage, key: string, walk: Walk): boolean {
  try {
    storage.setItem(key, JSON.stringify(walk))
    return true
  } catch {
    return false
  }
}

function isWalk(value: unknown): value is Walk {
  if (value === null || typeof value !== 'object') return false
  const { visits, current } = value as Partial<Walk>
  const number = (each: unknown): boolean => typeof each === 'number' && Number.isFinite(each)
  return (
    Array.isArray(visits) &&
    visits.every((visit) => number(visit?.insertion) && number(visit?.from) && number(visit?.to)) &&
    (current === null || (number(current?.insertion) && number(current?.since)))
  )
}

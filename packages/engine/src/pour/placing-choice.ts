import { FARTHEST } from '../panel/drawn-steel.ts'
import type { Point } from '../panel/point.ts'

/** What was settled on the floor before the concrete is placed. */
export interface PlacingChoice {
  /** Where the chute or skip stands, mm in the drawing's coordinates; null: nobody said. */
  readonly stand: Point | null
  /** Heads at work, by mark of the yard's vibrators; null: nobody said. */
  readonly vibrators: Readonly<Record<string, number>> | null
  /** What the record says and nobody can read: field, what came, what was expected. */
  readonly faults: readonly string[]
}

export const NO_CHOICE: PlacingChoice = { stand: null, vibrators: null, faults: [] }

/** Ids under which the record keeps them at the step `place`. */
export const STAND = 'stand'
export const VIBRATORS = 'vibrators'

/** At most so many heads work on one panel at once. */
export const MOST_HEADS = 8

/** The choice by what was recorded at the step `place`. What cannot be read counts as not said, and is named. */
export function placingChoice(values: Readonly<Record<string, { readonly value: unknown }>>): PlacingChoice {
  const faults: string[] = []
  const said = <T>(id: string, read: (value: unknown) => T | null, expected: string): T | null => {
    const found = values[id]
    if (found === undefined) return null
    const value = read(found.value)
    if (value === null) faults.push(`place.${id}: found ${JSON.stringify(found.value)}, expected ${expected}`)
    return value
  }
  const stand = said(STAND, readStand, 'x and y, mm')
  const vibrators = said(VIBRATORS, readVibrators, `heads by mark, 1 to ${MOST_HEADS} in all`)
  return stand === null && vibrators === null && faults.length === 0
    ? NO_CHOICE
    : { stand, vibrators, faults }
}

function readStand(value: unknown): Point | null {
  if (value === null || typeof value !== 'object') return null
  const { x, y } = value as { readonly x?: unknown; readonly y?: unknown }
  const within = (each: unknown): each is number => typeof each === 'number' && Math.abs(each) <= FARTHEST
  return within(x) && within(y) ? [x, y] : null
}

function readVibrators(value: unknown): Readonly<Record<string, number>> | null {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return null
  const heads = Object.entries(value)
  const counts = heads.every(([, count]) => Number.isInteger(count) && (count as number) >= 1)
  const all = heads.reduce((sum, [, count]) => sum + Number(count), 0)
  return counts && all >= 1 && all <= MOST_HEADS
    ? (Object.fromEntries(heads) as Record<string, number>)
    : null
}

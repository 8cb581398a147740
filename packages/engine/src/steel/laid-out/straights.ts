import type { Corner, PlacedBar } from '../steel-plan.ts'
import { bentLine } from './bent-line.ts'

/** A straight part of a bar in space, from one end to the other, mm. */
export interface Straight {
  /** Of the bar that it is part of. */
  readonly id: string
  readonly from: Corner
  readonly to: Corner
  readonly diameter: number
  /** Unit vector from `from` to `to`. */
  readonly along: Corner
  readonly length: number
}

/** The straight parts of a bar between its bends; none of a bar without height. */
export function straightsOf({
  id,
  centreline,
  diameter,
  inside,
}: Pick<PlacedBar, 'id' | 'centreline' | 'diameter' | 'inside'>): Straight[] {
  if (centreline === null) return []
  if (inside === null || centreline.length < 3)
    return centreline.slice(1).flatMap((to, i) => straightOf(id, centreline[i] as Corner, to, diameter) ?? [])
  return bentLine(centreline, (inside + diameter) / 2).straights.flatMap(
    ([from, to]) => straightOf(id, from, to, diameter) ?? [],
  )
}

/** A straight between two places; null where they are one. */
export function straightOf(id: string, from: Corner, to: Corner, diameter: number): Straight | null {
  const [x, y, z] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const length = Math.sqrt(x * x + y * y + z * z)
  if (!(length > 0)) return null
  return { id, from, to, diameter, along: [x / length, y / length, z / length], length }
}

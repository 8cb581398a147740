import { distance, type Point, type Ring } from '../panel/point.ts'
import { type FittedCorners, fitCorners, type TapedLength } from './fit-corners.ts'

/** Scatter of one taped length (standard deviation), mm: two people, a steel tape read to the millimetre. Always listed as assumed. */
export const TAPE_SCATTER = 1

/** What is left of a good reading, over its scatter, stays under this but for one in a thousand. */
export const MISREAD_FACTOR = 3.29

/** Less of a misreading than this shows in what is left: no other length checks it. */
const HIDDEN = 0.02
/** Suspects whose mould lies farther from the drawing than the nearest by more than a mould may stand wrong are dropped, mm. */
const NEARER = 6

export interface Misread {
  /** Place in the list of lengths. */
  readonly index: number
  /** By how much it reads longer than the other lengths give, mm; negative: shorter. */
  readonly over: number
}

/** What is left of each length over the part that shows, mm: of one scatter whatever the length. */
export function evenLeft({ left, shows }: Pick<FittedCorners, 'left' | 'shows'>): number[] {
  return left.map((rest, k) => {
    const part = shows[k] as number
    return part < HIDDEN ? 0 : Math.abs(rest) / Math.sqrt(part)
  })
}

/**
 * Lengths of which one is misread, the likeliest first: without it the others fit each other, and the mould that they give lies nearest to the
 * drawing. Empty where the lengths fit, and where no single one explains it.
 */
export function misreadLengths(drawn: Ring, taped: readonly TapedLength[], limit: number): Misread[] {
  const whole = fitCorners(drawn, taped)
  if (whole === null || Math.max(0, ...evenLeft(whole)) <= limit) return []
  const found = taped.flatMap(({ from, to, length }, index) => {
    if ((whole.shows[index] as number) < HIDDEN) return []
    const others = fitCorners(
      drawn,
      taped.filter((_, k) => k !== index),
    )
    if (others === null || Math.max(0, ...evenLeft(others)) > limit) return []
    const out = Math.max(...others.at.map((at, k) => distance(at, drawn[k] as Point)))
    return [{ index, out, over: length - distance(others.at[from] as Point, others.at[to] as Point) }]
  })
  const nearest = Math.min(...found.map(({ out }) => out))
  return found
    .filter(({ out }) => out <= nearest + NEARER)
    .sort((a, b) => a.out - b.out || a.index - b.index)
    .map(({ index, over }) => ({ index, over }))
}

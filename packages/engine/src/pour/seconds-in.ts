import { commonPractice, type Source } from '../working/source.ts'

/** Seconds that an insertion lasts. Source: ACI 309R-05, 7.2 (from memory): 5 to 15 s. */
export const INSERTION_SECONDS = { low: 5, high: 15 } as const

/** Slumps at which an insertion lasts the most and the least, mm. */
const STIFF = 50
const SOFT = 150
/** Above this concrete compacts by short touches alone, mm. */
export const TOUCHES_ONLY = 200

export const SECONDS_SOURCE: Source = commonPractice(
  '15 s at a slump of 50 mm, 5 s at 150 mm, a straight line between; the surface decides',
)

/**
 * Seconds in the concrete by slump, mm: 15 s up to 50 mm, 5 s from 150 mm, linear between. The range is ACI 309R's (from memory), the
 * line between is ours. Over 200 mm the head only touches.
 *
 * Example: 100 mm: 10 s.
 */
export function secondsAt(slump: number): number {
  const { low, high } = INSERTION_SECONDS
  const share = Math.max(0, Math.min(1, (slump - STIFF) / (SOFT - STIFF)))
  return high - share * (high - low)
}

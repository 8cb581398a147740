import { distance, type Point, type Ring } from '../panel/point.ts'
import { edges } from '../panel/polygon.ts'
import { railBow, type SpanCount, spacingForBow } from './side-form.ts'

/** Longest spacing of props whatever the bow, mm; a rule of the trade, always listed as assumed. */
export const LONGEST_PROP_SPACING = 2000

export interface PropLine {
  readonly at: readonly Point[]
  /** Largest spacing on any side, mm. */
  readonly spacing: number
  /** Largest bow on any side, mm. */
  readonly bow: number
  /** Spans of the side where it is found. */
  readonly spans: SpanCount
}

/**
 * Props along each side of an outline: at both ends and evenly between, the fewest that keep the bow within `limit` and the spacing
 * within the longest. A corner shared by two sides has one prop in the list.
 */
export function propsAlong({
  outline,
  thrust,
  rail,
  limit,
}: {
  readonly outline: Ring
  /** kN/m */
  readonly thrust: number
  /** modulus MPa, inertia mm⁴ */
  readonly rail: { readonly modulus: number; readonly inertia: number }
  /** mm */
  readonly limit: number
}): PropLine {
  const at: Point[] = []
  let [spacing, bow] = [0, 0]
  let spans: SpanCount = 1
  for (const [from, to] of edges(outline)) {
    const length = distance(from, to)
    const count = spansOf(length, thrust, rail, limit)
    const found = railBow(asSpans(count), thrust, rail, length / count)
    if (found > bow) {
      bow = found
      spans = asSpans(count)
    }
    spacing = Math.max(spacing, length / count)
    // The far end is the first prop of the next side.
    for (let i = 0; i < count; i += 1)
      at.push([from[0] + ((to[0] - from[0]) * i) / count, from[1] + ((to[1] - from[1]) * i) / count])
  }
  return { at, spacing, bow, spans }
}

function spansOf(
  length: number,
  thrust: number,
  rail: { readonly modulus: number; readonly inertia: number },
  limit: number,
): number {
  const fits = (count: number): boolean =>
    length / count <= LONGEST_PROP_SPACING * (1 + 1e-9) &&
    railBow(asSpans(count), thrust, rail, length / count) <= limit * (1 + 1e-9)
  if (fits(1)) return 1
  if (fits(2)) return 2
  const longest = Math.min(LONGEST_PROP_SPACING, spacingForBow(3, thrust, rail, limit))
  return Math.max(3, Math.ceil(length / longest - 1e-9))
}

function asSpans(count: number): SpanCount {
  return count === 1 ? 1 : count === 2 ? 2 : 3
}

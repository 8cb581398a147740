import { distance, type Point, type Ring } from '../panel/point.ts'
import { edges } from '../panel/polygon.ts'
import { type RailStrength, railHolds, railLoads } from './rail-strength.ts'
import { railBow, type SpanCount, spacingForBow } from './side-form.ts'

/** Spans of one side at most: beyond it the form does not hold, and a check says so. */
const MOST_SPANS = 500

/** Longest spacing of props whatever the bow, mm; a rule of the trade, always listed as assumed. */
export const LONGEST_PROP_SPACING = 2000

/** Modulus MPa, inertia mm⁴; strength where the yard gives it. */
export interface Rail extends RailStrength {
  readonly modulus: number
  readonly inertia: number
}

export interface SideSpans {
  readonly spans: number
  readonly spacing: number
}

export interface PropLine {
  readonly at: readonly Point[]
  /** Largest spacing on any side, mm. */
  readonly spacing: number
  /** Largest bow on any side, mm. */
  readonly bow: number
  /** Spans of the side where it is found. */
  readonly spans: SpanCount
  /** The sides that bend their rail most and push their props most: spans and their length, mm. */
  readonly worst: { readonly bend: SideSpans; readonly push: SideSpans }
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
  readonly rail: Rail
  /** mm */
  readonly limit: number
}): PropLine {
  const at: Point[] = []
  let [spacing, bow] = [0, 0]
  let spans: SpanCount = 1
  const worst: { bend: SideSpans; push: SideSpans } = {
    bend: { spans: 1, spacing: 0 },
    push: { spans: 1, spacing: 0 },
  }
  for (const [from, to] of edges(outline)) {
    const length = distance(from, to)
    const count = spansOf(length, thrust, rail, limit)
    const found = railBow(asSpans(count), thrust, rail, length / count)
    if (found > bow) {
      bow = found
      spans = asSpans(count)
    }
    spacing = Math.max(spacing, length / count)
    const side = { spans: count, spacing: length / count }
    if (loadsOf(side).push > loadsOf(worst.push).push) worst.push = side
    if (loadsOf(side).moment > loadsOf(worst.bend).moment) worst.bend = side
    // The far end is the first prop of the next side.
    for (let i = 0; i < count; i += 1)
      at.push([from[0] + ((to[0] - from[0]) * i) / count, from[1] + ((to[1] - from[1]) * i) / count])
  }
  return { at, spacing, bow, spans, worst }
}

function loadsOf({ spans, spacing }: SideSpans): ReturnType<typeof railLoads> {
  return railLoads(spans, 1, spacing)
}

function spansOf(length: number, thrust: number, rail: Rail, limit: number): number {
  const fits = (count: number): boolean =>
    length / count <= LONGEST_PROP_SPACING * (1 + 1e-9) &&
    railBow(asSpans(count), thrust, rail, length / count) <= limit * (1 + 1e-9) &&
    railHolds(count, thrust, length / count, rail)
  if (fits(1)) return 1
  if (fits(2)) return 2
  const longest = Math.min(LONGEST_PROP_SPACING, spacingForBow(3, thrust, rail, limit))
  let count = Math.max(3, Math.ceil(length / longest - 1e-9))
  // More props push less on each and bend the rail less: the count rises until both hold.
  while (!fits(count) && count < MOST_SPANS) count += 1
  return count
}

function asSpans(count: number): SpanCount {
  return count === 1 ? 1 : count === 2 ? 2 : 3
}

import { distance, type Point, type Ring } from '../panel/point.ts'
import { edges } from '../panel/polygon.ts'
import { BRACE_SHARE, type RailStrength, railLoads } from './rail-strength.ts'
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

/** What sets the spacing of a side: `ends` where the props at its ends are enough. */
export type PropRule = 'ends' | 'bow' | 'bending' | 'prop' | 'brace' | 'longest'

/** Props along one side of the outline. */
export interface PropSide {
  /** Number of the side in the ring that was given, from 1. */
  readonly side: number
  /** mm */
  readonly length: number
  readonly spans: number
  /** mm */
  readonly spacing: number
  /** Bow of the rail between two props, mm. */
  readonly bow: number
  /** Push on the most loaded prop, kN. */
  readonly push: number
  /** Force in the most loaded brace at the top edge, kN. */
  readonly brace: number
  readonly rule: PropRule
}

export interface PropLine {
  readonly at: readonly Point[]
  readonly sides: readonly PropSide[]
  /** Largest spacing on any side, mm. */
  readonly spacing: number
  /** Largest bow on any side, mm. */
  readonly bow: number
  /** Spans of the side where it is found. */
  readonly spans: SpanCount
  /** The sides that bend their rail most and push their props most. */
  readonly worst: { readonly bend: PropSide; readonly push: PropSide }
}

export interface PropsInput {
  readonly outline: Ring
  /** kN/m */
  readonly thrust: number
  readonly rail: Rail
  /** mm */
  readonly limit: number
}

/**
 * Props along each side of an outline: at both ends and evenly between, the fewest that keep the bow within `limit`, the rail, props and braces within
 * what the yard says they take, and the spacing within the longest. A corner shared by two sides has one prop in the list.
 */
export function propsAlong(input: PropsInput): PropLine {
  const at: Point[] = []
  const sides = edges(input.outline).map(([from, to], index) => {
    const side = propSide(index + 1, distance(from, to), input)
    // The far end is the first prop of the next side.
    for (let i = 0; i < side.spans; i += 1)
      at.push([
        from[0] + ((to[0] - from[0]) * i) / side.spans,
        from[1] + ((to[1] - from[1]) * i) / side.spans,
      ])
    return side
  })
  const most = (of: (side: PropSide) => number): PropSide =>
    sides.reduce((worst, next) => (of(next) > of(worst) ? next : worst))
  const bowed = most(({ bow }) => bow)
  return {
    at,
    sides,
    spacing: Math.max(...sides.map(({ spacing }) => spacing)),
    bow: bowed.bow,
    spans: asSpans(bowed.spans),
    worst: {
      bend: most(({ spans, spacing }) => railLoads(spans, 1, spacing).moment),
      push: most(({ push }) => push),
    },
  }
}

function propSide(side: number, length: number, input: PropsInput): PropSide {
  const { thrust, rail } = input
  const { spans, rule } = fewestSpans(length, input)
  const spacing = length / spans
  const { push } = railLoads(spans, thrust, spacing)
  return {
    side,
    length,
    spans,
    spacing,
    bow: railBow(asSpans(spans), thrust, rail, spacing),
    push,
    brace: push * BRACE_SHARE,
    rule,
  }
}

/** The rule that asks for most spans sets them. */
function fewestSpans(length: number, input: PropsInput): { readonly spans: number; readonly rule: PropRule } {
  let found: { spans: number; rule: PropRule } = { spans: 1, rule: 'ends' }
  for (const [rule, holds, least] of rulesOf(length, input)) {
    const spans = leastSpans(holds, found.spans, least)
    if (spans > found.spans) found = { spans, rule }
  }
  // A rule that held with fewer spans may not hold with more: one more span can push a prop harder.
  const all = rulesOf(length, input)
  while (found.spans < MOST_SPANS) {
    const open = all.find(([, holds]) => !holds(found.spans))
    if (open === undefined) break
    found = { spans: found.spans + 1, rule: open[0] }
  }
  return found
}

type Holds = (spans: number) => boolean

/** Each rule with whether it holds at so many spans, and a count under which it cannot from three spans up. */
function rulesOf(
  length: number,
  { thrust, rail, limit }: PropsInput,
): [rule: PropRule, holds: Holds, least: number][] {
  const slack = 1 + 1e-9
  const loads = (spans: number) => railLoads(spans, thrust, length / spans)
  const under = (value: number, most: number | undefined): boolean =>
    most === undefined || value <= most * slack
  const { section, bending, propRating, braceRating } = rail
  return [
    [
      'longest',
      (spans) => under(length / spans, LONGEST_PROP_SPACING),
      Math.ceil(length / LONGEST_PROP_SPACING - 1e-9),
    ],
    [
      'bow',
      (spans) => under(railBow(asSpans(spans), thrust, rail, length / spans), limit),
      Math.ceil(length / spacingForBow(3, thrust, rail, limit) - 1e-9),
    ],
    ['bending', (spans) => section === undefined || under((loads(spans).moment * 1e6) / section, bending), 1],
    ['prop', (spans) => under(loads(spans).push, propRating), 1],
    ['brace', (spans) => under(loads(spans).push * BRACE_SHARE, braceRating), 1],
  ]
}

function leastSpans(holds: Holds, from: number, least: number): number {
  for (const few of [1, 2]) if (few >= from && holds(few)) return few
  let spans = Math.max(3, from, least)
  while (!holds(spans) && spans < MOST_SPANS) spans += 1
  return spans
}

function asSpans(count: number): SpanCount {
  return count === 1 ? 1 : count === 2 ? 2 : 3
}

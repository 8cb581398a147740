import { type LappedLine, type Piece, STAGGER } from '../lapped-line.ts'

/** A stretch along the bars, mm. */
export type Stretch = readonly [from: number, to: number]

export interface LapPlacesInput {
  readonly from: number
  readonly to: number
  /** Longest bar in stock, mm. */
  readonly stock: number
  /** Lap length, mm; under half the stock. */
  readonly lap: number
  /** Stretches that laps keep clear of, mm. */
  readonly avoid: readonly Stretch[]
  /** Middles of the laps in the neighbouring row that is laid already, mm. */
  readonly beside: readonly number[]
  /** Middles of the laps in the row before that: laps in line with them need no new cut length, mm. */
  readonly before: readonly number[]
}

/** Pieces more than the fewest that stagger or openings may cost a row. */
const MORE = 1

/** A piece is not shorter than this many laps: less would be all lap, and its lap would lie at the row's end. */
const SHORTEST = 2

/** What a choice costs: stagger before openings before a piece more before a cut length more. */
const COST = { stagger: 1e8, avoid: 1e6, piece: 1e4, cut: 10, newPlace: 5 } as const

/**
 * Cuts a row into pieces of stock so that its laps lie 1.3 laps from those of the row beside it and clear of the stretches to avoid,
 * with as few pieces as that allows, at most one more than the fewest. Where not all can be had, the laps lie as far off as they may.
 *
 * Null where a lap of half the stock or more cannot be built. Laps are tried at places that follow from the ends of the row, whole
 * bars, the stretches and the laps beside; the best set of these is found exactly.
 */
export function lapPlaces(input: LapPlacesInput): LappedLine | null {
  const { from, to, stock, lap } = input
  const length = to - from
  if (!(length > 0 && stock > 0)) return null
  if (length <= stock * (1 + 1e-12)) return { pieces: [{ from, to }], laps: [] }
  if (!(lap > 0 && lap * 2 < stock)) return null
  const fewest = Math.max(2, Math.ceil((length - lap) / (stock - lap) - 1e-9))
  let best: Chain | null = null
  for (let count = fewest; count <= fewest + MORE; count += 1) {
    const found = cheapest(input, count)
    if (found !== null && (best === null || found.cost < best.cost - 1e-9)) best = found
    // Nothing to gain that would be worth a piece more.
    if (best !== null && best.cost < (count + 1) * COST.piece) break
  }
  return best === null ? null : built(input, best)
}

interface Chain {
  readonly cost: number
  /** Ends of all pieces but the last, mm. */
  readonly ends: readonly number[]
}

/** Best chain of `count` pieces over the places tried, or null. */
function cheapest(input: LapPlacesInput, count: number): Chain | null {
  const { from, to, stock, lap } = input
  const shortest = Math.min(SHORTEST * lap, (to - from + lap * (count - 1)) / count)
  const places = placesOf(input, count, shortest)
  const costs = places.map((end) => costOf(input, end))
  const slack = 1e-6
  const fits = (length: number) => length >= shortest - slack && length <= stock + slack
  const whole = (length: number) => (Math.abs(length - stock) < 0.05 ? 0 : COST.cut)
  let reached: (Chain | null)[] = places.map((end, i) =>
    fits(end - from) ? { cost: (costs[i] as number) + whole(end - from), ends: [end] } : null,
  )
  for (let piece = 2; piece < count; piece += 1) {
    const next: (Chain | null)[] = places.map(() => null)
    for (const [i, chain] of reached.entries()) {
      if (chain === null) continue
      const start = (places[i] as number) - lap
      for (let j = i + 1; j < places.length; j += 1) {
        const end = places[j] as number
        if (end - start > stock + slack) break
        if (!fits(end - start)) continue
        const cost = chain.cost + (costs[j] as number) + whole(end - start)
        if (cost < (next[j]?.cost ?? Number.POSITIVE_INFINITY)) next[j] = { cost, ends: [...chain.ends, end] }
      }
    }
    reached = next
  }
  let best: Chain | null = null
  for (const chain of reached) {
    if (chain === null) continue
    const last = to - ((chain.ends.at(-1) as number) - lap)
    if (!fits(last)) continue
    const cost = chain.cost + whole(last) + count * COST.piece
    if (best === null || cost < best.cost) best = { cost, ends: chain.ends }
  }
  return best
}

/** Ends of pieces that are worth trying, in order, mm. */
function placesOf(
  { from, to, stock, lap, avoid, beside, before }: LapPlacesInput,
  count: number,
  shortest: number,
): number[] {
  const period = stock - lap
  const even = (to - from + lap * (count - 1)) / count
  const anchored = [from + stock, to - stock + lap, from + shortest, to - shortest + lap]
  const near = [
    ...avoid.flatMap(([low, high]) => [low, high + lap]),
    ...beside.flatMap((middle) => [middle - STAGGER * lap + lap / 2, middle + STAGGER * lap + lap / 2]),
  ]
  const all = [
    ...anchored.flatMap((place) =>
      Array.from({ length: 2 * count - 1 }, (_, k) => place + (k + 1 - count) * period),
    ),
    ...near.flatMap((place) => [place - period, place, place + period]),
    ...before.map((middle) => middle + lap / 2),
    ...Array.from({ length: count - 1 }, (_, k) => from + (k + 1) * (even - lap) + lap),
  ]
  const inside = all.filter((end) => end > from + lap && end < to).sort((a, b) => a - b)
  return inside.filter((end, i) => i === 0 || end - (inside[i - 1] as number) > 1e-6)
}

/** Cost of a lap that ends at `end`: what it lacks to the stagger and what of it lies where it should not. */
function costOf({ from, to, lap, avoid, beside, before }: LapPlacesInput, end: number): number {
  const middle = end - lap / 2
  let cost = ((to - end) / (to - from)) * 1e-3
  for (const other of beside) {
    const lacking = 1 - Math.abs(middle - other) / (STAGGER * lap)
    if (lacking > 1e-9) cost += COST.stagger * (0.1 + lacking)
  }
  for (const [low, high] of avoid) {
    const over = Math.min(end, high) - Math.max(end - lap, low)
    if (over > 1e-6) cost += COST.avoid * (0.1 + over / lap)
  }
  if (!before.some((other) => Math.abs(other - middle) < 0.05)) cost += COST.newPlace
  return cost
}

function built({ from, to, lap }: LapPlacesInput, { ends }: Chain): LappedLine {
  const pieces: Piece[] = []
  let start = from
  for (const end of [...ends, to]) {
    pieces.push({ from: start, to: end })
    start = end - lap
  }
  return { pieces, laps: ends.map((end) => end - lap / 2) }
}

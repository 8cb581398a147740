/** What no row may pass through: along the rows from `from` to `to`, across them between `low` and `high`, mm. */
export interface Obstacle {
  readonly from: number
  readonly to: number
  readonly low: number
  readonly high: number
  /** The web of bars along an edge: a row in it moves to its inner side however far that is. */
  readonly isWeb: boolean
  /** Room beside a bar that runs the same way: rows keep out of it where they can, but no row is added for it. */
  readonly isBeside?: boolean
}

export interface ClearRowsInput {
  /** First and last place across the rows that the cover allows, mm. */
  readonly low: number
  readonly high: number
  /** Largest distance between rows, mm. */
  readonly spacing: number
  /** How far a row may move from its even place, mm. */
  readonly tolerance: number
  /** Obstacles, grown by half a bar. */
  readonly obstacles: readonly Obstacle[]
  /** Where a row at a place across runs. */
  readonly spansAt: (at: number) => readonly (readonly [from: number, to: number])[]
}

/** Rows more than the fewest that obstacles may cost. */
const MORE = 2

/**
 * Places of the rows of a mat: even from first to last at no more than the spacing. A row that would pass through an obstacle moves aside
 * to the nearest place that is clear, within the tolerance and without opening a distance over the spacing, its neighbours following as far as that
 * asks; where that cannot be had with as many rows, one or two more are tried, but not for room beside a bar. Rows that find no place stay, and run through the obstacle.
 */
export function clearRows(input: ClearRowsInput): number[] {
  const { low, high, spacing, obstacles } = input
  const fewest = Math.max(1, Math.ceil((high - low) / spacing - 1e-9) + 1)
  const even = evenRows(low, high, fewest)
  if (obstacles.length === 0) return even
  let best = moved(input, even)
  for (let more = 1; more <= MORE && best.through > 0; more += 1) {
    const other = moved(input, evenRows(low, high, fewest + more))
    if (other.through < best.through) best = other
  }
  return [...best.rows]
}

function evenRows(low: number, high: number, count: number): number[] {
  if (count < 2) return [low]
  const step = (high - low) / (count - 1)
  // Exactly the far face for the last row: a sum would miss it by rounding and lose the row.
  return Array.from({ length: count }, (_, row) => (row === count - 1 ? high : low + row * step))
}

interface Chain {
  readonly at: number
  readonly cost: number
  readonly before: Chain | null
}

/** What a row through an obstacle costs beside millimetres of moving, and one in the room beside a bar. */
const THROUGH = 1e9
const BESIDE = 1e5

/** Least moving of all rows that keeps every distance at most the spacing. */
function moved(
  input: ClearRowsInput,
  even: readonly number[],
): { readonly rows: readonly number[]; readonly through: number } {
  const { low, high, spacing, tolerance, obstacles } = input
  const inWay = (at: number) => {
    const there = obstacles.filter((each) => at > each.low + 1e-6 && at < each.high - 1e-6)
    if (there.length === 0) return 0
    const spans = input.spansAt(at)
    const met = there.filter((each) => spans.some(([from, to]) => from < each.to && to > each.from))
    if (met.some(({ isBeside }) => isBeside !== true)) return THROUGH
    return met.length > 0 ? BESIDE : 0
  }
  let chains: Chain[] = [{ at: Number.NEGATIVE_INFINITY, cost: 0, before: null }]
  for (const [row, base] of even.entries()) {
    const aside = obstacles.flatMap((each) => {
      const most = each.isWeb ? Math.max(tolerance, each.high - each.low) : tolerance
      return [each.low, each.high].filter((at) => Math.abs(at - base) <= most + 1e-9)
    })
    const places = [base, ...aside, ...followers(input, even, row)].filter((at) => at >= low && at <= high)
    const next: Chain[] = []
    for (const at of new Set(places)) {
      const own = Math.abs(at - base) + inWay(at)
      let best: Chain | null = null
      for (const chain of chains) {
        const apart = at - chain.at
        if (row > 0 && !(apart > 0 && apart <= spacing * (1 + 1e-9) + 1e-6)) continue
        if (best === null || chain.cost + own < best.cost)
          best = { at, cost: chain.cost + own, before: chain }
      }
      if (best !== null) next.push(best)
    }
    // Even places never lie too far apart, but one moved before may: then this row cannot follow it.
    if (next.length === 0) return { rows: even, through: even.filter((at) => inWay(at) === THROUGH).length }
    chains = next
  }
  const best = chains.reduce((one, other) => (other.cost < one.cost ? other : one))
  const rows: number[] = []
  for (let chain: Chain | null = best; chain !== null && chain.before !== null; chain = chain.before) {
    rows.unshift(chain.at)
  }
  return { rows, through: Math.floor(best.cost / THROUGH) }
}

/** Places of a row that follows a neighbour, which moves aside of the room beside a bar, at the full spacing. */
function followers(
  { obstacles, spacing, tolerance }: ClearRowsInput,
  even: readonly number[],
  row: number,
): number[] {
  const base = even[row] as number
  const slack = spacing - ((even[1] ?? base) - (even[0] ?? base))
  if (!(slack > 0)) return []
  const most = Math.min(even.length, Math.ceil(tolerance / slack) + 1)
  const near = (one: number, other: number | undefined) =>
    other !== undefined && Math.abs(one - other) <= tolerance + 1e-9
  const places: number[] = []
  for (const { low, high } of obstacles.filter(({ isBeside }) => isBeside === true)) {
    for (let by = 1; by <= most; by += 1) {
      // A row after this one moves on, or one before it moves back.
      if (near(high, even[row + by])) places.push(high - by * spacing)
      if (near(low, even[row - by])) places.push(low + by * spacing)
    }
  }
  return places.filter((at) => near(at, base))
}

/** A bar as it is cut: along its line from `from` to `to`, mm. */
export interface Piece {
  readonly from: number
  readonly to: number
}

export interface LappedLine {
  readonly pieces: readonly Piece[]
  /** Middles of the laps along the line, mm. */
  readonly laps: readonly number[]
}

export interface LappedInput {
  readonly from: number
  readonly to: number
  /** Longest bar in stock, mm. */
  readonly stock: number
  /** Lap length, mm; under half the stock. */
  readonly lap: number
  /** Which of the two lap positions: neighbouring rows take turns. */
  readonly odd: boolean
}

/** Middles of laps of neighbouring bars lie at least this many laps apart, so that their ends keep 0.3 laps clear. */
export const STAGGER = 1.3

/** A piece is not shorter than this many laps: less would be all lap. */
const SHORTEST = 2

/**
 * Cuts a bar line into as few pieces of stock as the lap allows; the laps of odd rows lie away from those of even rows.
 *
 * Even rows start with the longest bar, odd rows with the shortest that still needs no further piece. Where that leaves the laps
 * of neighbours nearer than 1.3 laps, odd rows take one piece more. Null where a lap of half the stock or more cannot be built.
 */
export function lappedLine(input: LappedInput): LappedLine | null {
  const { from, to, stock, lap, odd } = input
  const length = to - from
  if (!(length > 0 && stock > 0)) return null
  if (length <= stock * (1 + 1e-12)) return { pieces: [{ from, to }], laps: [] }
  if (!(lap > 0 && lap * 2 < stock)) return null
  const least = fewest(length, stock, lap)
  const even = firstRange(length, stock, lap, least)
  if (even === null) return null
  if (!odd) return built(input, least, even.high)
  const period = stock - lap
  const plain = Math.max(even.low, least > 2 ? even.high - period + STAGGER * lap : even.low)
  if (even.high - plain >= STAGGER * lap) return built(input, least, plain)
  const more = firstRange(length, stock, lap, least + 1)
  if (more === null) return built(input, least, plain)
  // The middle between two laps of the even row, as near as the extra piece allows.
  const wanted = Math.min(even.high, stock) - period / 2
  const first = Math.min(more.high, Math.max(more.low, wanted))
  const apart = Math.min(even.high - first, first + period - even.high)
  return apart > even.high - plain ? built(input, least + 1, first) : built(input, least, plain)
}

function fewest(length: number, stock: number, lap: number): number {
  return Math.max(2, Math.ceil((length - lap) / (stock - lap) - 1e-9))
}

/** Lengths that the first piece may have when `count` pieces make the line and the middle ones are whole bars. */
function firstRange(
  length: number,
  stock: number,
  lap: number,
  count: number,
): { readonly low: number; readonly high: number } | null {
  const ends = length + lap * (count - 1) - (count - 2) * stock
  const shortest = Math.min(SHORTEST * lap, ends / 2)
  const low = Math.max(shortest, ends - stock)
  const high = Math.min(stock, ends - shortest)
  return high >= low && shortest > lap ? { low, high } : null
}

function built({ from, to, stock, lap }: LappedInput, count: number, first: number): LappedLine {
  const pieces: Piece[] = []
  const laps: number[] = []
  let start = from
  for (let i = 0; i < count; i += 1) {
    const end = i === count - 1 ? to : i === 0 ? start + first : start + stock
    pieces.push({ from: start, to: end })
    if (i < count - 1) laps.push(end - lap / 2)
    start = end - lap
  }
  return { pieces, laps }
}

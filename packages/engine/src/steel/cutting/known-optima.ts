import type { CutList } from './list.ts'

/** A cutting problem whose least number of bars is known without any solver of ours, or is proven by a bound that anybody can check. */
export interface KnownCut {
  readonly name: string
  /** The published way that it is built in. */
  readonly source: string
  readonly list: CutList
  /** Bars of the plan that it was built from, which fills each bar to the end; null where the bound must prove the plan. */
  readonly planted: number | null
}

/** Numbers from 0 to 1, the same in every run (D. H. Lehmer 1951). */
export function numbers(seed: number): () => number {
  let state = seed
  const next = (): number => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
  for (let i = 0; i < 10; i += 1) next()
  return next
}

function whole(random: () => number, from: number, to: number): number {
  return from + Math.floor(random() * (to - from + 1))
}

function listOf(stock: number, lengths: readonly number[]): CutList {
  const counts = new Map<number, number>()
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1)
  return {
    stock: [{ length: stock }],
    pieces: [...counts].map(([length, count]) => ({ length, count })),
  }
}

/** Whole lengths spread evenly from 20 to 100, bars of 150: E. Falkenauer 1996, from memory. The bound proves the plan. */
export function uniform(pieces: number, seed: number): KnownCut {
  const random = numbers(seed)
  const lengths = Array.from({ length: pieces }, () => whole(random, 20, 100))
  return {
    name: `uniform ${pieces}, ${seed}`,
    source: 'E. Falkenauer 1996',
    list: listOf(150, lengths),
    planted: null,
  }
}

/** Bars of 1000 cut in three without waste, the first 380 to 490, the others at least 250: E. Falkenauer 1996, from memory. */
export function triplets(bars: number, seed: number): KnownCut {
  const random = numbers(seed)
  const lengths: number[] = []
  for (let bar = 0; bar < bars; bar += 1) {
    const first = whole(random, 380, 490)
    const second = whole(random, 250, Math.floor((1000 - first) / 2))
    lengths.push(first, second, 1000 - first - second)
  }
  return {
    name: `triplets ${bars}, ${seed}`,
    source: 'E. Falkenauer 1996',
    list: listOf(1000, lengths),
    planted: bars,
  }
}

/** Full bars cut at random places, no piece under `least`, in steps of `step`: zero waste. */
export function noWaste(stock: number, bars: number, least: number, step: number, seed: number): KnownCut {
  const random = numbers(seed)
  const lengths: number[] = []
  const most = Math.floor((0.6 * stock) / step)
  for (let bar = 0; bar < bars; bar += 1) {
    let left = stock / step
    while (left * step > 2.2 * least) {
      const piece = whole(random, Math.ceil(least / step), Math.min(Math.floor(left - least / step), most))
      lengths.push(piece * step)
      left -= piece
    }
    lengths.push(left * step)
  }
  return {
    name: `no waste ${stock} × ${bars}, ${seed}`,
    source: 'full bars cut at random (G. Wäscher, T. Gau 1996 describe the kind)',
    list: listOf(stock, lengths),
    planted: bars,
  }
}

/** Pairs a little over and under half a bar, some with a filler: hardly a pair fits but its own. */
export function nearHalf(bars: number, seed: number, stock = 12_000): KnownCut {
  const random = numbers(seed)
  const lengths: number[] = []
  for (let bar = 0; bar < bars; bar += 1) {
    const over = whole(random, Math.floor(0.48 * stock), Math.floor(0.56 * stock))
    const filler = random() < 0.5 ? whole(random, Math.floor(0.02 * stock), Math.floor(0.09 * stock)) : 0
    lengths.push(over, stock - over - filler)
    if (filler > 0) lengths.push(filler)
  }
  return {
    name: `near half ${bars}, ${seed}`,
    source: 'pairs about half the bar, planted',
    list: listOf(stock, lengths),
    planted: bars,
  }
}

/** Whole lengths from 150 to 200, bars of 1000: P. Schwerin, G. Wäscher 1997, from memory. First fit decreasing does badly here. */
export function fiveOrSix(pieces: number, seed: number): KnownCut {
  const random = numbers(seed)
  const lengths = Array.from({ length: pieces }, () => whole(random, 150, 200))
  return {
    name: `five or six ${pieces}, ${seed}`,
    source: 'P. Schwerin, G. Wäscher 1997',
    list: listOf(1000, lengths),
    planted: null,
  }
}

/** At least sixty problems of up to 500 pieces, and of up to 120 lengths or little more. */
export function knownCuts(): KnownCut[] {
  const seeds = [1, 2, 3, 4]
  return [
    ...seeds.flatMap((seed) => [120, 250, 500].map((pieces) => uniform(pieces, seed))),
    ...seeds.flatMap((seed) => [20, 40, 83, 166].map((bars) => triplets(bars, seed))),
    ...seeds.flatMap((seed) => [
      noWaste(12_000, 25, 700, 1, seed),
      noWaste(12_000, 100, 700, 50, seed),
      noWaste(6000, 60, 400, 25, seed),
    ]),
    ...seeds.flatMap((seed) => [nearHalf(40, seed), nearHalf(50, seed + 10)]),
    ...seeds.flatMap((seed) => [nearHalf(150, seed, 6000 / 25)]),
    ...seeds.flatMap((seed) => [100, 120, 400].map((pieces) => fiveOrSix(pieces, seed))),
  ]
}

/** A job with several stock lengths: `pieces` pieces of `lengths` lengths from `from` to `to` in steps of 5 mm. */
export function severalStocks({
  pieces,
  lengths,
  stock,
  from,
  to,
  seed,
}: {
  readonly pieces: number
  readonly lengths: number
  readonly stock: readonly number[]
  readonly from: number
  readonly to: number
  readonly seed: number
}): CutList {
  const random = numbers(seed)
  const kinds = Array.from(
    { length: lengths },
    () => 5 * whole(random, Math.ceil(from / 5), Math.floor(to / 5)),
  )
  const counts = new Map<number, number>()
  for (let i = 0; i < pieces; i += 1) {
    const length = kinds[whole(random, 0, kinds.length - 1)] as number
    counts.set(length, (counts.get(length) ?? 0) + 1)
  }
  return {
    stock: stock.map((length) => ({ length })),
    pieces: [...counts].map(([length, count]) => ({ length, count })),
  }
}

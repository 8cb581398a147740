import { loadHighs } from '../../numeric/highs.ts'
import { InputError } from '../../working/issue.ts'
import { GEOMETRY } from '../../working/source.ts'
import type { Step } from '../../working/worked.ts'
import { fewPatterns } from './few-patterns.ts'
import { handledBars, keptLength } from './handling.ts'
import { type CutList, decimals } from './list.ts'
import { markedBars } from './marks.ts'
import type { CutAnswer, CutBin, CutProblem, CutUse } from './problem.ts'
import { searchCuts, stockBoundOf } from './search.ts'

export interface CutPieces {
  readonly length: number
  readonly count: number
  readonly mark?: string
  readonly panel?: string
  /** Bending machine that the piece goes to. */
  readonly machine?: string
  /** Lower is wanted earlier. */
  readonly order?: number
}

/** Equal bars in the shear at once, and how often. */
export interface CutBatch {
  readonly bars: number
  readonly times: number
}

export interface CutBar {
  /** Length of the bar that is cut. */
  readonly stock: number
  /** Bars cut this way. */
  readonly count: number
  readonly pieces: readonly CutPieces[]
  /** Left of each such bar. */
  readonly offcut: number
  /** Taken from the rack of offcuts. */
  readonly rack?: true
  /** Where the offcut goes; only where the list says what is worth keeping and something is left. */
  readonly offcutTo?: 'rack' | 'scrap'
  /** How these bars go through the shear; only where the list says how many it takes at once. */
  readonly batches?: readonly CutBatch[]
}

export interface CutPlan {
  readonly bars: readonly CutBar[]
  /** New stock in all. */
  readonly stockLength: number
  /** Offcuts taken from the rack in all. */
  readonly rackLength: number
  /** Pieces in all, without kerf. */
  readonly netLength: number
  /** Offcuts worth keeping in all, after the cuts that take them off; only where the list says what is. */
  readonly keptLength?: number
  /** No plan takes less new stock: from the linear relaxation, proven in whole numbers. */
  readonly lowerBound: number
  /** No plan takes less new stock, nor as little of it and less from the rack. */
  readonly proven: boolean
  /** Different ways of cutting. */
  readonly ways: number
  /** The list asks for fewer ways than were found. */
  readonly tooManyWays?: true
  /** What one piece of each length is worth in the proof of the bound: no bar of unlimited stock holds more worth than its length. */
  readonly prices: readonly { readonly length: number; readonly price: number }[]
  readonly seconds: number
  readonly working: readonly Step[]
}

export interface CutPlanInput {
  readonly list: CutList
  /** Seconds that the search may take. */
  readonly within: number
  /** Told of each better plan while the search goes on, mm; false ends it with what there is. */
  readonly better?: (so: CutProgress) => boolean
}

/** The best plan so far. */
export interface CutProgress {
  readonly bars: readonly CutBar[]
  readonly stockLength: number
  readonly lowerBound: number
}

/**
 * Cuts pieces from stock and offcuts: least new stock, then least from the rack. Pieces come out exactly as asked.
 *
 * @throws InputError where the counts cannot supply the pieces, naming the piece and the length short.
 */
export async function cutPlan({ list, within, better }: CutPlanInput): Promise<CutPlan> {
  const started = performance.now()
  const deadline = started + within * 1000
  const scaled = inWholeUnits(list)
  const { problem, stockProblem, step, unit } = scaled
  const withRack = (list.offcuts ?? []).length > 0

  const stockBound = withRack ? stockBoundOf(stockProblem, performance.now() + within * 300) : null
  const attainable = (bound: number): number => {
    const whole = Math.ceil(bound / step - 1e-9) * step
    if (stockBound === null) return leastSum(scaled.stockLengths, bound, step)
    const stock = leastSum(scaled.stockLengths, stockBound.bound, scaled.stockStep)
    return Math.max(whole, stock * scaled.stockWeight)
  }
  const found = await searchCuts({
    highs: loadHighs,
    problem,
    step,
    attainable,
    deadline,
    ...(better === undefined
      ? {}
      : {
          better: (answer: CutAnswer, bound: number) => {
            const bars = barsOf(list, scaled, answer.uses)
            return better({
              bars,
              stockLength: sumBars(bars, false),
              lowerBound: (stockBound?.bound ?? bound) / unit,
            })
          },
        }),
  })
  refuseShort(list, scaled, found.answer.short, found.proven)
  const proof = stockBound ?? found.proof
  const answer =
    list.patterns === undefined
      ? found.answer
      : fewPatterns({
          problem,
          answer: found.answer,
          most: list.patterns,
          deadline: performance.now() + FEWER_WITHIN,
        })
  const bars = barsOf(list, scaled, answer.uses)
  const stockLength = sumBars(bars, false)
  const lowerBound = proof.bound / unit
  const proven = found.proven && answer.cost <= found.answer.cost
  const netLength =
    list.pieces.reduce((sum, piece) => sum + scaled.whole(piece.length) * piece.count, 0) / unit
  return {
    bars,
    stockLength,
    rackLength: sumBars(bars, true),
    netLength,
    ...(list.keep === undefined ? {} : { keptLength: keptLength(list, bars) }),
    lowerBound,
    // A plan held to few ways is proven only where it costs no more than the best without that limit.
    proven,
    ways: answer.uses.length,
    ...(list.patterns !== undefined && answer.uses.length > list.patterns
      ? { tooManyWays: true as const }
      : {}),
    prices: problem.sizes.map((size, index) => ({
      length: (size - scaled.kerf) / unit,
      price: (proof.prices[index] ?? 0) / proof.scale / unit,
    })),
    seconds: (performance.now() - started) / 1000,
    working: workingOf({
      netLength,
      lowerBound,
      stockLength,
      proven,
      sizes: problem.sizes.length,
    }),
  }
}

/** Time to put ways of cutting together after the search, ms. */
const FEWER_WITHIN = 1500

interface Scaled {
  /** Both aims in one cost: new stock weighs more than everything in the rack together. */
  readonly problem: CutProblem
  /** New stock alone, the rack free: for the bound. */
  readonly stockProblem: CutProblem
  readonly step: number
  readonly stockStep: number
  /** Cost of one unit of new stock in `problem`. */
  readonly stockWeight: number
  readonly stockLengths: readonly number[]
  /** Whole units in one unit of length. */
  readonly unit: number
  readonly kerf: number
  whole(length: number): number
}

function inWholeUnits(list: CutList): Scaled {
  const offcuts = list.offcuts ?? []
  const lengths = [...list.stock, ...offcuts, ...list.pieces].map((each) => each.length)
  const unit = 10 ** Math.max(...lengths.map(decimals), decimals(list.kerf ?? 0))
  const whole = (length: number): number => Math.round(length * unit)
  const kerf = whole(list.kerf ?? 0)

  const demandOf = new Map<number, number>()
  for (const piece of list.pieces) {
    const size = whole(piece.length) + kerf
    demandOf.set(size, (demandOf.get(size) ?? 0) + piece.count)
  }
  const sizes = [...demandOf.keys()].sort((a, b) => b - a)
  const demand = sizes.map((size) => demandOf.get(size) ?? 0)

  const stockLengths = list.stock.map((bar) => whole(bar.length))
  const stockStep = stockLengths.reduce(gcd, 0) || 1
  const inRack = offcuts.reduce((sum, bar) => sum + whole(bar.length) * bar.count, 0)
  const stockWeight = offcuts.length === 0 ? 1 : (inRack + 1) / stockStep
  const bin = (length: number, cost: number, limit: number): CutBin => ({
    capacity: length + kerf,
    cost,
    limit,
  })
  const newStock = list.stock.map((bar, index) => {
    const length = stockLengths[index] ?? 0
    const cost = offcuts.length === 0 ? length : (length / stockStep) * (inRack + 1)
    return bin(length, cost, bar.count ?? Number.POSITIVE_INFINITY)
  })
  const rack = offcuts.map((bar) => bin(whole(bar.length), whole(bar.length), bar.count))
  const bins = [...newStock, ...rack]
  const step = bins.map((each) => each.cost).reduce(gcd, 0) || 1
  const problem = { sizes, demand, bins, shortCost: shortCost(sizes, demand, bins, step) }
  const stockBins = [
    ...newStock.map((each, index) => ({ ...each, cost: stockLengths[index] ?? 0 })),
    ...rack.map((each) => ({ ...each, cost: 0 })),
  ]
  const stockProblem = {
    sizes,
    demand,
    bins: stockBins,
    shortCost: shortCost(sizes, demand, stockBins, stockStep),
  }
  return { problem, stockProblem, step, stockStep, stockWeight, stockLengths, unit, kerf, whole }
}

/**
 * Dearer than any plan that supplies everything; null where unlimited stock holds every size, so that nothing can be short.
 */
function shortCost(
  sizes: readonly number[],
  demand: readonly number[],
  bins: readonly CutBin[],
  step: number,
): number | null {
  const unlimited = bins.filter((bin) => !Number.isFinite(bin.limit))
  if (Math.max(0, ...unlimited.map((bin) => bin.capacity)) >= (sizes[0] ?? 0)) return null
  const pieces = demand.reduce((sum, count) => sum + count, 0)
  const limited = bins
    .filter((bin) => Number.isFinite(bin.limit))
    .reduce((sum, bin) => sum + Math.min(bin.limit, pieces) * bin.cost, 0)
  const most = limited + pieces * Math.max(0, ...unlimited.map((bin) => bin.cost))
  return Math.ceil((most + 1) / step) * step
}

function refuseShort(list: CutList, scaled: Scaled, short: readonly number[], proven: boolean): void {
  const issues = short.flatMap((count, index) => {
    if (count === 0) return []
    const size = ((scaled.problem.sizes[index] ?? 0) - scaled.kerf) / scaled.unit
    const at = list.pieces.findIndex((piece) => piece.length === size)
    const mark = list.pieces[at]?.mark
    return [
      {
        path: `pieces[${at}]${mark === undefined ? '' : ` (${mark})`}`,
        found: `${count} of length ${size} more than ${proven ? 'the counts of stock and offcuts can supply' : 'could be supplied in the time given'}: ${count * size} short`,
        expected: 'pieces that stock and offcuts can supply',
      },
    ]
  })
  if (issues.length > 0) throw new InputError(issues)
}

function barsOf(list: CutList, { problem, unit, kerf }: Scaled, uses: readonly CutUse[]): CutBar[] {
  const bars = uses.map(({ bin, counts, times }) => {
    const capacity = problem.bins[bin]?.capacity ?? 0
    const used = counts.reduce((sum, count, size) => sum + count * (problem.sizes[size] ?? 0), 0)
    const pieces = counts.flatMap((count, size) =>
      count > 0 ? [{ length: ((problem.sizes[size] ?? 0) - kerf) / unit, count }] : [],
    )
    const bar = { stock: (capacity - kerf) / unit, count: times, pieces, offcut: (capacity - used) / unit }
    return bin >= list.stock.length ? { ...bar, rack: true as const } : bar
  })
  bars.sort((a, b) => b.stock - a.stock || a.offcut - b.offcut)
  return handledBars(list, markedBars(list.pieces, bars))
}

function sumBars(bars: readonly CutBar[], rack: boolean): number {
  return bars.reduce((sum, bar) => sum + ((bar.rack === true) === rack ? bar.stock * bar.count : 0), 0)
}

/** Tables of sums longer than this are not made; a multiple of the step is then the answer. */
const LONGEST_TABLE = 2_000_000

/** Least sum of stock lengths at or above a bound. Counts are not read: leaving them out can only give less. */
function leastSum(lengths: readonly number[], bound: number, step: number): number {
  const from = Math.max(0, Math.ceil(bound / step - 1e-9))
  const longest = Math.max(0, ...lengths) / step
  const end = from + longest
  if (lengths.length < 2 || !(end < LONGEST_TABLE)) return from * step
  const reached = new Uint8Array(end + 1)
  reached[0] = 1
  for (let sum = 0; sum <= end; sum += 1) {
    if (reached[sum] === 0) continue
    if (sum >= from) return sum * step
    for (const length of lengths) if (sum + length / step <= end) reached[sum + length / step] = 1
  }
  return from * step
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b)
}

function workingOf({
  netLength,
  lowerBound,
  stockLength,
  proven,
  sizes,
}: {
  readonly netLength: number
  readonly lowerBound: number
  readonly stockLength: number
  readonly proven: boolean
  readonly sizes: number
}): Step[] {
  return [
    {
      symbol: 'net',
      formula: 'Σ length · count',
      given: { lengths: sizes },
      result: netLength,
      unit: 'mm',
      source: GEOMETRY,
      by: 'search',
    },
    {
      symbol: 'bound',
      formula: 'Σ price · count, less what limited bars are worth over their length',
      given: { lengths: sizes },
      result: lowerBound,
      unit: 'mm',
      source: GEOMETRY,
      by: 'search',
      note: 'prices of the linear relaxation (column generation, Gilmore and Gomory 1961), proven in whole numbers',
    },
    {
      symbol: 'stock',
      formula: 'Σ stock length · bars',
      given: { lengths: sizes },
      result: stockLength,
      unit: 'mm',
      source: GEOMETRY,
      by: 'search',
      note: proven ? 'no plan is better' : 'best plan found; a better one is not ruled out',
    },
  ]
}

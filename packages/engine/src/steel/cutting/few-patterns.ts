import { knapsack } from './knapsack.ts'
import { type CutAnswer, type CutProblem, type CutUse, costOf } from './problem.ts'

export interface FewPatternsInput {
  readonly problem: CutProblem
  readonly answer: CutAnswer
  /** Different ways of cutting that the shear wants at most. */
  readonly most: number
  /** Of `performance.now`. */
  readonly deadline: number
}

/** Waste of a bar that a repeated filling may have, parts of its length; a plan is made with each, the quickest first. */
const WASTES = [1, 0.35, 0.2, 0.12, 0.08, 0.05, 0.03, 0.02, 0.01, 0.005, 0] as const

/**
 * A plan with at most so many different ways of cutting: the cheapest found, or the one with the fewest ways where none keeps the limit. Pieces
 * still come out exactly as asked.
 *
 * Ways of the plan given are first put together without a bar more: two into one, three into two (Foerster and Wäscher 2000, the idea
 * only). Where that is not enough, plans of often repeated fillings are made at several allowances of waste (Haessler 1975, the idea only) and
 * put together alike. Nothing proves that fewer bars would not do.
 */
export function fewPatterns({ problem, answer, most, deadline }: FewPatternsInput): CutAnswer {
  const better = (a: CutAnswer, b: CutAnswer): boolean => {
    const [aOver, bOver] = [Math.max(0, a.uses.length - most), Math.max(0, b.uses.length - most)]
    if (aOver !== bOver) return aOver < bOver
    return a.cost !== b.cost ? a.cost < b.cost : a.uses.length < b.uses.length
  }
  // Putting together goes over all threes of ways: with hundreds of them it would take all the time, so it has a part of what is left.
  const joined = (from: CutAnswer): CutAnswer => {
    const now = performance.now()
    return { ...from, uses: putTogether(problem, from.uses, most, now + (deadline - now) / 3) }
  }
  let best = joined(answer)
  if (best.uses.length <= most) return best
  for (const waste of WASTES) {
    if (performance.now() > deadline) break
    const filled = repeatedFill(problem, waste, deadline)
    if (filled === null) continue
    const next = joined(filled)
    if (better(next, best)) best = next
  }
  return best
}

/**
 * Bars filled so that each filling repeats as often as may be: the number of repeats falls until a filling within the allowed waste is found.
 * Null where bars or the time run out.
 */
function repeatedFill(problem: CutProblem, waste: number, deadline: number): CutAnswer | null {
  const { sizes, demand, bins } = problem
  const rest = [...demand]
  const free = bins.map(({ limit }) => limit)
  const uses: CutUse[] = []
  while (rest.some((count) => count > 0)) {
    const use = performance.now() > deadline ? null : nextFilling(problem, rest, free, waste)
    if (use === null) return null
    uses.push(use)
    free[use.bin] = (free[use.bin] ?? 0) - use.times
    for (const [size, count] of use.counts.entries()) rest[size] = (rest[size] ?? 0) - count * use.times
  }
  const short = sizes.map(() => 0)
  return { uses, short, cost: costOf(problem, uses, short) }
}

function nextFilling(
  { sizes, bins }: CutProblem,
  rest: readonly number[],
  free: readonly number[],
  waste: number,
): CutUse | null {
  const open = bins.flatMap((bin, index) => ((free[index] ?? 0) > 0 ? [{ ...bin, index }] : []))
  const capacity = Math.max(0, ...open.map((bin) => bin.capacity))
  const longest = sizes[0] ?? 1
  // Long pieces first: a little more worth than their length.
  const values = sizes.map((size) => size * (1 + (0.05 * size) / longest))
  let last: CutUse | null = null
  for (const repeats of repeatsOf(rest)) {
    const sack = knapsack({ sizes, values, most: rest.map((count) => Math.floor(count / repeats)), capacity })
    let best: { readonly use: CutUse; readonly rate: number; readonly wasted: number } | null = null
    for (const { index, capacity: room, cost } of open) {
      const counts = sack.counts(room)
      const used = counts.reduce((sum, count, size) => sum + count * (sizes[size] ?? 0), 0)
      if (used === 0) continue
      const times = counts.reduce(
        (least, count, size) => (count > 0 ? Math.min(least, Math.floor((rest[size] ?? 0) / count)) : least),
        free[index] ?? 0,
      )
      const rate = cost / used
      if (times > 0 && (best === null || rate < best.rate))
        best = { use: { bin: index, counts, times }, rate, wasted: (room - used) / room }
    }
    if (best === null) continue
    last = best.use
    if (best.wasted <= waste) return best.use
  }
  return last
}

/** Numbers of repeats that change what one bar may hold, most first. */
function repeatsOf(rest: readonly number[]): number[] {
  const most = Math.max(...rest)
  const repeats = new Set<number>([1])
  for (const count of rest)
    for (let each = 1; each * each <= count; each += 1) {
      repeats.add(each)
      repeats.add(Math.floor(count / each))
    }
  return [...repeats].filter((each) => each >= 1 && each <= most).sort((a, b) => b - a)
}

/** Ways of one bin put together while that leaves fewer of them and more than `most` are there; the bars stay as many. */
function putTogether(problem: CutProblem, from: readonly CutUse[], most: number, deadline: number): CutUse[] {
  let uses = [...from]
  for (let changed = true; changed && uses.length > most && performance.now() < deadline; ) {
    changed = false
    const next = twoIntoOne(uses) ?? threeIntoTwo(problem, uses, deadline)
    if (next !== null) {
      uses = next
      changed = true
    }
  }
  return uses
}

function twoIntoOne(uses: readonly CutUse[]): CutUse[] | null {
  for (const [i, a] of uses.entries()) {
    for (const [k, b] of uses.entries()) {
      if (k <= i || a.bin !== b.bin) continue
      const times = a.times + b.times
      const sums = a.counts.map((count, size) => count * a.times + (b.counts[size] ?? 0) * b.times)
      if (sums.some((sum) => sum % times !== 0)) continue
      const one = { bin: a.bin, counts: sums.map((sum) => sum / times), times }
      return [...uses.filter((_, at) => at !== i && at !== k), one]
    }
  }
  return null
}

/** Splits of the bars of three ways over two that are tried at most. */
const MOST_SPLITS = 60

function threeIntoTwo(problem: CutProblem, uses: readonly CutUse[], deadline: number): CutUse[] | null {
  for (const [i, a] of uses.entries()) {
    for (let k = i + 1; k < uses.length; k += 1) {
      for (let l = k + 1; l < uses.length; l += 1) {
        const [b, c] = [uses[k] as CutUse, uses[l] as CutUse]
        if (a.bin !== b.bin || b.bin !== c.bin) continue
        if (performance.now() > deadline) return null
        const two = splitOverTwo(problem, [a, b, c])
        if (two !== null) return [...uses.filter((_, at) => at !== i && at !== k && at !== l), ...two]
      }
    }
  }
  return null
}

/** The pieces of three ways over two, with as many bars in all; null where no split fits. */
function splitOverTwo(
  { sizes, bins }: CutProblem,
  three: readonly [CutUse, CutUse, CutUse],
): CutUse[] | null {
  const bin = three[0].bin
  const capacity = bins[bin]?.capacity ?? 0
  const bars = three.reduce((sum, { times }) => sum + times, 0)
  const sums = sizes.map((_, size) =>
    three.reduce((sum, use) => sum + use.times * (use.counts[size] ?? 0), 0),
  )
  const here = sums.flatMap((sum, size) => (sum > 0 ? [size] : []))
  const halves = Math.floor(bars / 2)
  const tried = Array.from({ length: Math.min(halves, MOST_SPLITS) }, (_, at) => halves - at)
  for (const { times } of three) if (times <= halves && !tried.includes(times)) tried.push(times)
  for (const first of tried) {
    const second = bars - first
    const one = sizes.map(() => 0)
    const other = sizes.map(() => 0)
    const fill = (at: number, leftOne: number, leftOther: number): boolean => {
      if (at === here.length) return true
      const size = here[at] as number
      const [sum, length] = [sums[size] as number, sizes[size] as number]
      for (let u = Math.min(Math.floor(sum / first), Math.floor(leftOne / length)); u >= 0; u -= 1) {
        const rest = sum - u * first
        if (rest % second !== 0) continue
        const v = rest / second
        if (v * length > leftOther) break
        one[size] = u
        other[size] = v
        if (fill(at + 1, leftOne - u * length, leftOther - v * length)) return true
      }
      one[size] = 0
      other[size] = 0
      return false
    }
    if (fill(0, capacity, capacity)) {
      return [
        { bin, counts: one, times: first },
        { bin, counts: other, times: second },
      ]
    }
  }
  return null
}

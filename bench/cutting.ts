import { type CutList, type CutPlan, cutPlan, parseCutList } from '@castwright/engine/steel'
import { knownCuts, severalStocks } from '@castwright/engine/steel/cutting'
import highsLoader from 'highs'
import type { BenchLine } from './line.ts'

interface Run {
  readonly name: string
  readonly pieces: number
  readonly lengths: number
  readonly plan: CutPlan
  readonly bars: number
  /** Least number of bars, where planted or proven. */
  readonly least: number | null
  readonly firstFit: number
}

/** Cutting bars: sets whose optimum is known, several stock lengths, a year of work; beside first fit decreasing and a plain solver. */
export async function cutting(short: boolean): Promise<BenchLine[]> {
  const known = knownCuts().filter((_, index) => !short || index % 6 === 0)
  const runs: Run[] = []
  for (const { name, list, planted } of known) {
    const plan = await cutPlan({ list: parseCutList(list), within: 10 })
    const bars = plan.bars.reduce((sum, bar) => sum + bar.count, 0)
    runs.push({
      name,
      pieces: list.pieces.reduce((sum, piece) => sum + piece.count, 0),
      lengths: list.pieces.length,
      plan,
      bars,
      least: planted ?? (plan.proven ? bars : null),
      firstFit: firstFitBars(list),
    })
  }
  const best = runs.filter(({ bars, least }) => bars === least)
  const slowest = runs.reduce((worst, run) => (run.plan.seconds > worst.plan.seconds ? run : worst))
  const over = Math.max(
    ...runs.map(
      ({ bars, least, plan, firstFit }) =>
        bars - (least ?? Math.ceil(plan.lowerBound / (plan.bars[0]?.stock ?? firstFit))),
    ),
  )
  const fitted = runs.filter(({ bars, firstFit }) => firstFit > bars).length
  return [
    {
      what: `cuts of known optimum, ${runs.length} sets`,
      value: `${best.length} of ${runs.length}`,
      beside: `at the optimum, worst ${over} bars more; goal 95 %; up to ${Math.max(...runs.map(({ pieces }) => pieces))} pieces, ${Math.max(...runs.map(({ lengths }) => lengths))} lengths`,
    },
    {
      what: 'the slowest of them',
      value: `${slowest.plan.seconds.toFixed(2)} s`,
      beside: `${slowest.name}, ${slowest.lengths} lengths; goal 10 s each`,
    },
    {
      what: 'beside first fit decreasing',
      value: `${fitted} of ${runs.length}`,
      beside: `better, the rest alike, none worse: ${runs.every(({ bars, firstFit }) => bars <= firstFit) ? 'yes' : 'no'}; bars in all ${runs.reduce((sum, { bars }) => sum + bars, 0)} against ${runs.reduce((sum, { firstFit }) => sum + firstFit, 0)}`,
    },
    ...(await plainLines(short)),
    ...(await stockLines(short)),
  ]
}

async function stockLines(short: boolean): Promise<BenchLine[]> {
  const cases = [
    { pieces: 1000, lengths: 60, stock: [6000, 9000, 12_000, 15_000], from: 400, to: 8000 },
    { pieces: 1000, lengths: 120, stock: [6000, 7500, 12_000], from: 400, to: 6000 },
    { pieces: 3000, lengths: 100, stock: [6000, 9000, 12_000], from: 400, to: 6000 },
  ]
  const gaps: number[] = []
  const times: number[] = []
  let proven = 0
  for (const each of cases) {
    for (const seed of short ? [1] : [1, 2, 3]) {
      const plan = await cutPlan({ list: severalStocks({ ...each, seed }), within: 10 })
      gaps.push(plan.stockLength / plan.lowerBound - 1)
      times.push(plan.seconds)
      if (plan.proven) proven += 1
    }
  }
  const year: CutPlan[] = []
  for (const seed of short ? [1] : [1, 2, 3]) {
    const list = severalStocks({
      pieces: 16_000,
      lengths: 80,
      stock: [6000, 9000, 12_000, 15_000],
      from: 400,
      to: 8000,
      seed,
    })
    year.push(await cutPlan({ list, within: 5 }))
  }
  return [
    {
      what: `several stock lengths, ${gaps.length} sets of 1000 and 3000`,
      value: `${(100 * Math.max(...gaps)).toFixed(3)} %`,
      beside: `worst over the bound, goal 0.05 %; ${proven} proven (stock lengths add up to steps of 1.5 or 3 m); slowest ${Math.max(...times).toFixed(2)} s`,
    },
    {
      what: 'a year: 16,000 pieces, 80 lengths, four stocks',
      value: `${(100 * Math.max(...year.map((plan) => plan.stockLength / plan.lowerBound - 1))).toFixed(4)} %`,
      beside: `over the bound in ${Math.max(...year.map((plan) => plan.seconds)).toFixed(2)} s; goal 0.02 % in 5 s`,
    },
  ]
}

/** A plain whole-number program, pieces assigned to bars, to the same plan or until its time is out. */
async function plainLines(short: boolean): Promise<BenchLine[]> {
  const highs = await highsLoader()
  const sets = knownCuts()
    .filter(({ list }) => list.pieces.length <= 70)
    .slice(0, short ? 2 : 8)
  let alike = 0
  let [ours, plain] = [0, 0]
  const limit = short ? 5 : 20
  for (const { list } of sets) {
    const plan = await cutPlan({ list: parseCutList(list), within: 10 })
    const bars = plan.bars.reduce((sum, bar) => sum + bar.count, 0)
    const from = performance.now()
    const found = plainBars(highs, list, firstFitBars(list), limit)
    plain += (performance.now() - from) / 1000
    ours += plan.seconds
    if (found !== null && found <= bars) alike += 1
  }
  return [
    {
      what: `beside a plain solver, ${sets.length} sets`,
      value: `× ${(plain / ours).toFixed(0)}`,
      beside: `${ours.toFixed(2)} s against ${plain.toFixed(1)} s (pieces assigned to bars, ${limit} s each at most), which came as far in ${alike}`,
    },
  ]
}

function plainBars(
  highs: Awaited<ReturnType<typeof highsLoader>>,
  list: CutList,
  most: number,
  limit: number,
): number | null {
  const stock = list.stock[0]?.length ?? 0
  const kinds = list.pieces.length
  const columns = most * (kinds + 1)
  const starts = [0]
  const indices: number[] = []
  const values: number[] = []
  // Rows: pieces of each length, then room of each bar.
  for (let bar = 0; bar < most; bar += 1) {
    for (const [kind, { length }] of list.pieces.entries()) {
      indices.push(kind, kinds + bar)
      values.push(1, length)
      starts.push(indices.length)
    }
    indices.push(kinds + bar)
    values.push(-stock)
    starts.push(indices.length)
  }
  const perColumn = (piece: (count: number) => number, bar: number): number[] =>
    Array.from({ length: most }, () => [...list.pieces.map(({ count }) => piece(count)), bar]).flat()
  const model = highs.createModel({
    numCols: columns,
    numRows: kinds + most,
    colCost: perColumn(() => 0, 1),
    colLower: perColumn(() => 0, 0),
    colUpper: perColumn((count) => count, 1),
    rowLower: [
      ...list.pieces.map(({ count }) => count),
      ...Array.from({ length: most }, () => Number.NEGATIVE_INFINITY),
    ],
    rowUpper: [...list.pieces.map(({ count }) => count), ...Array.from({ length: most }, () => 0)],
    matrix: { format: 'csc', numRows: kinds + most, numCols: columns, starts, indices, values },
    integrality: Array.from({ length: columns }, () => 1 as const),
  })
  try {
    model.options.set({ output_flag: false, time_limit: limit })
    model.run()
    const found = model.getSolution().colValue
    if (found.length === 0) return null
    let bars = 0
    for (let bar = 0; bar < most; bar += 1) bars += Math.round(found[bar * (kinds + 1) + kinds] ?? 0)
    return bars > 0 ? bars : null
  } finally {
    model.dispose()
  }
}

/** Longest piece first into the first bar with room. */
function firstFitBars(list: CutList): number {
  const stock = list.stock[0]?.length ?? 0
  const rooms: number[] = []
  const lengths = list.pieces.flatMap(({ length, count }) => Array.from({ length: count }, () => length))
  for (const length of lengths.sort((a, b) => b - a)) {
    const bar = rooms.findIndex((room) => room >= length)
    if (bar < 0) rooms.push(stock - length)
    else rooms[bar] = (rooms[bar] ?? 0) - length
  }
  return rooms.length
}

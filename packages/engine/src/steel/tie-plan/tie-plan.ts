import type { Layer } from '../../panel/drawing.ts'
import type { BarLine } from '../mat-lines.ts'
import type { PlacedLap, SteelPlan } from '../steel-plan.ts'
import { layerRows } from './mat-rows.ts'

/** Why a crossing is tied: not at all, on the rim of the mat or of an opening, or every other one inside. */
export const TIE = { left: 0, rim: 1, everyOther: 2 } as const

/** Every crossing of a layer, row by row from the bottom, left to right. One entry an array is one crossing. */
export interface TiedCrossings {
  /** mm */
  readonly x: Float64Array
  readonly y: Float64Array
  /** One of `TIE`. */
  readonly why: Uint8Array
  readonly rim: number
  readonly tied: number
}

export interface LayerTies extends TiedCrossings {
  readonly layer: Layer
  /** Height of the crossings above the mould face, between the two bars, mm; null where cover is not given. */
  readonly height: number | null
  /** Ends of laps, tied besides the crossings: x and y of each, mm. */
  readonly lapX: Float64Array
  readonly lapY: Float64Array
}

export interface TiePlan {
  readonly layers: readonly LayerTies[]
  readonly crossings: number
  readonly rim: number
  /** Crossings to tie; the same as `ties` of the steel plan. */
  readonly tied: number
  /** Ties at the ends of laps. */
  readonly lapTies: number
}

/**
 * Where to tie the mats of a panel: every crossing of the rim, every other inside, each lap at both ends. Left out: bars that are no
 * mat (edge, trimmers, listed), which are tied wherever they cross.
 */
export function tiePlan({ placed, laps }: Pick<SteelPlan, 'placed' | 'laps'>): TiePlan {
  const layers = layerRows({ placed, laps }).map(({ layer, alongX, alongY }): LayerTies => {
    const ends = laps.filter((lap) => lap.layer === layer).flatMap(lapEnds)
    const heights = [alongX, alongY].map((rows) => rows.find((row) => row.height !== null)?.height ?? null)
    const [a, b] = heights
    return {
      layer,
      height: a == null || b == null ? null : (a + b) / 2,
      ...tiedCrossings({ alongX, alongY }),
      lapX: Float64Array.from(ends, ([x]) => x),
      lapY: Float64Array.from(ends, ([, y]) => y),
    }
  })
  const sum = (of: (layer: LayerTies) => number): number => layers.reduce((all, layer) => all + of(layer), 0)
  return {
    layers,
    crossings: sum(({ x }) => x.length),
    rim: sum(({ rim }) => rim),
    tied: sum(({ tied }) => tied),
    lapTies: sum(({ lapX }) => lapX.length),
  }
}

function lapEnds({ at: [x, y], length, direction }: PlacedLap): [number, number][] {
  const half = length / 2
  return direction === 'x'
    ? [
        [x - half, y],
        [x + half, y],
      ]
    : [
        [x, y - half],
        [x, y + half],
      ]
}

/**
 * Crossings of bars along x with bars along y in one layer, and which to tie. Counts as `crossings` does. Rows inside are gone
 * through to and fro, so that the tied ones of neighbouring rows lie staggered.
 *
 * Source of the rule: prefabricated mats are tied at every crossing of the rim and every other inside (Concrete Construction, General
 * principles for bar placing, part III; seen).
 */
export function tiedCrossings({
  alongX,
  alongY,
}: {
  readonly alongX: readonly BarLine[]
  readonly alongY: readonly BarLine[]
}): TiedCrossings {
  const xs = [...alongX].sort((a, b) => a.at - b.at || a.from - b.from)
  const ys = [...alongY].sort((a, b) => a.at - b.at)
  const { atX, atY, rowStart } = meet(xs, ys)
  const why = new Uint8Array(atX.length)
  const first = new Int32Array(ys.length).fill(-1)
  const last = new Int32Array(ys.length).fill(-1)
  for (let k = 0; k < atY.length; k += 1) {
    const j = atY[k] as number
    if (first[j] === -1) first[j] = k
    last[j] = k
  }
  let rim = 0
  for (let i = 0; i < xs.length; i += 1) {
    const [from, to] = [rowStart[i] as number, rowStart[i + 1] as number]
    for (let k = from; k < to; k += 1) {
      const j = atY[k] as number
      if (k === from || k === to - 1 || first[j] === k || last[j] === k) {
        why[k] = TIE.rim
        rim += 1
      }
    }
  }
  const others = everyOther(xs, rowStart, why)
  return {
    x: Float64Array.from(atY, (j) => (ys[j] as BarLine).at),
    y: Float64Array.from(atX, (i) => (xs[i] as BarLine).at),
    why,
    rim,
    tied: rim + others,
  }
}

/** Which bar along x and which along y meet at each crossing, and where each bar along x starts in that list. */
function meet(
  xs: readonly BarLine[],
  ys: readonly BarLine[],
): { readonly atX: readonly number[]; readonly atY: readonly number[]; readonly rowStart: Int32Array } {
  const atX: number[] = []
  const atY: number[] = []
  const rowStart = new Int32Array(xs.length + 1)
  for (let i = 0; i < xs.length; i += 1) {
    const x = xs[i] as BarLine
    rowStart[i] = atX.length
    for (let j = firstFrom(ys, x.from); j < ys.length; j += 1) {
      const y = ys[j] as BarLine
      if (y.at > x.to) break
      if (x.at < y.from || x.at > y.to) continue
      atX.push(i)
      atY.push(j)
    }
  }
  rowStart[xs.length] = atX.length
  return { atX, atY, rowStart }
}

function firstFrom(bars: readonly BarLine[], from: number): number {
  let [low, high] = [0, bars.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((bars[middle] as BarLine).at < from) low = middle + 1
    else high = middle
  }
  return low
}

/** Marks every other crossing that is not on the rim; how many. */
function everyOther(xs: readonly BarLine[], rowStart: Int32Array, why: Uint8Array): number {
  let [count, turn, back] = [0, true, false]
  const look = (k: number): void => {
    if (why[k] === TIE.rim) return
    if (turn) {
      why[k] = TIE.everyOther
      count += 1
    }
    turn = !turn
  }
  for (let i = 0; i < xs.length; ) {
    // Bars of one row that an opening parts are one row here.
    let next = i + 1
    while (next < xs.length && xs[next]?.at === xs[i]?.at) next += 1
    const [from, to] = [rowStart[i] as number, rowStart[next] as number]
    if (back) for (let k = to - 1; k >= from; k -= 1) look(k)
    else for (let k = from; k < to; k += 1) look(k)
    back = !back
    i = next
  }
  return count
}

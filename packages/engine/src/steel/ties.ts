import type { BarLine } from './mat-lines.ts'

export interface Crossings {
  readonly all: number
  /** Crossings at the end of a bar's run on either bar: the rim of the mat and of its openings. */
  readonly rim: number
  /** Crossings to tie: every one on the rim, every other inside. */
  readonly tied: number
}

/**
 * Crossings of the bars along x with those along y in one layer. A lap counts as one bar.
 *
 * Source of the rule: prefabricated mats are tied at every crossing of the rim and every other inside (Concrete Construction, General
 * principles for bar placing, part III; seen).
 */
export function crossings({
  alongX,
  alongY,
}: {
  readonly alongX: readonly BarLine[]
  readonly alongY: readonly BarLine[]
}): Crossings {
  const xs = [...alongX].sort((a, b) => a.at - b.at)
  const ys = [...alongY].sort((a, b) => a.at - b.at)
  const firstY = new Int32Array(ys.length).fill(-1)
  const lastY = new Int32Array(ys.length).fill(-1)
  // One entry a crossing, row by row: the bar along y, and whether it is first or last of its row.
  const atY: number[] = []
  const rowEnd: boolean[] = []
  for (const x of xs) {
    const start = atY.length
    for (let j = firstFrom(ys, x.from); j < ys.length; j += 1) {
      const y = ys[j] as BarLine
      if (y.at > x.to) break
      if (x.at < y.from || x.at > y.to) continue
      if (firstY[j] === -1) firstY[j] = atY.length
      lastY[j] = atY.length
      atY.push(j)
      rowEnd.push(false)
    }
    if (atY.length > start) {
      rowEnd[start] = true
      rowEnd[atY.length - 1] = true
    }
  }
  let rim = 0
  for (let k = 0; k < atY.length; k += 1) {
    const j = atY[k] as number
    if (rowEnd[k] === true || firstY[j] === k || lastY[j] === k) rim += 1
  }
  return { all: atY.length, rim, tied: rim + Math.ceil((atY.length - rim) / 2) }
}

/** Index of the first bar that lies at or beyond `from`; the bars are in order. */
function firstFrom(bars: readonly BarLine[], from: number): number {
  let [low, high] = [0, bars.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((bars[middle] as BarLine).at < from) low = middle + 1
    else high = middle
  }
  return low
}

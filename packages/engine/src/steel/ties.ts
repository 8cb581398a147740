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
  const at: [number, number][] = []
  const firstX = new Int32Array(xs.length).fill(-1)
  const lastX = new Int32Array(xs.length).fill(-1)
  const firstY = new Int32Array(ys.length).fill(-1)
  const lastY = new Int32Array(ys.length).fill(-1)
  for (const [i, x] of xs.entries()) {
    for (const [j, y] of ys.entries()) {
      if (y.at < x.from || y.at > x.to || x.at < y.from || x.at > y.to) continue
      if (firstX[i] === -1) firstX[i] = at.length
      lastX[i] = at.length
      if (firstY[j] === -1) firstY[j] = at.length
      lastY[j] = at.length
      at.push([i, j])
    }
  }
  let rim = 0
  for (const [k, [i, j]] of at.entries()) {
    if (firstX[i] === k || lastX[i] === k || firstY[j] === k || lastY[j] === k) rim += 1
  }
  return { all: at.length, rim, tied: rim + Math.ceil((at.length - rim) / 2) }
}

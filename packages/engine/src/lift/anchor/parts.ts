import { distance, type Point } from '../../panel/point.ts'

/** Inserts that act together, by their index. */
export type Part = readonly number[]

/** Inserts nearer to each other than `reach` of the two, link by link, are one part; in the order given. */
export function partsOf(at: readonly Point[], reach: (one: number, other: number) => number): Part[] {
  const left = new Set(at.keys())
  const parts: number[][] = []
  for (const start of at.keys()) {
    if (!left.delete(start)) continue
    const part = [start]
    for (const one of part) {
      for (const other of [...left]) {
        if (distance(at[one] as Point, at[other] as Point) < reach(one, other)) {
          left.delete(other)
          part.push(other)
        }
      }
    }
    parts.push(part.sort((a, b) => a - b))
  }
  return parts
}

/** Widest step that is needed to come from any insert to any other, mm: the spacing of a row or grid; 0 for one. */
export function widestStep(at: readonly Point[]): number {
  const far = at.map((point) => distance(at[0] ?? point, point))
  const reached = new Set<number>([0])
  let widest = 0
  while (reached.size < at.length) {
    const next = [...at.keys()]
      .filter((index) => !reached.has(index))
      .reduce((a, b) => ((far[a] ?? 0) <= (far[b] ?? 0) ? a : b))
    widest = Math.max(widest, far[next] ?? 0)
    reached.add(next)
    for (const [index, point] of at.entries()) {
      far[index] = Math.min(far[index] ?? 0, distance(at[next] as Point, point))
    }
  }
  return widest
}

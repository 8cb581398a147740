import type { CutList } from './list.ts'
import type { CutBar, CutPieces } from './plan.ts'

/**
 * Gives the marks of the list back to the pieces of the plan: pieces of one length go to their marks in the order of the list. Bars that
 * then differ become lines of their own. A list without marks comes back as it is.
 */
export function markedBars(asked: CutList['pieces'], bars: readonly CutBar[]): CutBar[] {
  if (asked.every((piece) => piece.mark === undefined)) return [...bars]
  const queues = new Map<number, { mark: string | undefined; left: number }[]>()
  for (const { length, count, mark } of asked) {
    queues.set(length, [...(queues.get(length) ?? []), { mark, left: count }])
  }
  return bars.flatMap((bar) => {
    const lines: CutBar[] = []
    let left = bar.count
    while (left > 0) {
      const pieces = bar.pieces.flatMap(({ length, count }) =>
        nextPieces(queues.get(length) ?? [], length, count),
      )
      // As many bars as the same marks still reach for.
      const same = Math.min(
        left,
        ...pieces.map(({ length, mark, count }) => reach(queues.get(length), mark, count)),
      )
      for (const { length, mark, count } of pieces) take(queues.get(length), mark, count * same)
      lines.push({ ...bar, count: same, pieces })
      left -= same
    }
    return lines
  })
}

type Queue = { mark: string | undefined; left: number }[]

function nextPieces(queue: Queue, length: number, count: number): CutPieces[] {
  const pieces: CutPieces[] = []
  let left = count
  for (const entry of queue) {
    if (left === 0) break
    const here = Math.min(left, entry.left)
    if (here === 0) continue
    pieces.push({ length, count: here, ...(entry.mark === undefined ? {} : { mark: entry.mark }) })
    left -= here
  }
  return pieces
}

function reach(queue: Queue | undefined, mark: string | undefined, count: number): number {
  const left = (queue ?? []).find((entry) => entry.mark === mark && entry.left > 0)?.left ?? 0
  return Math.max(1, Math.floor(left / count))
}

function take(queue: Queue | undefined, mark: string | undefined, count: number): void {
  let left = count
  for (const entry of queue ?? []) {
    if (entry.mark !== mark) continue
    const here = Math.min(left, entry.left)
    entry.left -= here
    left -= here
  }
}

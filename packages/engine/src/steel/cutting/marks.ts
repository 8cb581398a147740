import type { CutList } from './list.ts'
import type { CutBar, CutPieces } from './plan.ts'

/** What a piece is told apart by, beside its length. */
type Label = Omit<CutPieces, 'length' | 'count'>

interface Waiting {
  readonly label: Label
  left: number
}

interface Taken {
  readonly length: number
  readonly count: number
  readonly waiting: Waiting
}

/**
 * Gives marks, panels and machines of the list back to the pieces of the plan: pieces of one length go to them by `order`, then as
 * listed. Bars that then differ become lines of their own, those with the earliest order first. A list without any of them comes back as
 * it is.
 */
export function markedBars(asked: CutList['pieces'], bars: readonly CutBar[]): CutBar[] {
  const labelled = asked.map(({ length, count, ...rest }) => ({ length, count, label: labelOf(rest) }))
  if (labelled.every(({ label }) => Object.keys(label).length === 0)) return [...bars]
  labelled.sort((a, b) => place(a.label) - place(b.label))
  const queues = new Map<number, Waiting[]>()
  for (const { length, count, label } of labelled) {
    const queue = queues.get(length) ?? []
    queue.push({ label, left: count })
    queues.set(length, queue)
  }
  const lines = bars.flatMap((bar) => {
    const parts: CutBar[] = []
    let left = bar.count
    while (left > 0) {
      const taken = bar.pieces.flatMap(({ length, count }) => next(queues.get(length) ?? [], length, count))
      // As many bars as the same labels still reach for.
      const same = Math.min(
        left,
        ...taken.map(({ waiting, count }) => Math.max(1, Math.floor(waiting.left / count))),
      )
      for (const { waiting, count } of taken) waiting.left -= count * same
      const pieces = taken.map(({ length, count, waiting }) => ({ length, count, ...waiting.label }))
      parts.push({ ...bar, count: same, pieces })
      left -= same
    }
    return parts
  })
  if (asked.every(({ order }) => order === undefined)) return lines
  const earliest = ({ pieces }: CutBar): number => Math.min(...pieces.map(place))
  return lines
    .map((line) => ({ line, at: earliest(line) }))
    .sort((a, b) => a.at - b.at)
    .map(({ line }) => line)
}

/** The largest order stands for none: two of them compare as equal. */
function place({ order }: Label): number {
  return order ?? Number.MAX_SAFE_INTEGER
}

function labelOf({
  mark,
  panel,
  machine,
  order,
}: Omit<CutList['pieces'][number], 'length' | 'count'>): Label {
  return {
    ...(mark === undefined ? {} : { mark }),
    ...(panel === undefined ? {} : { panel }),
    ...(machine === undefined ? {} : { machine }),
    ...(order === undefined ? {} : { order }),
  }
}

function next(queue: readonly Waiting[], length: number, count: number): Taken[] {
  const taken: Taken[] = []
  let left = count
  for (const waiting of queue) {
    if (left === 0) break
    const here = Math.min(left, waiting.left)
    if (here === 0) continue
    taken.push({ length, count: here, waiting })
    left -= here
  }
  return taken
}

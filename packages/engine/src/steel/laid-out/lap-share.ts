/** A row of a mat with its laps: where it runs and their middles along it, mm. */
export interface SharedRow {
  readonly from: number
  readonly to: number
  readonly laps: readonly number[]
}

/** Rounding of places along a bar, mm. */
const SLACK = 1e-6

/**
 * Percent of a mat's bars that are lapped at the section of each lap: rows with a lap whose middle lies within `reach` of it, mm, of
 * all rows that run through it. One list a row, one number a lap; counted over every row, each once.
 *
 * Source of the reach: 0.65 laps, EN 1992-1-1:2004 8.7.3(1); families that speak of laps at a section: one lap, as far as laps overlap.
 */
export function lapShares(rows: readonly SharedRow[], reach: number): number[][] {
  const middles = rows.flatMap(({ laps }, row) => laps.map((at) => ({ row, at }))).sort((a, b) => a.at - b.at)
  const starts = rows.map(({ from }) => from).sort((a, b) => a - b)
  const ends = rows.map(({ to }) => to).sort((a, b) => a - b)
  const counted = new Map<number, number>()
  return rows.map(({ laps }) =>
    laps.map((at) => {
      const known = counted.get(at)
      if (known !== undefined) return known
      const lapped = new Set<number>()
      for (let i = firstFrom(middles, at - reach - SLACK); i < middles.length; i += 1) {
        const other = middles[i] as { row: number; at: number }
        if (other.at > at + reach + SLACK) break
        lapped.add(other.row)
      }
      const through = countTo(starts, at + SLACK) - countTo(ends, at - SLACK)
      // A row that is lapped nearby may end before this section: it is a bar there all the same.
      const share = (100 * lapped.size) / Math.max(through, lapped.size)
      counted.set(at, share)
      return share
    }),
  )
}

function firstFrom(sorted: readonly { readonly at: number }[], from: number): number {
  let [low, high] = [0, sorted.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sorted[middle] as { at: number }).at < from) low = middle + 1
    else high = middle
  }
  return low
}

/** How many are at most `limit`. */
function countTo(sorted: readonly number[], limit: number): number {
  let [low, high] = [0, sorted.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sorted[middle] as number) <= limit) low = middle + 1
    else high = middle
  }
  return low
}

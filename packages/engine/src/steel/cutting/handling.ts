import type { CutList } from './list.ts'
import type { CutBar, CutBatch } from './plan.ts'

/** Says of each line where its offcut goes and how its bars go through the shear, where the list asks for it. */
export function handledBars(list: CutList, bars: readonly CutBar[]): CutBar[] {
  return bars.map((bar) => ({
    ...bar,
    ...(list.keep === undefined || bar.offcut === 0
      ? {}
      : { offcutTo: leftAfterCut(list, bar) >= list.keep ? ('rack' as const) : ('scrap' as const) }),
    ...(list.together === undefined ? {} : { batches: batchesOf(bar.count, list.together) }),
  }))
}

/** Offcuts worth keeping in all, each less the kerf that takes it off. */
export function keptLength(list: CutList, bars: readonly CutBar[]): number {
  return bars.reduce(
    (sum, bar) => sum + (bar.offcutTo === 'rack' ? leftAfterCut(list, bar) * bar.count : 0),
    0,
  )
}

function leftAfterCut({ kerf = 0 }: CutList, { offcut }: CutBar): number {
  // Lengths have four decimals at most: the difference of two is brought back to them.
  return Math.max(0, Number((offcut - kerf).toFixed(4)))
}

function batchesOf(count: number, together: number): CutBatch[] {
  const full = Math.floor(count / together)
  const rest = count - full * together
  return [
    ...(full > 0 ? [{ bars: together, times: full }] : []),
    ...(rest > 0 ? [{ bars: rest, times: 1 }] : []),
  ]
}

import type { ScheduledBar } from '@castwright/engine/steel'
import { takenKey } from '@castwright/record'

/** The bars of a panel less those that are at the shear or cut. */
export function stillToCut(
  bars: readonly ScheduledBar[],
  taken: ReadonlyMap<string, number> | undefined,
): ScheduledBar[] {
  const rest = new Map(taken)
  return bars.flatMap((bar) => {
    const key = takenKey({ ...bar, length: bar.cutLength })
    const there = Math.min(bar.count, rest.get(key) ?? 0)
    // Another row of the same mark and length does not take them again.
    rest.set(key, (rest.get(key) ?? 0) - there)
    return bar.count > there ? [{ ...bar, count: bar.count - there }] : []
  })
}

import type { SteelRules } from '@castwright/engine/codes'
import type { RackOffcut } from '@castwright/engine/steel'
import {
  type BundleFacts,
  barLength,
  barsLeft,
  isSameSteel,
  type PromisedBars,
  type RackPiece,
  type SteelState,
} from '@castwright/record'
import { standingOf } from '../standing-of.ts'

/** Bundles that may be cut: accepted, of that steel, with bars left or not counted. */
export function cuttable(
  { bundles }: SteelState,
  rules: SteelRules,
  steel?: { readonly diameter: number; readonly grade: string },
): BundleFacts[] {
  return [...bundles.values()].filter(
    (facts) =>
      (steel === undefined || isSameSteel(facts.came.ordered, steel)) &&
      barsLeft(facts) !== 0 &&
      standingOf(facts, rules).standing === 'accepted',
  )
}

/** Bars of accepted bundles whose length and count are known, by length. */
export function countedBars(steel: SteelState, rules: SteelRules): RackOffcut[] {
  const bars = new Map<string, RackOffcut>()
  for (const facts of cuttable(steel, rules)) {
    const [length, count] = [barLength(facts), barsLeft(facts)]
    if (length === null || count === null || count === 0) continue
    const { diameter, grade } = facts.came.ordered
    const key = `${diameter}/${grade}/${length}`
    bars.set(key, { diameter, grade, length, count: (bars.get(key)?.count ?? 0) + count })
  }
  return [...bars.values()]
}

/** By its nominal diameter: one bar of a US yard is drawn as 16 mm and stocked as 15.875 mm. */
export function nominal<T extends { readonly diameter: number }>(bar: T, rules: SteelRules): T {
  const size = rules.barSize({ diameter: bar.diameter })
  return size.known ? { ...bar, diameter: Math.round(size.value.diameter * 1000) / 1000 } : bar
}

/** Offcuts in the rack, by length. */
export function rackOffcuts({ rack }: SteelState): RackOffcut[] {
  const offcuts = new Map<string, RackOffcut>()
  for (const { diameter, grade, length, count } of rack) {
    const key = `${diameter}/${grade}/${length}`
    offcuts.set(key, { diameter, grade, length, count: (offcuts.get(key)?.count ?? 0) + count })
  }
  return [...offcuts.values()]
}

/** Offcuts in the rack that a bar of that length can be taken from. */
export function rackPieces(
  { rack }: SteelState,
  steel: { readonly diameter: number; readonly grade: string; readonly length: number },
): RackPiece[] {
  return rack.filter((piece) => isSameSteel(piece, steel) && Math.abs(piece.length - steel.length) <= 0.5)
}

/**
 * Bars less those that plans at the shear still need: of the planned length, then of the next longer. Offcuts give way to lines from the
 * rack, bars of bundles to the others.
 */
export function lessPromised(
  bars: readonly RackOffcut[],
  promised: readonly PromisedBars[],
  rack: boolean,
): RackOffcut[] {
  const left = bars.map((bar) => ({ ...bar })).sort((a, b) => a.length - b.length)
  for (const line of promised.filter((each) => each.rack === rack)) {
    let owed = line.count
    for (const bar of left) {
      if (owed === 0) break
      if (!isSameSteel(bar, line) || bar.length < line.length - 0.5) continue
      const taken = Math.min(owed, bar.count)
      bar.count -= taken
      owed -= taken
    }
  }
  return left.filter(({ count }) => count > 0)
}

import type { SteelRules } from '@castwright/engine/codes'
import type { RackOffcut } from '@castwright/engine/steel'
import { bundleStanding } from '@castwright/engine/steel/incoming'
import { type BundleFacts, barLength, barsLeft, type RackPiece, type SteelState } from '@castwright/record'

/** Bundles that may be cut: accepted, of that steel, with bars left or not counted. */
export function cuttable(
  { bundles }: SteelState,
  rules: SteelRules,
  steel?: { readonly diameter: number; readonly grade: string },
): BundleFacts[] {
  return [...bundles.values()].filter(
    (facts) =>
      (steel === undefined || same(facts.came.ordered, steel)) &&
      barsLeft(facts) !== 0 &&
      bundleStanding({ bundle: facts.came, decisions: facts.decisions, rules }).standing === 'accepted',
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
  return rack.filter((piece) => same(piece, steel) && Math.abs(piece.length - steel.length) <= 0.5)
}

function same(
  a: { readonly diameter: number; readonly grade: string },
  b: { readonly diameter: number; readonly grade: string },
): boolean {
  return Math.abs(a.diameter - b.diameter) <= 0.5 && a.grade === b.grade
}

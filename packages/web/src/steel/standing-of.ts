import type { SteelRules } from '@castwright/engine/codes'
import { type Bundle, type BundleStanding, bundleStanding } from '@castwright/engine/steel/incoming'
import type { BundleFacts } from '@castwright/record'

interface Kept {
  readonly rules: SteelRules
  readonly decided: string
  readonly standing: BundleStanding
}

/** By what came: the record gives the same object as long as nobody corrects it. */
const kept = new WeakMap<Bundle, Kept>()

/** Where a bundle stands, judged again only where readings, decisions or rules are new: a yard holds thousands of them. */
export function standingOf({ came, decisions }: BundleFacts, rules: SteelRules): BundleStanding {
  const decided = decisions.map(({ entry, stale }) => `${entry}${stale ? '?' : ''}`).join(' ')
  const before = kept.get(came)
  if (before !== undefined && before.rules === rules && before.decided === decided) return before.standing
  const standing = bundleStanding({ bundle: came, decisions, rules })
  kept.set(came, { rules, decided, standing })
  return standing
}

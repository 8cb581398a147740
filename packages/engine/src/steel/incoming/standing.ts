import type { SteelRules } from '../../codes/steel-rules.ts'
import type { Signer } from '../../steps/facts.ts'
import type { Bundle } from './bundle.ts'
import type { BundleFindings, Outcome } from './finding.ts'
import { bundleFindings } from './findings.ts'

/** What somebody decided about a bundle. */
export interface BundleDecision {
  readonly entry: string
  readonly decision: 'accept' | 'quarantine' | 'return'
  readonly by: Signer
  readonly seen: string
  readonly reason: string | null
  /** What was recorded of the bundle changed after the decision. */
  readonly stale: boolean
}

export interface BundleStanding {
  /** `accepted`: may be cut. `apart`: kept apart or sent back. `waiting`: nobody entitled has accepted it. */
  readonly standing: 'accepted' | 'apart' | 'waiting'
  readonly found: BundleFindings
  /** Why it does not stand accepted, in words; null where it does. */
  readonly why: string | null
}

/** Who may accept a bundle by what was found: a finding against it needs an engineer, an open question a lead. */
export function mayAccept(outcome: Outcome): readonly Signer['role'][] {
  if (outcome === 'accept') return ['floor', 'lead', 'engineer']
  return outcome === 'ask' ? ['lead', 'engineer'] : ['engineer']
}

const RANK: Readonly<Record<Signer['role'], number>> = { viewer: 0, floor: 1, lead: 2, engineer: 3 }

/** The decision that keeps a bundle apart: it is lifted by an acceptance of the same role or one above it. Null where none is in force. */
export function keptApart(decisions: readonly BundleDecision[]): BundleDecision | null {
  let kept: BundleDecision | null = null
  for (const each of decisions) {
    const outranks: boolean = kept === null || RANK[each.by.role] >= RANK[kept.by.role]
    if (outranks) kept = each.decision === 'accept' ? null : each
  }
  return kept
}

/** Who may accept a bundle now: by what was found, and by who kept it apart. */
export function mayAcceptNow(
  outcome: Outcome,
  decisions: readonly BundleDecision[],
): readonly Signer['role'][] {
  const kept = keptApart(decisions)
  return mayAccept(outcome).filter((role) => kept === null || RANK[role] >= RANK[kept.by.role])
}

/**
 * Where a bundle stands. An acceptance holds while what it was given on holds: after later readings it must be given again, unless these ask
 * for nothing. Spite of an open question or a finding needs a reason.
 */
export function bundleStanding({
  bundle,
  decisions,
  rules,
}: {
  readonly bundle: Bundle
  /** In order of time. */
  readonly decisions: readonly BundleDecision[]
  readonly rules: SteelRules
}): BundleStanding {
  const found = bundleFindings({ bundle, rules })
  const last = decisions.at(-1)
  if (last === undefined) {
    return found.outcome === 'quarantine'
      ? { standing: 'apart', found, why: 'Found against it: keep it apart until it is decided.' }
      : { standing: 'waiting', found, why: 'Nobody has accepted it yet.' }
  }
  if (last.decision !== 'accept') {
    return {
      standing: 'apart',
      found,
      why: last.decision === 'return' ? `Sent back by ${last.by.name}.` : `Kept apart by ${last.by.name}.`,
    }
  }
  const kept = keptApart(decisions)
  if (kept !== null) {
    return {
      standing: 'apart',
      found,
      why: `Kept apart by ${kept.by.name}; ${last.by.name}, a ${last.by.role}, may not lift that.`,
    }
  }
  if (!mayAccept(found.outcome).includes(last.by.role)) {
    return {
      standing: found.outcome === 'quarantine' ? 'apart' : 'waiting',
      found,
      why: `Accepted by ${last.by.name}, a ${last.by.role}; what was found asks for ${mayAccept(found.outcome).join(' or ')}.`,
    }
  }
  if (found.outcome !== 'accept' && (last.reason ?? '').trim() === '') {
    return { standing: 'waiting', found, why: 'Accepted without a reason in spite of what was found.' }
  }
  if (last.stale && found.outcome !== 'accept') {
    return { standing: 'waiting', found, why: 'Readings came after it was accepted: look at it again.' }
  }
  return { standing: 'accepted', found, why: null }
}

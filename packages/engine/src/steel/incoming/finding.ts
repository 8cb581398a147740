import type { Source } from '../../working/source.ts'
import { joinVerdicts, type Verdict } from '../../working/verdict.ts'
import type { Step } from '../../working/worked.ts'

/** What is to be done with a bundle: take it in, keep it apart, or ask before anything is cut from it. */
export type Outcome = 'accept' | 'ask' | 'quarantine'

/** One thing found about a bundle. */
export interface Finding {
  /** Stable. Example: `grade`. */
  readonly id: string
  readonly what: string
  /** As found, in words with units; null where nothing was recorded. */
  readonly found: string | null
  readonly wanted: string
  readonly verdict: Verdict
  /** What a fail means for the bundle; `told`: it is shown and keeps nothing apart. */
  readonly onFail: 'quarantine' | 'ask' | 'told'
  /** What a not-known means. */
  readonly onUnknown: 'ask' | 'told'
  /** What is missing, where the verdict is `unknown`. */
  readonly unknown: readonly string[]
  readonly note?: string
  readonly source: Source
  readonly working: readonly Step[]
}

export interface BundleFindings {
  readonly outcome: Outcome
  readonly verdict: Verdict
  readonly findings: readonly Finding[]
  /** What keeps it from being accepted, one sentence each. */
  readonly because: readonly string[]
  /** What to get or to ask, one sentence each; empty where nothing is open. */
  readonly next: readonly string[]
}

/** The outcome that the findings ask for: anything that keeps a bundle apart outranks a question, and both outrank accepting. */
export function outcomeOf(findings: readonly Finding[]): Outcome {
  if (findings.some(({ verdict, onFail }) => verdict === 'fail' && onFail === 'quarantine'))
    return 'quarantine'
  const open = findings.some(
    ({ verdict, onFail, onUnknown }) =>
      (verdict === 'fail' && onFail === 'ask') || (verdict === 'unknown' && onUnknown === 'ask'),
  )
  return open || findings.length === 0 ? 'ask' : 'accept'
}

/** Verdict over those findings that weigh: what is only told does not count. */
export function weighedVerdict(findings: readonly Finding[]): Verdict {
  return joinVerdicts(findings.filter(weighs).map(({ verdict }) => verdict))
}

export function weighs({ verdict, onFail, onUnknown }: Finding): boolean {
  return verdict === 'fail' ? onFail !== 'told' : verdict === 'unknown' ? onUnknown !== 'told' : true
}

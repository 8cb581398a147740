/** Unknown is not pass: whatever waits for a check stays shut on `fail` and on `unknown`. */
export type Verdict = 'pass' | 'fail' | 'unknown'

/** A fail outranks an unknown, and both outrank a pass. Nothing to join is not known. */
export function joinVerdicts(verdicts: Iterable<Verdict>): Verdict {
  let joined: Verdict | undefined
  for (const verdict of verdicts) {
    if (verdict === 'fail') return 'fail'
    if (verdict === 'unknown') joined = 'unknown'
    else joined ??= 'pass'
  }
  return joined ?? 'unknown'
}

import type { CardRow } from '@castwright/engine/steps'
import { differenceValue } from '@castwright/record'
import { type EntryAct, stamped } from './act.ts'

export interface SignDifferenceInput {
  readonly row: CardRow
  /** The lifting design that ours is held beside. */
  readonly reference: string
  readonly reason: string
}

/**
 * An engineer signs that our own result fails or is not known where the confirmed lifting design holds. It covers the row as it
 * stands and nothing worse, and is printed on later cards and in the passport.
 */
export const signDifference: EntryAct<SignDifferenceInput> = {
  name: 'sign-difference',
  label: 'Sign this difference',
  draft: (place, { row, reference, reason }) => ({
    ...stamped(place),
    kind: 'difference',
    step: 'strip',
    check: row.id,
    value: differenceValue(row, reference),
    verdict: row.verdict,
    limit: row.limit,
    unit: row.unit,
    reason,
  }),
}

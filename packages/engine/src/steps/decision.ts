import type { CardRow } from './card.ts'
import type { Signed, Signer } from './facts.ts'

/** Who may decide that a step goes on in spite of a fail or a not-known. */
export const DECIDERS: readonly Signer['role'][] = ['lead', 'engineer']

/** Whether a decision covers a row: with a reason, by somebody who may, for the revision in force, made on what is on record now, and nothing has to end first. */
export function decisionCounts(
  { since, deciders = DECIDERS, waits }: Pick<CardRow, 'since' | 'deciders' | 'waits'>,
  { revision: of, reason, by, seen }: Signed,
  revision: string | null,
): boolean {
  return (
    waits === undefined &&
    of === revision &&
    (reason ?? '').trim() !== '' &&
    deciders.includes(by.role) &&
    (since === undefined || seen >= since)
  )
}

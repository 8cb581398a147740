import type { Signed } from '@castwright/engine/steps'
import { type AnyEntry, storedAt } from './order.ts'

/** An entry as a signature: who, when, and why. */
export function signed(entry: AnyEntry): Signed {
  return {
    entry: entry.id,
    by: entry.person,
    seen: entry.seen,
    stored: storedAt(entry),
    reason: entry.reason ?? null,
    revision: entry.revision ?? null,
  }
}

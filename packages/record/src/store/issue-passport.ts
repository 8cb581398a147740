import type { StoredEntry } from '../entry.ts'
import { makePassport, type Passport, type PassportPlan } from '../passport.ts'
import type { Store } from './store.ts'

export interface IssuePassportInput {
  readonly store: Store
  readonly panel: Passport['panel']
  readonly drawing: Passport['drawing']
  readonly plan: PassportPlan
  /** From `passportEntries`. */
  readonly entries: readonly StoredEntry[]
  /** UTC with milliseconds. */
  readonly now: string
}

/** The passport of a panel as of now: proofs and head from the store, signed with the yard's key. */
export async function issuePassport({
  store,
  panel,
  drawing,
  plan,
  entries,
  now,
}: IssuePassportInput): Promise<Uint8Array> {
  const head = await store.head({ now })
  const proofs = new Map<number, readonly string[]>()
  for (const { index } of entries) proofs.set(index, await store.inclusion(index, head.size))
  return makePassport({
    publicKey: store.publicKey,
    panel,
    drawing,
    plan,
    entries,
    proofs,
    head,
    made: now,
    sign: (bytes) => store.sign(bytes),
  })
}

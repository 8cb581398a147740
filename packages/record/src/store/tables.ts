import type { Generated } from 'kysely'

/** Every table leads with the yard: it is the key to split by. Times are UTC text, hashes hex text. */
export interface RecordTables {
  yards: {
    yard: string
    public_key: string
    /** Leaves in the log. The row is also what writers lock. */
    size: Generated<number>
    created: string
  }
  entries: {
    yard: string
    /** Leaf index, from 0. */
    position: number
    id: string
    kind: string
    subject: string
    device: string
    counter: number
    /** SHA-256 of the entry as its device made it. */
    hash: string
    /** Leaf hash of the stored entry. */
    leaf: string
    /** RFC 8785 text of the stored entry: the leaf itself. */
    body: string
  }
  /** Complete subtrees above the leaves. */
  nodes: { yard: string; level: number; position: number; hash: string }
  files: { yard: string; sha256: string; size: number; type: string; stored: string }
  people: {
    yard: string
    id: string
    name: string
    role: string
    /** argon2id text, or null while no PIN is set. */
    pin_hash: string | null
    /** 1 or 0 */
    active: number
    created: string
  }
  sessions: { yard: string; token_hash: string; person: string; created: string; expires: string }
  loggers: {
    yard: string
    id: string
    name: string
    key_hash: string
    /** `<job>/<mark>`, or null while it reads for none. */
    panel: string | null
    since: string | null
    /** 1 or 0 */
    active: number
    made_by: string
    created: string
  }
  migrations: { name: string; applied: string }
}

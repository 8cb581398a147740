import type { InputIssue } from '@castwright/engine/working'
import type { StoredEntry } from '../entry.ts'
import type { SignedHead } from '../head.ts'
import type { Files } from './files.ts'
import type { Loggers } from './loggers.ts'
import type { People } from './people.ts'

/** What became of an entry that was handed to the record. */
export type AppendResult =
  | {
      readonly id: string
      /** `stored`: it is in the record now, durably. `known`: it was before; sending twice is harmless. */
      readonly status: 'stored' | 'known'
      readonly index: number
      readonly stored: StoredEntry
      /** `gap`: the device's entry before it is not here yet. `fork`: it does not follow the one that is. Stored all the same. */
      readonly chain: 'follows' | 'gap' | 'fork'
    }
  | {
      readonly id: string
      readonly status: 'refused'
      readonly reason: string
      readonly issues: readonly InputIssue[]
    }

/** The log of one yard with its tree, its attachments and its accounts. The same face on SQLite and on PostgreSQL. */
export interface Store {
  /** Name of the log: what `yard` says in every entry of it. */
  readonly yard: string
  /** Ed25519 public key of the yard, hex. */
  readonly publicKey: string
  readonly people: People
  readonly loggers: Loggers
  readonly files: Files
  /**
   * Takes entries in, each or none refused on its own. Answers after the disk has them: an answer is a promise. Many callers
   * share one sync.
   */
  append(entries: readonly unknown[], options?: { readonly now?: string }): Promise<AppendResult[]>
  /** Entries after an index (−1: from the first), in order. */
  read(options: { readonly after: number; readonly limit: number }): Promise<StoredEntry[]>
  find(ids: readonly string[]): Promise<StoredEntry[]>
  size(): Promise<number>
  /** The root now, or of an earlier size, signed now. @throws RangeError above the size. */
  head(options?: { readonly size?: number; readonly now?: string }): Promise<SignedHead>
  /** RFC 9162 proofs, hex. @throws RangeError outside the log. */
  inclusion(index: number, size: number): Promise<string[]>
  consistency(from: number, to: number): Promise<string[]>
  /** Signs bytes with the yard's key. */
  sign(bytes: Uint8Array): Uint8Array
  /** Reads the whole log and computes the tree again from its bytes. Empty where all of it fits. */
  check(): Promise<string[]>
  /** A consistent copy into a new folder; see `backup.ts`. */
  backup(to: string): Promise<Backup>
  close(): Promise<void>
}

export interface Backup {
  readonly folder: string
  readonly yard: string
  readonly size: number
  readonly root: string
  readonly files: number
}

import { InputError } from '@castwright/engine/working'
import type { Kysely } from 'kysely'
import type { StoredEntry } from '../entry.ts'
import { entryHash, toHex } from '../hash.ts'
import { signHead } from '../head.ts'
import {
  consistencyNodes,
  consistencyProof,
  inclusionNodes,
  inclusionProof,
  rootOfFrontier,
} from '../merkle.ts'
import { parseEntry } from '../values.ts'
import { appendAll, frontierAt, type HashedEntry, nodeHash256, type Submission } from './append.ts'
import { checkLog } from './check-log.ts'
import type { Files } from './files.ts'
import { GroupCommit } from './group-commit.ts'
import type { YardKey } from './key.ts'
import { loggersOf } from './loggers.ts'
import { readNodes } from './nodes.ts'
import { peopleOf } from './people.ts'
import type { AppendResult, Backup, Store } from './store.ts'
import type { RecordTables } from './tables.ts'

export interface SqlStoreInput {
  readonly db: Kysely<RecordTables>
  readonly yard: string
  readonly key: YardKey
  readonly files: Files
  /** UTC with milliseconds. */
  readonly now: () => string
  readonly backup: (store: Store, to: string) => Promise<Backup>
}

/** Submissions in one commit: enough to share a sync, few enough that nobody waits long. */
const MOST_SUBMISSIONS = 1000

/** The store on any engine that Kysely speaks to. */
export function sqlStore({ db, yard, key, files, now, backup }: SqlStoreInput): Store {
  const writer = new GroupCommit<Submission, AppendResult[]>(
    (submissions) => appendAll(db, yard, submissions),
    MOST_SUBMISSIONS,
  )
  const sizeNow = async () => {
    const row = await db.selectFrom('yards').select('size').where('yard', '=', yard).executeTakeFirstOrThrow()
    return row.size
  }
  const store: Store = {
    yard,
    publicKey: key.publicKey,
    people: peopleOf(db, yard, now),
    loggers: loggersOf(db, yard, now),
    files,
    async append(offered, options = {}) {
      const read = offered.map((value) => readEntry(value, yard))
      const entries = read.filter((one) => 'entry' in one)
      const results = entries.length === 0 ? [] : await writer.submit({ entries, now: options.now ?? now() })
      let at = 0
      return read.map((one) => ('entry' in one ? (results[at++] as AppendResult) : one))
    },
    async read({ after, limit }) {
      const rows = await db
        .selectFrom('entries')
        .select('body')
        .where('yard', '=', yard)
        .where('position', '>', after)
        .orderBy('position')
        .limit(limit)
        .execute()
      return rows.map(({ body }) => JSON.parse(body) as StoredEntry)
    },
    async find(ids) {
      if (ids.length === 0) return []
      const rows = await db
        .selectFrom('entries')
        .select('body')
        .where('yard', '=', yard)
        .where('id', 'in', [...ids])
        .orderBy('position')
        .execute()
      return rows.map(({ body }) => JSON.parse(body) as StoredEntry)
    },
    size: sizeNow,
    async head(options = {}) {
      const size = sizeWithin(options.size, await sizeNow())
      const root = rootOfFrontier(await frontierAt(db, yard, size), nodeHash256)
      return signHead({ yard, size, root: toHex(root), time: options.now ?? now() }, key.sign)
    },
    async inclusion(index, size) {
      sizeWithin(size, await sizeNow())
      const read = await readNodes(db, yard, inclusionNodes(index, size))
      return inclusionProof(index, size, read, nodeHash256).map(toHex)
    },
    async consistency(from, to) {
      sizeWithin(to, await sizeNow())
      const read = await readNodes(db, yard, consistencyNodes(from, to))
      return consistencyProof(from, to, read, nodeHash256).map(toHex)
    },
    sign: key.sign,
    check: () => checkLog(db, yard),
    backup: (to) => backup(store, to),
    async close() {
      await writer.idle()
      await db.destroy()
    },
  }
  return store
}

type Read = HashedEntry | Extract<AppendResult, { status: 'refused' }>

function readEntry(value: unknown, yard: string): Read {
  try {
    const entry = parseEntry(value)
    if (entry.yard !== yard) {
      const issue = { path: 'yard', found: JSON.stringify(entry.yard), expected: JSON.stringify(yard) }
      return { id: entry.id, status: 'refused', reason: 'the entry is of another yard', issues: [issue] }
    }
    // Here and not in the transaction: what has no exact bytes is refused alone and not with everybody else's.
    return { entry, hash: entryHash(entry, nodeHash256) }
  } catch (error) {
    // A value nested without end exhausts the stack of whoever reads it.
    const issues =
      error instanceof InputError
        ? error.issues
        : error instanceof RangeError
          ? [{ path: '', found: 'a value nested too deep', expected: 'an entry' }]
          : null
    if (issues === null) throw error
    const id = value !== null && typeof value === 'object' && 'id' in value ? String(value.id) : ''
    return { id, status: 'refused', reason: new InputError(issues).message, issues }
  }
}

function sizeWithin(asked: number | undefined, size: number): number {
  if (asked === undefined) return size
  if (!Number.isSafeInteger(asked) || asked < 0 || asked > size) {
    throw new RangeError(`a tree of ${asked} leaves: expected 0 to ${size}`)
  }
  return asked
}

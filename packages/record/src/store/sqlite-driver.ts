import { createRequire } from 'node:module'
import type { SqliteDatabase, SqliteStatement } from 'kysely'

/** The part of the `node:sqlite` interface that is used here; `@photostructure/sqlite` has the same. */
interface Statement {
  all(...values: readonly unknown[]): unknown[]
  run(...values: readonly unknown[]): { changes: number | bigint; lastInsertRowid: number | bigint }
  iterate(...values: readonly unknown[]): IterableIterator<unknown>
  columns(): readonly unknown[]
}

interface Database {
  exec(sql: string): void
  prepare(sql: string): Statement
  close(): void
}

type DatabaseClass = new (path: string) => Database

/** SQLite before this can corrupt a WAL with more than one connection (WAL-reset fault, fixed in 3.51.3). */
const LEAST_SQLITE = [3, 51, 3] as const

/** Statements kept ready: a record uses some twenty, batches of other lengths come and go. */
const KEPT_STATEMENTS = 100

/**
 * Opens an SQLite file for Kysely: write-ahead log, and a sync of the disk in every commit (`synchronous=FULL`).
 *
 * `delete` is for a copy that nobody else has open: it leaves one file behind and no log beside it. Uses Node's own SQLite where it is built in and new enough, else `@photostructure/sqlite`.
 */
export function openSqlite(path: string, journal: 'wal' | 'delete' = 'wal'): SqliteDatabase {
  const database = new (databaseClass())(path)
  database.exec(`pragma journal_mode = ${journal}`)
  database.exec('pragma synchronous = full')
  database.exec('pragma foreign_keys = on')
  database.exec('pragma busy_timeout = 10000')
  const kept = new Map<string, SqliteStatement>()
  return {
    close() {
      // A statement that is not collected yet can keep the file open behind a close; nothing may stay in the log beside it then.
      kept.clear()
      database.exec('pragma wal_checkpoint(truncate)')
      database.close()
    },
    prepare(sql) {
      const known = kept.get(sql)
      if (known) return known
      const made = guarded(database.prepare(sql))
      if (kept.size >= KEPT_STATEMENTS) kept.delete(kept.keys().next().value as string)
      kept.set(sql, made)
      return made
    },
  }
}

function guarded(statement: Statement): SqliteStatement {
  return {
    reader: statement.columns().length > 0,
    all: (values) => statement.all(...values.map(bindable)),
    run: (values) => statement.run(...values.map(bindable)),
    iterate: (values) => statement.iterate(...values.map(bindable)),
  }
}

/** What the drivers would store as something else (a date as null, true as 1) or cut short (text after NUL) is a defect here. */
export function bindable(value: unknown): unknown {
  const good =
    value === null ||
    typeof value === 'bigint' ||
    value instanceof Uint8Array ||
    (typeof value === 'number' && Number.isFinite(value)) ||
    (typeof value === 'string' && !value.includes('\0'))
  if (good) return value
  throw new TypeError(
    `cannot bind ${typeof value} ${String(value)}: expected text without NUL, a finite number, bytes or null`,
  )
}

function databaseClass(): DatabaseClass {
  const require = createRequire(import.meta.url)
  const name = builtInIsNewEnough() ? 'node:sqlite' : '@photostructure/sqlite'
  return (require(name) as { DatabaseSync: DatabaseClass }).DatabaseSync
}

function builtInIsNewEnough(): boolean {
  const version = process.versions.sqlite
  if (version === undefined || process.getBuiltinModule?.('node:sqlite') === undefined) return false
  const parts = version.split('.').map(Number)
  for (const [index, least] of LEAST_SQLITE.entries()) {
    const part = parts[index] ?? 0
    if (part !== least) return part > least
  }
  return true
}

import { randomBytes } from 'node:crypto'
import { access, mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { Kysely, SqliteDialect } from 'kysely'
import { backupFolder } from './backup.ts'
import { filesIn } from './files.ts'
import { readOrMakeKey, type YardKey } from './key.ts'
import { migrate } from './migrations.ts'
import { sqlStore } from './sql-store.ts'
import { openSqlite } from './sqlite-driver.ts'
import type { Store } from './store.ts'
import type { RecordTables } from './tables.ts'

export const DATABASE_FILE = 'record.sqlite'
export const KEY_FILE = 'yard-key.pem'
export const FILES_FOLDER = 'files'

export interface OpenStoreInput {
  /** Data folder; made where it is missing. Holds the database, the yard's key and the attachments. */
  readonly folder: string
  /**
   * Name of the log. Given: a new record gets it, and one of another name is refused. Not given: the name of the record that
   * is there, or a random one for a new record. It never changes, whatever the yard is called later.
   */
  readonly yard?: string
  /** ms since 1970 UTC; the machine's clock where it is not given. */
  readonly clock?: () => number
  /** Folder of attachments, where it is not `files` in the data folder. */
  readonly filesFolder?: string
  /** A copy that nobody else has open: the database stays one file. */
  readonly copy?: boolean
  /** Only a record that is there already is opened; nothing is made. */
  readonly existing?: boolean
  /** `postgres://…`: the record is in PostgreSQL, and the folder holds only the yard's key and the attachments. */
  readonly databaseUrl?: string
}

/** The folder holds a record that this cannot be: another yard's, or one that was signed with another key. */
export class StoreError extends Error {
  constructor(message: string) {
    super(message)
    this.name = 'StoreError'
  }
}

/**
 * Opens the embedded record of a folder, or makes one; with `databaseUrl` the record in PostgreSQL.
 *
 * @throws StoreError for no record where one must exist, another yard's record or a key that is not its own; HistoryError for a database of another history.
 */
export async function openStore(input: OpenStoreInput): Promise<Store> {
  const { folder, databaseUrl } = input
  if (databaseUrl !== undefined) {
    const { openPostgres } = await import('./postgres-store.ts')
    return openPostgres({ ...input, url: databaseUrl })
  }
  const clock = input.clock ?? Date.now
  const now = () => new Date(clock()).toISOString()
  if (input.existing) await expectRecord(folder)
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const key = await readOrMakeKey(join(folder, KEY_FILE))
  const db = new Kysely<RecordTables>({
    dialect: new SqliteDialect({
      database: openSqlite(join(folder, DATABASE_FILE), input.copy ? 'delete' : 'wal'),
    }),
  })
  try {
    await migrate(db, now)
    const yard = await settleYard({ db, key, now, ...(input.yard === undefined ? {} : { yard: input.yard }) })
    const filesFolder = input.filesFolder ?? join(folder, FILES_FOLDER)
    const files = filesIn({ db, yard, folder: filesFolder, now })
    const backup = (store: Store, to: string) => backupFolder({ db, store, folder, filesFolder, to, now })
    return sqlStore({ db, yard, key, files, now, backup })
  } catch (error) {
    await db.destroy()
    throw error
  }
}

async function expectRecord(folder: string): Promise<void> {
  for (const name of [DATABASE_FILE, KEY_FILE]) {
    await access(join(folder, name)).catch(() => {
      throw new StoreError(`${folder} holds no record: there is no ${name}`)
    })
  }
}

interface SettleInput {
  readonly db: Kysely<RecordTables>
  readonly key: YardKey
  readonly now: () => string
  readonly yard?: string
}

/** Finds the yard's row or makes it. On PostgreSQL several yards share the tables, so there the name is needed. */
export async function settleYard({ db, key, now, yard }: SettleInput): Promise<string> {
  const rows = await db.selectFrom('yards').select(['yard', 'public_key']).execute()
  const row = yard === undefined ? rows[0] : rows.find((one) => one.yard === yard)
  if (yard === undefined && rows.length > 1)
    throw new StoreError('the database holds several yards: say which')
  if (row !== undefined) {
    if (row.public_key === key.publicKey) return row.yard
    throw new StoreError(
      `the record of ${row.yard} was signed with key ${row.public_key}, and the key here is ${key.publicKey}`,
    )
  }
  const name = yard ?? `yard-${randomBytes(5).toString('hex')}`
  await db.insertInto('yards').values({ yard: name, public_key: key.publicKey, created: now() }).execute()
  return name
}

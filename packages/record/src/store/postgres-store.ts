import { join } from 'node:path'
import { Kysely, PostgresDialect, sql } from 'kysely'
import pg from 'pg'
import { filesIn } from './files.ts'
import { readOrMakeKey } from './key.ts'
import { migrate } from './migrations.ts'
import { FILES_FOLDER, KEY_FILE, type OpenStoreInput, StoreError, settleYard } from './open.ts'
import { sqlStore } from './sql-store.ts'
import type { Store } from './store.ts'
import type { RecordTables } from './tables.ts'

export interface OpenPostgresInput extends Pick<OpenStoreInput, 'folder' | 'clock' | 'filesFolder'> {
  /** `postgres://…` */
  readonly url: string
  /** Name of the log. Needed where several yards share the tables; else as in `openStore`. */
  readonly yard?: string
  /** Connections held open at most. */
  readonly connections?: number
}

const INT8 = 20
/** One number that all processes agree on: who migrates goes first, the others wait. */
const MIGRATION_LOCK = 4870_2026

/**
 * Opens the record of a yard in PostgreSQL, or any engine that speaks its protocol. Many processes may have it open. The folder holds
 * the yard's key and the attachments.
 *
 * @throws StoreError where the yard was signed with another key, or the engine does not sync its disk before it answers.
 */
export async function openPostgres(input: OpenPostgresInput): Promise<Store> {
  const { folder, url } = input
  const clock = input.clock ?? Date.now
  const now = () => new Date(clock()).toISOString()
  const key = await readOrMakeKey(join(folder, KEY_FILE))
  const pool = new pg.Pool({
    connectionString: url,
    max: input.connections ?? 10,
    types: {
      getTypeParser: (type, format) => (type === INT8 ? Number : pg.types.getTypeParser(type, format)),
    },
  })
  const db = new Kysely<RecordTables>({ dialect: new PostgresDialect({ pool }) })
  try {
    await expectDurable(db)
    await db.connection().execute(async (one) => {
      await sql`select pg_advisory_lock(${sql.lit(MIGRATION_LOCK)})`.execute(one)
      try {
        await migrate(one, now)
      } finally {
        await sql`select pg_advisory_unlock(${sql.lit(MIGRATION_LOCK)})`.execute(one)
      }
    })
    const yard = await settleYard({ db, key, now, ...(input.yard === undefined ? {} : { yard: input.yard }) })
    const files = filesIn({ db, yard, folder: input.filesFolder ?? join(folder, FILES_FOLDER), now })
    const backup = async () => {
      throw new StoreError(
        'a record in PostgreSQL is copied by its own tools; copy the folder of key and files beside it',
      )
    }
    return sqlStore({ db, yard, key, files, now, backup })
  } catch (error) {
    await db.destroy()
    throw error
  }
}

/** An answer is a promise only where a commit waits for the disk. */
async function expectDurable(db: Kysely<RecordTables>): Promise<void> {
  for (const name of ['fsync', 'synchronous_commit'] as const) {
    const { rows } = await sql<{ setting: string }>`select current_setting(${name}, true) as setting`.execute(
      db,
    )
    if (rows[0]?.setting === 'off')
      throw new StoreError(`the database has ${name} = off, expected on: what it answers could be lost`)
  }
}

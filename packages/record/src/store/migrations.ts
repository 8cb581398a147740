import { type Kysely, sql } from 'kysely'
import type { RecordTables } from './tables.ts'

interface Migration {
  /** Date and subject. Never changed, never removed, only added at the end. */
  readonly name: string
  readonly up: (db: Kysely<RecordTables>) => Promise<void>
}

const MIGRATIONS: readonly Migration[] = [
  {
    name: '2026-11-25-record',
    async up(db) {
      const { schema } = db
      await schema
        .createTable('yards')
        .addColumn('yard', 'text', (column) => column.primaryKey())
        .addColumn('public_key', 'text', (column) => column.notNull())
        .addColumn('size', 'bigint', (column) => column.notNull().defaultTo(0))
        .addColumn('created', 'text', (column) => column.notNull())
        .execute()
      await schema
        .createTable('entries')
        .addColumn('yard', 'text', (column) => column.notNull())
        .addColumn('position', 'bigint', (column) => column.notNull())
        .addColumn('id', 'text', (column) => column.notNull())
        .addColumn('kind', 'text', (column) => column.notNull())
        .addColumn('subject', 'text', (column) => column.notNull())
        .addColumn('device', 'text', (column) => column.notNull())
        .addColumn('counter', 'bigint', (column) => column.notNull())
        .addColumn('hash', 'text', (column) => column.notNull())
        .addColumn('leaf', 'text', (column) => column.notNull())
        .addColumn('body', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('entries_at', ['yard', 'position'])
        .addUniqueConstraint('entries_once', ['yard', 'id'])
        .execute()
      await schema
        .createIndex('entries_by_device')
        .on('entries')
        .columns(['yard', 'device', 'counter'])
        .execute()
      await schema
        .createTable('nodes')
        .addColumn('yard', 'text', (column) => column.notNull())
        .addColumn('level', 'integer', (column) => column.notNull())
        .addColumn('position', 'bigint', (column) => column.notNull())
        .addColumn('hash', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('nodes_at', ['yard', 'level', 'position'])
        .execute()
      await schema
        .createTable('files')
        .addColumn('yard', 'text', (column) => column.notNull())
        .addColumn('sha256', 'text', (column) => column.notNull())
        .addColumn('size', 'bigint', (column) => column.notNull())
        .addColumn('type', 'text', (column) => column.notNull())
        .addColumn('stored', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('files_once', ['yard', 'sha256'])
        .execute()
    },
  },
  {
    name: '2026-11-25-people',
    async up(db) {
      await db.schema
        .createTable('people')
        .addColumn('yard', 'text', (column) => column.notNull())
        .addColumn('id', 'text', (column) => column.notNull())
        .addColumn('name', 'text', (column) => column.notNull())
        .addColumn('role', 'text', (column) => column.notNull())
        .addColumn('pin_hash', 'text')
        .addColumn('active', 'integer', (column) => column.notNull().defaultTo(1))
        .addColumn('created', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('people_once', ['yard', 'id'])
        .execute()
      await db.schema
        .createTable('sessions')
        .addColumn('yard', 'text', (column) => column.notNull())
        .addColumn('token_hash', 'text', (column) => column.notNull())
        .addColumn('person', 'text', (column) => column.notNull())
        .addColumn('created', 'text', (column) => column.notNull())
        .addColumn('expires', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('sessions_once', ['yard', 'token_hash'])
        .execute()
    },
  },
  {
    name: '2026-11-29-loggers',
    async up(db) {
      await db.schema
        .createTable('loggers')
        .addColumn('yard', 'text', (column) => column.notNull())
        .addColumn('id', 'text', (column) => column.notNull())
        .addColumn('name', 'text', (column) => column.notNull())
        .addColumn('key_hash', 'text', (column) => column.notNull())
        .addColumn('panel', 'text')
        .addColumn('since', 'text')
        .addColumn('active', 'integer', (column) => column.notNull().defaultTo(1))
        .addColumn('made_by', 'text', (column) => column.notNull())
        .addColumn('created', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('loggers_once', ['yard', 'id'])
        .addUniqueConstraint('loggers_by_key', ['yard', 'key_hash'])
        .execute()
    },
  },
]

/** A database whose history is not the beginning of ours: another program's, or a newer version's. */
export class HistoryError extends Error {
  constructor(found: readonly string[], expected: readonly string[]) {
    super(
      `the database's history differs: found ${list(found)}, expected a beginning of ${list(expected)}; it is not opened`,
    )
    this.name = 'HistoryError'
  }
}

/**
 * Brings the tables up to date.
 *
 * @throws HistoryError where what was applied before is not how our own list begins.
 */
export async function migrate(db: Kysely<RecordTables>, now: () => string): Promise<void> {
  await sql`create table if not exists migrations (name text primary key, applied text not null)`.execute(db)
  await db.transaction().execute(async (tx) => {
    const applied = await tx.selectFrom('migrations').select('name').execute()
    const found = applied.map(({ name }) => name)
    const ours = MIGRATIONS.map(({ name }) => name)
    if (found.length > ours.length || found.some((name) => !ours.slice(0, found.length).includes(name))) {
      throw new HistoryError(found, ours)
    }
    for (const migration of MIGRATIONS.slice(found.length)) {
      await migration.up(tx)
      await tx.insertInto('migrations').values({ name: migration.name, applied: now() }).execute()
    }
  })
}

function list(names: readonly string[]): string {
  return names.length === 0 ? 'nothing' : names.join(', ')
}

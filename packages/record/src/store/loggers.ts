import type { Kysely } from 'kysely'
import type { RecordTables } from './tables.ts'

/** A logger that sends readings over the network. Like an account it stands beside the log and not in it. */
export interface Logger {
  readonly id: string
  readonly name: string
  /** SHA-256 of its key, hex. The key itself is nowhere. */
  readonly keyHash: string
  /** `<job>/<mark>` of the panel that it reads for now; null while it reads for none. */
  readonly panel: string | null
  /** UTC instant at which it left the panel before; what it read up to then is not of this one. Null where it was on none. */
  readonly since: string | null
  readonly active: boolean
  /** Id of the person who made it. */
  readonly madeBy: string
  /** UTC */
  readonly created: string
}

/** Loggers of one yard. */
export interface Loggers {
  /** In order of their names. */
  list(): Promise<Logger[]>
  find(id: string): Promise<Logger | null>
  /** The logger whose key has this hash, also a closed one. */
  byKey(keyHash: string): Promise<Logger | null>
  /** False where the id is taken. */
  add(logger: Omit<Logger, 'created'>): Promise<boolean>
  /** Changes what is given. False where there is no such logger. */
  change(
    id: string,
    change: Partial<Pick<Logger, 'keyHash' | 'panel' | 'since' | 'active'>>,
  ): Promise<boolean>
}

export function loggersOf(db: Kysely<RecordTables>, yard: string, now: () => string): Loggers {
  const rows = () => db.selectFrom('loggers').selectAll().where('yard', '=', yard)
  return {
    async list() {
      return (await rows().orderBy('name').orderBy('id').execute()).map(loggerOf)
    },
    async find(id) {
      const row = await rows().where('id', '=', id).executeTakeFirst()
      return row ? loggerOf(row) : null
    },
    async byKey(keyHash) {
      const row = await rows().where('key_hash', '=', keyHash).executeTakeFirst()
      return row ? loggerOf(row) : null
    },
    async add({ id, name, keyHash, panel, since, active, madeBy }) {
      const row = { yard, id, name, key_hash: keyHash, panel, since, made_by: madeBy, created: now() }
      const result = await db
        .insertInto('loggers')
        .values({ ...row, active: active ? 1 : 0 })
        .onConflict((conflict) => conflict.columns(['yard', 'id']).doNothing())
        .executeTakeFirst()
      return (result.numInsertedOrUpdatedRows ?? 0n) > 0n
    },
    async change(id, { keyHash, panel, since, active }) {
      const set = {
        ...(keyHash === undefined ? {} : { key_hash: keyHash }),
        ...(panel === undefined ? {} : { panel }),
        ...(since === undefined ? {} : { since }),
        ...(active === undefined ? {} : { active: active ? 1 : 0 }),
      }
      if (Object.keys(set).length === 0) return (await this.find(id)) !== null
      const result = await db
        .updateTable('loggers')
        .set(set)
        .where('yard', '=', yard)
        .where('id', '=', id)
        .executeTakeFirst()
      return result.numUpdatedRows > 0n
    },
  }
}

function loggerOf(row: RecordTables['loggers']): Logger {
  const { id, name, panel, since, created } = row
  return {
    id,
    name,
    keyHash: row.key_hash,
    panel,
    since,
    active: row.active === 1,
    madeBy: row.made_by,
    created,
  }
}

import type { Kysely } from 'kysely'
import type { Role } from '../entry.ts'
import type { RecordTables } from './tables.ts'

/** An account. Accounts stand beside the log and not in it: a PIN's hash is no fact of the yard. */
export interface Account {
  readonly id: string
  readonly name: string
  readonly role: Role
  /** argon2id text; null while no PIN is set. */
  readonly pinHash: string | null
  readonly active: boolean
}

export interface Session {
  /** SHA-256 of the cookie's token, hex. The token itself is nowhere. */
  readonly tokenHash: string
  readonly person: string
  /** UTC */
  readonly created: string
  readonly expires: string
}

/** Accounts and sign-ins of one yard. */
export interface People {
  /** In order of their names. */
  list(): Promise<Account[]>
  find(id: string): Promise<Account | null>
  /** False where the id is taken. */
  add(account: Account): Promise<boolean>
  /** Changes what is given. False where there is no such person. */
  change(id: string, change: Partial<Pick<Account, 'name' | 'role' | 'pinHash' | 'active'>>): Promise<boolean>
  signIn(session: Session): Promise<void>
  /** The session while it has not expired. */
  session(tokenHash: string, now: string): Promise<Session | null>
  signOut(tokenHash: string): Promise<void>
  /** Ends every session of a person, for a new PIN or an account that is closed. */
  signOutAll(person: string): Promise<void>
  /** Removes what has expired; returns how many. */
  sweep(now: string): Promise<number>
}

type PersonRow = RecordTables['people']

export function peopleOf(db: Kysely<RecordTables>, yard: string, now: () => string): People {
  return {
    async list() {
      const rows = await db
        .selectFrom('people')
        .selectAll()
        .where('yard', '=', yard)
        .orderBy('name')
        .orderBy('id')
        .execute()
      return rows.map(accountOf)
    },
    async find(id) {
      const row = await db
        .selectFrom('people')
        .selectAll()
        .where('yard', '=', yard)
        .where('id', '=', id)
        .executeTakeFirst()
      return row ? accountOf(row) : null
    },
    async add({ id, name, role, pinHash, active }) {
      const result = await db
        .insertInto('people')
        .values({ yard, id, name, role, pin_hash: pinHash, active: active ? 1 : 0, created: now() })
        .onConflict((conflict) => conflict.columns(['yard', 'id']).doNothing())
        .executeTakeFirst()
      return (result.numInsertedOrUpdatedRows ?? 0n) > 0n
    },
    async change(id, { name, role, pinHash, active }) {
      const set = {
        ...(name === undefined ? {} : { name }),
        ...(role === undefined ? {} : { role }),
        ...(pinHash === undefined ? {} : { pin_hash: pinHash }),
        ...(active === undefined ? {} : { active: active ? 1 : 0 }),
      }
      if (Object.keys(set).length === 0) return (await this.find(id)) !== null
      const result = await db
        .updateTable('people')
        .set(set)
        .where('yard', '=', yard)
        .where('id', '=', id)
        .executeTakeFirst()
      return result.numUpdatedRows > 0n
    },
    async signIn({ tokenHash, person, created, expires }) {
      await db
        .insertInto('sessions')
        .values({ yard, token_hash: tokenHash, person, created, expires })
        .execute()
    },
    async session(tokenHash, at) {
      const row = await db
        .selectFrom('sessions')
        .selectAll()
        .where('yard', '=', yard)
        .where('token_hash', '=', tokenHash)
        .where('expires', '>', at)
        .executeTakeFirst()
      if (row === undefined) return null
      return { tokenHash: row.token_hash, person: row.person, created: row.created, expires: row.expires }
    },
    async signOut(tokenHash) {
      await db.deleteFrom('sessions').where('yard', '=', yard).where('token_hash', '=', tokenHash).execute()
    },
    async signOutAll(person) {
      await db.deleteFrom('sessions').where('yard', '=', yard).where('person', '=', person).execute()
    },
    async sweep(at) {
      const result = await db
        .deleteFrom('sessions')
        .where('yard', '=', yard)
        .where('expires', '<=', at)
        .executeTakeFirst()
      return Number(result.numDeletedRows)
    },
  }
}

function accountOf(row: PersonRow): Account {
  return {
    id: row.id,
    name: row.name,
    role: row.role as Role,
    pinHash: row.pin_hash,
    active: row.active === 1,
  }
}

import { createHash, randomBytes } from 'node:crypto'
import { copyFile, mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import type { Kysely } from 'kysely'
import type { RecordTables } from './tables.ts'

export interface StoredFile {
  readonly sha256: string
  /** bytes */
  readonly size: number
  readonly type: string
}

/** Attachments by the hash of their bytes. Written once, never changed. */
export interface Files {
  /** Answers after the disk has it. @throws HashError where the bytes do not have that hash. */
  put(sha256: string, bytes: Uint8Array, type: string): Promise<'stored' | 'known'>
  /** Null where it is not here. @throws HashError where the disk gives other bytes than were stored. */
  get(sha256: string): Promise<(StoredFile & { readonly bytes: Uint8Array }) | null>
  has(sha256: string): Promise<boolean>
  /** In order of their hashes. */
  list(): Promise<StoredFile[]>
}

export class HashError extends Error {
  readonly found: string
  readonly expected: string

  constructor(found: string, expected: string) {
    super(`bytes of SHA-256 ${found}, expected ${expected}`)
    this.name = 'HashError'
    this.found = found
    this.expected = expected
  }
}

export interface FilesInput {
  readonly db: Kysely<RecordTables>
  readonly yard: string
  readonly folder: string
  readonly now: () => string
}

export function filesIn({ db, yard, folder, now }: FilesInput): Files {
  const rowOf = (sha256: string) =>
    db
      .selectFrom('files')
      .select(['sha256', 'size', 'type'])
      .where('yard', '=', yard)
      .where('sha256', '=', sha256)
      .executeTakeFirst()

  return {
    async put(sha256, bytes, type) {
      const found = sha256OfFile(bytes)
      if (found !== sha256) throw new HashError(found, sha256)
      if ((await rowOf(sha256)) !== undefined && (await sizeOnDisk(folder, sha256)) === bytes.length)
        return 'known'
      await writeDurably(pathOf(folder, sha256), bytes)
      await db
        .insertInto('files')
        .values({ yard, sha256, size: bytes.length, type, stored: now() })
        .onConflict((conflict) => conflict.columns(['yard', 'sha256']).doNothing())
        .execute()
      return 'stored'
    },
    async get(sha256) {
      const row = await rowOf(sha256)
      if (row === undefined) return null
      const bytes = await readFile(pathOf(folder, sha256))
      const found = sha256OfFile(bytes)
      if (found !== sha256) throw new HashError(found, sha256)
      return { ...row, bytes }
    },
    async has(sha256) {
      return (await rowOf(sha256)) !== undefined
    },
    async list() {
      return db
        .selectFrom('files')
        .select(['sha256', 'size', 'type'])
        .where('yard', '=', yard)
        .orderBy('sha256')
        .execute()
    },
  }
}

export function sha256OfFile(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}

/** Two letters a folder keep any one folder small. @throws Error where it is no hash: it would be a path. */
export function pathOf(folder: string, sha256: string): string {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new Error(`${sha256} is not a SHA-256 in hex`)
  return join(folder, sha256.slice(0, 2), sha256)
}

/** All of it or none of it is there after a power cut: written beside, synced, moved into place, the folder synced. */
export async function writeDurably(path: string, bytes: Uint8Array, mode = 0o644): Promise<void> {
  await mkdirDurably(dirname(path))
  const beside = `${path}.${randomBytes(6).toString('hex')}.new`
  const file = await open(beside, 'wx', mode)
  try {
    await file.writeFile(bytes)
    await file.sync()
  } catch (error) {
    await rm(beside, { force: true })
    throw error
  } finally {
    await file.close()
  }
  await rename(beside, path)
  await syncFolder(dirname(path))
}

export async function copyDurably(from: string, to: string): Promise<void> {
  await mkdirDurably(dirname(to))
  await copyFile(from, to)
  const file = await open(to, 'r+')
  try {
    await file.sync()
  } finally {
    await file.close()
  }
  await syncFolder(dirname(to))
}

async function mkdirDurably(folder: string): Promise<void> {
  const made = await mkdir(folder, { recursive: true })
  if (made !== undefined) await syncFolder(dirname(made))
}

/** On some systems a folder cannot be opened for syncing; there the rename is as durable as they make it. */
export async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return
  const handle = await open(folder, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}

async function sizeOnDisk(folder: string, sha256: string): Promise<number | null> {
  try {
    return (await stat(pathOf(folder, sha256))).size
  } catch {
    return null
  }
}

import { mkdir, readdir, readFile, rename, rm } from 'node:fs/promises'
import { dirname, join, resolve } from 'node:path'
import { foundText, InputError, parseJson } from '@castwright/engine/working'
import { type Kysely, sql } from 'kysely'
import * as z from 'zod'
import { copyDurably, pathOf, sha256OfFile, syncFolder, writeDurably } from './files.ts'
import { DATABASE_FILE, FILES_FOLDER, KEY_FILE, openStore } from './open.ts'
import type { Backup, Store } from './store.ts'
import type { RecordTables } from './tables.ts'

export const BACKUP_FORMAT = 'castwright.backup/1'
const MANIFEST = 'backup.json'

const manifestSchema = z.strictObject({
  format: z.literal(BACKUP_FORMAT),
  yard: z.string(),
  made: z.string(),
  size: z.number().int().min(0),
  root: z.string(),
  files: z.array(
    z.strictObject({
      sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hex'),
      size: z.number().int(),
    }),
  ),
})

export interface BackupInput {
  readonly db: Kysely<RecordTables>
  readonly store: Store
  readonly folder: string
  readonly filesFolder: string
  readonly to: string
  readonly now: () => string
}

/**
 * Copies a record that may be in use: the database as of one moment, every attachment, and the yard's key, so that what is
 * restored can go on signing. Whoever holds a backup holds the key: keep it like the data folder. The folder appears
 * whole or not at all.
 *
 * @throws InputError where the folder is there already.
 */
export async function backupFolder({
  db,
  store,
  folder,
  filesFolder,
  to,
  now,
}: BackupInput): Promise<Backup> {
  await refuseTaken(to)
  const beside = `${resolve(to)}.new`
  await rm(beside, { recursive: true, force: true })
  await mkdir(beside, { recursive: true, mode: 0o700 })
  await sql`vacuum into ${sql.lit(join(beside, DATABASE_FILE))}`.execute(db)
  await writeDurably(join(beside, KEY_FILE), await readFile(join(folder, KEY_FILE)), 0o600)
  // The copy tells what it holds: entries may have come in since it was made.
  const copy = await openStore({ folder: beside, yard: store.yard, copy: true })
  try {
    const { size, root } = await copy.head()
    const files = await copy.files.list()
    for (const { sha256 } of files) {
      await copyDurably(pathOf(filesFolder, sha256), pathOf(join(beside, FILES_FOLDER), sha256))
    }
    const manifest = {
      format: BACKUP_FORMAT,
      yard: store.yard,
      made: now(),
      size,
      root,
      files: files.map(({ sha256, size: bytes }) => ({ sha256, size: bytes })),
    }
    await writeDurably(
      join(beside, MANIFEST),
      new TextEncoder().encode(`${JSON.stringify(manifest, null, 2)}\n`),
    )
    await copy.close()
    await rename(beside, to)
    await syncFolder(dirname(resolve(to)))
    return { folder: to, yard: store.yard, size, root, files: files.length }
  } catch (error) {
    await copy.close()
    await rm(beside, { recursive: true, force: true })
    throw error
  }
}

/**
 * Puts a backup into a new data folder, after reading all of it: every leaf, every node, the root and the hash of every
 * attachment.
 *
 * @throws InputError naming each thing that does not fit; nothing is written then.
 */
export async function restoreFolder({
  from,
  folder,
}: {
  readonly from: string
  readonly folder: string
}): Promise<Backup> {
  const text = await readFile(join(from, MANIFEST), 'utf8').catch((error: NodeJS.ErrnoException) => {
    const found = error.code === 'ENOENT' ? 'no such file' : String(error.code)
    throw new InputError([{ path: MANIFEST, found, expected: 'a backup folder' }], from)
  })
  const manifest = parseJson(manifestSchema, text, join(from, MANIFEST))
  await refuseTaken(folder)
  const beside = `${resolve(folder)}.new`
  await rm(beside, { recursive: true, force: true })
  await mkdir(beside, { recursive: true, mode: 0o700 })
  try {
    await copyInto(from, beside, manifest)
    await checkCopy(beside, manifest, from)
  } catch (error) {
    await rm(beside, { recursive: true, force: true })
    throw error
  }
  await rm(folder, { recursive: true, force: true })
  await rename(beside, folder)
  await syncFolder(dirname(resolve(folder)))
  const { yard, size, root, files } = manifest
  return { folder, yard, size, root, files: files.length }
}

type Manifest = z.output<typeof manifestSchema>

async function copyInto(from: string, to: string, manifest: Manifest): Promise<void> {
  const names = [DATABASE_FILE, KEY_FILE]
  for (const name of names) {
    const bytes = await readFile(join(from, name)).catch(() => {
      throw new InputError([{ path: name, found: 'no such file', expected: 'a file of the backup' }], from)
    })
    await writeDurably(join(to, name), bytes, 0o600)
  }
  for (const { sha256, size } of manifest.files) {
    const path = pathOf(join(from, FILES_FOLDER), sha256)
    const bytes = await readFile(path).catch(() => null)
    const found = bytes === null ? 'no such file' : `${bytes.length} bytes of SHA-256 ${sha256OfFile(bytes)}`
    if (bytes === null || sha256OfFile(bytes) !== sha256) {
      throw new InputError(
        [{ path: `files/${sha256}`, found, expected: `${size} bytes of that SHA-256` }],
        from,
      )
    }
    await writeDurably(pathOf(join(to, FILES_FOLDER), sha256), bytes)
  }
}

async function checkCopy(folder: string, manifest: Manifest, from: string): Promise<void> {
  const store = await openStore({ folder, yard: manifest.yard, copy: true }).catch((error: unknown) => {
    const found = error instanceof Error ? error.message : String(error)
    throw new InputError([{ path: DATABASE_FILE, found, expected: `the record of ${manifest.yard}` }], from)
  })
  try {
    const faults = await store.check()
    const { size, root } = await store.head()
    const issues = faults.map((found) => ({
      path: DATABASE_FILE,
      found,
      expected: 'a log that fits its tree',
    }))
    if (size !== manifest.size)
      issues.push({ path: 'size', found: `${size} entries`, expected: `${manifest.size}` })
    if (root !== manifest.root) issues.push({ path: 'root', found: root, expected: manifest.root })
    if (issues.length > 0) throw new InputError(issues, from)
  } finally {
    await store.close()
  }
}

async function refuseTaken(folder: string): Promise<void> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return []
    throw new InputError([{ path: '', found: `${foundText(folder)} (${error.code})`, expected: 'a folder' }])
  })
  if (names.length > 0) {
    throw new InputError([
      {
        path: '',
        found: `${foundText(folder)}, which holds something`,
        expected: 'a folder that is new or empty',
      },
    ])
  }
}

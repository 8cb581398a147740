import { createHash, randomUUID } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { mkdir, open, rename, rm, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { Readable } from 'node:stream'

/** 20 MB: a photo of a phone is 3 to 8. */
export const MOST_FILE_BYTES = 20 * 1024 * 1024

/** What an attachment may be. Nothing that a browser would run. */
export const FILE_TYPES: Readonly<Record<string, { readonly ending: string; readonly shown: boolean }>> = {
  'image/jpeg': { ending: 'jpg', shown: true },
  'image/png': { ending: 'png', shown: true },
  'image/webp': { ending: 'webp', shown: true },
  'image/heic': { ending: 'heic', shown: false },
  'application/pdf': { ending: 'pdf', shown: false },
  'text/csv': { ending: 'csv', shown: false },
  'text/plain': { ending: 'txt', shown: false },
  'application/json': { ending: 'json', shown: false },
}

export interface KeptFile {
  readonly type: string
  readonly size: number
  readonly body: ReadableStream<Uint8Array>
}

export type PutOutcome =
  | { readonly outcome: 'stored' | 'known'; readonly size: number }
  | { readonly outcome: 'too-large' }
  | { readonly outcome: 'differs'; readonly found: string }

/** Attachments by their SHA-256: a handful of verbs, so that a folder and a bucket can both hold them. */
export interface FileStore {
  /** Stores the bytes only if they have that hash; durable when it answers. */
  put(sha256: string, type: string, body: ReadableStream<Uint8Array> | null): Promise<PutOutcome>
  get(sha256: string): Promise<KeptFile | null>
  has(sha256: string): Promise<boolean>
}

/** Attachments in a folder: `ab/abcdef….jpg`, written beside and renamed when whole. */
export class FolderFiles implements FileStore {
  constructor(
    private readonly folder: string,
    private readonly most: number = MOST_FILE_BYTES,
  ) {}

  async put(sha256: string, type: string, body: ReadableStream<Uint8Array> | null): Promise<PutOutcome> {
    const known = await this.find(sha256)
    if (known !== null) {
      await body?.cancel()
      return { outcome: 'known', size: known.size }
    }
    const path = this.path(sha256, type)
    await mkdir(dirname(path), { recursive: true, mode: 0o700 })
    const beside = `${path}.${randomUUID()}.part`
    try {
      const written = await this.write(beside, body)
      if (written === null) return { outcome: 'too-large' }
      if (written.sha256 !== sha256) return { outcome: 'differs', found: written.sha256 }
      await rename(beside, path)
      await syncFolder(dirname(path))
      return { outcome: 'stored', size: written.size }
    } finally {
      await rm(beside, { force: true })
    }
  }

  async get(sha256: string): Promise<KeptFile | null> {
    const found = await this.find(sha256)
    if (found === null) return null
    // Node types its web streams apart from the platform's; they are the same object.
    const body = Readable.toWeb(createReadStream(found.path)) as ReadableStream<Uint8Array>
    return { type: found.type, size: found.size, body }
  }

  async has(sha256: string): Promise<boolean> {
    return (await this.find(sha256)) !== null
  }

  private async write(
    path: string,
    body: ReadableStream<Uint8Array> | null,
  ): Promise<{ readonly sha256: string; readonly size: number } | null> {
    const file = await open(path, 'wx', 0o600)
    const hash = createHash('sha256')
    let size = 0
    try {
      if (body !== null) {
        for await (const chunk of body as unknown as AsyncIterable<Uint8Array>) {
          size += chunk.length
          if (size > this.most) return null
          hash.update(chunk)
          await file.write(chunk)
        }
      }
      await file.sync()
    } finally {
      await file.close()
    }
    return { sha256: hash.digest('hex'), size }
  }

  private async find(
    sha256: string,
  ): Promise<{ readonly path: string; readonly type: string; readonly size: number } | null> {
    for (const type of Object.keys(FILE_TYPES)) {
      const path = this.path(sha256, type)
      const stats = await stat(path).catch(() => null)
      if (stats?.isFile()) return { path, type, size: stats.size }
    }
    return null
  }

  private path(sha256: string, type: string): string {
    return join(this.folder, sha256.slice(0, 2), `${sha256}.${FILE_TYPES[type]?.ending ?? 'bin'}`)
  }
}

/** The name of a new file is only durable once its folder is. Not every system lets a folder be synced. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null)
  if (handle === null) return
  await handle.sync().catch(() => undefined)
  await handle.close()
}

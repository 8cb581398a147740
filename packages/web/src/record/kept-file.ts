import { type Entry, parseEntry } from '@castwright/record'
import type { KeptEntry, KeptFile } from './database.ts'

export const KEPT_FORMAT = 'castwright.kept/1'

interface SavedFile extends Omit<KeptFile, 'bytes' | 'state' | 'tries' | 'fault'> {
  readonly base64: string
}

/** What is kept here and not in the record, as one file that any device of the yard can read back. */
export async function writeKept(entries: readonly KeptEntry[], files: readonly KeptFile[]): Promise<string> {
  const saved: SavedFile[] = []
  for (const { sha256, name, type, size, bytes } of files) {
    saved.push({ sha256, name, type, size, base64: toBase64(new Uint8Array(await bytes.arrayBuffer())) })
  }
  return JSON.stringify(
    { format: KEPT_FORMAT, entries: entries.map(({ entry }) => entry), files: saved },
    null,
    1,
  )
}

/**
 * Reads such a file back. Each entry is read as one that comes from a device; a file whose bytes do not fit its hash is
 * left out, since its entry would name something else.
 *
 * @throws Error or InputError that says what does not fit; then nothing is taken.
 */
export async function readKept(
  text: string,
): Promise<{ readonly entries: readonly Entry[]; readonly files: readonly KeptFile[] }> {
  let whole: unknown
  try {
    whole = JSON.parse(text)
  } catch (error) {
    throw new Error(`The file is not JSON: ${error instanceof Error ? error.message : String(error)}`)
  }
  const { format, entries, files } = (whole ?? {}) as { format?: unknown; entries?: unknown; files?: unknown }
  if (format !== KEPT_FORMAT || !Array.isArray(entries) || !Array.isArray(files)) {
    throw new Error(
      `format: found ${JSON.stringify(format) ?? 'nothing'}, expected "${KEPT_FORMAT}" with entries and files`,
    )
  }
  const read = entries.map((entry, index) => parseEntry(entry, `entries[${index}]`))
  const kept: KeptFile[] = []
  for (const [index, file] of (files as SavedFile[]).entries()) kept.push(await readFile(file, index))
  return { entries: read, files: kept }
}

async function readFile(file: SavedFile, index: number): Promise<KeptFile> {
  const { sha256, name, type, base64 } = file
  if (typeof sha256 !== 'string' || typeof base64 !== 'string') {
    throw new Error(`files[${index}]: found no sha256 or base64, expected both`)
  }
  const bytes = fromBase64(base64)
  const hash = [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')
  if (hash !== sha256) throw new Error(`files[${index}]: found bytes of ${hash}, expected ${sha256}`)
  return {
    sha256,
    name: String(name),
    type: String(type),
    size: bytes.length,
    bytes: new Blob([bytes], { type: String(type) }),
    state: 'waiting',
    tries: 0,
    fault: null,
  }
}

function toBase64(bytes: Uint8Array): string {
  let text = ''
  for (let at = 0; at < bytes.length; at += 0x8000)
    text += String.fromCharCode(...bytes.subarray(at, at + 0x8000))
  return btoa(text)
}

function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const plain = atob(text)
  return Uint8Array.from(plain, (letter) => letter.charCodeAt(0))
}

import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js'
import { canonicalBytes } from './canonical.ts'
import type { Entry, StoredEntry } from './entry.ts'
import type { AnyEntry } from './order.ts'

/** SHA-256. The browser's is noble's; the store passes node:crypto's, which is some ten times faster. */
export type Hash = (bytes: Uint8Array) => Uint8Array

export const sha256Of: Hash = (bytes) => sha256(bytes)

export function sha256Hex(bytes: Uint8Array, hash: Hash = sha256Of): string {
  return toHex(hash(bytes))
}

export function toHex(bytes: Uint8Array): string {
  return bytesToHex(bytes)
}

/** @throws Error where the text is not hex. */
export function fromHex(text: string): Uint8Array {
  return hexToBytes(text)
}

export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index])
}

/** The entry as its device made it, without what the record added. */
export function factOf(entry: AnyEntry): Entry {
  const { stored: _stored, index: _index, ...fact } = entry as StoredEntry
  return fact
}

/** SHA-256 of the RFC 8785 bytes of the entry as its device made it: what the device's next entry points back at. */
export function entryHash(entry: AnyEntry, hash: Hash = sha256Of): string {
  return sha256Hex(canonicalBytes(factOf(entry)), hash)
}

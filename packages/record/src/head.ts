import { ed25519 } from '@noble/curves/ed25519.js'
import * as z from 'zod'
import { canonicalBytes } from './canonical.ts'
import { fromHex, toHex } from './hash.ts'

const HEAD_FORMAT = 'castwright.head/1'

export const signedHeadSchema = z.strictObject({
  yard: z.string().min(1).max(200),
  /** Leaves of the tree. */
  size: z.number().int().min(0),
  /** Root, hex. */
  root: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hex'),
  /** When it was signed, UTC. */
  time: z.iso.datetime({ offset: false, precision: 3 }),
  /** Ed25519 by the yard's key over the RFC 8785 bytes of the rest with `format: castwright.head/1`, hex. */
  signature: z.string().regex(/^[0-9a-f]{128}$/, 'an Ed25519 signature in hex'),
})

/** The yard's word for what its log held at a time. */
export type SignedHead = z.output<typeof signedHeadSchema>
export type TreeHead = Omit<SignedHead, 'signature'>

/** Makes an Ed25519 signature over bytes with a key that it keeps to itself. */
export type Sign = (bytes: Uint8Array) => Uint8Array

export function signHead(head: TreeHead, sign: Sign): SignedHead {
  return { ...head, signature: toHex(sign(headBytes(head))) }
}

/** Whether the head was signed with the yard's key (hex). */
export function verifyHead({ signature, ...head }: SignedHead, publicKey: string): boolean {
  return verifySignature(signature, headBytes(head), publicKey)
}

/** Ed25519 by RFC 8032; false also where signature or key are not hex of the right length. */
export function verifySignature(signature: string, bytes: Uint8Array, publicKey: string): boolean {
  try {
    return ed25519.verify(fromHex(signature), bytes, fromHex(publicKey), { zip215: false })
  } catch {
    return false
  }
}

function headBytes({ yard, size, root, time }: TreeHead): Uint8Array {
  return canonicalBytes({ format: HEAD_FORMAT, yard, size, root, time })
}

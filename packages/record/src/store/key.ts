import { createPrivateKey, createPublicKey, generateKeyPairSync, type KeyObject, sign } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { writeDurably } from './files.ts'

/** The yard's Ed25519 key. Its secret part stays in one file of the data folder that only its owner can read. */
export interface YardKey {
  /** hex */
  readonly publicKey: string
  sign(bytes: Uint8Array): Uint8Array
}

/** Reads the key, or makes one where there is none. @throws Error where the file holds something else. */
export async function readOrMakeKey(path: string): Promise<YardKey> {
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null
    throw error
  })
  if (text !== null) return keyOf(createPrivateKey(text))
  const { privateKey } = generateKeyPairSync('ed25519')
  const pem = privateKey.export({ type: 'pkcs8', format: 'pem' })
  await writeDurably(path, new TextEncoder().encode(String(pem)), 0o600)
  return keyOf(privateKey)
}

function keyOf(secret: KeyObject): YardKey {
  if (secret.asymmetricKeyType !== 'ed25519') {
    throw new Error(`the yard's key is of kind ${secret.asymmetricKeyType}, expected ed25519`)
  }
  // The last 32 bytes of the SPKI form of an Ed25519 key are the key itself (RFC 8410).
  const spki = createPublicKey(secret).export({ type: 'spki', format: 'der' })
  return {
    publicKey: spki.subarray(-32).toString('hex'),
    sign: (bytes) => new Uint8Array(sign(null, bytes, secret)),
  }
}

import { generateKeyPairSync, randomBytes, sign } from 'node:crypto'

/** A certificate for tests: P-256, signed by itself, for localhost and 127.0.0.1. Made by hand, since Node reads but does not make them. */
export function selfSigned(): { readonly cert: string; readonly key: string } {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' })
  const name = sequence(set(sequence(oid('550403'), tagged(0x0c, Buffer.from('localhost')))))
  const ecdsaWithSha256 = sequence(oid('2a8648ce3d040302'))
  const names = sequence(tagged(0x82, Buffer.from('localhost')), tagged(0x87, Buffer.from([127, 0, 0, 1])))
  const body = sequence(
    tagged(0xa0, tagged(0x02, Buffer.from([2]))),
    tagged(0x02, Buffer.concat([Buffer.from([1]), randomBytes(15)])),
    ecdsaWithSha256,
    name,
    sequence(time(-1), time(30)),
    name,
    publicKey.export({ type: 'spki', format: 'der' }),
    tagged(0xa3, sequence(sequence(oid('551d11'), tagged(0x04, names)))),
  )
  const signature = sign('sha256', body, privateKey)
  const der = sequence(body, ecdsaWithSha256, tagged(0x03, Buffer.concat([Buffer.from([0]), signature])))
  const lines = der.toString('base64').match(/.{1,64}/g) ?? []
  return {
    cert: `-----BEGIN CERTIFICATE-----\n${lines.join('\n')}\n-----END CERTIFICATE-----\n`,
    key: String(privateKey.export({ type: 'pkcs8', format: 'pem' })),
  }
}

/** DER: tag, length, content. */
function tagged(tag: number, content: Buffer): Buffer {
  const { length } = content
  const size =
    length < 128 ? [length] : length < 256 ? [0x81, length] : [0x82, Math.floor(length / 256), length % 256]
  return Buffer.concat([Buffer.from([tag, ...size]), content])
}

function sequence(...parts: readonly Buffer[]): Buffer {
  return tagged(0x30, Buffer.concat(parts))
}

function set(...parts: readonly Buffer[]): Buffer {
  return tagged(0x31, Buffer.concat(parts))
}

function oid(hex: string): Buffer {
  return tagged(0x06, Buffer.from(hex, 'hex'))
}

/** UTCTime of a day from today on. */
function time(days: number): Buffer {
  const text = new Date(Date.now() + days * 86_400_000).toISOString().replace(/[-:T]/g, '').slice(2, 14)
  return tagged(0x17, Buffer.from(`${text}Z`))
}

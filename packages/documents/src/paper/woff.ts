import { inflateSync } from 'node:zlib'

const SIGNATURE = 0x774f4646
const HEADER = 44
const ENTRY = 20

/**
 * A font packed as WOFF, unpacked once: opened as it is, each sheet would unpack every table of it again, which took most of the time of
 * a sheet.
 *
 * Source: W3C, WOFF File Format 1.0 (2012), 3 to 5 (from memory).
 *
 * @throws Error where the bytes are no such font: a broken installation.
 */
export function unpackedFont(woff: Buffer): Buffer {
  if (woff.length < HEADER || woff.readUInt32BE(0) !== SIGNATURE) {
    throw new Error(`font of ${woff.length} bytes: expected a WOFF file`)
  }
  const count = woff.readUInt16BE(12)
  const tables = Array.from({ length: count }, (_, i) => {
    const at = HEADER + i * ENTRY
    const [offset, packed, length] = [4, 8, 12].map((from) => woff.readUInt32BE(at + from)) as [
      number,
      number,
      number,
    ]
    const bytes = woff.subarray(offset, offset + packed)
    const data = packed < length ? inflateSync(bytes) : bytes
    if (data.length !== length) throw new Error(`font table ${i}: ${data.length} bytes, expected ${length}`)
    return { tag: woff.readUInt32BE(at), checksum: woff.readUInt32BE(at + 16), data }
  })
  const directory = Buffer.alloc(12 + 16 * count)
  const power = 2 ** Math.floor(Math.log2(count))
  directory.writeUInt32BE(woff.readUInt32BE(4), 0)
  directory.writeUInt16BE(count, 4)
  directory.writeUInt16BE(16 * power, 6)
  directory.writeUInt16BE(Math.log2(power), 8)
  directory.writeUInt16BE(16 * (count - power), 10)
  const parts: Buffer[] = [directory]
  let offset = directory.length
  for (const [i, { tag, checksum, data }] of tables.entries()) {
    const at = 12 + 16 * i
    directory.writeUInt32BE(tag, at)
    directory.writeUInt32BE(checksum, at + 4)
    directory.writeUInt32BE(offset, at + 8)
    directory.writeUInt32BE(data.length, at + 12)
    const padding = (4 - (data.length % 4)) % 4
    parts.push(data, Buffer.alloc(padding))
    offset += data.length + padding
  }
  return Buffer.concat(parts)
}

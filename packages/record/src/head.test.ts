import { ed25519 } from '@noble/curves/ed25519.js'
import { describe, expect, it } from 'vitest'
import { canonicalText } from './canonical.ts'
import { fromHex, toHex } from './hash.ts'
import { signHead, verifyHead, verifySignature } from './head.ts'

const SECRET = fromHex('9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60')
const PUBLIC = toHex(ed25519.getPublicKey(SECRET))
const HEAD = { yard: 'example', size: 3, root: 'ab'.repeat(32), time: '2026-03-02T06:00:00.000Z' }
const sign = (bytes: Uint8Array) => ed25519.sign(bytes, SECRET)

describe('signed tree head', () => {
  // RFC 8032, section 7.1, TEST 1 (from memory): the key and the signature of the empty message.
  it('signs as RFC 8032 does', () => {
    expect(PUBLIC).toBe('d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a')
    const signature =
      'e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b'
    expect(toHex(sign(new Uint8Array(0)))).toBe(signature)
    expect(verifySignature(signature, new Uint8Array(0), PUBLIC)).toBe(true)
  })

  it('covers every field', () => {
    const signed = signHead(HEAD, sign)
    expect(verifyHead(signed, PUBLIC)).toBe(true)
    for (const change of [
      { yard: 'other' },
      { size: 4 },
      { root: 'ac'.repeat(32) },
      { time: '2026-03-02T06:00:00.001Z' },
    ]) {
      expect(verifyHead({ ...signed, ...change }, PUBLIC)).toBe(false)
    }
  })

  it('is no signature over anything else with the same fields', () => {
    expect(
      verifySignature(toHex(sign(new TextEncoder().encode(canonicalText(HEAD)))), new Uint8Array(0), PUBLIC),
    ).toBe(false)
    expect(
      verifyHead({ ...HEAD, signature: toHex(sign(new TextEncoder().encode(canonicalText(HEAD)))) }, PUBLIC),
    ).toBe(false)
  })

  it.each([
    ['', PUBLIC],
    ['zz'.repeat(64), PUBLIC],
    ['00'.repeat(64), PUBLIC],
    ['00'.repeat(64), 'ff'],
  ])('takes no signature %s with key %s', (signature, key) => {
    expect(verifySignature(signature, new Uint8Array(0), key)).toBe(false)
  })
})

import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { panelOf, parseDrawing } from '@castwright/engine/panel'
import { ed25519 } from '@noble/curves/ed25519.js'
import { describe, expect, it } from 'vitest'
import { canonicalBytes } from './canonical.ts'
import {
  ENGINEER,
  ExampleDevice,
  FLOOR,
  LEAD,
  PANEL,
  stored,
  YARD_FILE,
  YARD_NAME,
} from './example-entries.ts'
import { toHex } from './hash.ts'
import { signHead } from './head.ts'
import { inclusionProof, leafHash, type NodeId, rootOfLeaves } from './merkle.ts'
import { makePassport } from './passport.ts'
import { passportEntries } from './passport-entries.ts'
import { verifyPassport } from './verify-passport.ts'

/*
 * The passport in docs/examples, which `castwright verify --help` names. Renew it with UPDATE_EXAMPLES=1 and say in the commit why it
 * changed: passports that yards have handed out must still be read.
 */
const at = (name: string) => fileURLToPath(new URL(`../../../docs/examples/${name}`, import.meta.url))
const FILE = at('wall.passport')
const KEY = at('wall.key')
/** A key for the example alone: everybody can read it here. */
const SECRET = new Uint8Array(32).fill(0x2a)
const sign = (bytes: Uint8Array) => ed25519.sign(bytes, SECRET)
const publicKey = toHex(ed25519.getPublicKey(SECRET))

function examplePassport(): Uint8Array {
  const drawing = parseDrawing({
    ...JSON.parse(readFileSync(at('wall.json'), 'utf8')),
    job: 'J1',
    revision: 'A',
  })
  const phone = new ExampleDevice('phone')
  const subject = PANEL
  const oil = phone.value('oil', true)
  const cast = phone.make(FLOOR, {
    kind: 'cast',
    subject,
    value: { at: '2026-03-02T08:10:00.000Z', bed: 'B1', mix: 'M40' },
  })
  const log = stored([
    oil,
    cast,
    phone.make(LEAD, { kind: 'yard', subject: { kind: 'yard', id: YARD_NAME }, value: YARD_FILE }),
    phone.make(LEAD, { kind: 'drawing', subject, revision: 'A', value: JSON.parse(JSON.stringify(drawing)) }),
    phone.make(ENGINEER, { kind: 'design', subject, revision: 'A', value: { reference: 'LD-3' } }),
    phone.make(FLOOR, {
      kind: 'specimen',
      subject,
      value: { specimen: 'C1', kind: 'cylinder', age: 20.5, strength: 19.4 },
    }),
    phone.make(LEAD, { kind: 'request', subject, step: 'set', value: null }),
    new ExampleDevice('record').make(LEAD, {
      kind: 'opening',
      subject,
      step: 'set',
      value: null,
      revision: 'A',
      rests: [oil.id],
    }),
  ])
  const leaves = log.map((entry) => leafHash(canonicalBytes(entry)))
  const read = ({ level, index }: NodeId) =>
    rootOfLeaves(leaves.slice(index * 2 ** level, (index + 1) * 2 ** level))
  const made = '2026-03-06T10:00:00.000Z'
  const panel = panelOf(drawing)
  return makePassport({
    publicKey,
    panel: { job: 'J1', mark: 'W1', revision: 'A' },
    drawing,
    plan: {
      engine: '0.1.0',
      family: 'eu',
      editions: ['EN 1992-1-1:2004'],
      figures: { mass: panel.mass, volume: panel.volume },
    },
    entries: passportEntries(subject.id, log),
    proofs: new Map(log.map(({ index }) => [index, inclusionProof(index, log.length, read).map(toHex)])),
    head: signHead(
      { yard: YARD_NAME, size: log.length, root: toHex(rootOfLeaves(leaves)), time: made },
      sign,
    ),
    made,
    sign,
  })
}

describe('the passport in the examples', () => {
  if (process.env.UPDATE_EXAMPLES === '1') {
    writeFileSync(FILE, examplePassport())
    writeFileSync(KEY, `${publicKey}\n`)
  }

  it('passes with the key beside it', () => {
    const { verdict, problems } = verifyPassport(readFileSync(FILE), { key: readFileSync(KEY, 'utf8') })
    expect(problems).toEqual([])
    expect(verdict).toBe('pass')
  })

  it('has the parts that a passport made today has', () => {
    const parts = (bytes: Uint8Array) => Object.keys(JSON.parse(new TextDecoder().decode(bytes)) as object)
    expect(parts(readFileSync(FILE))).toEqual(parts(examplePassport()))
  })
})

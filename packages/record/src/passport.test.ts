import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { InputError } from '@castwright/engine/working'
import { ed25519 } from '@noble/curves/ed25519.js'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { canonicalBytes, canonicalText } from './canonical.ts'
import type { StoredEntry } from './entry.ts'
import { panelSubject } from './entry.ts'
import {
  DRAWING,
  ENGINEER,
  ExampleDevice,
  FLOOR,
  LEAD,
  PANEL,
  YARD_FILE,
  YARD_NAME,
} from './example-entries.ts'
import { toHex } from './hash.ts'
import { digestsOf, type Passport } from './passport.ts'
import { passportEntries } from './passport-entries.ts'
import { issuePassport } from './store/issue-passport.ts'
import { openStore } from './store/open.ts'
import type { Store } from './store/store.ts'
import { problemText, verifyPassport, WHOSE_KEY } from './verify-passport.ts'

const NOW = '2026-03-03T06:00:00.000Z'
const PICTURE = { sha256: 'c'.repeat(64), name: 'cage.jpg', type: 'image/jpeg', size: 4000 }

let folder: string
let store: Store
let log: StoredEntry[]
let bytes: Uint8Array
let text: string
let key: string

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'castwright-passport-'))
  store = await openStore({ folder, yard: YARD_NAME })
  key = store.publicKey
  const phone = new ExampleDevice('phone')
  const other = panelSubject('J1', 'W2')
  const yard = phone.make(LEAD, { kind: 'yard', subject: { kind: 'yard', id: YARD_NAME }, value: YARD_FILE })
  const drawing = phone.make(LEAD, { kind: 'drawing', subject: PANEL, revision: 'A', value: DRAWING })
  const gear = phone.make(LEAD, {
    kind: 'gear',
    subject: { kind: 'gear', id: 'crane' },
    value: { due: '2026-10-01' },
  })
  const elsewhere = phone.make(FLOOR, { kind: 'place', subject: other, value: { place: 'R2' } })
  const oil = phone.value('oil', true, { attachments: [PICTURE] })
  const slump = phone.value('slump', 95, { step: 'deliver' })
  const design = phone.make(ENGINEER, {
    kind: 'design',
    subject: PANEL,
    revision: 'A',
    value: { reference: 'LD-3' },
  })
  const opening = new ExampleDevice('record').make(LEAD, {
    kind: 'opening',
    subject: PANEL,
    step: 'set',
    value: null,
    rests: [oil.id, gear.id],
  })
  await store.append([yard, drawing, gear, elsewhere, oil, slump, design, opening], { now: NOW })
  log = await store.read({ after: -1, limit: 100 })
  bytes = await issuePassport({
    store,
    panel: { job: 'J1', mark: 'W1', revision: 'A' },
    drawing: DRAWING as unknown as Passport['drawing'],
    plan: {
      engine: '0.1.0',
      family: 'eu',
      editions: ['EN 1992-1-1:2004'],
      figures: { mass: 6750, volume: 2.7 },
    },
    entries: passportEntries('J1/W1', log),
    now: NOW,
  })
  text = new TextDecoder().decode(bytes)
})
afterAll(async () => {
  await store.close()
  await rm(folder, { recursive: true, force: true })
})

describe('passport', () => {
  it('holds the panel’s entries, what they rest on and the yard’s file, and nothing of other panels', () => {
    const kinds = passportEntries('J1/W1', log).map(({ kind }) => kind)
    expect(kinds).toEqual(['yard', 'drawing', 'gear', 'value', 'value', 'design', 'opening'])
    expect(passportEntries('J1/none', log)).toEqual([])
  })

  it('passes with the key that the yard publishes, typed in any case', () => {
    expect(verifyPassport(bytes, { key })).toMatchObject({ verdict: 'pass', problems: [], unknown: [] })
    expect(verifyPassport(text, { key: ` ${key.toUpperCase()}\n` }).verdict).toBe('pass')
  })

  it('is not known without the key, though all of it fits', () => {
    expect(verifyPassport(bytes)).toMatchObject({ verdict: 'unknown', problems: [], unknown: [WHOSE_KEY] })
  })

  it('is RFC 8785 bytes and the same each time', () => {
    expect(canonicalText(JSON.parse(text))).toBe(text)
  })

  it('fails with the key of another yard, and says which key it has', () => {
    const stranger = toHex(ed25519.getPublicKey(new Uint8Array(32).fill(7)))
    const { verdict, problems } = verifyPassport(bytes, { key: stranger })
    expect(verdict).toBe('fail')
    expect(problems[0]).toEqual({ at: 'yard.publicKey', expected: stranger, found: key })
  })

  it('fails where a stranger made it anew under another key', () => {
    const secret = new Uint8Array(32).fill(9)
    const passport = JSON.parse(text) as Passport
    const { signature: _signature, digests: _digests, ...rest } = passport
    const forged = {
      ...rest,
      plan: { ...rest.plan, figures: { ...rest.plan.figures, mass: 5000 } },
      yard: { ...rest.yard, publicKey: toHex(ed25519.getPublicKey(secret)) },
    }
    const unsigned = { ...forged, digests: digestsOf(forged) }
    const file = canonicalBytes({
      ...unsigned,
      signature: toHex(ed25519.sign(canonicalBytes(unsigned), secret)),
    })
    const found = verifyPassport(file, { key })
    expect(found.problems.map(({ at }) => at)).toEqual(
      expect.arrayContaining(['yard.publicKey', 'signature']),
    )
    // Without the yard's key the head still gives it away: the log was signed with another.
    expect(verifyPassport(file).problems.map(({ at }) => at)).toEqual(['head.signature'])
  })
})

describe('a passport that was changed', () => {
  const change = (from: string | RegExp, to: string) => {
    const changed = text.replace(from, to)
    expect(changed).not.toBe(text)
    return verifyPassport(changed, { key })
  }
  const placeOf = (kind: string) => passportEntries('J1/W1', log).findIndex((entry) => entry.kind === kind)

  it('names the field of the drawing, what it was and what it is', () => {
    const { problems } = change('"thickness":150},"entries"', '"thickness":160},"entries"')
    expect(problems[0]).toEqual({ at: 'drawing.thickness', expected: '150', found: '160' })
    expect(problems.map(({ at }) => at)).toEqual(['drawing.thickness', 'signature'])
    expect(problemText(problems[0] as (typeof problems)[0])).toBe(
      'drawing.thickness: found 160, expected 150',
    )
  })

  it('names the entry', () => {
    const { problems } = change('"value":95', '"value":96')
    const at = `entries[${placeOf('value') + 1}]`
    expect(problems.map((problem) => problem.at)).toEqual(expect.arrayContaining([at, 'signature']))
    expect(problems[0]?.at).toBe(at)
    expect(problems[0]?.found).toContain('value deliver slump')
  })

  it('names the figure of the plan', () => {
    const { problems } = change('"mass":6750', '"mass":6740')
    expect(problems.map(({ at }) => at)).toEqual(['plan.figures.mass', 'signature'])
    expect(problems[0]?.found).toContain('6740')
  })

  it('names the proof and not the entry that it is of', () => {
    const { path, index } = (JSON.parse(text) as Passport).proofs[2] as Passport['proofs'][0]
    const hash = path[0] as string
    const other = `${hash[0] === '0' ? '1' : '0'}${hash.slice(1)}`
    const from = `{"index":${index},"path":["${hash}"`
    const { problems } = change(from, from.replace(hash, other))
    expect(problems.map(({ at }) => at)).toEqual(['proofs[2]', 'signature'])
  })

  it('names the head', () => {
    const { problems } = change('"size":8,', '"size":9,')
    expect(problems.map(({ at }) => at)).toEqual(
      expect.arrayContaining(['head.signature', 'head', 'signature']),
    )
    expect(problems.some(({ at }) => at.startsWith('entries'))).toBe(false)
  })

  it('names an attachment', () => {
    const { problems } = change(`"attachments":[{"name":"cage.jpg"`, `"attachments":[{"name":"rage.jpg"`)
    expect(problems[0]).toEqual({ at: 'attachments[0].name', expected: '"cage.jpg"', found: '"rage.jpg"' })
  })

  it('names the digest where only that was changed', () => {
    const digest = (JSON.parse(text) as Passport).digests['plan.figures.mass'] as string
    const { problems } = change(digest, `${digest[0] === '0' ? '1' : '0'}${digest.slice(1)}`)
    expect(problems[0]?.at).toBe('digests["plan.figures.mass"]')
    expect(problems[0]?.expected).toBe(digest)
  })

  it('names the signature where only that was changed', () => {
    const { signature } = JSON.parse(text) as Passport
    const { problems } = change(signature, `${signature[0] === '0' ? '1' : '0'}${signature.slice(1)}`)
    expect(problems.map(({ at }) => at)).toEqual(['signature'])
  })

  it('names an entry that was left out', () => {
    const passport = JSON.parse(text) as Passport
    const at = placeOf('gear')
    const changed = canonicalText({
      ...passport,
      entries: passport.entries.toSpliced(at, 1),
      proofs: passport.proofs.toSpliced(at, 1),
    })
    const { problems } = verifyPassport(changed, { key })
    expect(problems.map((problem) => problem.at)).toEqual(
      expect.arrayContaining([`entries[${placeOf('opening') - 1}].rests[1]`, 'signature']),
    )
  })

  it('names a field that has no right form', () => {
    const { verdict, problems } = change('"kind":"gear"', '"kind":"gear!"')
    expect(verdict).toBe('fail')
    expect(problems[0]?.at).toMatch(/^entries\[2\]/)
  })

  it.each<[string, () => string | Uint8Array, RegExp]>([
    ['a passport with a space in it', () => text.replace('{', '{ '), /byte 1: found .*RFC 8785/],
    ['a passport with a line end after it', () => `${text}\n`, /byte \d+/],
    ['a passport with a byte-order mark', () => `\ufeff${text}`, /byte 0/],
    ['a number written otherwise', () => text.replace('"mass":6750', '"mass":6750.0'), /byte \d+/],
    ['half a passport', () => text.slice(0, 500), /JSON/],
    ['a picture', () => new Uint8Array([0xff, 0xd8, 0xff]), /UTF-8/],
    ['a drawing', () => JSON.stringify(DRAWING), /format: found "castwright.drawing\/1"/],
    ['a later format', () => text.replace('passport/1', 'passport/2'), /format/],
    ['a number', () => '42', /format: found nothing/],
  ])('refuses %s', (_, make, message) => {
    expect(() => verifyPassport(make(), { key })).toThrow(InputError)
    expect(() => verifyPassport(make(), { key })).toThrow(message)
  })

  it.each(['', 'abc', 'g'.repeat(64)])('refuses %j as a key', (wrong) => {
    expect(() => verifyPassport(bytes, { key: wrong })).toThrow(/key/)
  })

  it('never passes with any one byte changed, and names its part', () => {
    const passport = JSON.parse(text) as Record<string, unknown>
    const step = Math.max(1, Math.floor(bytes.length / 300))
    for (let at = 0; at < bytes.length; at += step) {
      const changed = bytes.slice()
      changed[at] = (changed[at] as number) ^ 1
      let places: readonly string[]
      try {
        const found = verifyPassport(changed, { key })
        expect(found.verdict, `byte ${at}`).toBe('fail')
        places = found.problems.map((problem) => problem.at)
      } catch (error) {
        // No passport any more: bad JSON, another format, or not in its exact form.
        expect(error, `byte ${at}`).toBeInstanceOf(InputError)
        continue
      }
      const part = partAt(passport, at)
      expect(
        places.some((place) => place.startsWith(part)),
        `byte ${at} in ${part}: ${places.join(', ')}`,
      ).toBe(true)
    }
  })
})

/** Top field that a byte of the file lies in. */
function partAt(passport: Readonly<Record<string, unknown>>, at: number): string {
  let from = 1
  for (const name of Object.keys(passport).sort()) {
    from += canonicalBytes({ [name]: passport[name] }).length - 1
    if (at < from) return name
  }
  return ''
}

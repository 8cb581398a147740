import {
  foundText,
  InputError,
  issueSentence,
  parseInput,
  readJson,
  type Verdict,
} from '@castwright/engine/working'
import { canonicalBytes, canonicalText } from './canonical.ts'
import { checkChain } from './device.ts'
import type { StoredEntry } from './entry.ts'
import { fromHex, sha256Hex, toHex } from './hash.ts'
import { verifyHead, verifySignature } from './head.ts'
import { leafHash, rootFromInclusion } from './merkle.ts'
import {
  attachmentsOf,
  digestsOf,
  PASSPORT_FORMAT,
  type Passport,
  partsOf,
  passportSchema,
} from './passport.ts'

/** One thing that does not fit, where it is. */
export interface PassportProblem {
  /** Path in the passport: `entries[3]`, `drawing.thickness`. */
  readonly at: string
  readonly expected: string
  readonly found: string
}

export interface PassportVerdict {
  /** `unknown` where everything fits but nobody said whose key it is. */
  readonly verdict: Verdict
  readonly problems: readonly PassportProblem[]
  /** What is missing for a verdict; empty where it is `pass` or `fail`. */
  readonly unknown: readonly string[]
  /** The passport, where its form could be read. */
  readonly passport: Passport | null
}

export const WHOSE_KEY = 'whose key is this? Give the key that the yard publishes'

/**
 * Checks a passport with nothing but its own bytes and the yard's published key: form, digests, inclusion proofs, signed head,
 * attachments, chains of the devices, signature. Without the key all of it is checked with the key inside, and
 * the verdict is still `unknown`: anybody can make a key.
 *
 * @throws InputError where it is not a passport: no JSON, another format, or not RFC 8785 bytes exactly; and where `key` is no key.
 */
export function verifyPassport(
  file: Uint8Array | string,
  { key }: { readonly key?: string | undefined } = {},
): PassportVerdict {
  const published = key === undefined ? undefined : readKey(key)
  const value = readExact(file)
  const formed = readForm(value)
  if ('problems' in formed) return { verdict: 'fail', problems: formed.problems, unknown: [], passport: null }
  const { passport } = formed
  const exact = [
    ...keyProblems(passport, published),
    ...headProblems(passport, published),
    ...proofProblems(passport),
    ...drawingProblems(passport),
    ...entryProblems(passport),
    ...attachmentProblems(passport),
  ]
  const problems = [
    ...exact,
    // A digest says that a part differs; where a check has said more exactly what, that is enough.
    ...digestProblems(passport, value).filter(
      ({ at }) => !exact.some((problem) => problem.at.startsWith(at)),
    ),
    ...signatureProblems(passport, value, published),
  ]
  const seen = new Set<string>()
  const once = problems.filter(({ at, expected }) => {
    const text = `${at}\u0000${expected}`
    return !seen.has(text) && seen.add(text)
  })
  if (once.length > 0) return { verdict: 'fail', problems: once, unknown: [], passport }
  if (published === undefined) return { verdict: 'unknown', problems: [], unknown: [WHOSE_KEY], passport }
  return { verdict: 'pass', problems: [], unknown: [], passport }
}

function readKey(key: string): string {
  const text = key.trim().toLowerCase()
  if (/^[0-9a-f]{64}$/.test(text)) return text
  throw new InputError([
    { path: 'key', found: foundText(key), expected: 'an Ed25519 public key: 64 hex digits' },
  ])
}

type Loose = Readonly<Record<string, unknown>>

/** The JSON of a file that is RFC 8785 bytes exactly. */
function readExact(file: Uint8Array | string): Loose {
  const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file
  const value = readJson(decode(bytes))
  const format = value !== null && typeof value === 'object' && 'format' in value ? value.format : undefined
  if (format !== PASSPORT_FORMAT) {
    throw new InputError([
      { path: 'format', found: foundText(format), expected: JSON.stringify(PASSPORT_FORMAT) },
    ])
  }
  const exact = canonicalBytes(value)
  const byte = bytes.findIndex((one, index) => one !== exact[index])
  if (byte >= 0 || bytes.length !== exact.length) {
    const at = byte >= 0 ? byte : bytes.length
    throw new InputError([
      { path: `byte ${at}`, found: near(bytes, at), expected: `${near(exact, at)}, the form of RFC 8785` },
    ])
  }
  return value as Loose
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw new InputError([{ path: '', found: 'bytes that are not UTF-8', expected: 'a passport file' }])
  }
}

function near(bytes: Uint8Array, at: number): string {
  return foundText(new TextDecoder().decode(bytes.slice(at, at + 12)))
}

function readForm(
  value: Loose,
): { readonly passport: Passport } | { readonly problems: readonly PassportProblem[] } {
  try {
    return { passport: parseInput(passportSchema, value) }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return { problems: error.issues.map(({ path, expected, found }) => ({ at: path, expected, found })) }
  }
}

function keyProblems({ yard }: Passport, published: string | undefined): PassportProblem[] {
  if (published === undefined || yard.publicKey === published) return []
  return [{ at: 'yard.publicKey', expected: published, found: yard.publicKey }]
}

/** Parts whose bytes are not those that were digested when the passport was made. */
function digestProblems(passport: Passport, value: Loose): PassportProblem[] {
  const computed = digestsOf(value)
  const { digests } = passport
  const problems: PassportProblem[] = []
  for (const path of new Set([...Object.keys(computed), ...Object.keys(digests)])) {
    const [found, expected] = [computed[path], digests[path]]
    if (found === expected) continue
    if (found === undefined) problems.push({ at: path, expected: 'this part', found: 'nothing' })
    else if (expected === undefined)
      problems.push({ at: `digests["${path}"]`, expected: found, found: 'nothing' })
    else if (signedAfter(value, { digests: { ...digests, [path]: found } }, passport)) {
      problems.push({ at: `digests["${path}"]`, expected: found, found: expected })
    } else {
      problems.push({
        at: path,
        expected: `SHA-256 ${expected}`,
        found: `SHA-256 ${found}: ${foundText(partsOf(value).get(path))}`,
      })
    }
  }
  return problems
}

/** Whether the signature fits once a part is put right: then that part is what was changed. */
function signedAfter(value: Loose, repaired: Loose, { yard, signature }: Passport): boolean {
  return verifySignature(signature, signedBytes({ ...value, ...repaired }), yard.publicKey)
}

function signedBytes(value: Loose): Uint8Array {
  const { signature: _signature, ...rest } = value
  return canonicalBytes(rest)
}

function headProblems(passport: Passport, published: string | undefined): PassportProblem[] {
  const { head, yard } = passport
  const problems: PassportProblem[] = []
  if (head.yard !== yard.log) problems.push({ at: 'head.yard', expected: yard.log, found: head.yard })
  if (!verifyHead(head, published ?? yard.publicKey)) {
    problems.push({
      at: 'head.signature',
      expected: `a signature by ${published ?? yard.publicKey} over this head`,
      found: `${head.signature.slice(0, 16)}…, which does not fit`,
    })
  }
  return problems
}

function proofProblems(passport: Passport): PassportProblem[] {
  const { entries, proofs, head } = passport
  const problems: PassportProblem[] = []
  if (proofs.length !== entries.length) {
    problems.push({
      at: 'proofs',
      expected: `${entries.length} proofs, one an entry`,
      found: `${proofs.length}`,
    })
  }
  let before = -1
  for (const [place, entry] of entries.entries()) {
    const at = `entries[${place}]`
    if (entry.index <= before) {
      problems.push({ at: `${at}.index`, expected: `above ${before}`, found: `${entry.index}` })
    }
    before = entry.index
    if (entry.yard !== head.yard) problems.push({ at: `${at}.yard`, expected: head.yard, found: entry.yard })
    const proof = proofs[place]
    if (proof === undefined) continue
    if (proof.index !== entry.index) {
      problems.push({ at: `proofs[${place}].index`, expected: `${entry.index}`, found: `${proof.index}` })
    }
    const root = rootFromInclusion({
      index: entry.index,
      size: head.size,
      leaf: leafHash(canonicalBytes(entry)),
      proof: proof.path.map(fromHex),
    })
    const found =
      root === null
        ? `a path of ${proof.path.length} that cannot lead to ${head.size} leaves`
        : `root ${toHex(root)}`
    if (root === null || toHex(root) !== head.root) {
      // The entry or its proof was changed: the digests tell which; where neither differs, the entry is named.
      const changed = changedPart(passport, place)
      problems.push({
        at: changed,
        expected: `root ${head.root}, by its inclusion proof`,
        found: `${found}; ${nameOf(entry)}`,
      })
    }
  }
  return problems
}

function changedPart({ entries, proofs, digests, head }: Passport, place: number): string {
  const differs = (path: string, value: unknown) => digests[path] !== sha256Hex(canonicalBytes(value))
  if (differs(`entries[${place}]`, entries[place])) return `entries[${place}]`
  if (differs(`proofs[${place}]`, proofs[place])) return `proofs[${place}]`
  return differs('head', head) ? 'head' : `entries[${place}]`
}

function nameOf(entry: StoredEntry): string {
  const what = [entry.kind, entry.step, entry.check].filter((word) => word !== undefined).join(' ')
  return `entry ${entry.id} (${what})`
}

/** The drawing must be the one that the log holds for that revision. */
function drawingProblems({ drawing, panel, entries }: Passport): PassportProblem[] {
  const id = `${panel.job}/${panel.mark}`
  const problems: PassportProblem[] = []
  if (drawing.mark !== panel.mark)
    problems.push({ at: 'panel.mark', expected: drawing.mark, found: panel.mark })
  const logged = entries.filter(
    ({ kind, subject, revision }) =>
      kind === 'drawing' && subject.id === id && (revision ?? null) === panel.revision,
  )
  const last = logged.at(-1)
  if (last === undefined) {
    return [
      ...problems,
      { at: 'drawing', expected: `an entry with revision ${panel.revision} of ${id}`, found: 'none' },
    ]
  }
  return [...problems, ...differences('drawing', last.value, drawing)]
}

function differences(at: string, expected: unknown, found: unknown): PassportProblem[] {
  if (isTree(expected) && isTree(found) && Array.isArray(expected) === Array.isArray(found)) {
    const keys = new Set([...Object.keys(expected), ...Object.keys(found)])
    return [...keys].flatMap((key) =>
      differences(Array.isArray(expected) ? `${at}[${key}]` : `${at}.${key}`, expected[key], found[key]),
    )
  }
  const texts = [expected, found].map((value) => (value === undefined ? 'nothing' : canonicalText(value)))
  return texts[0] === texts[1] ? [] : [{ at, expected: texts[0] as string, found: texts[1] as string }]
}

function isTree(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object'
}

function entryProblems({ entries }: Passport): PassportProblem[] {
  const place = new Map(entries.map(({ id }, index) => [id, index]))
  const rests = entries.flatMap(({ kind, rests: ids }, index) =>
    kind !== 'opening'
      ? []
      : (ids ?? []).flatMap((id, at) =>
          place.has(id)
            ? []
            : [{ at: `entries[${index}].rests[${at}]`, expected: 'an entry of this passport', found: id }],
        ),
  )
  const chains = checkChain(entries).map(({ entries: [id], text }) => ({
    at: `entries[${place.get(id ?? '') ?? 0}].device.previous`,
    expected: 'the hash of the device’s entry before it',
    found: text,
  }))
  return [...rests, ...chains]
}

function attachmentProblems({ attachments, entries }: Passport): PassportProblem[] {
  return differences('attachments', attachmentsOf(entries), attachments)
}

function signatureProblems(
  passport: Passport,
  value: Loose,
  published: string | undefined,
): PassportProblem[] {
  const { signature, yard } = passport
  const key = published ?? yard.publicKey
  if (verifySignature(signature, signedBytes(value), key)) return []
  return [
    {
      at: 'signature',
      expected: `a signature by ${key} over the rest`,
      found: `${signature.slice(0, 16)}…, which does not fit`,
    },
  ]
}

/** Problems as lines, for screen and shell alike. */
export function problemText({ at, expected, found }: PassportProblem): string {
  return issueSentence({ path: at, found, expected })
}

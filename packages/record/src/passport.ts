import { drawingSchema } from '@castwright/engine/panel'
import * as z from 'zod'
import { canonicalBytes } from './canonical.ts'
import { attachmentSchema, type StoredEntry, storedEntrySchema } from './entry.ts'
import { type Hash, sha256Hex, sha256Of, toHex } from './hash.ts'
import { type Sign, type SignedHead, signedHeadSchema } from './head.ts'
import { sortFor } from './passport-entries.ts'

export const PASSPORT_FORMAT = 'castwright.passport/1'

const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hex')
const word = z.string().min(1).max(200)

export const passportSchema = z.strictObject({
  format: z.literal(PASSPORT_FORMAT),
  /** Name of the yard's log and its public key, Ed25519, hex. Whose key it is, the yard says by another way. */
  yard: z.strictObject({ log: word, publicKey: sha256 }),
  panel: z.strictObject({ job: word, mark: word, revision: z.string().max(40).nullable() }),
  /** When it was made, UTC. */
  made: z.iso.datetime({ offset: false, precision: 3 }),
  drawing: drawingSchema,
  /** Figures of the plan as they were computed when it was made, with the version that computed them. */
  plan: z.strictObject({
    engine: word,
    family: word,
    editions: z.array(word),
    figures: z.record(word, z.json()),
  }),
  /** Entries of the panel and those that they rest on, in order of the log. */
  entries: z.array(storedEntrySchema),
  /** For each entry its RFC 9162 inclusion proof, lowest sibling first, hex. */
  proofs: z.array(z.strictObject({ index: z.number().int().min(0), path: z.array(sha256) })),
  head: signedHeadSchema,
  /** Every attachment that the entries name, by hash, in order of the hashes. */
  attachments: z.array(attachmentSchema),
  /** SHA-256 of the RFC 8785 bytes of each part, so that a change is found where it is. */
  digests: z.record(z.string(), sha256),
  /** Ed25519 by the yard's key over the RFC 8785 bytes of all the rest, hex. */
  signature: z.string().regex(/^[0-9a-f]{128}$/, 'an Ed25519 signature in hex'),
})

export type Passport = z.output<typeof passportSchema>
export type PassportPlan = Passport['plan']

export interface MakePassportInput {
  readonly publicKey: string
  readonly panel: Passport['panel']
  readonly drawing: Passport['drawing']
  readonly plan: PassportPlan
  /** From `passportEntries`. */
  readonly entries: readonly StoredEntry[]
  /** Inclusion proof of an entry in the tree of `head`, hex, by index of the entry. */
  readonly proofs: ReadonlyMap<number, readonly string[]>
  readonly head: SignedHead
  /** UTC with milliseconds. */
  readonly made: string
  readonly sign: Sign
}

/** The passport file: RFC 8785 bytes, signed. @throws Error where an entry has no proof. */
export function makePassport(input: MakePassportInput): Uint8Array {
  const entries = sortFor(input.entries)
  const unsealed = {
    format: PASSPORT_FORMAT,
    yard: { log: input.head.yard, publicKey: input.publicKey },
    panel: input.panel,
    made: input.made,
    drawing: input.drawing,
    plan: input.plan,
    entries,
    proofs: entries.map(({ index }) => {
      const path = input.proofs.get(index)
      if (path === undefined) throw new Error(`no inclusion proof of entry ${index}`)
      return { index, path: [...path] }
    }),
    head: input.head,
    attachments: attachmentsOf(entries),
  }
  const unsigned = { ...unsealed, digests: digestsOf(unsealed) }
  return canonicalBytes({ ...unsigned, signature: toHex(input.sign(canonicalBytes(unsigned))) })
}

/** Attachments that the entries name, each hash once, in order of the hashes. */
export function attachmentsOf(entries: readonly Pick<StoredEntry, 'attachments'>[]): Passport['attachments'] {
  const byHash = new Map(
    entries.flatMap(({ attachments }) => attachments ?? []).map((one) => [one.sha256, one]),
  )
  return [...byHash.values()].sort((a, b) => (a.sha256 < b.sha256 ? -1 : 1))
}

/**
 * The parts that have a digest of their own, by path. Each entry, each proof and each figure of the plan is a part, so that one
 * changed byte is named to that.
 */
export function partsOf(passport: Readonly<Record<string, unknown>>): Map<string, unknown> {
  const parts = new Map<string, unknown>()
  for (const [name, part] of Object.entries(passport)) {
    if (name === 'format' || name === 'digests' || name === 'signature') continue
    for (const [path, value] of splitPart(name, part)) parts.set(path, value)
  }
  return parts
}

export function digestsOf(
  passport: Readonly<Record<string, unknown>>,
  hash: Hash = sha256Of,
): Record<string, string> {
  return Object.fromEntries(
    [...partsOf(passport)].map(([path, value]) => [path, sha256Hex(canonicalBytes(value), hash)]),
  )
}

function splitPart(path: string, part: unknown): [string, unknown][] {
  if (Array.isArray(part)) return part.map((item, index) => [`${path}[${index}]`, item])
  if ((path !== 'plan' && path !== 'plan.figures' && path !== 'drawing') || !isRecord(part))
    return [[path, part]]
  return Object.entries(part).flatMap(([name, value]) =>
    name === 'figures'
      ? splitPart(`${path}.${name}`, value)
      : [[`${path}.${name}`, value] as [string, unknown]],
  )
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value)
}

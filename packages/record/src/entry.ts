import { STEP_IDS } from '@castwright/engine/steps'
import * as z from 'zod'

export const ENTRY_FORMAT = 'castwright.entry/1'

/** Crockford base 32, 26 characters, made on the device. */
const ulid = z.string().regex(/^[0-7][0-9A-HJKMNP-TV-Z]{25}$/, 'a ULID')
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hex')
const instant = z.iso.datetime({ offset: false, precision: 3 })
/** Ids and names: no control characters, since databases and screens would cut or hide them. */
const word = z
  .string()
  .min(1)
  .max(200)
  .refine((text) => !/\p{Control}|\p{Surrogate}/u.test(text), 'text without control characters')

export const SUBJECT_KINDS = [
  'panel',
  'bundle',
  'bar',
  'truck',
  'bed',
  'specimen',
  'gear',
  'yard',
  'job',
] as const
export const ROLES = ['lead', 'engineer', 'floor', 'viewer'] as const
export type Role = (typeof ROLES)[number]

/**
 * What an entry says. The value's shape by kind is in `docs/formats.md` and in `values.ts`.
 *
 * `value`: a check or an asked item, seen or measured. `close`: a step that is not a hold is finished. `request`: a person
 * signed to open a hold. `opening`: the hold opened; made by the record only, lists what it rested on. `decision`: a
 * fail or not-known accepted by name and reason. `design`: an engineer confirms the lifting design of a revision.
 * `difference`: an engineer signs that our own result of the lift fails or is not known where the confirmed lifting design holds.
 * `defect`, `disposition`, `inspection`: found wrong, decided, looked at again. `correction`: a new value for an
 * earlier entry. `drawing`, `yard`, `job`: what was brought in. `cast`, `docket`, `temperature`, `specimen`, `weather`: the
 * pour and its night. `docket-decision`: a load is accepted by name and reason, or sent back. `specimen-set`: specimens made of a
 * load, and when each is to be tested. `gear`: an inspection date. `limit`: a number with its source, entered by an engineer for the yard.
 * `bundle`: steel as it came; `release`: a person accepts it, keeps it apart or sends it back; `rack`: offcuts counted into the rack;
 * `used`: its steel went into a panel; `cut-plan`: a cutting plan handed to the shear; `cut`: bars that were cut.
 * `place`: where a panel stands. `photo`: pictures alone. `passport`: a passport was handed over.
 */
export const ENTRY_KINDS = [
  'value',
  'close',
  'request',
  'opening',
  'decision',
  'design',
  'difference',
  'defect',
  'disposition',
  'inspection',
  'correction',
  'drawing',
  'yard',
  'job',
  'cast',
  'docket',
  'docket-decision',
  'temperature',
  'specimen',
  'specimen-set',
  'weather',
  'gear',
  'limit',
  'place',
  'photo',
  'bundle',
  'release',
  'rack',
  'used',
  'cut-plan',
  'cut',
  'passport',
] as const
export type EntryKind = (typeof ENTRY_KINDS)[number]

export const attachmentSchema = z.strictObject({
  sha256,
  name: z.string().min(1).max(200),
  type: z.string().min(1).max(100),
  size: z.number().int().min(0),
})

export const entrySchema = z.strictObject({
  format: z.literal(ENTRY_FORMAT),
  id: ulid,
  yard: word,
  kind: z.enum(ENTRY_KINDS),
  /** `id` of a panel is `<job>/<mark>`. */
  subject: z.strictObject({ kind: z.enum(SUBJECT_KINDS), id: word }),
  step: z.enum(STEP_IDS).optional(),
  /** Id of the check or asked item. */
  check: word.optional(),
  value: z.json(),
  unit: z.string().max(40).optional(),
  /** The verdict as judged when it was seen, with the limit it was held against. */
  verdict: z.enum(['pass', 'fail', 'unknown']).optional(),
  limit: z.union([z.string().max(200), z.number(), z.null()]).optional(),
  source: z.strictObject({ standard: z.string(), clause: z.string(), status: z.string() }).optional(),
  /** Drawing revision and code edition that judged it. */
  revision: z.string().max(40).optional(),
  edition: z.string().max(200).optional(),
  reason: z.string().max(4000).optional(),
  /** Id of the entry that this one corrects or is about. */
  about: ulid.optional(),
  /** For `opening`: ids of the entries that it rested on. */
  rests: z.array(ulid).max(20_000).optional(),
  attachments: z.array(attachmentSchema).max(50).optional(),
  person: z.strictObject({ id: word, name: word, role: z.enum(ROLES) }),
  device: z.strictObject({
    id: word,
    /** Counts this device's entries from 1, without gaps. */
    counter: z.number().int().positive(),
    /** SHA-256 of the RFC 8785 bytes of the device's entry before this one; null for its first. */
    previous: sha256.nullable(),
    /** Device clock less server clock at last contact, ms; null where never compared. */
    clockOffset: z.number().int().nullable(),
  }),
  /** When it was seen, UTC with milliseconds, by the device's clock. */
  seen: instant,
})

/** A fact as a device makes it. Never edited, never removed. */
export type Entry = z.output<typeof entrySchema>
export type Attachment = z.output<typeof attachmentSchema>
export type Subject = Entry['subject']
export type Person = Entry['person']

export const storedEntrySchema = entrySchema.extend({
  /** When the record had it durably, UTC with milliseconds. */
  stored: instant,
  /** Place in the yard's log, from 0: the leaf index. */
  index: z.number().int().min(0),
})

/** An entry in the record: the leaf of the Merkle tree is its RFC 8785 bytes, time stored and index included. */
export type StoredEntry = z.output<typeof storedEntrySchema>

/** Subject of a panel. */
export function panelSubject(job: string, mark: string): Subject {
  return { kind: 'panel', id: `${job}/${mark}` }
}

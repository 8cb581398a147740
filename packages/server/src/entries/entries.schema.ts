import { entrySchema, storedEntrySchema } from '@castwright/record'
import { z } from '@hono/zod-openapi'
import { typedPinSchema } from '../people/pin.ts'
import { issueSchema } from '../problem.ts'
import { headSchema } from '../proof/proof.route.ts'
import { anyJson } from '../router.ts'

/** The forms as the document shows them; entries that come in are read one by one with `parseEntry`. */
export const entryForm = entrySchema.extend({ value: anyJson }).openapi('Entry')
export const storedForm = storedEntrySchema.extend({ value: anyJson }).openapi('StoredEntry')

/** One that does not fit must not refuse the others, so the body takes anything here. */
const sentEntry = z.unknown().openapi({ $ref: '#/components/schemas/Entry' } as never)

export const MOST_ENTRIES = 1000

const now = z.iso.datetime({ precision: 3 }).openapi({ description: 'Server time, UTC' })

export const pageSchema = z
  .strictObject({ entries: z.array(storedForm), size: z.number().int(), head: headSchema, now })
  .openapi('EntryPage')

export const pageQuery = z.strictObject({
  after: z
    .string()
    .regex(/^(-1|\d{1,15})$/, 'an index, or -1')
    .default('-1')
    .transform(Number)
    .openapi({
      type: 'integer',
      minimum: -1,
      default: -1,
      description: 'Index of the last entry that you have',
    }),
  limit: z
    .string()
    .regex(/^[1-9]\d{0,3}$/, 'a whole number from 1 to 9999')
    .default('1000')
    .transform((text) => Math.min(Number(text), 5000))
    .openapi({ type: 'integer', minimum: 1, maximum: 5000, default: 1000 }),
})

export const sendSchema = z
  .strictObject({ entries: z.array(sentEntry).min(1).max(MOST_ENTRIES) })
  .openapi('Sending')

export const resultSchema = z
  .strictObject({
    id: z.string(),
    status: z.enum(['stored', 'known', 'refused']),
    index: z.number().int().optional(),
    stored: storedForm.optional(),
    chain: z
      .enum(['follows', 'gap', 'fork'])
      .optional()
      .openapi({ description: "Whether it follows the device's entry before it" }),
    reason: z.string().optional(),
    issues: z.array(issueSchema).optional(),
    opened: z.boolean().optional().openapi({ description: 'Of a request: the hold is open' }),
    missing: z
      .array(z.string())
      .optional()
      .openapi({ description: 'Of a request or a refused close: what it still waits for' }),
  })
  .openapi('EntryResult')

export const sentSchema = z
  .strictObject({ results: z.array(resultSchema), size: z.number().int(), head: headSchema, now })
  .openapi('Sent')

export const signSchema = z.strictObject({ entry: sentEntry, pin: typedPinSchema }).openapi('Signing')

export const signedSchema = z
  .strictObject({
    request: z.number().int().openapi({ description: 'Index of the request in the log' }),
    opened: z.boolean(),
    opening: storedForm.optional(),
    missing: z.array(z.string()),
  })
  .openapi('Signed')

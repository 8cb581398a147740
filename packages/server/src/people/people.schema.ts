import { ROLES } from '@castwright/record'
import { z } from '@hono/zod-openapi'
import { pinSchema, typedPinSchema } from './pin.ts'

const id = z.string().min(1).max(200)
const name = z.string().trim().min(1).max(120)
const role = z.enum(ROLES)

export const personSchema = z.strictObject({ id, name: z.string(), role }).openapi('Person')

export const sessionSchema = z
  .strictObject({
    person: personSchema.nullable(),
    device: z.null(),
    yard: z.string().nullable().openapi({ description: 'Name of the log: `yard` of every entry' }),
    now: z.iso.datetime({ precision: 3 }).openapi({ description: 'Server time, UTC' }),
    demo: z.boolean(),
    needsSetup: z.boolean().openapi({ description: 'No yard has been brought in yet' }),
  })
  .openapi('Session')

export const signInSchema = z.strictObject({ person: id, pin: typedPinSchema }).openapi('SignIn')

export const accountSchema = z
  .strictObject({ id, name: z.string(), role, active: z.boolean() })
  .openapi('Account')

export const newPersonSchema = z.strictObject({ name, role, pin: pinSchema }).openapi('NewPerson')

export const personChangeSchema = z
  .strictObject({
    pin: pinSchema.optional(),
    active: z.boolean().optional(),
    current: typedPinSchema
      .optional()
      .openapi({ description: 'PIN of the person who changes; needed for a new PIN' }),
  })
  .openapi('PersonChange')

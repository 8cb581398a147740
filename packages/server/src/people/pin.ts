import { randomBytes, randomInt } from 'node:crypto'
import { z } from '@hono/zod-openapi'
import { hash, verify } from '@node-rs/argon2'

/** Argon2id (2 in the library's list), 19 MiB, two passes, one lane: the least of the usual recommendations, so that a small office computer keeps up. */
const COST = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const

/** Digits only: it is typed with gloves on a phone. Guessing is held by the limit on tries. */
export const pinSchema = z
  .string()
  .regex(/^\d{6,12}$/, 'a PIN of 6 to 12 digits')
  .openapi({ description: 'PIN of 6 to 12 digits', example: '<six digits>' })

/** What is typed at a sign-in: any short text, so that the answer does not tell the form of a PIN. */
export const typedPinSchema = z.string().min(1).max(64)

export function hashPin(pin: string): Promise<string> {
  return hash(pin, COST)
}

export async function isPin(hashed: string, pin: string): Promise<boolean> {
  try {
    return await verify(hashed, pin)
  } catch {
    // A hash that cannot be read opens nothing.
    return false
  }
}

let nobody: Promise<string> | undefined

/** Takes as long as a real check, so that the time does not tell whether the person exists. Never true. */
export async function isNobodysPin(pin: string): Promise<false> {
  nobody ??= hashPin(randomBytes(16).toString('hex'))
  await isPin(await nobody, pin)
  return false
}

/** A PIN of `digits` digits, each drawn by itself. */
export function randomPin(digits = 8): string {
  return Array.from({ length: digits }, () => String(randomInt(10))).join('')
}

import { createHash, randomBytes } from 'node:crypto'
import type { People } from '@castwright/record/store'
import type { Clock } from '../door/clock.ts'
import type { SignedIn } from '../env.ts'

export const SESSION_COOKIE = 'castwright_session'
/** A sign-in holds two weeks; then the PIN is asked for again. */
export const SESSION_SECONDS = 14 * 24 * 3600

const TOKEN = /^[A-Za-z0-9_-]{43}$/

export interface SessionsInput {
  readonly people: People
  readonly clock: Clock
}

/** Starts a session. The token goes to the cookie and is kept here only as a hash. */
export async function startSession({ people, clock }: SessionsInput, person: string): Promise<string> {
  const token = randomBytes(32).toString('base64url')
  const now = clock()
  await people.sweep(new Date(now).toISOString())
  await people.signIn({
    tokenHash: hashOf(token),
    person,
    created: new Date(now).toISOString(),
    expires: new Date(now + SESSION_SECONDS * 1000).toISOString(),
  })
  return token
}

/** Whose session a cookie names; null where it has ended or the account is closed. */
export async function sessionOf(
  { people, clock }: SessionsInput,
  token: string | undefined,
): Promise<SignedIn | null> {
  if (token === undefined || !TOKEN.test(token)) return null
  const session = await people.session(hashOf(token), new Date(clock()).toISOString())
  const account = session === null ? null : await people.find(session.person)
  if (session === null || account === null || !account.active) return null
  return {
    session: session.tokenHash,
    person: { id: account.id, name: account.name, role: account.role },
  }
}

function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}

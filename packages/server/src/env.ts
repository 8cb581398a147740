import type { Person } from '@castwright/record'
import type { Logger } from '@castwright/record/store'
import type { HttpBindings } from '@hono/node-server'
import type { Context } from 'hono'
import { Problem } from './problem.ts'

/** The person of the cookie and the session that it names. */
export interface SignedIn {
  readonly session: string
  readonly person: Person
}

export interface ServerEnv {
  /** Absent where the app is asked in process. */
  Bindings: Partial<HttpBindings>
  /** `logger`: whose key opened the one address that takes keys. */
  Variables: { signedIn: SignedIn | null; logger?: Logger }
}

/** @throws Problem 401 where nobody is signed in. */
export function personOf(c: Context<ServerEnv>): Person {
  const signedIn = c.get('signedIn')
  if (signedIn === null) throw new Problem('not-signed-in', 'Sign in first.')
  return signedIn.person
}

/** @throws Problem 401 or 403. */
export function entitledPerson(c: Context<ServerEnv>, roles: readonly Person['role'][], act: string): Person {
  const person = personOf(c)
  if (!roles.includes(person.role)) {
    throw new Problem(
      'not-entitled',
      `${act} is for ${roles.join(' or ')}; ${person.name} is ${person.role}.`,
    )
  }
  return person
}

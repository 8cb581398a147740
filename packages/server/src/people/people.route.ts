import type { Account, Store } from '@castwright/record/store'
import { createRoute, z } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { deleteCookie, setCookie } from 'hono/cookie'
import type { Clock } from '../door/clock.ts'
import { entitledPerson, personOf, type ServerEnv } from '../env.ts'
import { Problem } from '../problem.ts'
import { jsonAnswer, jsonBody, type Router, refusals, router } from '../router.ts'
import {
  accountSchema,
  newPersonSchema,
  personChangeSchema,
  sessionSchema,
  signInSchema,
} from './people.schema.ts'
import { addPerson, changePerson } from './people.service.ts'
import type { PinCheck } from './pin-check.ts'
import { SESSION_COOKIE, SESSION_SECONDS, startSession } from './sessions.service.ts'

export interface PeopleRoutesInput {
  readonly store: Store
  readonly clock: Clock
  readonly pins: PinCheck
  readonly secure: boolean
  readonly demo: boolean
  readonly addressOf: (c: Context<ServerEnv>) => string
  readonly hasYard: () => Promise<boolean>
}

const getSession = createRoute({
  method: 'get',
  path: '/api/session',
  summary: 'Who is signed in, and the server time',
  responses: { 200: jsonAnswer(sessionSchema, 'Also when nobody is'), ...refusals() },
})

const postSession = createRoute({
  method: 'post',
  path: '/api/session',
  summary: 'Sign in with a PIN',
  request: { body: jsonBody(signInSchema) },
  responses: {
    200: jsonAnswer(sessionSchema, 'Signed in; the cookie is set'),
    ...refusals('bad-request', 'wrong-pin', 'wrong-origin', 'wrong-type', 'wrong-input', 'too-many-tries'),
  },
})

const deleteSession = createRoute({
  method: 'delete',
  path: '/api/session',
  summary: 'Sign out',
  responses: { 200: jsonAnswer(sessionSchema, 'Signed out'), ...refusals('wrong-origin') },
})

const getPeople = createRoute({
  method: 'get',
  path: '/api/people',
  summary: 'Names for the sign-in list; needs no session',
  responses: { 200: jsonAnswer(z.array(accountSchema), 'In order of names'), ...refusals() },
})

const postPeople = createRoute({
  method: 'post',
  path: '/api/people',
  summary: 'Add a person',
  request: { body: jsonBody(newPersonSchema) },
  responses: {
    201: jsonAnswer(accountSchema, 'Added'),
    ...refusals(
      'bad-request',
      'not-signed-in',
      'not-entitled',
      'wrong-origin',
      'wrong-type',
      'wrong-input',
      'conflict',
    ),
  },
})

const patchPerson = createRoute({
  method: 'patch',
  path: '/api/people/{id}',
  summary: 'Set a PIN, close or open an account',
  request: {
    params: z.strictObject({ id: z.string().min(1).max(200) }),
    body: jsonBody(personChangeSchema),
  },
  responses: {
    200: jsonAnswer(accountSchema, 'Changed'),
    ...refusals(
      'bad-request',
      'not-signed-in',
      'wrong-pin',
      'not-entitled',
      'not-found',
      'conflict',
      'wrong-origin',
      'wrong-type',
      'wrong-input',
      'too-many-tries',
    ),
  },
})

export function peopleRoutes(input: PeopleRoutesInput): Router {
  const { store, clock, pins } = input

  async function sessionBody(person: Account | null): Promise<z.output<typeof sessionSchema>> {
    return {
      person: person === null ? null : { id: person.id, name: person.name, role: person.role },
      device: null,
      yard: store.yard,
      now: new Date(clock()).toISOString(),
      demo: input.demo,
      needsSetup: !(await input.hasYard()),
    }
  }

  async function start(c: Context<ServerEnv>, person: string): Promise<void> {
    setCookie(c, SESSION_COOKIE, await startSession({ people: store.people, clock }, person), {
      httpOnly: true,
      sameSite: 'Strict',
      secure: input.secure,
      path: '/',
      maxAge: SESSION_SECONDS,
    })
  }

  return router()
    .openapi(getSession, async (c) => {
      const signedIn = c.get('signedIn')
      return c.json(await sessionBody(signedIn && (await store.people.find(signedIn.person.id))), 200)
    })
    .openapi(postSession, async (c) => {
      const { person, pin } = c.req.valid('json')
      const account = await pins.check({ person, pin, address: input.addressOf(c) })
      const before = c.get('signedIn')
      if (before !== null) await store.people.signOut(before.session)
      await start(c, account.id)
      return c.json(await sessionBody(account), 200)
    })
    .openapi(deleteSession, async (c) => {
      const signedIn = c.get('signedIn')
      if (signedIn !== null) await store.people.signOut(signedIn.session)
      deleteCookie(c, SESSION_COOKIE, { path: '/', secure: input.secure, sameSite: 'Strict', httpOnly: true })
      return c.json(await sessionBody(null), 200)
    })
    .openapi(getPeople, async (c) => c.json((await store.people.list()).map(shown), 200))
    .openapi(postPeople, async (c) => {
      const by = entitledPerson(c, ['lead', 'engineer'], 'Adding people')
      return c.json(shown(await addPerson(store.people, by, c.req.valid('json'))), 201)
    })
    .openapi(patchPerson, async (c) => {
      const by = personOf(c)
      const { id } = c.req.valid('param')
      const { pin, active, current } = c.req.valid('json')
      if (pin !== undefined) {
        if (current === undefined) {
          throw new Problem('wrong-input', 'A new PIN needs the PIN of the person who sets it.', {
            issues: [{ path: 'current', found: 'nothing', expected: 'your own PIN' }],
          })
        }
        await pins.check({ person: by.id, pin: current, address: input.addressOf(c) })
      }
      const account = await changePerson(store.people, by, id, { pin, active })
      // Their other devices are signed out; this one stays.
      if (pin !== undefined && id === by.id) await start(c, id)
      return c.json(shown(account), 200)
    })
}

function shown({ id, name, role, active }: Account): z.output<typeof accountSchema> {
  return { id, name, role, active }
}

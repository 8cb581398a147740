import { InputError } from '@castwright/engine/working'
import type { Person, Role } from '@castwright/record'
import type { Account, People } from '@castwright/record/store'
import { Problem } from '../problem.ts'
import { hashPin, randomPin } from './pin.ts'

export interface NewPerson {
  readonly name: string
  readonly role: Role
  readonly pin: string
}

/** Somebody with a PIN as it was made, to be told once and never shown again. */
export interface FirstSignIn {
  readonly id: string
  readonly name: string
  readonly role: Role
  readonly pin: string
}

const ANYONE_MAKES: readonly Role[] = ['floor', 'viewer']

/** Adds an account. @throws Problem 403 where the one who asks may not make that role. */
export async function addPerson(
  people: People,
  by: Person,
  { name, role, pin }: NewPerson,
): Promise<Account> {
  if (by.role !== 'lead' && !(by.role === 'engineer' && ANYONE_MAKES.includes(role))) {
    throw new Problem(
      'not-entitled',
      `A lead makes a ${role}${ANYONE_MAKES.includes(role) ? ', or an engineer' : ''}; ${by.name} is ${by.role}.`,
    )
  }
  const pinHash = await hashPin(pin)
  for (let number = 1; number <= 1000; number++) {
    const id = number === 1 ? slug(name) : `${slug(name)}-${number}`
    const account: Account = { id, name, role, pinHash, active: true }
    if (await people.add(account)) return account
  }
  throw new Problem('conflict', 'A thousand people of that name are here already.')
}

export interface PersonChange {
  readonly pin?: string | undefined
  readonly active?: boolean | undefined
}

/**
 * Sets a PIN or closes and opens an account. Ends that person's sessions.
 *
 * @throws Problem 403 for somebody else's without being lead, 404, 409 where no lead would be left.
 */
export async function changePerson(
  people: People,
  by: Person,
  id: string,
  change: PersonChange,
): Promise<Account> {
  const account = await people.find(id)
  if (account === null) throw new Problem('not-found', `No person ${id} is here.`)
  if (by.role !== 'lead' && (by.id !== id || change.active !== undefined)) {
    throw new Problem('not-entitled', 'Your own PIN is yours to change; the rest is for a lead.')
  }
  if (change.active === false && account.role === 'lead') {
    const others = (await people.list()).filter((one) => one.role === 'lead' && one.active && one.id !== id)
    if (others.length === 0) throw new Problem('conflict', 'This is the last lead; somebody must stay.')
  }
  await people.change(id, {
    ...(change.pin === undefined ? {} : { pinHash: await hashPin(change.pin) }),
    ...(change.active === undefined ? {} : { active: change.active }),
  })
  if (change.pin !== undefined || change.active === false) await people.signOutAll(id)
  return { ...account, ...(change.active === undefined ? {} : { active: change.active }) }
}

/**
 * Makes the first accounts of a data folder, each with a PIN at random, and gives them back so that they can be told
 * once. Nothing where somebody is here already.
 */
export async function makeFirstPeople(
  people: People,
  first: readonly { readonly id: string; readonly name: string; readonly role: Role }[],
): Promise<FirstSignIn[]> {
  if ((await people.list()).length > 0) return []
  return Promise.all(
    first.map(async ({ id, name, role }) => {
      const pin = randomPin()
      await people.add({ id, name, role, pinHash: await hashPin(pin), active: true })
      return { id, name, role, pin }
    }),
  )
}

/**
 * Gives a person a new PIN at random, for whoever holds the computer of the yard: the way back when a last lead has lost
 * theirs. Ends their sessions and opens the account again.
 *
 * @throws InputError where there is no such person.
 */
export async function resetPin(people: People, id: string): Promise<FirstSignIn> {
  const account = await people.find(id)
  if (account === null) {
    const known = (await people.list()).map((one) => one.id).join(', ')
    throw new InputError([{ path: '--reset-pin', found: id, expected: `one of ${known}` }])
  }
  const pin = randomPin()
  await people.change(id, { pinHash: await hashPin(pin), active: true })
  await people.signOutAll(id)
  return { id, name: account.name, role: account.role, pin }
}

function slug(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
  return plain === '' ? 'person' : plain
}

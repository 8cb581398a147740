import type { Role } from '@castwright/record'

export interface DemoPerson {
  readonly id: string
  readonly name: string
  readonly role: Role
}

/** The invented crew. PINs are made by the server; none is written here. */
export function demoPeople(): DemoPerson[] {
  return [
    { id: 'orla', name: 'Orla Marsh', role: 'lead' },
    { id: 'tom', name: 'Tom Pike', role: 'lead' },
    { id: 'ines', name: 'Ines Calder', role: 'engineer' },
    { id: 'jo', name: 'Jo Thatcher', role: 'floor' },
    { id: 'sam', name: 'Sam Reddy', role: 'floor' },
    { id: 'lena', name: 'Lena Frost', role: 'floor' },
    { id: 'guest', name: 'Site visitor', role: 'viewer' },
  ]
}

/** @throws Error where nobody of that id is in the crew. */
export function personOf(id: string): DemoPerson {
  const person = demoPeople().find((each) => each.id === id)
  if (person === undefined) throw new Error(`found no person ${id}`)
  return person
}

import { type EntryKind, entitledTo, type Role } from '@castwright/record'

/** Whether somebody of this role may make entries of this kind at all. The record decides again. */
export function mayDo(role: Role, kind: EntryKind): boolean {
  return entitledTo(kind).includes(role)
}

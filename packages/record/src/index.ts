export {
  type Attachment,
  attachmentSchema,
  ENTRY_FORMAT,
  ENTRY_KINDS,
  type Entry,
  type EntryKind,
  entrySchema,
  type Person,
  panelSubject,
  ROLES,
  type Role,
  type StoredEntry,
  SUBJECT_KINDS,
  type Subject,
  storedEntrySchema,
} from './entry.ts'
export { CLOCK_TOLERANCE, type Flag } from './flags.ts'
export { createFold, type Fold, fold, type PersonSeen, type YardState } from './fold.ts'
export { type Docket, type FoldedPanel, foldPanel, type Photo } from './fold-panel.ts'
export type { JobFacts, WeatherReading } from './fold-yard.ts'
export { type AnyEntry, arrivedAfter, compareEntries, isStored } from './order.ts'
export { entitledTo, mayMake, mayOpen } from './roles.ts'
export { isValueOf, panelOfSubject, parseEntry, type ValueOf, valueSchemas } from './values.ts'

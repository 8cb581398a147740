import type { Entry, EntryKind, Role } from './entry.ts'

const EVERYONE_ON_THE_FLOOR: readonly Role[] = ['floor', 'lead', 'engineer']
const LEAD_OR_ENGINEER: readonly Role[] = ['lead', 'engineer']

/** Who may make which kind of entry. A viewer reads and makes none; an opening is made by the record alone. */
const ENTITLED: Readonly<Record<EntryKind, readonly Role[]>> = {
  value: EVERYONE_ON_THE_FLOOR,
  close: EVERYONE_ON_THE_FLOOR,
  request: ['lead'],
  opening: [],
  decision: LEAD_OR_ENGINEER,
  design: ['engineer'],
  difference: ['engineer'],
  defect: EVERYONE_ON_THE_FLOOR,
  disposition: LEAD_OR_ENGINEER,
  inspection: EVERYONE_ON_THE_FLOOR,
  correction: EVERYONE_ON_THE_FLOOR,
  drawing: LEAD_OR_ENGINEER,
  yard: LEAD_OR_ENGINEER,
  job: LEAD_OR_ENGINEER,
  cast: EVERYONE_ON_THE_FLOOR,
  docket: EVERYONE_ON_THE_FLOOR,
  'docket-decision': LEAD_OR_ENGINEER,
  temperature: EVERYONE_ON_THE_FLOOR,
  specimen: EVERYONE_ON_THE_FLOOR,
  'specimen-set': EVERYONE_ON_THE_FLOOR,
  weather: EVERYONE_ON_THE_FLOOR,
  gear: ['lead'],
  limit: ['engineer'],
  place: EVERYONE_ON_THE_FLOOR,
  photo: EVERYONE_ON_THE_FLOOR,
  bundle: EVERYONE_ON_THE_FLOOR,
  release: EVERYONE_ON_THE_FLOOR,
  rack: EVERYONE_ON_THE_FLOOR,
  used: EVERYONE_ON_THE_FLOOR,
  'cut-plan': LEAD_OR_ENGINEER,
  cut: EVERYONE_ON_THE_FLOOR,
  passport: LEAD_OR_ENGINEER,
}

/** Roles that may make entries of this kind. */
export function entitledTo(kind: EntryKind): readonly Role[] {
  return ENTITLED[kind]
}

/**
 * Whether a role may make this entry.
 *
 * A correction needs the right to make what it corrects: `target` is the entry that `about` points at, further corrections
 * already followed. Without it only the right to correct at all is looked at.
 */
export function mayMake(role: Role, kind: EntryKind, target?: Pick<Entry, 'kind'>): boolean {
  if (!ENTITLED[kind].includes(role)) return false
  if (kind !== 'correction' || target === undefined || target.kind === 'correction') return true
  return ENTITLED[target.kind].includes(role)
}

/** Whether the kinds that the record makes itself are asked for by somebody entitled: the signer of an opening. */
export function mayOpen(role: Role): boolean {
  return ENTITLED.request.includes(role)
}

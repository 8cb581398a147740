import { type EntryAct, stamped } from './act.ts'

export interface InspectInput {
  readonly about: string
  readonly verdict: 'pass' | 'fail'
  readonly reason: string
}

/** A repair was looked at again. */
export const inspectDefect: EntryAct<InspectInput> = {
  name: 'inspect-defect',
  label: 'Record the inspection',
  draft: (place, { about, verdict, reason }) => ({
    ...stamped(place),
    kind: 'inspection',
    about,
    value: { verdict },
    ...(reason.trim() === '' ? {} : { reason: reason.trim() }),
  }),
}

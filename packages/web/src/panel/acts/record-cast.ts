import { type EntryAct, stamped } from './act.ts'

export interface CastInput {
  /** Water met cement, UTC with milliseconds. */
  readonly at: string
  readonly bed: string | null
  readonly mix: string | null
  /** Set where an earlier entry is corrected. */
  readonly about?: string
  readonly reason?: string
}

/** When the concrete of this panel was mixed, on which bed, of which mix: all hours count from here. */
export const recordCast: EntryAct<CastInput> = {
  name: 'record-cast',
  label: 'Record the pour',
  draft: (place, { at, bed, mix, about, reason }) => ({
    ...stamped(place),
    kind: about === undefined ? 'cast' : 'correction',
    step: 'deliver',
    value: { at, bed, mix },
    ...(about === undefined ? {} : { about }),
    ...(reason === undefined ? {} : { reason }),
  }),
}

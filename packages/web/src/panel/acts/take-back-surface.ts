import { type EntryAct, stamped } from './act.ts'

export interface TakeBackInput {
  readonly check: string
  /** Entry that is taken back. */
  readonly about: string
}

/** A reading of the surface that was a slip: it stays in the record and counts no more. */
export const takeBackSurface: EntryAct<TakeBackInput> = {
  name: 'take-back-surface',
  label: 'take back',
  draft: (place, { check, about }) => ({
    ...stamped(place),
    kind: 'correction',
    step: 'finish',
    check,
    about,
    value: null,
    reason: 'Taken back: entered by mistake.',
  }),
}

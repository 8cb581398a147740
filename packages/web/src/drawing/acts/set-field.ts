import type { Draft } from '../draft.ts'
import type { DraftAct } from './act.ts'

/** Fields of the draft that hold one text. */
export type TextField = {
  [K in keyof Draft]: string extends Draft[K] ? K : never
}[keyof Draft]

export const setField: DraftAct<{ readonly field: TextField; readonly text: string }> = {
  name: 'set-field',
  label: 'typing',
  next: (draft, { field, text }) => ({ ...draft, [field]: text }),
  merge: ({ field }) => field,
}

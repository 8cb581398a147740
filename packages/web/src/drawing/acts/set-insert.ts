import type { DraftInsert } from '../draft.ts'
import type { DraftAct } from './act.ts'

export interface SetInsertInput {
  readonly index: number
  readonly field: keyof DraftInsert
  readonly text: string
}

export const setInsert: DraftAct<SetInsertInput> = {
  name: 'set-insert',
  label: 'typing',
  next: (draft, { index, field, text }) => ({
    ...draft,
    inserts: draft.inserts.map((old, place) => (place === index ? { ...old, [field]: text } : old)),
  }),
  merge: ({ index, field }) => `${index} ${field}`,
}

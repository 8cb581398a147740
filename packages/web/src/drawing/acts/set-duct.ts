import type { DraftDuct } from '../draft.ts'
import type { DraftAct } from './act.ts'

export interface SetDuctInput {
  readonly index: number
  readonly field: Exclude<keyof DraftDuct, 'corners'>
  readonly text: string
}

export const setDuct: DraftAct<SetDuctInput> = {
  name: 'set-duct',
  label: 'typing',
  next: (draft, { index, field, text }) => ({
    ...draft,
    ducts: draft.ducts.map((old, place): DraftDuct => (place === index ? { ...old, [field]: text } : old)),
  }),
  merge: ({ index, field }) => `${index} ${field}`,
}

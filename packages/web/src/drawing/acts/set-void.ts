import type { DraftVoid } from '../draft.ts'
import type { DraftAct } from './act.ts'

export interface SetVoidInput {
  readonly index: number
  readonly field: Exclude<keyof DraftVoid, 'form' | 'corners'>
  readonly text: string
}

export const setVoid: DraftAct<SetVoidInput> = {
  name: 'set-void',
  label: 'typing',
  next: (draft, { index, field, text }) => ({
    ...draft,
    voids: draft.voids.map((old, place): DraftVoid => (place === index ? { ...old, [field]: text } : old)),
  }),
  merge: ({ index, field }) => `${index} ${field}`,
}

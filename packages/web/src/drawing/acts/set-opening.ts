import type { DraftOpening } from '../draft.ts'
import type { DraftAct } from './act.ts'

export interface SetOpeningInput {
  readonly index: number
  readonly field: 'mark' | 'x' | 'y' | 'width' | 'height'
  readonly text: string
}

export const setOpening: DraftAct<SetOpeningInput> = {
  name: 'set-opening',
  label: 'typing',
  next: (draft, { index, field, text }) => ({
    ...draft,
    openings: draft.openings.map(
      (old, place): DraftOpening => (place === index ? { ...old, [field]: text } : old),
    ),
  }),
  merge: ({ index, field }) => `${index} ${field}`,
}

import type { DraftAct } from './act.ts'

export interface SetLaidInput {
  readonly index: number
  readonly field: string
  readonly text: string
}

/** One text of edge bars, trimmers, starters or ties. */
export const setLaid: DraftAct<SetLaidInput> = {
  name: 'set-laid',
  label: 'typing',
  next: (draft, { index, field, text }) => ({
    ...draft,
    steel: draft.steel.map((old, place) =>
      place === index && old.kind === 'laid' ? { ...old, texts: { ...old.texts, [field]: text } } : old,
    ),
  }),
  merge: ({ index, field }) => `${index} ${field}`,
}

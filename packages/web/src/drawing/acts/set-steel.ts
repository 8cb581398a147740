import type { DraftBar, DraftMat } from '../draft.ts'
import type { DraftAct } from './act.ts'

export interface SetSteelInput {
  readonly index: number
  readonly field: Exclude<keyof DraftMat | keyof DraftBar, 'kind' | 'corners'>
  readonly text: string
}

/** One text of a mat or a listed bar; a field that it does not have changes nothing. */
export const setSteel: DraftAct<SetSteelInput> = {
  name: 'set-steel',
  label: 'typing',
  next: (draft, { index, field, text }) => ({
    ...draft,
    steel: draft.steel.map((old, place) =>
      place === index && field in old ? { ...old, [field]: text } : old,
    ),
  }),
  merge: ({ index, field }) => `${index} ${field}`,
}

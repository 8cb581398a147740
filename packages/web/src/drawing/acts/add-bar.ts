import type { DraftAct } from './act.ts'

/** A listed bar: a trimmer, a tie, anything that is no mat. */
export const addBar: DraftAct<null> = {
  name: 'add-bar',
  label: 'Add a listed bar',
  next: (draft) => ({
    ...draft,
    steel: [
      ...draft.steel,
      {
        kind: 'bar',
        bar: `B${draft.steel.filter(({ kind }) => kind === 'bar').length + 1}`,
        layer: 'mould',
        role: 'main',
        diameter: '',
        grade: draft.steel.at(-1)?.grade ?? '',
        form: 'path',
        corners: [
          { x: '', y: '' },
          { x: '', y: '' },
        ],
        legs: '',
        turns: '',
        inside: '',
        count: '1',
      },
    ],
  }),
}

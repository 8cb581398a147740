import type { DraftBar, DraftMat } from '../draft.ts'
import type { DraftLaid } from '../laid-draft.ts'
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
        grade: gradeOf(draft.steel.at(-1)),
        form: 'path',
        corners: [
          { x: '', y: '' },
          { x: '', y: '' },
        ],
        legs: '',
        turns: '',
        inside: '',
        count: '1',
        tied: '',
      },
    ],
  }),
}

/** The grade of what was typed before. */
export function gradeOf(steel: DraftMat | DraftBar | DraftLaid | undefined): string {
  if (steel === undefined) return ''
  return steel.kind === 'laid' ? (steel.texts.grade ?? '') : steel.grade
}

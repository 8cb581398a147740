import type { DraftLying, FactorStage } from '../handling-draft.ts'
import type { DraftAct } from './act.ts'

/** One text of the handling: of the turn, of how it is kept or carried, or a stage's factor. */
export type SetHandlingInput = { readonly text: string } & (
  | { readonly of: 'turn'; readonly field: 'about' | 'inserts' | 'rigging' }
  | { readonly of: 'store' | 'travel'; readonly field: keyof DraftLying }
  | { readonly of: 'factors'; readonly field: FactorStage }
)

export const setHandling: DraftAct<SetHandlingInput> = {
  name: 'set-handling',
  label: 'typing',
  next: (draft, { of, field, text }) => {
    const { handling } = draft
    return {
      ...draft,
      handling:
        of === 'turn'
          ? { ...handling, [field]: text }
          : { ...handling, [of]: { ...handling[of], [field]: text } },
    }
  },
  merge: ({ of, field }) => `${of} ${field}`,
}

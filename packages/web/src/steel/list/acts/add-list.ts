import { type AddBarsInput, addBars } from '@castwright/documents/bar-list'
import type { FamilyId } from '@castwright/engine/codes'
import type { DrawnBar } from '@castwright/engine/panel'
import { panelOf } from '@castwright/engine/panel'
import type { PanelFacts } from '@castwright/engine/steps'
import { InputError } from '@castwright/engine/working'
import { type SaveAnswer, saveDrawing } from '../../../drawing/save-drawing.ts'

export interface AddListInput {
  readonly facts: PanelFacts
  readonly bars: readonly DrawnBar[]
  readonly revision: string
  readonly family: FamilyId
  /** What becomes of a mark that the drawing has already. */
  readonly existing: NonNullable<AddBarsInput['existing']>
}

export type AddListAnswer =
  | (Extract<SaveAnswer, { ok: true }> & {
      /** Marks of the list that were left out, since the drawing has them. */
      readonly kept: readonly string[]
    })
  | Extract<SaveAnswer, { ok: false }>
  | { readonly ok: false; readonly field: 'bars'; readonly fault: string }

/** The bars of a list go into a panel's drawing, as a new revision of it. */
export const addList = {
  name: 'add-list',
  label: 'Add the list to the drawing',
  answer: ({ facts, bars, revision, family, existing }: AddListInput): AddListAnswer => {
    if (facts.drawing === null)
      return { ok: false, field: 'bars', fault: 'The panel has no drawing in force.' }
    const given = revision.trim()
    if (given === '') return { ok: false, field: 'revision', fault: 'Missing: the revision.' }
    try {
      const { drawing: added, kept } = addBars({ drawing: facts.drawing, bars, family, existing })
      const drawing = { ...added, revision: given }
      panelOf(drawing)
      const saved = saveDrawing({ drawing, job: facts.job, facts, revises: true })
      return saved.ok ? { ...saved, kept } : saved
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      const [first] = error.issues
      const more = error.issues.length > 1 ? ` And ${error.issues.length - 1} more.` : ''
      return {
        ok: false,
        field: 'bars',
        fault: `Found ${first?.found ?? 'nothing'}, expected ${first?.expected ?? 'a drawing'}.${more}`,
      }
    }
  },
}

import { EMPTY_DRAFT } from '../draft.ts'
import type { DraftAct } from './act.ts'

/** An empty form; job and revision stay. */
export const clearDraft: DraftAct<null> = {
  name: 'clear-draft',
  label: 'Clear the form',
  next: (draft) => ({ ...EMPTY_DRAFT, job: draft.job, revision: draft.revision }),
}

import type { Drawing, DrawnInsert } from '@castwright/engine/panel'
import { type Draft, draftOf } from '../drawing/draft.ts'
import { keepDraft, readKeptDraft, type TextStorage } from '../drawing/kept-draft.ts'
import { nextRevision } from '../drawing/revision.ts'

export interface TakeOverInput {
  readonly storage: TextStorage
  readonly drawing: Drawing
  readonly job: string
  readonly mark: string
  readonly revision: string | null
  readonly inserts: readonly DrawnInsert[]
}

/**
 * Fills these inserts into the next revision of a panel's drawing as it is typed on this device. What was typed there before stays; only
 * its inserts are replaced.
 */
export function takeOver({ storage, drawing, job, mark, revision, inserts }: TakeOverInput): void {
  const panel = `${job}/${mark}`
  const start: Draft = readKeptDraft(storage, panel) ?? {
    ...draftOf(drawing),
    job,
    mark,
    revision: nextRevision(revision),
  }
  const taken = draftOf({ ...drawing, inserts: [...inserts] }).inserts
  keepDraft(storage, panel, { ...start, inserts: taken })
}

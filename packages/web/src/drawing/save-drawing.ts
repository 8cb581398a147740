import type { Drawing } from '@castwright/engine/panel'
import type { PanelFacts } from '@castwright/engine/steps'
import type { EntryDraft } from '../record/index.ts'

export interface SaveInput {
  readonly drawing: Drawing
  readonly job: string
  /** Of the panel of this job and mark; null where there is none. */
  readonly facts: PanelFacts | null
  /** The drawing revises a panel that is there; else it must be a new one. */
  readonly revises: boolean
}

export type SaveAnswer =
  | { readonly ok: true; readonly draft: EntryDraft }
  | { readonly ok: false; readonly field: 'job' | 'mark' | 'revision'; readonly fault: string }

/** The entry that records a drawing, or why it cannot be recorded so: no job, a mark or revision that is taken. */
export function saveDrawing({ drawing, job, facts, revises }: SaveInput): SaveAnswer {
  const revision = drawing.revision
  if (job.trim() === '') return { ok: false, field: 'job', fault: 'Missing: the mark of the job.' }
  if (job.includes('/') || drawing.mark.includes('/')) {
    const field = job.includes('/') ? 'job' : 'mark'
    return { ok: false, field, fault: 'Found a slash, expected a mark without one.' }
  }
  if (revision === undefined) return { ok: false, field: 'revision', fault: 'Missing: the revision.' }
  if (!revises && facts?.drawing != null) {
    return {
      ok: false,
      field: 'mark',
      fault: `${drawing.mark} is in ${job} already, revision ${facts.revision ?? 'none'}. Open it to change its drawing.`,
    }
  }
  if (revises && facts?.revision === revision) {
    return {
      ok: false,
      field: 'revision',
      fault: `Revision ${revision} is in force already. Give the next one.`,
    }
  }
  return {
    ok: true,
    draft: {
      kind: 'drawing',
      subject: { kind: 'panel', id: `${job}/${drawing.mark}` },
      value: { ...drawing, job } as EntryDraft['value'],
      revision,
    },
  }
}

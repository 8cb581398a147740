import type { Attachment, Subject } from '@castwright/record'
import type { EntryDraft } from '../../record/index.ts'

/** The panel that a person works on, and what judged it. */
export interface PanelPlace {
  readonly job: string
  readonly mark: string
  /** Drawing revision in force. */
  readonly revision: string | null
  /** Code editions that the plan went by. */
  readonly edition: string | null
}

/** One act of a person at a panel: what it is called and the entry that it makes. */
export interface EntryAct<Input> {
  readonly name: string
  /** The word on its button. */
  readonly label: string
  readonly draft: (place: PanelPlace, input: Input) => EntryDraft
}

// The record's own `panelSubject` would bring its schemas into the first load.
export function subjectOf({ job, mark }: PanelPlace): Subject {
  return { kind: 'panel', id: `${job}/${mark}` }
}

/** Longest text of an edition in an entry. */
const EDITION_LENGTH = 200

/** Subject, revision and edition, as every entry about a panel carries them. */
export function stamped(place: PanelPlace): Pick<EntryDraft, 'subject' | 'revision' | 'edition'> {
  return {
    subject: subjectOf(place),
    ...(place.revision === null ? {} : { revision: place.revision }),
    ...(place.edition === null ? {} : { edition: place.edition.slice(0, EDITION_LENGTH) }),
  }
}

export function attached(attachments: readonly Attachment[] | undefined): { attachments?: Attachment[] } {
  return attachments && attachments.length > 0 ? { attachments: [...attachments] } : {}
}

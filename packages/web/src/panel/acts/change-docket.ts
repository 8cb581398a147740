import type { DocketField, DocketWords } from '@castwright/engine/pour/loads'
import type { Docket } from '@castwright/record'
import type { EntryDraft } from '../../record/index.ts'
import { type PanelPlace, stamped } from './act.ts'
import { docketValue, recordDocket } from './record-docket.ts'

export interface DocketChange {
  /** What was never said of this load; null where all of it corrects something. */
  readonly added: DocketWords | null
  /** Fields that say something else now, or nothing any more. */
  readonly corrected: readonly DocketField[]
}

/** What a form that was filled with all that is on record of a load now says otherwise. */
export function docketChange(before: DocketWords, after: DocketWords): DocketChange {
  const fields = [...new Set([...Object.keys(before), ...Object.keys(after)])] as DocketField[]
  const other = fields.filter(
    (field) => field !== 'number' && JSON.stringify(before[field]) !== JSON.stringify(after[field]),
  )
  const added = other.filter((field) => before[field] === undefined)
  return {
    added:
      added.length === 0
        ? null
        : {
            ...Object.fromEntries(added.map((field) => [field, after[field]])),
            number: before.number,
          },
    corrected: other.filter((field) => before[field] !== undefined),
  }
}

export interface ChangeDocketInput {
  /** Entries under this number, as the record has them. */
  readonly parts: readonly Docket[]
  readonly before: DocketWords
  readonly after: DocketWords
  /** Why something on record is corrected; not asked where all of it is new. */
  readonly reason: string
  /** Fields of which two entries say different things: the form settles them as it shows them. */
  readonly differs?: readonly DocketField[]
}

/** What is new becomes an entry of its own; what was said otherwise is corrected wherever it was said. */
export function changeDocket(
  place: PanelPlace,
  { parts, before, after, reason, differs = [] }: ChangeDocketInput,
): EntryDraft[] {
  const { added, corrected } = docketChange(before, after)
  const settled = [...new Set([...corrected, ...differs])]
  const corrections = parts.flatMap((part): EntryDraft[] => {
    const { entry, by: _by, seen: _seen, ...words } = part
    const own = settled.filter(
      (field) => words[field] !== undefined && JSON.stringify(words[field]) !== JSON.stringify(after[field]),
    )
    if (own.length === 0) return []
    const value = docketValue({ ...words, ...Object.fromEntries(own.map((field) => [field, after[field]])) })
    return [{ ...stamped(place), kind: 'correction', step: 'deliver', about: entry, value, reason }]
  })
  return [...(added === null ? [] : [recordDocket.draft(place, added)]), ...corrections]
}

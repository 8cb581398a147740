import type { DocketRow } from '@castwright/documents/docket-list'
import { type DocketField, type DocketWords, wordsOf } from '@castwright/engine/pour/loads'
import type { PanelFacts } from '@castwright/engine/steps'
import { recordDocket } from '../panel/acts/record-docket.ts'
import type { EntryDraft } from '../record/index.ts'

/** One row that cannot be taken, in words. */
export interface ImportFault {
  readonly row: number
  readonly text: string
}

export interface ImportPlan {
  /** What will be recorded, a load each. */
  readonly loads: readonly {
    readonly panel: string
    readonly number: string
    readonly fields: number
    readonly draft: EntryDraft
  }[]
  /** Rows that say nothing that is not on record. */
  readonly known: number
  readonly faults: readonly ImportFault[]
}

export interface ImportInput {
  readonly rows: readonly DocketRow[]
  readonly panels: readonly PanelFacts[]
  /** `<job>/<mark>` of rows that name no panel; empty where none is chosen. */
  readonly fallback: string
}

/**
 * What of a list of dockets is new. A row goes to the panel that it names; what the record says otherwise under the same number is a fault of its row, since a list does not
 * correct what somebody recorded.
 */
export function importPlan({ rows, panels, fallback }: ImportInput): ImportPlan {
  const faults: ImportFault[] = []
  const loads: ImportPlan['loads'][number][] = []
  let known = 0
  for (const { row, panel: mark, job, docket } of rows) {
    const found = panelOf({ mark, job, panels, fallback })
    if (typeof found === 'string') {
      faults.push({ row, text: found })
      continue
    }
    const before = found.dockets.find(({ number }) => number === docket.number.trim())
    const held = before === undefined ? { number: docket.number } : wordsOf(before)
    const fields = Object.keys(docket) as DocketField[]
    const other = fields.filter((field) => held[field] !== undefined && !same(held[field], docket[field]))
    if (other.length > 0) {
      const words = other.map((field) => `${field} is ${held[field]} on record, ${docket[field]} in the list`)
      faults.push({ row, text: `Docket ${docket.number}: ${words.join('; ')}` })
      continue
    }
    const added = fields.filter((field) => held[field] === undefined)
    if (added.length === 0 && before !== undefined) {
      known += 1
      continue
    }
    const words = {
      ...Object.fromEntries(added.map((field) => [field, docket[field]])),
      number: docket.number,
    } as DocketWords
    const { job: of, mark: name, revision } = found
    loads.push({
      panel: `${of}/${name}`,
      number: docket.number,
      fields: added.length,
      draft: recordDocket.draft({ job: of, mark: name, revision, edition: null }, words),
    })
  }
  return { loads, known, faults }
}

function panelOf({
  mark,
  job,
  panels,
  fallback,
}: Omit<ImportInput, 'rows'> & { readonly mark: string | null; readonly job: string | null }):
  | PanelFacts
  | string {
  if (mark === null) {
    return (
      panels.find((panel) => `${panel.job}/${panel.mark}` === fallback) ??
      'No panel is named: choose one for such rows'
    )
  }
  const named = panels.filter((panel) => panel.mark === mark && (job === null || panel.job === job))
  const [only, second] = named
  if (only === undefined) return `No panel ${mark}${job === null ? '' : ` in ${job}`} in the record`
  if (second !== undefined)
    return `Panel ${mark} is in ${named.map((panel) => panel.job).join(' and ')}: name the job`
  return only
}

/** A list writes times to the minute. */
function same(held: unknown, listed: unknown): boolean {
  if (typeof held === 'string' && typeof listed === 'string') {
    const [a, b] = [Date.parse(held), Date.parse(listed)]
    if (/T.*Z$/.test(held) && /T.*Z$/.test(listed)) return Math.abs(a - b) < 60_000
  }
  return held === listed
}

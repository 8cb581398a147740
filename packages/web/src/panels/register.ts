import { type PanelFacts, panelStep, STEP_IDS, type StepId, stepIsDone } from '@castwright/engine/steps'

/** Where a panel stands, in the words of the register. */
export type PanelStanding =
  | 'no drawing'
  | 'not begun'
  | 'in work'
  | 'waits at a hold'
  | 'curing'
  | 'defect open'
  | 'handed over'

export const STANDINGS: readonly PanelStanding[] = [
  'defect open',
  'waits at a hold',
  'curing',
  'in work',
  'not begun',
  'handed over',
  'no drawing',
]

export interface RegisterRow {
  readonly facts: PanelFacts
  /** First step that is not done; null where all are. */
  readonly step: StepId | null
  readonly standing: PanelStanding
  /** Bed it was cast on, or where it stands. */
  readonly place: string | null
  readonly due: string | null
}

export interface RegisterFilter {
  readonly search: string
  readonly standing: string
  readonly place: string
  readonly step: string
  readonly job: string
}

export const NO_FILTER: RegisterFilter = { search: '', standing: '', place: '', step: '', job: '' }

/** One row a panel, by job and mark with numbers in their order: W-2 before W-10. */
export function registerRows(
  panels: Iterable<PanelFacts>,
  due: (job: string, mark: string) => string | null,
): readonly RegisterRow[] {
  const order = new Intl.Collator('en', { numeric: true })
  return [...panels]
    .map((facts): RegisterRow => {
      const step = STEP_IDS.find((id) => !stepIsDone(id, facts)) ?? null
      return {
        facts,
        step,
        standing: standingOf(facts, step),
        place: facts.place ?? (facts.cast?.bed ? `bed ${facts.cast.bed}` : null),
        due: due(facts.job, facts.mark),
      }
    })
    .sort((a, b) => order.compare(a.facts.job, b.facts.job) || order.compare(a.facts.mark, b.facts.mark))
}

function standingOf(facts: PanelFacts, step: StepId | null): PanelStanding {
  if (facts.drawing === null) return 'no drawing'
  if (facts.defects.some(({ open }) => open)) return 'defect open'
  if (step === null) return 'handed over'
  if (step === 'steel-in' && Object.values(facts.steps).every(isEmpty)) return 'not begun'
  if (step === 'cure') return 'curing'
  return panelStep(step).hold ? 'waits at a hold' : 'in work'
}

function isEmpty({ values, requests, opening, closed }: PanelFacts['steps'][StepId]): boolean {
  return Object.keys(values).length === 0 && requests.length === 0 && opening === null && closed === null
}

/** Rows that fit every word of the search and every choice. */
export function filterRows(rows: readonly RegisterRow[], filter: RegisterFilter): readonly RegisterRow[] {
  const words = filter.search
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '')
  return rows.filter((row) => {
    if (filter.standing !== '' && row.standing !== filter.standing) return false
    if (filter.place !== '' && row.place !== filter.place) return false
    if (filter.step !== '' && row.step !== filter.step) return false
    if (filter.job !== '' && row.facts.job !== filter.job) return false
    const text = `${row.facts.mark} ${row.facts.job} ${row.place ?? ''}`.toLowerCase()
    return words.every((word) => text.includes(word))
  })
}

/** The places and jobs that there are, to choose from. */
export function choicesOf(
  rows: readonly RegisterRow[],
  read: (row: RegisterRow) => string | null,
): readonly string[] {
  const order = new Intl.Collator('en', { numeric: true })
  return [...new Set(rows.flatMap((row) => read(row) ?? []))].sort(order.compare)
}

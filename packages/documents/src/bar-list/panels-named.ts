import type { ColumnAt, Columns } from './columns.ts'
import { quoted, type RowIssue } from './row-issue.ts'
import { type Cell, cellText } from './table.ts'

export interface PanelCells {
  readonly job: string
  readonly panel: string
}

export function panelCells(cells: readonly Cell[], { of }: Columns): PanelCells {
  const text = (column: ColumnAt | undefined): string =>
    column === undefined ? '' : cellText(cells[column.index]).trim()
  return { job: text(of.job), panel: text(of.panel) }
}

/** How a panel is called: with its job where the list holds several jobs. */
export function panelName({ job, panel }: PanelCells, jobs: number): string {
  return jobs > 1 ? `${job}/${panel}` : panel
}

export function panelsOf(rows: readonly PanelCells[]): {
  readonly names: readonly string[]
  readonly jobs: number
} {
  const jobs = new Set(rows.map(({ job }) => job)).size
  const names = [...new Set(rows.map((cells) => panelName(cells, jobs)))]
  return { jobs, names: names.length === 1 && names[0] === '' ? [] : names }
}

export function severalPanels(names: readonly string[], { of }: Columns): RowIssue {
  const shown = names.slice(0, 12).map((name) => (name === '' ? 'none' : quoted(name)))
  return {
    row: null,
    column: of.panel?.letter ?? of.job?.letter ?? null,
    name: of.panel?.name ?? of.job?.name ?? null,
    found: `${names.length} panels: ${shown.join(', ')}${names.length > shown.length ? ' …' : ''}`,
    expected: 'the bars of one panel, or a word which of them is meant',
  }
}

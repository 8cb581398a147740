import type { SteelRules } from '@castwright/engine/codes'
import type { DrawnBar } from '@castwright/engine/panel'
import type { Assumed } from '@castwright/engine/working'
import { type AssumedRows, assumedOf, noteAssumed } from './assumed-rows.ts'
import { type BarRemark, checkBar } from './check-bar.ts'
import { type BarListMap, EMPTY_MAP } from './column-map.ts'
import { type ColumnAt, type Columns, findColumns } from './columns.ts'
import { FIELD_WORD } from './fields.ts'
import { decimalShown } from './number-text.ts'
import { type PanelCells, panelCells, panelName, panelsOf, severalPanels } from './panels-named.ts'
import { readRow, type StatedBar } from './read-row.ts'
import { quoted, type RowIssue } from './row-issue.ts'
import { formulaRemarks, mergedRows, passedOver, unitRow } from './sheet-remarks.ts'
import { cellText, type DecimalSign, type Table } from './table.ts'

export interface BarsInput {
  readonly table: Table
  readonly rules: SteelRules
  readonly map?: BarListMap | undefined
  /** Whose rows are meant, where the list names several panels; one of `panels`. */
  readonly panel?: string | undefined
  /** Most that a stated cut length may differ from the computed one, mm; the family's cut tolerance where absent. */
  readonly tolerance?: number | undefined
}

/** One row of the list that holds a bar, good or not. */
export interface BarRow {
  /** As the spreadsheet shows it. */
  readonly row: number
  /** Null where the row has an error. */
  readonly bar: DrawnBar | null
}

export interface BarList {
  readonly columns: Columns
  /** Rows with a bar, in their order; empty where a column is missing. */
  readonly rows: readonly BarRow[]
  readonly errors: readonly RowIssue[]
  readonly warnings: readonly RowIssue[]
  readonly assumed: readonly Assumed[]
  /** Panels that the list names, in their order; empty where it names none. */
  readonly panels: readonly string[]
  /** Decimal sign by which text was read; null where every number can be read in one way. */
  readonly decimal: DecimalSign | null
}

/** All bars where every row is good; none where one is not. */
export function wholeList(list: BarList): readonly DrawnBar[] {
  return list.errors.length > 0 ? [] : goodBars(list)
}

/** The bars of the good rows, whatever other rows hold; none where something is wrong with the list as a whole. */
export function goodBars({ rows, errors }: BarList): readonly DrawnBar[] {
  return errors.some(({ row }) => row === null) ? [] : rows.flatMap(({ bar }) => (bar === null ? [] : [bar]))
}

/**
 * The listed bars of a list, every row checked by itself: numbers, grade of the family, whether the legs are long enough for their bends
 * (`cutLength` of the engine), stated against computed cut length, marks of two makes.
 */
export function barsOf({ table, rules, map = EMPTY_MAP, panel, tolerance }: BarsInput): BarList {
  const columns = findColumns(table, map)
  const read = columnsRead(columns)
  const decimal = map.decimal ?? decimalShown(numberTexts(table, columns)) ?? table.decimal
  const nothing = { columns, rows: [], warnings: [], assumed: [], panels: [], decimal }
  if (columns.issues.length > 0) return { ...nothing, errors: columns.issues }

  const errors: RowIssue[] = []
  const warnings: RowIssue[] = [...formulaRemarks(table, columns, read)]
  const merged = mergedRows(table, columns, read)
  const named = sizesByName(rules)
  const states: State[] = []
  for (let index = columns.header; index < table.rows.length; index += 1) {
    const row = index + 1
    const cells = table.rows[index] ?? []
    if (read.every((column) => (cells[column.index] ?? null) === null) && !merged.has(row)) {
      const other = cells.find((cell) => cell !== null)
      if (other !== undefined) warnings.push(passedOver(row, cells))
      continue
    }
    if (unitRow(cells, read, row, columns.header)) continue
    const faults = merged.get(row) ?? []
    const { stated, issues } = readRow({ row, cells, columns, map, rules, decimal, named })
    states.push({
      row,
      stated: faults.length > 0 ? null : stated,
      errors: [...faults, ...issues],
      name: panelCells(cells, columns),
    })
  }
  const panels = panelsOf(states.map(({ name }) => name))
  const mine = states.filter(({ name }) => panel === undefined || panelName(name, panels.jobs) === panel)
  const assumedRows: AssumedRows = { role: [], turns: [], inside: new Map() }
  const makes = new Map<string, { readonly row: number; readonly make: string }>()
  const rows = mine.map(({ row, stated, errors: faults }): BarRow => {
    errors.push(...faults)
    if (stated === null) return { row, bar: null }
    const checked = checkBar({ stated, rules, tolerance: tolerance ?? null })
    const place = (remark: BarRemark): RowIssue => remarkIssue(remark, row, columns)
    errors.push(...checked.errors.map(place))
    warnings.push(...checked.warnings.map(place))
    const twice = checked.bar === null ? null : sameMark({ row, stated, bar: checked.bar, columns, makes })
    if (twice !== null) (twice.fails ? errors : warnings).push(twice.issue)
    if (checked.bar === null || twice?.fails) return { row, bar: null }
    noteAssumed(assumedRows, row, checked.bar, checked.assumed)
    return { row, bar: checked.bar }
  })
  if (panel === undefined && panels.names.length > 1) errors.push(severalPanels(panels.names, columns))
  if (mine.length === 0) {
    const found = panel === undefined ? 'no bar under the column names' : `no bar of panel ${quoted(panel)}`
    const others = panels.names.map(quoted).join(', ')
    const expected = panel === undefined || others === '' ? 'at least one row' : `one of ${others}`
    errors.push({ row: null, column: null, name: null, found, expected })
  }
  errors.sort((a, b) => (a.row ?? 0) - (b.row ?? 0))
  warnings.sort((a, b) => (a.row ?? 0) - (b.row ?? 0))
  return {
    columns,
    rows,
    errors,
    warnings,
    assumed: assumedOf(assumedRows, columns, { map, tolerance }),
    panels: panels.names,
    decimal,
  }
}

interface State {
  readonly row: number
  readonly stated: StatedBar | null
  readonly errors: readonly RowIssue[]
  readonly name: PanelCells
}

function columnsRead({ of, legs, allLegs }: Columns): ColumnAt[] {
  return [...Object.values(of), ...legs, ...(allLegs === null ? [] : [allLegs])]
}

/** Text of cells that hold numbers: it shows the decimal sign. */
function* numberTexts({ rows }: Table, { header, of, legs, allLegs }: Columns): Iterable<string> {
  const numbers = [of.diameter, of.count, of.cutLength, of.inside, ...legs].filter(
    (column) => column !== undefined,
  )
  const lists = [of.turns, allLegs ?? undefined].filter((column) => column !== undefined)
  for (const row of rows.slice(header)) {
    for (const { index } of numbers) yield cellText(row[index])
    for (const { index } of lists)
      yield* cellText(row[index])
        .replace(/,\s+/g, ' ')
        .split(/[\s;+/×x]+/)
  }
}

/** Sizes that the family calls by a name of their own: `No. 5`. */
function sizesByName(rules: SteelRules): ReadonlyMap<string, number> {
  const named = new Map<string, number>()
  for (let half = 8; half <= 120; half += 1) {
    const size = rules.barSize({ diameter: half / 2 })
    if (size.known && size.value.name.startsWith('No. ')) named.set(size.value.name, size.value.diameter)
  }
  return named
}

function remarkIssue({ field, leg, found, expected }: BarRemark, row: number, columns: Columns): RowIssue {
  const { of, legs, allLegs } = columns
  const column =
    field === 'legs'
      ? (allLegs ?? legs[leg ?? 0] ?? (leg === undefined ? undefined : of.cutLength))
      : of[field]
  const name = column === undefined || column.name === '' ? FIELD_WORD[field] : column.name
  const which = field === 'legs' && leg !== undefined && allLegs !== null ? `leg ${leg + 1}: ${found}` : found
  return { row, column: column?.letter ?? null, name, found: which, expected }
}

/** A mark that was there before in the same panel: of the same make its bars add up, of another it is an error. */
function sameMark({
  row,
  stated: { job, panel, mark },
  bar: { count: _count, ...make },
  columns: { of },
  makes,
}: {
  readonly row: number
  readonly stated: StatedBar
  readonly bar: DrawnBar
  readonly columns: Columns
  readonly makes: Map<string, { readonly row: number; readonly make: string }>
}): { readonly fails: boolean; readonly issue: RowIssue } | null {
  const key = JSON.stringify([job, panel, mark])
  const text = JSON.stringify(make)
  const before = makes.get(key)
  if (before === undefined) {
    makes.set(key, { row, make: text })
    return null
  }
  const same = before.make === text
  return {
    fails: !same,
    issue: {
      row,
      column: of.mark?.letter ?? null,
      name: of.mark?.name || FIELD_WORD.mark,
      found: `${mark} again${same ? '' : ', of another make'}`,
      expected: same
        ? `a mark once: its bars are added to those of row ${before.row}`
        : `the make of row ${before.row}, or a mark of its own`,
    },
  }
}

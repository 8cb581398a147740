import { InputError } from '@castwright/engine/working'
import { tooMany } from './read-csv.ts'
import { quoted } from './row-issue.ts'
import { type Cell, columnIndex, type MergedCells, MOST_COLUMNS, MOST_ROWS, type Table } from './table.ts'

/** What a file may unpack to, bytes. */
const MOST_BYTES = 200_000_000

/**
 * Cells of one sheet of an XLSX file (ISO/IEC 29500): values as they were last stored, which of them are formulas, which cells are merged.
 *
 * @throws InputError where it is no such file, has no such sheet, or is far too large.
 */
export async function readXlsx({
  bytes,
  name,
  sheet,
}: {
  readonly bytes: Uint8Array
  readonly name: string
  /** Name of the sheet; the first where absent. */
  readonly sheet?: string | undefined
}): Promise<Table> {
  const { strFromU8, unzipSync, zipSync } = await import('fflate')
  const { readSheet } = await import('read-excel-file/universal')
  const refuse = (found: string, expected: string): InputError =>
    new InputError([{ path: '', found, expected }], name)
  let parts: Record<string, Uint8Array>
  try {
    let size = 0
    parts = unzipSync(bytes, {
      filter: (part) => {
        if (!/\.xml(\.rels)?$/.test(part.name)) return false
        size += part.originalSize
        if (size > MOST_BYTES) throw refuse(`more than ${MOST_BYTES / 1e6} MB unpacked`, 'a bar list')
        return true
      },
    })
  } catch (error) {
    if (error instanceof InputError) throw error
    throw refuse('a file that does not unpack', 'an XLSX file')
  }
  const part = (path: string): string => (parts[path] === undefined ? '' : strFromU8(parts[path]))
  const sheets = sheetsOf(part('xl/workbook.xml'), part('xl/_rels/workbook.xml.rels'))
  const place = sheet === undefined ? 0 : sheets.findIndex((each) => each.name === sheet)
  const chosen = sheets[place]
  if (chosen === undefined) {
    const names = sheets.map((each) => quoted(each.name)).join(', ')
    throw refuse(
      sheet === undefined ? 'no sheet' : `no sheet ${quoted(sheet)}`,
      names === '' ? 'an XLSX file with a sheet' : `one of ${names}`,
    )
  }
  const marks = marksOf(part(chosen.path))
  if (marks.rows > MOST_ROWS) throw tooMany(name)
  let rows: readonly (readonly unknown[])[]
  try {
    // Stored, not packed: of packed parts over 320 kB the reader starts workers of its own, which the app's content policy forbids.
    const stored = zipSync(parts, { level: 0 })
    rows = (await readSheet(stored.buffer as ArrayBuffer, place + 1)) as readonly (readonly unknown[])[]
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    throw refuse(`a sheet that cannot be read (${why})`, 'an XLSX file')
  }
  const cells = rows.map((row) => row.slice(0, MOST_COLUMNS).map(xlsxCell))
  markCells(cells, marks)
  return {
    name,
    sheet: chosen.name,
    sheets: sheets.map((each) => each.name),
    rows: cells,
    merged: marks.merged,
    decimal: null,
  }
}

function xlsxCell(value: unknown): Cell {
  if (typeof value === 'number' && Number.isFinite(value)) return { kind: 'number', number: value }
  if (typeof value === 'boolean') return { kind: 'truth', text: value ? 'TRUE' : 'FALSE' }
  if (value instanceof Date) {
    const text = Number.isFinite(value.getTime()) ? value.toISOString().slice(0, 10) : 'no date'
    return { kind: 'date', text }
  }
  const text = typeof value === 'string' ? value.trim() : ''
  return text === '' ? null : { kind: 'text', text }
}

/** What the reader of the values leaves out: faults, which it takes for empty cells, formulas, and merged cells. */
interface SheetMarks {
  readonly cells: readonly MarkedCell[]
  readonly merged: readonly MergedCells[]
  /** Number of the last row. */
  readonly rows: number
}

interface MarkedCell {
  /** Row and column from 0. */
  readonly row: number
  readonly column: number
  /** Text of a fault; null for a formula. */
  readonly fault: string | null
  /** Whether an empty cell is what the formula gave last: an empty text. */
  readonly stored: boolean
}

/** Characters of the longest formula with its value, marked up. */
const LONGEST_FORMULA = 50_000

function marksOf(xml: string): SheetMarks {
  const cells: MarkedCell[] = []
  const merged: MergedCells[] = []
  let [row, column, rows] = [-1, -1, 0]
  let isText = false
  for (const match of xml.matchAll(/<(?:\w+:)?(row|c|f|mergeCell)\b([^>]*)>/g)) {
    const [all, tag, attributes = ''] = match
    const place = /\b(?:r|ref)="([^"]+)"/.exec(attributes)?.[1]
    if (tag === 'row') {
      row = place === undefined ? row + 1 : Number(place) - 1
      column = -1
      rows = Math.max(rows, row + 1)
    } else if (tag === 'c') {
      const at = cellAt(place ?? '')
      if (at === null) column += 1
      else [row, column] = [at.row, at.column]
      isText = /\bt="str"/.test(attributes)
      if (/\bt="e"/.test(attributes)) {
        const after = xml.slice(match.index + all.length, match.index + all.length + 2000)
        cells.push({ row, column, fault: /<(?:\w+:)?v>([^<]*)</.exec(after)?.[1] ?? 'a fault', stored: true })
      }
    } else if (tag === 'f') {
      const after = xml.slice(match.index, match.index + LONGEST_FORMULA)
      const [within = ''] = after.split(/<\/(?:\w+:)?c>/, 1)
      // Some programs write an empty value where they computed none: only of text is it one.
      cells.push({ row, column, fault: null, stored: isText && /<(?:\w+:)?v\b/.test(within) })
    } else {
      const [from, to] = (place ?? '').split(':').map(cellAt)
      if (from && to) merged.push({ top: from.row, left: from.column, bottom: to.row, right: to.column })
    }
  }
  return { cells, merged, rows }
}

function markCells(cells: Cell[][], marks: SheetMarks): void {
  for (const { row, column, fault, stored } of marks.cells) {
    if (column >= MOST_COLUMNS || row < 0 || column < 0) continue
    while (cells.length <= row) cells.push([])
    const line = cells[row] as Cell[]
    while (line.length <= column) line.push(null)
    const cell = line[column] ?? null
    if (fault !== null) line[column] = { kind: 'fault', text: fault }
    else if (cell !== null) line[column] = { ...cell, formula: true }
    else if (!stored)
      line[column] = { kind: 'fault', text: 'a formula without a stored value', formula: true }
  }
}

function cellAt(text: string): { readonly row: number; readonly column: number } | null {
  const [, letters = '', digits = ''] = /^([A-Z]{1,3})(\d+)$/.exec(text) ?? []
  const column = columnIndex(letters)
  return column === null ? null : { row: Number(digits) - 1, column }
}

/** Sheets in their order, with the part of the file that holds each. */
function sheetsOf(workbook: string, relations: string): { readonly name: string; readonly path: string }[] {
  const paths = new Map<string, string>()
  for (const [, attributes = ''] of relations.matchAll(/<(?:\w+:)?Relationship\b([^>]*)>/g)) {
    const target = attribute(attributes, 'Target')
    paths.set(attribute(attributes, 'Id'), target.startsWith('/') ? target.slice(1) : `xl/${target}`)
  }
  return [...workbook.matchAll(/<(?:\w+:)?sheet\b([^>]*)>/g)].map(([, attributes = '']) => ({
    name: attribute(attributes, 'name'),
    path: paths.get(attribute(attributes, '(?:\\w+:)?id')) ?? '',
  }))
}

function attribute(attributes: string, name: string): string {
  const text = new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(attributes)?.[1] ?? ''
  return text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&amp;/g, '&')
}

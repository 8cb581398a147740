import { type BarListMap, type ColumnRef, EMPTY_MAP } from './column-map.ts'
import {
  FIELD_WORD,
  FIELDS,
  type Field,
  headerWords,
  LENGTHS,
  legNumber,
  SPELLINGS,
  UNIT_MM,
} from './fields.ts'
import { quoted, type RowIssue } from './row-issue.ts'
import { type Cell, cellText, columnIndex, columnLetter, type Table } from './table.ts'

/** One column of a list. */
export interface ColumnAt {
  /** From 0. */
  readonly index: number
  readonly letter: string
  /** As written; empty where the list has no names. */
  readonly name: string
  /** Unit that the name says; null where it says none. */
  readonly unit: string | null
}

export type OneField = Exclude<Field, 'legs'>

export interface Columns {
  /** Row of the names, from 1; 0 where there is none. */
  readonly header: number
  readonly of: Readonly<Partial<Record<OneField, ColumnAt>>>
  /** One column a leg, in their order. */
  readonly legs: readonly ColumnAt[]
  /** The column that holds all legs of a bar, where there is such a one. */
  readonly allLegs: ColumnAt | null
  /** Every column with a name, or with anything in it where there are no names. */
  readonly all: readonly ColumnAt[]
  /** Columns that are read by nothing. */
  readonly unread: readonly ColumnAt[]
  /** Columns that are missing, named twice, or in a unit that is not read. */
  readonly issues: readonly RowIssue[]
}

/** Rows among which the names are looked for: a list may begin with a title. */
const TITLE_ROWS = 40

/** Which column holds what: by the map first, then by the names that lists commonly use. */
export function findColumns(table: Table, map: BarListMap = EMPTY_MAP): Columns {
  const header = map.header ?? headerRow(table.rows, map)
  const all = columnsAt(table, header)
  const issues: RowIssue[] = []
  const of: Partial<Record<OneField, ColumnAt>> = {}
  const claimed = new Set<number>()
  const named = (ref: ColumnRef, field: Field): ColumnAt | null => {
    if (ref === null) return null
    const found = columnsOf(all, ref)
    if (found.length === 1 && found[0] !== undefined) {
      claimed.add(found[0].index)
      return found[0]
    }
    issues.push({
      row: header === 0 ? null : header,
      column: found[1]?.letter ?? null,
      name: FIELD_WORD[field],
      found: found.length === 0 ? 'no such column' : `${found.length} such columns`,
      expected: `one column ${typeof ref === 'string' ? quoted(ref) : ref.letter}, as the map says`,
    })
    return null
  }
  for (const field of FIELDS) {
    const ref = field === 'legs' ? undefined : map.columns?.[field]
    if (field === 'legs' || ref === undefined) continue
    const column = named(ref, field)
    if (column !== null) of[field] = column
  }
  const mapped = map.columns?.legs
  const mappedLegs = Array.isArray(mapped) ? mapped.map((ref) => named(ref, 'legs')) : null
  const mappedAll = mapped === undefined || Array.isArray(mapped) ? null : named(mapped, 'legs')
  const free = (): ColumnAt[] => all.filter(({ index }) => !claimed.has(index))
  for (const field of FIELDS) {
    if (field === 'legs' || map.columns?.[field] !== undefined) continue
    const column = spelt(free(), field, header, issues)
    if (column === null) continue
    claimed.add(column.index)
    of[field] = column
  }
  const legs =
    mappedLegs?.filter((column) => column !== null) ?? (mapped === undefined ? legColumns(free()) : [])
  for (const { index } of legs) claimed.add(index)
  const allLegs =
    mappedAll ?? (mapped === undefined && legs.length === 0 ? spelt(free(), 'legs', header, issues) : null)
  if (allLegs !== null) claimed.add(allLegs.index)
  const found = { header, of, legs, allLegs, all }
  return {
    ...found,
    unread: free(),
    issues: [...issues, ...missing(found, map), ...unitIssues(found)],
  }
}

/** Columns that a map means by a name, or by a letter. */
function columnsOf(all: readonly ColumnAt[], ref: string | { readonly letter: string }): ColumnAt[] {
  if (typeof ref !== 'string') return all.filter(({ index }) => index === columnIndex(ref.letter))
  const same = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase()
  const exact = all.filter(({ name }) => same(name) === same(ref))
  return exact.length > 0 ? exact : all.filter(({ name }) => headerWords(name).name === headerWords(ref).name)
}

/** The free column with the plainest name of a field; two of that name are an issue. */
function spelt(free: readonly ColumnAt[], field: Field, header: number, issues: RowIssue[]): ColumnAt | null {
  for (const spelling of SPELLINGS[field]) {
    const [first, second] = free.filter(({ name }) => headerWords(name).name === spelling)
    if (first === undefined) continue
    if (second !== undefined) {
      issues.push({
        row: header,
        column: second.letter,
        name: second.name,
        found: `the name of column ${first.letter} again`,
        expected: `one column of the ${FIELD_WORD[field].toLowerCase()}, or a map that says which`,
      })
    }
    return first
  }
  return null
}

/** Columns A, B, C … as far as they go without a gap. */
function legColumns(free: readonly ColumnAt[]): ColumnAt[] {
  const byLeg = new Map<number, ColumnAt>()
  for (const column of free) {
    const leg = legNumber(headerWords(column.name).name)
    if (leg !== null && !byLeg.has(leg)) byLeg.set(leg, column)
  }
  const legs: ColumnAt[] = []
  for (let leg = 0; ; leg += 1) {
    const column = byLeg.get(leg)
    if (column === undefined) return legs
    legs.push(column)
  }
}

/** Row from 1 that names most columns; 0 where none names two. */
function headerRow(rows: Table['rows'], map: BarListMap): number {
  let best = { row: 0, score: 1 }
  for (const [index, row] of rows.slice(0, TITLE_ROWS).entries()) {
    const score = headerScore(row, map)
    if (score > best.score) best = { row: index + 1, score }
  }
  return best.row
}

/** How many fields a row names. */
export function headerScore(row: readonly Cell[], map: BarListMap = EMPTY_MAP): number {
  const names = new Set(row.flatMap((cell) => (cell?.kind === 'text' ? [headerWords(cell.text).name] : [])))
  const wanted = Object.values(map.columns ?? {}).flat()
  const asked = wanted.filter((ref) => typeof ref === 'string' && names.has(headerWords(ref).name)).length
  return FIELDS.filter((field) => SPELLINGS[field].some((spelling) => names.has(spelling))).length + asked
}

function columnsAt({ rows }: Table, header: number): ColumnAt[] {
  if (header > 0) {
    return (rows[header - 1] ?? []).flatMap((cell, index) => {
      const name = cellText(cell).trim()
      if (name === '') return []
      return [{ index, letter: columnLetter(index), name, unit: headerWords(name).unit }]
    })
  }
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0)
  return Array.from({ length: width }, (_, index) => ({
    index,
    letter: columnLetter(index),
    name: '',
    unit: null,
  }))
}

type Found = Omit<Columns, 'unread' | 'issues'>

function missing({ header, of, legs, allLegs, all }: Found, map: BarListMap): RowIssue[] {
  const row = header === 0 ? null : header
  const seen =
    header === 0
      ? 'no row of column names'
      : `${
          all
            .map(({ name }) => quoted(name))
            .slice(0, 20)
            .join(', ') || 'no names'
        }`
  const lack = (field: Field, expected: string): RowIssue => {
    return { row, column: null, name: FIELD_WORD[field], found: seen, expected }
  }
  const wanted = (['mark', 'diameter', 'grade', 'count'] as const).filter(
    (field) => of[field] === undefined && !(field === 'grade' && map.given?.grade !== undefined),
  )
  return [
    ...wanted.map((field) =>
      lack(field, `a column such as ${SPELLINGS[field].slice(0, 3).map(quoted).join(' or ')}`),
    ),
    ...(legs.length === 0 && allLegs === null && of.cutLength === undefined
      ? [
          lack(
            'legs',
            'columns "A", "B", "C" …, one column "Legs", or a column "Cut length" for straight bars',
          ),
        ]
      : []),
  ]
}

function unitIssues({ header, of, legs, allLegs }: Found): RowIssue[] {
  const lengths = [
    ...[...LENGTHS].flatMap((field) => (field === 'legs' ? [] : [of[field]])),
    ...legs,
    allLegs ?? undefined,
  ].filter((column) => column !== undefined)
  return lengths.flatMap(({ letter, name, unit }) =>
    unit === null || UNIT_MM[unit] !== undefined
      ? []
      : [{ row: header, column: letter, name, found: `unit ${quoted(unit)}`, expected: 'mm, cm, m or in' }],
  )
}

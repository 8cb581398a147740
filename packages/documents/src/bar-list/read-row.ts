import type { BarRole, SteelRules } from '@castwright/engine/codes'
import type { BarListMap } from './column-map.ts'
import type { ColumnAt, Columns, OneField } from './columns.ts'
import { FIELD_WORD, type Field, ROLE_WORDS, UNIT_MM } from './fields.ts'
import { numberOf } from './number-text.ts'
import { quoted, type RowIssue } from './row-issue.ts'
import { type Cell, cellText, type DecimalSign } from './table.ts'

/** A row as the list states it; null where it does not. Lengths mm, turns degrees. */
export interface StatedBar {
  readonly mark: string
  readonly job: string
  readonly panel: string
  readonly shape: string
  readonly shapeCode: string
  readonly diameter: number
  readonly grade: string
  readonly role: BarRole | null
  readonly count: number
  readonly cutLength: number | null
  readonly legs: readonly number[]
  readonly turns: readonly number[]
  readonly inside: number | null
}

export interface RowInput {
  /** From 1, as the spreadsheet shows it. */
  readonly row: number
  readonly cells: readonly Cell[]
  readonly columns: Columns
  readonly map: BarListMap
  readonly rules: SteelRules
  readonly decimal: DecimalSign | null
  /** mm of sizes that the family calls by name: `No. 5`. */
  readonly named: ReadonlyMap<string, number>
}

const MOST_LEG = 100_000
const MOST_COUNT = 100_000

/** What one row states, and what in it cannot be read. */
export function readRow(input: RowInput): { readonly stated: StatedBar | null; readonly issues: RowIssue[] } {
  const reader = new RowReader(input)
  const { columns, map, rules } = input
  const mark = reader.words('mark', 40)
  const job = reader.words('job', 80, true)
  const panel = reader.words('panel', 80, true)
  const shape = reader.words('shape', 80, true)
  const shapeCode = reader.words('shapeCode', 80, true)
  const diameter = reader.diameter()
  const grade = reader.grade(rules, map.given?.grade)
  const role = reader.role() ?? map.given?.role ?? null
  const count = reader.count()
  const cutLength = reader.length('cutLength', MOST_LEG)
  const legs = columns.allLegs === null ? reader.legs() : reader.list(columns.allLegs, 'legs')
  const turns = columns.of.turns === undefined ? [] : reader.list(columns.of.turns, 'turns')
  const inside = reader.length('inside', 5000)
  const { issues } = reader
  if (issues.length > 0 || mark === null || diameter === null || grade === null || count === null) {
    return { stated: null, issues }
  }
  return {
    stated: {
      mark,
      job: job ?? '',
      panel: panel ?? '',
      shape: shape ?? '',
      shapeCode: shapeCode ?? '',
      diameter,
      grade,
      role,
      count,
      cutLength,
      legs,
      turns,
      inside,
    },
    issues,
  }
}

class RowReader {
  readonly issues: RowIssue[] = []

  constructor(private readonly input: RowInput) {}

  /** Text of a field, null where the cell is empty. An empty cell is an issue unless it may be missing. */
  words(field: OneField, most: number, optional = false): string | null {
    const column = this.input.columns.of[field]
    const cell = this.cell(column)
    if (cell === null) {
      if (!optional) this.fault(column, field, 'nothing', `a ${FIELD_WORD[field].toLowerCase()}`)
      return null
    }
    if (cell.kind === 'date') {
      // A spreadsheet turns a mark such as 3-4 into a day.
      this.fault(column, field, `the date ${cell.text}`, 'text: format the column as text and type it again')
      return null
    }
    if (cell.kind === 'fault') {
      this.fault(column, field, cell.text, 'text')
      return null
    }
    const text = cellText(cell).trim()
    if (text.length > most) {
      this.fault(column, field, `${text.length} characters`, `at most ${most} characters`)
      return null
    }
    return text
  }

  diameter(): number | null {
    const { columns, named } = this.input
    const cell = this.cell(columns.of.diameter)
    const name = /^(?:#|no\.?\s*)(\d+)$/i.exec(cell?.kind === 'text' ? cell.text : '')?.[1]
    const byName = name === undefined ? undefined : named.get(`No. ${name}`)
    if (byName !== undefined) return byName
    const found = this.length('diameter', 60)
    if (found === null && cell === null) {
      this.fault(columns.of.diameter, 'diameter', 'nothing', 'a diameter, mm')
    }
    return found
  }

  grade(rules: SteelRules, given: string | undefined): string | null {
    const column = this.input.columns.of.grade
    const text = this.words('grade', 40, true) ?? given
    const names = rules.grades.map(({ grade }) => grade)
    if (text === undefined) {
      if (this.cell(column) === null) this.fault(column, 'grade', 'nothing', `one of ${names.join(', ')}`)
      return null
    }
    const same = names.find((name) => name.toLowerCase() === text.replace(/\s+/g, '').toLowerCase())
    if (same === undefined) this.fault(column, 'grade', quoted(text), `one of ${names.join(', ')}`)
    return same ?? null
  }

  role(): BarRole | null {
    const text = this.words('role', 40, true)
    if (text === null) return null
    const role = Object.hasOwn(ROLE_WORDS, text.toLowerCase()) ? ROLE_WORDS[text.toLowerCase()] : undefined
    if (role === undefined) {
      this.fault(this.input.columns.of.role, 'role', quoted(text), 'main or stirrup')
      return null
    }
    return role
  }

  count(): number | null {
    const column = this.input.columns.of.count
    const expected = `a whole number from 1 to ${MOST_COUNT}`
    const cell = this.cell(column)
    if (cell === null) {
      this.fault(column, 'count', 'nothing', expected)
      return null
    }
    const value = this.number(column, 'count', cell, expected)
    if (value === null) return null
    if (Number.isInteger(value) && value >= 1 && value <= MOST_COUNT) return value
    this.fault(column, 'count', cellText(cell), expected)
    return null
  }

  /** mm; null where the cell is empty, and where it is an issue. */
  length(field: OneField, most: number): number | null {
    const column = this.input.columns.of[field]
    const cell = this.cell(column)
    return cell === null ? null : this.size(column, field, cell, most)
  }

  /** Legs of their own columns, up to the last that is given. */
  legs(): number[] {
    const { columns } = this.input
    const cells = columns.legs.map((column) => this.cell(column))
    const last = cells.findLastIndex((cell) => cell !== null)
    return columns.legs.slice(0, last + 1).flatMap((column, index) => {
      const cell = cells[index] ?? null
      if (cell === null) {
        const after = columns.legs[last]
        this.fault(column, 'legs', 'nothing', `a length, mm, since ${after?.name || after?.letter} is given`)
        return []
      }
      const leg = this.size(column, 'legs', cell, MOST_LEG)
      return leg === null ? [] : [leg]
    })
  }

  /** Several numbers in one cell: `600 300`, `600 + 300`. */
  list(column: ColumnAt, field: 'legs' | 'turns'): number[] {
    const cell = this.cell(column)
    if (cell === null) return []
    if (cell.kind !== 'text') {
      const value = this.sizeOrTurn(column, field, cell)
      return value === null ? [] : [value]
    }
    const parts = cell.text
      .replace(/,\s+/g, ' ')
      .split(/[\s;+/×x]+/)
      .filter((part) => part !== '' && part !== '°')
    return parts.flatMap((part) => {
      const value = this.sizeOrTurn(column, field, { kind: 'text', text: part })
      return value === null ? [] : [value]
    })
  }

  private sizeOrTurn(column: ColumnAt, field: 'legs' | 'turns', cell: NonNullable<Cell>): number | null {
    if (field === 'legs') return this.size(column, field, cell, MOST_LEG)
    const expected = 'degrees, above 0 to 180'
    const bare = cell.kind === 'text' ? { ...cell, text: cell.text.replace(/°$/, '') } : cell
    const value = this.number(column, field, bare, expected)
    if (value === null || (value > 0 && value <= 180)) return value
    this.fault(column, field, cellText(cell), expected)
    return null
  }

  private size(
    column: ColumnAt | undefined,
    field: Field,
    cell: NonNullable<Cell>,
    most: number,
  ): number | null {
    const long = field === 'legs' || field === 'cutLength'
    const unit = column?.unit ?? (long ? this.input.map.unit : undefined) ?? 'mm'
    const factor = UNIT_MM[unit] ?? 1
    const expected = `a length above 0 to ${Number((most / factor).toPrecision(6))} ${unit}`
    const bare =
      cell.kind === 'text'
        ? { ...cell, text: cell.text.replace(/^[Øø⌀φ]\s*/, '').replace(unit === 'mm' ? /\s*mm$/i : /$^/, '') }
        : cell
    const value = this.number(column, field, bare, expected)
    if (value === null) return null
    // A factor may leave a hair: 1.005 m is 1005 mm.
    const length = factor === 1 ? value : Math.round(value * factor * 1e6) / 1e6
    if (length > 0 && length <= most) return length
    this.fault(column, field, cellText(cell), expected)
    return null
  }

  private number(
    column: ColumnAt | undefined,
    field: Field,
    cell: NonNullable<Cell>,
    expected: string,
  ): number | null {
    if (cell.kind === 'number') return cell.number
    if (cell.kind === 'date') {
      this.fault(column, field, `the date ${cell.text}`, `${expected}: format the column as a number`)
      return null
    }
    const value = cell.kind === 'text' ? numberOf(cell.text, this.input.decimal) : 'none'
    if (typeof value === 'number') return value
    this.fault(
      column,
      field,
      cell.kind === 'fault' ? cell.text : quoted(cell.text),
      value === 'two-ways' ? `${expected}; it can be read in two ways, say the decimal sign` : expected,
    )
    return null
  }

  private cell(column: ColumnAt | undefined): Cell {
    return column === undefined ? null : (this.input.cells[column.index] ?? null)
  }

  private fault(column: ColumnAt | undefined, field: Field, found: string, expected: string): void {
    this.issues.push({
      row: this.input.row,
      column: column?.letter ?? null,
      name: column === undefined || column.name === '' ? FIELD_WORD[field] : column.name,
      found,
      expected,
    })
  }
}

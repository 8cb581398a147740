import {
  type BarListMap,
  type Columns,
  columnLetter,
  FIELD_WORD,
  type Field,
} from '@castwright/documents/bar-list'
import type { ReactElement } from 'react'
import { NumberField, readNumber, SelectField } from '../../look/index.ts'
import { legChoice, spelledMap, withField, withLegs } from './change-map.ts'

const SHOWN: readonly Exclude<Field, 'legs'>[] = [
  'mark',
  'diameter',
  'grade',
  'count',
  'role',
  'cutLength',
  'turns',
  'inside',
  'shape',
  'panel',
  'job',
]
const NEEDED = new Set<Field>(['mark', 'diameter', 'grade', 'count'])

export interface ColumnChoiceProps {
  readonly columns: Columns
  readonly map: BarListMap
  readonly grades: readonly string[]
  readonly onMap: (map: BarListMap) => void
}

/** Which column holds what, one select a field. */
export function ColumnChoice({ columns, map, grades, onMap }: ColumnChoiceProps): ReactElement {
  const spelled = spelledMap(columns, map)
  const given = map.given ?? {}
  return (
    <div className="stack">
      <div className="list-fields">
        {SHOWN.map((field) => (
          <ColumnSelect
            key={field}
            label={`${FIELD_WORD[field]}${NEEDED.has(field) ? ', needed' : ''}`}
            columns={columns}
            letter={columns.of[field]?.letter ?? null}
            onLetter={(letter) => onMap(withField(spelled, field, letter))}
          />
        ))}
      </div>
      <LegSelects columns={columns} spelled={spelled} onMap={onMap} />
      <div className="list-fields">
        <SelectField
          label="Grade where none is given"
          value={given.grade ?? ''}
          onChange={({ currentTarget: { value } }) => {
            const { grade: _grade, ...rest } = given
            onMap({ ...map, given: value === '' ? rest : { ...rest, grade: value } })
          }}
        >
          <option value="">none: it is an error</option>
          {grades.map((grade) => (
            <option key={grade}>{grade}</option>
          ))}
        </SelectField>
        <SelectField
          label="Decimal sign"
          value={map.decimal ?? ''}
          onChange={({ currentTarget: { value } }) => {
            const { decimal: _decimal, ...rest } = map
            onMap(value === 'point' || value === 'comma' ? { ...rest, decimal: value } : rest)
          }}
        >
          <option value="">as the list shows it</option>
          <option value="point">point: 12.5</option>
          <option value="comma">comma: 12,5</option>
        </SelectField>
        <SelectField
          label="Unit of legs without one"
          value={map.unit ?? ''}
          onChange={({ currentTarget: { value } }) => {
            const { unit: _unit, ...rest } = map
            onMap(value === 'cm' || value === 'm' || value === 'in' ? { ...rest, unit: value } : rest)
          }}
        >
          <option value="">mm</option>
          <option value="cm">cm</option>
          <option value="m">m</option>
          <option value="in">in</option>
        </SelectField>
        <NumberField
          label="Row of the names"
          value={String(columns.header)}
          note="0: there are none."
          onText={(text) => {
            const row = readNumber(text)
            if (row !== null && Number.isInteger(row) && row >= 0 && row <= 1000) {
              const { columns: _columns, ...rest } = map
              onMap({ ...rest, header: row })
            }
          }}
        />
      </div>
    </div>
  )
}

/** Legs: a column each, as many as are chosen and one more, or one column for all. */
function LegSelects({
  columns,
  spelled,
  onMap,
}: {
  readonly columns: Columns
  readonly spelled: BarListMap
  readonly onMap: (map: BarListMap) => void
}): ReactElement {
  const { all, each } = legChoice(columns)
  return (
    <fieldset className="list-legs">
      <legend>Legs, outside dimensions</legend>
      <div className="list-fields">
        <ColumnSelect
          label="All legs in one column"
          columns={columns}
          letter={all}
          onLetter={(letter) => onMap(withLegs(spelled, { all: letter, each: [] }))}
        />
        {all !== null
          ? null
          : [...each, null].map((letter, leg) => (
              <ColumnSelect
                // biome-ignore lint/suspicious/noArrayIndexKey: a leg is its place in the row
                key={leg}
                label={`Leg ${columnLetter(leg)}`}
                columns={columns}
                letter={letter}
                onLetter={(next) => {
                  const legs =
                    next === null ? each.slice(0, leg) : [...each.slice(0, leg), next, ...each.slice(leg + 1)]
                  onMap(withLegs(spelled, { all: null, each: legs }))
                }}
              />
            ))}
      </div>
    </fieldset>
  )
}

function ColumnSelect({
  label,
  columns: { all },
  letter,
  onLetter,
}: {
  readonly label: string
  readonly columns: Columns
  readonly letter: string | null
  readonly onLetter: (letter: string | null) => void
}): ReactElement {
  return (
    <SelectField
      label={label}
      value={letter ?? ''}
      onChange={({ currentTarget: { value } }) => onLetter(value === '' ? null : value)}
    >
      <option value="">not in this list</option>
      {all.map((column) => (
        <option key={column.letter} value={column.letter}>
          {column.letter} {column.name}
        </option>
      ))}
    </SelectField>
  )
}

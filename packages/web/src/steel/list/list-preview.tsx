import { issuePlace, type RowIssue } from '@castwright/documents/bar-list'
import { Fragment, type ReactElement, useState } from 'react'
import { Button, SelectField, VerdictMark } from '../../look/index.ts'
import type { ListRow, ListRows } from './list-rows.ts'

/** Rows that are drawn at once. */
const FIRST = 100

/** The rows of a list, what is wrong or to be looked at below each. */
export function ListPreview({ columns, rows }: ListRows): ReactElement {
  const [which, setWhich] = useState<'all' | 'said'>('all')
  const [most, setMost] = useState(FIRST)
  const said = rows.filter(({ errors, warnings }) => errors.length + warnings.length > 0)
  const chosen = which === 'all' ? rows : said
  const shown = chosen.slice(0, most)
  return (
    <div className="stack">
      {said.length === 0 ? null : (
        <div className="row">
          <SelectField
            label="Rows shown"
            value={which}
            onChange={({ currentTarget: { value } }) => setWhich(value === 'said' ? 'said' : 'all')}
          >
            <option value="all">all {rows.length}</option>
            <option value="said">the {said.length} with a remark</option>
          </SelectField>
        </div>
      )}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <section className="scroll-x list-table" aria-label="Rows of the list" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Row</th>
              {columns.map(({ letter, name }) => (
                <th key={letter} scope="col">
                  {name || letter}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <OneRow key={row.row} of={row} columns={columns} />
            ))}
          </tbody>
        </table>
      </section>
      {shown.length < chosen.length ? (
        <Button onClick={() => setMost(most + 500)}>
          Show more: {shown.length} of {chosen.length} rows are shown
        </Button>
      ) : null}
    </div>
  )
}

function OneRow({
  of: { row, good, cells, errors, warnings },
  columns,
}: {
  readonly of: ListRow
  readonly columns: ListRows['columns']
}): ReactElement {
  const remarks = errors.length + warnings.length > 0
  return (
    <Fragment>
      <tr className={remarks ? 'list-remarked' : undefined}>
        <th scope="row" className="figure">
          {row}
        </th>
        {cells.map((cell, index) => (
          <td key={columns[index]?.letter} className={good ? undefined : 'list-bad'}>
            {cell}
          </td>
        ))}
      </tr>
      {remarks ? (
        <tr>
          <td colSpan={columns.length + 1}>
            <ul className="plain list-remarks">
              {errors.map((issue) => (
                <Remark key={issueKey(issue)} issue={issue} wrong />
              ))}
              {warnings.map((issue) => (
                <Remark key={issueKey(issue)} issue={issue} wrong={false} />
              ))}
            </ul>
          </td>
        </tr>
      ) : null}
    </Fragment>
  )
}

/** One thing found in a list, in words. */
export function Remark({
  issue,
  wrong,
}: {
  readonly issue: RowIssue
  readonly wrong: boolean
}): ReactElement {
  const place = issuePlace(issue)
  const words = `${place === '' ? '' : `${place}: `}found ${issue.found}, expected ${issue.expected}.`
  return (
    <li className="mark-line">
      {wrong ? <VerdictMark verdict="fail" size={20} silent /> : <span aria-hidden="true">→</span>}
      <span>
        {wrong ? <strong>Wrong, </strong> : 'To look at, '}
        {words}
      </span>
    </li>
  )
}

export function issueKey({ row, column, found, expected }: RowIssue): string {
  return `${row} ${column} ${found} ${expected}`
}

import { panelStep } from '@castwright/engine/steps'
import type { StoredEntry } from '@castwright/record'
import type { ReactElement } from 'react'

export interface EntryTableProps {
  readonly entries: readonly StoredEntry[]
  readonly zone: string
}

/** Entries as rows: place in the log, what, about what, by whom, seen, stored. */
export function EntryTable({ entries, zone }: EntryTableProps): ReactElement {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  })
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled with the keyboard
    <section className="scroll-x" tabIndex={0} aria-label="Last entries, scrolls sideways">
      <table>
        <thead>
          <tr>
            <th scope="col" className="figure">
              No.
            </th>
            <th scope="col">What</th>
            <th scope="col">About</th>
            <th scope="col">By</th>
            <th scope="col">Seen</th>
            <th scope="col">In the record</th>
          </tr>
        </thead>
        <tbody>
          {entries.map((entry) => (
            <tr key={entry.id}>
              <td className="figure">{entry.index}</td>
              <td>{whatOf(entry)}</td>
              <td>{entry.subject.id}</td>
              <td>
                {entry.person.name}, {entry.person.role}
              </td>
              <td className="number">{format.format(new Date(entry.seen))}</td>
              <td className="number">{format.format(new Date(entry.stored))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function whatOf(entry: StoredEntry): string {
  const step = entry.step ? `${panelStep(entry.step).name}, ` : ''
  const check = entry.check ? ` ${entry.check}` : ''
  return `${step}${entry.kind}${check}`
}

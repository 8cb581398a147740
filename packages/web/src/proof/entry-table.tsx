import { panelStep } from '@castwright/engine/steps'
import type { StoredEntry } from '@castwright/record'
import type { ReactElement } from 'react'

export interface EntryTableProps {
  readonly entries: readonly StoredEntry[]
  readonly zone: string
}

/** Entries as rows: place in the log, what, about what, by whom, seen, stored. On a phone each is a short block. */
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
  const time = (instant: string): string => format.format(new Date(instant))
  return (
    <ol className="entries">
      {entries.map((entry) => (
        <li key={entry.id}>
          <span className="entries-number number">{entry.index}</span>
          <strong>{whatOf(entry)}</strong>
          <span>{entry.subject.id}</span>
          <span>
            {entry.person.name}, {entry.person.role}
          </span>
          <span className="quiet">seen {time(entry.seen)}</span>
          <span className="quiet">in the record {time(entry.stored)}</span>
        </li>
      ))}
    </ol>
  )
}

function whatOf(entry: StoredEntry): string {
  const step = entry.step ? `${panelStep(entry.step).name}, ` : ''
  const check = entry.check ? ` ${entry.check}` : ''
  return `${step}${entry.kind}${check}`
}

import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { usePanelRoom } from './panel-context.ts'

const SHEETS = [
  ['mould-card', 'Mould card'],
  ['pour-card', 'Pour card'],
  ['steel-schedule', 'Steel schedule'],
  ['bar-tags', 'Bar tags'],
  ['tie-plan', 'Tie plan'],
  ['bend-gauge', 'Bend gauge'],
  ['lift-card', 'Lift card'],
  ['lift-working', 'Lift working'],
  ['label', 'Label'],
  ['passport', 'Passport sheet'],
] as const

interface Panel {
  readonly job: string
  readonly mark: string
}

function panelAddress({ job, mark }: Panel): string {
  return `/api/panels/${encodeURIComponent(job)}/${encodeURIComponent(mark)}`
}

export function passportAddress(panel: Panel): string {
  return `${panelAddress(panel)}/passport`
}

/** Paper sheets of this panel, made by the server from the record. */
export function SheetLinks(): ReactElement {
  const { facts, state } = usePanelRoom()
  const handed = state.passports.get(`${facts.job}/${facts.mark}`) ?? []
  return (
    <Sheet
      title="Sheets"
      level={3}
      className="no-print"
      note="PDF, made by the server from the record; needs the network."
    >
      <ul className="sheet-links">
        {SHEETS.map(([sheet, name]) => (
          <li key={sheet}>
            <a
              className="button"
              href={`${panelAddress(facts)}/sheets/${sheet}`}
              target="_blank"
              rel="noreferrer"
            >
              {name}
            </a>
          </li>
        ))}
        {handed.length > 0 ? (
          <li>
            <a className="button" href={passportAddress(facts)} download={`${facts.mark}.passport.json`}>
              Passport file
            </a>
          </li>
        ) : null}
      </ul>
    </Sheet>
  )
}

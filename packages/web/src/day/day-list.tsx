import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { fixed } from '../look/index.ts'
import type { BedDay, DayBlock, DayCurve, PanelRef } from './bed-day.ts'
import { WORK } from './bed-row.ts'
import { stepOf } from './day-picture.tsx'

interface Item {
  readonly at: number
  readonly until: number | null
  readonly bed: string
  readonly what: string
  readonly panel: PanelRef
  readonly step: string
  readonly done: boolean
  readonly by?: DayBlock['by']
}

export interface DayListProps {
  readonly rows: readonly BedDay[]
  readonly now: number
  readonly clock: (at: number) => string
}

/** The same day in order of time, as words. */
export function DayList({ rows, now, clock }: DayListProps): ReactElement {
  const items = rows
    .flatMap(({ bed, blocks, curves }) => [
      ...blocks.map((block) => blockItem(bed, block)),
      ...curves.map((curve) => curveItem(bed, curve, now)),
    ])
    .sort((a, b) => a.at - b.at || (a.bed < b.bed ? -1 : 1))
  if (items.length === 0) return <p className="quiet">Nothing is on the beds in these hours.</p>
  const next = items.findIndex(({ at }) => at > now)
  return (
    <ol className="day-list">
      {items.map((item, index) => (
        <li
          key={`${item.panel.job}/${item.panel.mark} ${item.what}`}
          className={index === next ? 'day-next' : undefined}
        >
          <Link to="/panel/$job/$mark" params={item.panel} search={{ step: item.step }}>
            <span className="day-list-time number">
              {clock(item.at)}
              {item.until === null ? '' : ` to ${clock(item.until)}`}
            </span>
            <span className="day-list-what">
              <strong>
                {item.what} {item.panel.mark}
              </strong>
              <span className="quiet">
                {/^\d+$/.test(item.bed) ? `bed ${item.bed}` : item.bed},{' '}
                {item.done ? 'done' : item.by === 'readings' ? 'by readings' : 'planned'}
              </span>
            </span>
          </Link>
        </li>
      ))}
    </ol>
  )
}

function blockItem(bed: string, block: DayBlock): Item {
  return {
    at: block.from,
    until: block.to,
    bed,
    what: block.kind === 'finish' ? 'Power float' : WORK[block.kind],
    panel: block.panel,
    step: stepOf(block),
    done: block.done,
    by: block.by,
  }
}

/** When the low edge meets the wanted strength; where that is not in these hours, that it cures. */
function curveItem(bed: string, curve: DayCurve, now: number): Item {
  const { panel, met, wanted, points, cast } = curve
  if (met !== null) {
    const what = `Low edge at ${fixed(wanted, 1)} MPa,`
    return { at: met, until: null, bed, what, panel, step: 'strip', done: false }
  }
  const [from, until] = [points[0]?.at ?? 0, points.at(-1)?.at ?? null]
  const done = cast && until !== null && until <= now
  return { at: from, until, bed, what: 'Curing', panel, step: 'cure', done }
}

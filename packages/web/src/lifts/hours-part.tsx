import { type HourRow, hoursPicture } from '@castwright/documents/picture'
import type { Plan } from '@castwright/engine/plan'
import { type ConditionNow, liftHoursNow, type PanelFacts } from '@castwright/engine/steps'
import { type ReactElement, useMemo } from 'react'
import { Explain, Sheet } from '../look/index.ts'
import { PictureView } from '../panel/picture-view.tsx'
import { whenText } from '../panel/when.ts'
import { useNow, useYardState } from '../record/index.ts'

const HOUR = 3_600_000
/** Least and greatest span of the picture, h. */
const LEAST = 12
const MOST = 168

/** When each condition of the lift is met by the low edge of the strength; it follows the readings as they come in. */
export function HoursPart({
  facts,
  plan,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
}): ReactElement {
  const { yard } = useYardState()
  const now = useNow(60_000)
  const minute = `${now.toISOString().slice(0, 16)}:00.000Z`
  const hours = useMemo(() => liftHoursNow({ plan, facts, yard, now: minute }), [plan, facts, yard, minute])
  const governing = hours.first.governing
  const rows = shownConditions(hours.conditions, governing?.check ?? null)
  const zone = yard.yard?.timezone ?? 'UTC'
  const mixed = facts.cast === null ? null : Date.parse(facts.cast.at)
  const start = mixed === null ? 0 : Math.floor(mixed / HOUR) * HOUR
  const last = Math.max(LEAST, ...rows.flatMap(({ hour }) => hour ?? [])) * 1.15
  const end = start + Math.min(MOST, Math.ceil(last)) * HOUR
  const when = (instant: number): string =>
    instant < start
      ? 'before mixing'
      : mixed === null
        ? `${((instant - start) / HOUR).toFixed(1)} h from mixing`
        : whenText(new Date(instant).toISOString(), zone, now)
  const clock = (instant: number): string =>
    mixed === null
      ? `${Math.round((instant - start) / HOUR)} h`
      : new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' }).format(
          instant,
        )
  return (
    <Sheet
      title="When is it met?"
      note={`Low edge of the strength band, along ${hours.temperature === 'logged' ? 'this pour’s own temperatures' : 'the planned temperature'}.${governing === null ? '' : ` ${governing.what} governs.`} A forecast: the hold opens on results of the pour.`}
    >
      <PictureView
        height={320}
        layOut={(frame) =>
          hoursPicture({
            rows: rows.map((row) => hourRow(row, start, mixed ?? 0, governing?.check ?? null)),
            now: mixed === null ? start - HOUR : now.getTime(),
            start,
            end,
            clock,
            when,
            frame,
          })
        }
      />
      {hours.conditions.map((condition) =>
        condition.working.length === 0 || condition.check !== governing?.check ? null : (
          <Explain key={condition.check} about={condition.what} working={condition.working} />
        ),
      )}
    </Sheet>
  )
}

/** Bars that are drawn: those of the first lift that ask for a strength, the one that governs among them. */
function shownConditions(conditions: readonly ConditionNow[], governing: string | null): ConditionNow[] {
  const first = conditions.filter(
    ({ stage, check }) =>
      check === governing || stage === null || ['release', 'turn', 'hang'].includes(stage),
  )
  const rank = ({ check, hour, state }: ConditionNow): number =>
    check === governing
      ? Number.POSITIVE_INFINITY
      : state === 'at'
        ? (hour ?? 0)
        : state === 'always'
          ? -1
          : 1e6
  return [...first].sort((a, b) => rank(b) - rank(a)).slice(0, MOST_ROWS)
}

const MOST_ROWS = 8

function hourRow(row: ConditionNow, start: number, mixed: number, governing: string | null): HourRow {
  const words: Readonly<Record<ConditionNow['state'], string | null>> = {
    at: null,
    always: 'at any strength',
    never: 'at no strength',
    beyond: 'later than is computed',
    unknown: 'not known',
  }
  const said = words[row.state]
  return {
    name: row.what,
    from:
      row.state === 'at' && row.hour !== null
        ? mixed + row.hour * HOUR
        : row.state === 'always'
          ? start
          : null,
    ...(said === null ? {} : { words: said }),
    ...(row.check === governing ? { governs: true } : {}),
  }
}

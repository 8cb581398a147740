import './strength.css'
import './specimens.css'
import { codeFamily } from '@castwright/engine/codes'
import { counts } from '@castwright/engine/pour/loads'
import { dueTests, type SamplesWanted, samplesWanted } from '@castwright/engine/quality/specimens'
import type { PanelFacts } from '@castwright/engine/steps'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useMemo, useState } from 'react'
import { flushSync } from 'react-dom'
import {
  AssumedList,
  Button,
  Explain,
  fixed,
  Notice,
  Sheet,
  SourceLine,
  useTitle,
  VerdictMark,
} from '../look/index.ts'
import { useNow, useYardState } from '../record/index.ts'
import { fileName, saveFile } from '../steel/list/save-file.ts'
import { calendarText, type DueGroup, dueList } from './due-days.ts'
import { DueRow } from './due-row.tsx'
import { StrengthFrame } from './strength-frame.tsx'

/** Coming tests that are shown without a tap. */
const SHOWN = 6

/** What is to be tested: overdue, today, in the next days; and what the day's pours want of specimens. */
export function SpecimensScreen(): ReactElement {
  useTitle('Strength: specimens')
  const { panels, yard } = useYardState()
  const minute = useNow(60_000)
  const zone = yard.yard?.timezone ?? 'UTC'
  const family = yard.yard?.code
  const now = minute.toISOString()
  const list = useMemo(
    () =>
      family === undefined
        ? null
        : dueList(
            dueTests({ panels: panels.values(), family: codeFamily(family), timezone: zone, now }),
            Date.parse(now),
          ),
    [panels, family, zone, now],
  )
  const wanted = useMemo(
    () =>
      family === undefined
        ? []
        : samplesWanted({ panels: panels.values(), family: codeFamily(family), timezone: zone, now }),
    [panels, family, zone, now],
  )
  const [all, setAll] = useState(false)
  const unplanned = useMemo(() => [...panels.values()].flatMap(withoutPlan), [panels])
  if (list === null)
    return (
      <StrengthFrame page="Specimens">
        <Notice kind="unknown" title="The yard’s file is missing">
          Its code family says how far a test may miss its age.
        </Notice>
      </StrengthFrame>
    )
  const open = [...list.overdue, ...list.today, ...list.week, ...list.later]
  const part = (groups: readonly DueGroup[]): ReactElement => (
    <ul className="due-list">
      {groups.map((group) => (
        <li key={group.key}>
          <DueRow group={group} zone={zone} now={minute} />
        </li>
      ))}
    </ul>
  )
  return (
    <StrengthFrame page="Specimens">
      <p role="status" className="due-count">
        {list.overdue.length} overdue, {list.today.length} due today, {list.week.length} in the next seven
        days
      </p>
      {open.some(({ first }) => first.within === null) ? (
        <p className="field-note due-count">
          Where no hours are given, how far a test may miss its age is not confirmed for this code family: it
          counts as due for its day.
        </p>
      ) : null}
      {open.length === 0 && list.done.length === 0 ? (
        <Sheet
          title="No specimens on record"
          note="They are entered when the concrete arrives: the card Deliver of a panel asks for them."
        />
      ) : null}
      {list.overdue.length === 0 ? null : (
        <Sheet
          title="Overdue"
          note="The age is past. Test them all the same and enter when: the age that counts is the one they had."
        >
          {part(list.overdue)}
        </Sheet>
      )}
      {list.today.length === 0 ? null : <Sheet title="Today">{part(list.today)}</Sheet>}
      {list.week.length === 0 ? null : (
        <Sheet title="Next seven days">
          {part(list.week.slice(0, SHOWN))}
          {list.week.length > SHOWN ? (
            <details className="explain" open={all || undefined}>
              <summary>{list.week.length - SHOWN} more</summary>
              {part(list.week.slice(SHOWN))}
            </details>
          ) : null}
        </Sheet>
      )}
      {list.later.length === 0 ? null : (
        <Sheet title="Later">
          <details className="explain" open={all || undefined}>
            <summary>{list.later.length} tests</summary>
            {part(list.later)}
          </details>
        </Sheet>
      )}
      <Wanted wanted={wanted} />
      {unplanned.length === 0 ? null : (
        <Sheet
          title="Made, and no test planned"
          note="Marks on dockets that stand in no set: enter them on the card Deliver, with the ages at which they are tested."
        >
          <ul className="plain-list">
            {unplanned.map(({ job, mark, marks }) => (
              <li key={`${job}/${mark}`}>
                <Link to="/panel/$job/$mark" params={{ job, mark }} search={{ step: 'deliver' }}>
                  {mark}
                </Link>
                : {marks.join(', ')}
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      {list.done.length === 0 ? null : (
        <Sheet title="Tested in the last seven days">
          <details className="explain" open={all || undefined}>
            <summary>{list.done.length} tests</summary>
            {part(list.done)}
          </details>
        </Sheet>
      )}
      {open.length === 0 ? null : (
        <div className="row no-print">
          <Button
            look="plain"
            onClick={() => {
              // What is folded away does not print.
              flushSync(() => setAll(true))
              window.print()
            }}
          >
            Print the list
          </Button>
          <Button
            look="plain"
            onClick={() =>
              saveFile(
                calendarText(open, now),
                `${fileName('specimens', yard.yard?.name ?? '')}.ics`,
                'text/calendar',
              )
            }
          >
            Calendar file
          </Button>
        </div>
      )}
    </StrengthFrame>
  )
}

/** Specimens on the dockets of a panel that no set plans to test, and that have no result. */
function withoutPlan({ job, mark, dockets, sets = [], specimens }: PanelFacts) {
  const known = new Set([
    ...sets.flatMap(({ tests }) => tests.flatMap((test) => test.specimens)),
    ...specimens.map(({ specimen }) => specimen),
  ])
  const marks = dockets
    .filter(counts)
    .flatMap((load) => load.specimens ?? [])
    .filter((each) => !known.has(each))
  return marks.length === 0 ? [] : [{ job, mark, marks }]
}

function Wanted({ wanted }: { readonly wanted: readonly SamplesWanted[] }): ReactElement {
  return (
    <Sheet title="Specimens that today’s pours want">
      {wanted.length === 0 ? (
        <p>Nothing was poured today.</p>
      ) : (
        <ul className="due-list">
          {wanted.map(({ mix, volume, panels, sets, check, assumed }) => (
            <li key={mix} className="wanted-row">
              <VerdictMark verdict={check.verdict} />
              <div>
                <strong>{mix}</strong>, {panels.length} {panels.length === 1 ? 'pour' : 'pours'},{' '}
                {volume === null ? 'volume not known' : `${fixed(volume, 1)} m³`}:{' '}
                {sets.length === 0
                  ? 'no set made'
                  : `${sets.length} ${sets.length === 1 ? 'set' : 'sets'} made`}
                , {check.limit === null ? 'wanted not known' : `${check.limit} wanted`}
                {(check.unknown ?? []).map((gap) => (
                  <div key={gap} className="field-note">
                    Not known: {gap}
                  </div>
                ))}
                <div className="field-note">
                  <SourceLine source={check.source} />
                </div>
                {assumed.length === 0 ? null : (
                  <Explain about={`samples of ${mix}`} word="assumed" working={[]}>
                    <AssumedList assumed={assumed} />
                  </Explain>
                )}
              </div>
            </li>
          ))}
        </ul>
      )}
    </Sheet>
  )
}

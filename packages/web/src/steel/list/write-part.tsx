import { scheduleTable, writeCsv, writeXlsx } from '@castwright/documents/bar-list'
import type { PanelFacts } from '@castwright/engine/steps'
import { type ReactElement, useEffect, useMemo, useRef, useState } from 'react'
import { Button, Notice, SelectField, Sheet } from '../../look/index.ts'
import { useActing } from '../../panel/acting.ts'
import { useYardState } from '../../record/index.ts'
import { fileName, saveFile } from './save-file.ts'
import { schedulesOf } from './schedules.ts'

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

/** The schedule of a panel or of a job, as a file. */
export function WritePart(): ReactElement {
  const { panels, yard } = useYardState()
  const { busy, fault, run } = useActing()
  const [which, setWhich] = useState('')
  const [done, setDone] = useState(0)
  const [gaps, setGaps] = useState<readonly string[]>([])
  const stop = useRef<AbortController | null>(null)
  useEffect(() => () => stop.current?.abort(), [])
  const drawn = useMemo(
    () =>
      [...panels.values()]
        .filter(({ drawing }) => drawing !== null)
        .sort((a, b) => nameOf(a).localeCompare(nameOf(b), 'en', { numeric: true })),
    [panels],
  )
  const jobs = useMemo(() => [...new Set(drawn.map(({ job }) => job))], [drawn])
  const first = jobs[0]
  const value = which || (first === undefined ? '' : `job ${first}`)
  const chosen = drawn.filter((facts) => value === `job ${facts.job}` || value === `panel ${nameOf(facts)}`)
  const write = (form: 'csv' | 'xlsx'): void => {
    setGaps([])
    setDone(0)
    void run(async () => {
      stop.current = new AbortController()
      const { signal } = stop.current
      const schedules = await schedulesOf(chosen, yard.yard, { onDone: setDone, stop: signal })
      const table = scheduleTable(schedules)
      const [panel] = chosen
      const one = value.startsWith('panel ')
      const name = fileName(panel?.job ?? '', one ? (panel?.mark ?? '') : '', `bars.${form}`)
      if (form === 'csv') saveFile(await writeCsv(table, { bom: true }), name, 'text/csv')
      else saveFile(await writeXlsx(table), name, XLSX)
      setGaps(table.unknown)
    })
  }
  if (first === undefined) {
    return (
      <Sheet title="A list goes out">
        <p>No panel has a drawing yet. Enter one under Panels.</p>
      </Sheet>
    )
  }
  return (
    <Sheet
      title="A list goes out"
      note="The bars of the plan: cut lengths along the centreline, legs outside, mm. The drawing and the engineer’s schedule outrank them."
    >
      <div className="stack">
        <div className="row steel-choice">
          <SelectField
            label="Bars of"
            value={value}
            disabled={busy}
            onChange={({ currentTarget }) => {
              setWhich(currentTarget.value)
              setGaps([])
              setDone(0)
            }}
          >
            {jobs.map((job) => (
              <optgroup key={job} label={job}>
                <option value={`job ${job}`}>{job}, all panels</option>
                {drawn
                  .filter((facts) => facts.job === job)
                  .map((facts) => (
                    <option key={nameOf(facts)} value={`panel ${nameOf(facts)}`}>
                      {facts.mark}
                    </option>
                  ))}
              </optgroup>
            ))}
          </SelectField>
        </div>
        <div className="row">
          {busy ? (
            <Button onClick={() => stop.current?.abort(new Error('Stopped: no file was made.'))}>Stop</Button>
          ) : (
            <>
              <Button look="main" onClick={() => write('xlsx')}>
                Save as XLSX
              </Button>
              <Button onClick={() => write('csv')}>Save as CSV</Button>
            </>
          )}
        </div>
        <p role="status">
          {busy
            ? `${done} of ${chosen.length} panels computed …`
            : done === 0 || fault !== null
              ? ''
              : `${done} ${done === 1 ? 'panel' : 'panels'} written.`}
        </p>
        {fault === null ? null : (
          <p role="alert" className="check-fault">
            {fault}
          </p>
        )}
        {gaps.length === 0 ? null : (
          <Notice kind="unknown" title={`${gaps.length} things are not known, so the list is not whole`}>
            <ul className="plain">
              {gaps.slice(0, 20).map((gap) => (
                <li key={gap}>{gap}</li>
              ))}
            </ul>
            {gaps.length > 20 ? `And ${gaps.length - 20} more.` : ''}
          </Notice>
        )}
      </div>
    </Sheet>
  )
}

function nameOf({ job, mark }: PanelFacts): string {
  return `${job}/${mark}`
}

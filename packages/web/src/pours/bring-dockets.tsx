import type { ReadDockets } from '@castwright/documents/docket-list'
import { InputError } from '@castwright/engine/working'
import { type ReactElement, useMemo, useState } from 'react'
import { Button, Field, FileField, Notice, SelectField } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import { mayDo } from '../panel/entitled.ts'
import { fieldTime } from '../panel/when.ts'
import { useInstant, usePerson, useRecord, useYardState } from '../record/index.ts'
import { importPlan } from './docket-import.ts'

/** A list that is longer is cut on the screen, not in what is taken. */
const SHOWN = 20

/** A supplier's list of the day's dockets: looked at row by row, taken whole or not at all. */
export function BringDockets(): ReactElement | null {
  const { panels, yard } = useYardState()
  const person = usePerson()
  const record = useRecord()
  const instant = useInstant()
  const zone = yard.yard?.timezone ?? 'UTC'
  const { busy, fault, run } = useActing()
  const [file, setFile] = useState<File | null>(null)
  const [read, setRead] = useState<ReadDockets | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const [done, setDone] = useState<string | null>(null)
  const [day, setDay] = useState(() => fieldTime(instant(), zone).slice(0, 10))
  const [fallback, setFallback] = useState('')
  const drawn = useMemo(() => [...panels.values()].filter(({ drawing }) => drawing !== null), [panels])
  const plan = useMemo(
    () => (read === null ? null : importPlan({ rows: read.rows, panels: drawn, fallback })),
    [read, drawn, fallback],
  )
  const look = async (chosen: File, of: string): Promise<void> => {
    setFile(chosen)
    setDone(null)
    setWrong(null)
    setRead(null)
    try {
      const [{ readDockets }, { readTable }] = await Promise.all([
        import('@castwright/documents/docket-list'),
        import('@castwright/documents/bar-list'),
      ])
      const table = await readTable({ bytes: new Uint8Array(await chosen.arrayBuffer()), name: chosen.name })
      const dates = yard.yard?.code === 'us' ? 'month first' : 'day first'
      setRead(readDockets({ table, zone, day: of === '' ? null : of, dates }))
    } catch (error) {
      setWrong(error instanceof InputError ? error.message : `${chosen.name} could not be read.`)
    }
  }
  if (!mayDo(person.role, 'docket')) return null
  const faults = [
    ...(read?.errors ?? []).map(({ row, column, name, found, expected }) => ({
      key: `${row} ${column} ${name} ${expected}`,
      text: `Row ${row ?? '?'}${column === null ? '' : `, column ${column}`} (${name ?? 'row'}): found ${found}, expected ${expected}`,
    })),
    ...(plan?.faults ?? []).map(({ row, text }) => ({ key: `${row} ${text}`, text: `Row ${row}: ${text}` })),
  ]
  const loads = plan?.loads ?? []
  const take = (): void => {
    void run(() => record.addAll(loads.map(({ draft }) => draft))).then((ok) => {
      if (!ok) return
      setDone(`${loads.length} ${loads.length === 1 ? 'load' : 'loads'} recorded.`)
      setRead(null)
      setFile(null)
    })
  }
  return (
    <details className="bring-dockets">
      <summary>Bring in a list of dockets</summary>
      <div className="stack">
        <div className="docket-part">
          <FileField
            label="List from the supplier"
            accept=".csv,.txt,.xlsx,text/csv,text/plain"
            note="CSV or XLSX, a load a row: docket, panel, truck, mix, volume, batched. Nothing is taken where any row is wrong."
            onFiles={([chosen]) => chosen && void look(chosen, day)}
          />
          <Field
            label="Day of times without one"
            type="date"
            value={day}
            onChange={(event) => {
              setDay(event.currentTarget.value)
              if (file !== null) void look(file, event.currentTarget.value)
            }}
          />
          <SelectField
            label="Panel of rows that name none"
            value={fallback}
            onChange={(event) => setFallback(event.currentTarget.value)}
          >
            <option value="">not given</option>
            {drawn.map(({ job, mark }) => (
              <option key={`${job}/${mark}`} value={`${job}/${mark}`}>
                {job}: {mark}
              </option>
            ))}
          </SelectField>
        </div>
        {wrong === null && fault === null ? null : (
          <p role="alert" className="check-fault">
            {wrong ?? fault}
          </p>
        )}
        {done === null ? null : <Notice title={done} />}
        {read === null || plan === null ? null : (
          <>
            {faults.length === 0 ? null : (
              <Notice kind="fail" title={`${file?.name ?? 'The list'} is not taken`}>
                <ul>
                  {faults.slice(0, SHOWN).map(({ key, text }) => (
                    <li key={key}>{text}</li>
                  ))}
                </ul>
                {faults.length > SHOWN ? `And ${faults.length - SHOWN} more.` : null}
              </Notice>
            )}
            {read.unread.length === 0 ? null : (
              <p className="field-note">Not read: {read.unread.join(', ')}.</p>
            )}
            <div role="status">
              <ul className="plain-list">
                {loads.slice(0, SHOWN).map(({ panel, number, fields }) => (
                  <li key={`${panel} ${number}`}>
                    <strong>{number}</strong> for {panel.slice(panel.indexOf('/') + 1)}, {fields}{' '}
                    {fields === 1 ? 'field' : 'fields'}
                  </li>
                ))}
                {loads.length > SHOWN ? <li>And {loads.length - SHOWN} more.</li> : null}
                {plan.known > 0 ? <li>{plan.known} on record already.</li> : null}
                {loads.length === 0 && plan.known === 0 && faults.length === 0 ? (
                  <li>No loads in it.</li>
                ) : null}
              </ul>
            </div>
            <Button disabled={busy || faults.length > 0 || loads.length === 0} onClick={take}>
              Record {loads.length} {loads.length === 1 ? 'load' : 'loads'}
            </Button>
          </>
        )}
      </div>
    </details>
  )
}

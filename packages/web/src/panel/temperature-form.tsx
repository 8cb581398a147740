import { guessMap, type LoggerMap, logOf, type ReadLog } from '@castwright/documents/logger-file'
import { channelReadings, type LogFault, logFaults } from '@castwright/engine/cure/logger'
import type { Card } from '@castwright/engine/steps'
import { InputError } from '@castwright/engine/working'
import { type ReactElement, useMemo, useState } from 'react'
import { CheckField, Field, FileField } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { LOG_ASKED, logInPlace } from './acts/log-in-place.ts'
import { recordTemperature } from './acts/record-temperature.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { KeptWord } from './kept-word.tsx'
import { LoggerColumns } from './logger-columns.tsx'
import { headOf, keepMap, keptMap } from './logger-map-kept.ts'
import { usePanelRoom } from './panel-context.ts'
import { type LoggerTable, readLoggerTable } from './temperature-log.ts'

interface Brought {
  readonly table: LoggerTable
  readonly map: LoggerMap
  readonly unsure: readonly string[]
}

/** Files of any logger: columns are mapped once, what is wrong with the readings is shown, and nothing of it is mended. */
export function TemperatureForm({ card }: { readonly card: Card }): ReactElement {
  const { facts, place, zone } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [brought, setBrought] = useState<Brought | null>(null)
  const [missing, setMissing] = useState<string | null>(null)
  const [left, setLeft] = useState<ReadonlySet<number>>(new Set())
  const [leaveOut, setLeaveOut] = useState(true)
  const mixed = facts.cast?.at ?? null
  const read = useMemo(
    () => (brought === null ? null : logOf({ table: brought.table, map: brought.map, mixed, zone })),
    [brought, mixed, zone],
  )
  const faults = useMemo(() => (read === null ? [] : logFaults(read.log)), [read])
  const take = (files: readonly File[]): void => {
    const [file] = files
    if (file === undefined) return
    setMissing(null)
    setLeft(new Set())
    void readLoggerTable(file).then(
      (table) => {
        const kept = keptMap(localStorage, headOf(table.rows))
        const guess = kept === null ? guessMap(table) : { map: kept, unsure: [] }
        if (guess === null) setMissing(`${file.name}: no column of times beside one of temperatures.`)
        setBrought(guess === null ? null : { table, ...guess })
      },
      (error: unknown) =>
        setMissing(error instanceof InputError ? error.message : `${file.name} could not be read.`),
    )
  }
  const submit = async (): Promise<boolean> => {
    const taken =
      brought?.map.channels.flatMap((channel, at) => (left.has(at) ? [] : [{ ...channel, at }])) ?? []
    const why = brought === null || read === null ? 'Choose a log.' : refusal(read, taken.length)
    setMissing(why)
    if (why !== null || brought === null || read === null) return false
    const asked = card.rows.find(({ id }) => id === LOG_ASKED)?.asked ?? null
    const done = await run(async () => {
      for (const { at, name } of taken) {
        const readings = channelReadings(read.log, at, { faults, leaveOut })
        if (readings.length < 2) throw new Error(`${name}: fewer than two readings after mixing.`)
        const reason = remarkOf(faults, at, leaveOut)
        await record.add(
          recordTemperature.draft(place, { channel: name, readings, ...(reason === null ? {} : { reason }) }),
        )
        if (asked !== null && at === taken[0]?.at) {
          await record.add(logInPlace.draft(place, { channel: name, readings, asked }))
        }
      }
    })
    if (done) {
      keepMap(localStorage, headOf(brought.table.rows), brought.map)
      setBrought(null)
    }
    return done
  }
  return (
    <Extra
      title="Temperature log"
      open="Bring in a log"
      button={recordTemperature.label}
      busy={busy}
      fault={fault ?? missing}
      onSubmit={submit}
      fields={
        mayDo(person.role, 'temperature') ? (
          <>
            <FileField
              label="Logger file"
              accept=".csv,.txt,.xlsx,text/csv,text/plain"
              note="CSV or XLSX of any logger. Times with a zone, in the yard’s zone, or hours from mixing."
              onFiles={take}
            />
            {brought === null || read === null ? null : (
              <>
                <LoggerColumns
                  brought={brought}
                  onMap={(map) => setBrought({ ...brought, map, unsure: [] })}
                />
                <Channels
                  map={brought.map}
                  read={read}
                  left={left}
                  onLeft={setLeft}
                  onName={(at, name) =>
                    setBrought({
                      ...brought,
                      map: {
                        ...brought.map,
                        channels: brought.map.channels.map((channel, index) =>
                          index === at ? { ...channel, name } : channel,
                        ),
                      },
                    })
                  }
                />
                <Unread name={brought.table.name} read={read} />
                <Faults faults={faults} leaveOut={leaveOut} onLeaveOut={setLeaveOut} />
              </>
            )}
          </>
        ) : null
      }
    >
      {facts.temperatures.length === 0 ? (
        <p>None on record yet.</p>
      ) : (
        <ul className="plain-list">
          {facts.temperatures.map((kept) => (
            <li key={kept.entry}>
              <strong>{kept.channel}</strong>, {kept.readings.length} readings to{' '}
              {kept.readings.at(-1)?.[0].toFixed(2)} h, <KeptWord entry={kept.entry} />
            </li>
          ))}
        </ul>
      )}
    </Extra>
  )
}

function refusal({ errors, log }: ReadLog, taken: number): string | null {
  if (errors.length > 0) return `${errors.length} rows cannot be read: nothing was taken.`
  if (taken === 0) return 'Take at least one channel.'
  return log.rows.length < 2 ? 'At least two readings.' : null
}

/** What the entry says of the faults of its channel: shown there, left out or kept. */
function remarkOf(faults: readonly LogFault[], channel: number, leaveOut: boolean): string | null {
  const own = faults.filter((fault) => fault.channel === null || fault.channel === channel)
  if (own.length === 0) return null
  const out = own.filter(({ kind }) => kind === 'range' || (leaveOut && kind === 'spike')).length
  const words = own.slice(0, 20).map(({ text, rows: [row] }) => `row ${row}: ${text}`)
  return [`${own.length} faults in the file, ${out} readings left out.`, ...words, own.length > 20 ? '…' : '']
    .join(' ')
    .trim()
    .slice(0, 3900)
}

function Channels({
  map,
  read,
  left,
  onLeft,
  onName,
}: {
  readonly map: LoggerMap
  readonly read: ReadLog
  readonly left: ReadonlySet<number>
  readonly onLeft: (left: ReadonlySet<number>) => void
  readonly onName: (at: number, name: string) => void
}): ReactElement {
  const single = map.channels.length === 1
  const rows = read.log.rows
  return (
    <>
      <p role="status">
        {rows.length} readings, {rows[0]?.hours.toFixed(2)} to {rows.at(-1)?.hours.toFixed(2)} h from mixing.
      </p>
      {map.channels.map(({ name, column }, at) => (
        <div key={column} className="row">
          <Field
            label={single ? 'Channel' : `Channel of column ${column}`}
            note={
              at === 0 ? 'A name with core, face or concrete counts as concrete; air does not.' : undefined
            }
            value={name}
            autoComplete="off"
            onChange={(event) => onName(at, event.currentTarget.value)}
          />
          {single ? null : (
            <CheckField
              label={`take ${name}`}
              checked={!left.has(at)}
              onChange={(event) => {
                const next = new Set(left)
                if (event.currentTarget.checked) next.delete(at)
                else next.add(at)
                onLeft(next)
              }}
            />
          )}
        </div>
      ))}
    </>
  )
}

function Unread({ name, read }: { readonly name: string; readonly read: ReadLog }): ReactElement | null {
  if (read.errors.length === 0) return null
  return (
    <div role="alert">
      <p className="check-fault">{name} is not taken: these rows cannot be read.</p>
      <ul className="plain-list">
        {read.errors.slice(0, 20).map(({ row, column, found, expected }) => (
          <li key={`${row} ${column}`}>
            Row {row}, column {column}: found {found}, expected {expected}
          </li>
        ))}
      </ul>
      {read.errors.length > 20 ? <p>And {read.errors.length - 20} more.</p> : null}
    </div>
  )
}

function Faults({
  faults,
  leaveOut,
  onLeaveOut,
}: {
  readonly faults: readonly LogFault[]
  readonly leaveOut: boolean
  readonly onLeaveOut: (leaveOut: boolean) => void
}): ReactElement | null {
  if (faults.length === 0) return null
  return (
    <div>
      <p>
        <strong>{faults.length} things to look at.</strong> Nothing is mended: what is left out, and what
        stays, is written into the record.
      </p>
      <ul className="plain-list">
        {faults.slice(0, 30).map((one) => (
          <li key={`${one.kind} ${one.channel} ${one.rows.join()}`}>
            Row {one.rows[0]}, {one.hours[0].toFixed(2)} h: {one.text}
          </li>
        ))}
      </ul>
      {faults.some(({ kind }) => kind === 'spike') ? (
        <CheckField
          label="Leave the single readings that stand apart out"
          checked={leaveOut}
          onChange={(event) => onLeaveOut(event.currentTarget.checked)}
        />
      ) : null}
    </div>
  )
}

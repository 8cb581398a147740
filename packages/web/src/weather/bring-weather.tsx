import { readTable } from '@castwright/documents/bar-list'
import {
  guessWeather,
  parseWeatherMap,
  type ReadWeatherFile,
  type WeatherMap,
  weatherOfFile,
} from '@castwright/documents/weather-file'
import { InputError } from '@castwright/engine/working'
import { type ReactElement, useMemo, useState } from 'react'
import { announce, Button, CheckField, FileField, Notice, SelectField } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import { whenText } from '../panel/when.ts'
import { useNow, useRecord, useYardState } from '../record/index.ts'
import { headOf, keptMaps } from '../record/kept-maps.ts'
import { weatherDraft } from './record-weather.ts'
import { WeatherCharts } from './weather-charts.tsx'
import { WeatherColumns } from './weather-columns.tsx'

type Table = Awaited<ReturnType<typeof readTable>>

interface Brought {
  readonly table: Table
  readonly map: WeatherMap
  readonly unsure: readonly string[]
}

/** Rows of one entry. */
const MOST_ROWS = 20_000
const SHOWN = 20

const maps = keptMaps('castwright.weather-map', parseWeatherMap)

/** A forecast or a station's log as a file: mapped once, looked at as a picture, then recorded; nothing of it is mended. */
export function BringWeather(): ReactElement {
  const { yard } = useYardState().yard
  const record = useRecord()
  const now = useNow(60_000)
  const { busy, fault, run } = useActing()
  const [brought, setBrought] = useState<Brought | null>(null)
  const [kind, setKind] = useState<'log' | 'forecast' | null>(null)
  const [leaveOut, setLeaveOut] = useState(false)
  const [missing, setMissing] = useState<string | null>(null)
  const [done, setDone] = useState<string | null>(null)
  const zone = yard?.timezone ?? 'UTC'
  const read = useMemo(
    () => (brought === null ? null : weatherOfFile({ table: brought.table, map: brought.map, zone })),
    [brought, zone],
  )
  const last = read?.rows.at(-1)
  const isForecast = kind === null ? last !== undefined && last.at > now.getTime() : kind === 'forecast'
  const take = (files: readonly File[]): void => {
    const [file] = files
    if (file === undefined) return
    setMissing(null)
    setDone(null)
    setBrought(null)
    setKind(null)
    setLeaveOut(false)
    void file
      .arrayBuffer()
      .then((bytes) => readTable({ bytes: new Uint8Array(bytes), name: file.name }))
      .then(
        (table) => {
          const kept = maps.kept(localStorage, headOf(table.rows))
          const guess = kept === null ? guessWeather(table) : { map: kept, unsure: [] }
          if (guess === null)
            setMissing(`${file.name}: no column of times on a clock beside one of air temperatures.`)
          else setBrought({ table, ...guess })
        },
        (error: unknown) =>
          setMissing(error instanceof InputError ? error.message : `${file.name} could not be read.`),
      )
  }
  const keep = async (): Promise<void> => {
    if (brought === null || read === null || yard === null) return
    const rows = isForecast ? read.rows : read.rows.filter(({ at }) => at <= now.getTime())
    const name = brought.table.name
    const ok = await run(() =>
      record.add(
        weatherDraft({ yard: yard.name, forecast: isForecast, rows, reason: remarkOf(name, read, leaveOut) }),
      ),
    )
    if (!ok) return
    maps.keep(localStorage, headOf(brought.table.rows), brought.map)
    const text = `${rows.length} hours of ${isForecast ? 'forecast' : 'log'} from ${name}.`
    setDone(text)
    announce(text)
    setBrought(null)
  }
  const shut = read === null ? null : refusal(read, { isForecast, leaveOut, now: now.getTime() })
  return (
    <div className="stack">
      <FileField
        label="Weather file"
        accept=".csv,.txt,.xlsx,text/csv,text/plain"
        note={`CSV or XLSX with a head: time, air, and as known humidity, wind, sun, sky. Times without an offset are ${zone}.`}
        onFiles={take}
      />
      {missing === null ? null : (
        <div role="alert">
          <Notice kind="fail" title="Not taken">
            {missing}
          </Notice>
        </div>
      )}
      {done === null ? null : <Notice title="Kept">{done}</Notice>}
      {brought === null || read === null ? null : (
        <>
          <p role="status">
            <strong>{brought.table.name}</strong>: {read.rows.length} rows
            {last === undefined || read.rows[0] === undefined
              ? ''
              : `, ${whenText(new Date(read.rows[0].at).toISOString(), zone, now)} to ${whenText(new Date(last.at).toISOString(), zone, now)} on the yard’s clock`}
            .
          </p>
          <SelectField
            label="It is"
            value={isForecast ? 'forecast' : 'log'}
            note={
              isForecast
                ? 'What is logged counts before it, hour by hour.'
                : 'As a station read it. Hours still to come are not taken.'
            }
            onChange={(event) => setKind(event.currentTarget.value === 'log' ? 'log' : 'forecast')}
          >
            <option value="forecast">a forecast</option>
            <option value="log">a log of what was</option>
          </SelectField>
          <WeatherColumns
            map={brought.map}
            unsure={brought.unsure}
            onMap={(map) => setBrought({ ...brought, map, unsure: [] })}
          />
          <Wrong read={read} leaveOut={leaveOut} onLeaveOut={setLeaveOut} />
          <WeatherCharts
            logged={isForecast ? [] : read.rows}
            forecast={isForecast ? read.rows : []}
            now={now}
            zone={zone}
          />
          {fault === null ? null : (
            <p role="alert" className="check-fault">
              {fault}
            </p>
          )}
          <div className="row">
            <Button look="main" shut={shut !== null || busy} onClick={() => void keep()}>
              {shut ?? `Record the ${isForecast ? 'forecast' : 'log'}`}
            </Button>
            <Button look="plain" onClick={() => setBrought(null)}>
              leave it
            </Button>
          </div>
        </>
      )}
    </div>
  )
}

/** Why the file cannot be recorded as it stands, as the button says it. */
function refusal(
  { rows, errors }: ReadWeatherFile,
  {
    isForecast,
    leaveOut,
    now,
  }: { readonly isForecast: boolean; readonly leaveOut: boolean; readonly now: number },
): string | null {
  if (errors.length > 0 && !leaveOut) return `Shut: ${errors.length} cells cannot be right`
  const usable = isForecast ? rows : rows.filter(({ at }) => at <= now)
  if (usable.length < 2)
    return isForecast ? 'Shut: fewer than two rows' : 'Shut: fewer than two rows up to now'
  return usable.length > MOST_ROWS ? `Shut: more than ${MOST_ROWS} rows` : null
}

function remarkOf(name: string, { errors, faults }: ReadWeatherFile, leaveOut: boolean): string {
  const out = leaveOut ? new Set(errors.map(({ row }) => row)).size : 0
  return [
    `From ${name}.`,
    out > 0
      ? `${out} rows left out: ${[...new Set(errors.map(({ row }) => row))].slice(0, 30).join(', ')}.`
      : '',
    ...faults.slice(0, 20).map(({ row, text }) => `Row ${row}: ${text}`),
  ]
    .filter((part) => part !== '')
    .join(' ')
}

function Wrong({
  read: { errors, faults },
  leaveOut,
  onLeaveOut,
}: {
  readonly read: ReadWeatherFile
  readonly leaveOut: boolean
  readonly onLeaveOut: (leaveOut: boolean) => void
}): ReactElement | null {
  if (errors.length === 0 && faults.length === 0) return null
  return (
    <div className="stack">
      {errors.length === 0 ? null : (
        <div role="alert" className="stack">
          <Notice
            kind="fail"
            title={`${errors.length} ${errors.length === 1 ? 'cell' : 'cells'} of this file cannot be right`}
          >
            <ul className="plain-list">
              {errors.slice(0, SHOWN).map(({ row, column, name, found, expected }) => (
                <li key={`${row} ${column} ${name}`}>
                  Row {row}, column {column} ({name}): found {found}, expected {expected}
                </li>
              ))}
            </ul>
            {errors.length > SHOWN ? <p>And {errors.length - SHOWN} more.</p> : null}
          </Notice>
          <CheckField
            label="Leave these rows out and take the others"
            checked={leaveOut}
            onChange={(event) => onLeaveOut(event.currentTarget.checked)}
          />
        </div>
      )}
      {faults.length === 0 ? null : (
        <Notice kind="unknown" title={`${faults.length} to look at`}>
          <p>Nothing is mended. What stays is written into the record.</p>
          <ul className="plain-list">
            {faults.slice(0, SHOWN).map(({ row, text }) => (
              <li key={`${row} ${text}`}>
                Row {row}: {text}
              </li>
            ))}
          </ul>
          {faults.length > SHOWN ? <p>And {faults.length - SHOWN} more.</p> : null}
        </Notice>
      )}
    </div>
  )
}

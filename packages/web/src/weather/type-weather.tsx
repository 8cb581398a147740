import { rangeText, WEATHER_RANGES } from '@castwright/documents/weather-file'
import { type ReactElement, useMemo, useState } from 'react'
import { announce, Button, Field, Notice, NumberField, readNumber } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import { fieldTime, instantOf } from '../panel/when.ts'
import { useNow, useRecord, useYardState } from '../record/index.ts'
import { weatherDraft } from './record-weather.ts'
import { type TypedHour, typedHours } from './typed-hours.ts'
import { WeatherCharts } from './weather-charts.tsx'

const HOUR = 3_600_000

interface Row {
  readonly key: number
  /** As a date-and-time field has it, in the yard's zone. */
  readonly at: string
  readonly air: string
  readonly wind: string
  readonly humidity: string
}

/** A few hours of a forecast by hand, straight between them: tonight, when there is no file. */
export function TypeWeather(): ReactElement {
  const { yard } = useYardState().yard
  const zone = yard?.timezone ?? 'UTC'
  const now = useNow(60_000)
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [rows, setRows] = useState<readonly Row[]>(() => startRows(now, zone))
  const [done, setDone] = useState<string | null>(null)
  const read = useMemo(() => readRows(rows, zone), [rows, zone])
  const change = (key: number, part: Partial<Row>): void =>
    setRows(rows.map((row) => (row.key === key ? { ...row, ...part } : row)))
  const filled = typeof read === 'string' ? null : read
  const keep = async (): Promise<void> => {
    if (filled === null || yard === null) return
    const reason = `Typed by hand for ${rows.filter(({ air }) => air.trim() !== '').length} times, straight between them.`
    const ok = await run(() =>
      record.add(weatherDraft({ yard: yard.name, forecast: true, rows: filled, reason })),
    )
    if (!ok) return
    setDone(`${filled.length} hours of forecast.`)
    announce('The typed forecast is kept.')
    setRows(startRows(now, zone))
  }
  return (
    <div className="stack">
      {rows.map((row, index) => (
        <fieldset key={row.key} className="weather-row">
          <legend>Time {index + 1}</legend>
          <Field
            label="When"
            type="datetime-local"
            value={row.at}
            onChange={(event) => change(row.key, { at: event.currentTarget.value })}
          />
          <NumberField
            label="Air"
            unit="°C"
            value={row.air}
            onText={(air) => change(row.key, { air })}
            fault={faultOf('air', row.air)}
          />
          <NumberField
            label="Wind"
            unit="km/h"
            value={row.wind}
            onText={(wind) => change(row.key, { wind })}
            fault={faultOf('wind', row.wind)}
          />
          <NumberField
            label="Humidity"
            unit="%"
            value={row.humidity}
            onText={(humidity) => change(row.key, { humidity })}
            fault={faultOf('humidity', row.humidity)}
          />
        </fieldset>
      ))}
      <div className="row">
        <Button onClick={() => setRows([...rows, { ...blank(rows.length), at: '' }])}>Another time</Button>
      </div>
      {filled === null ? null : <WeatherCharts logged={[]} forecast={filled} now={now} zone={zone} />}
      {done === null ? null : <Notice title="Kept">{done}</Notice>}
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
      <Button look="main" shut={filled === null || busy} onClick={() => void keep()}>
        {typeof read === 'string' ? `Shut: ${read}` : 'Record this forecast'}
      </Button>
    </div>
  )
}

function blank(key: number): Row {
  return { key, at: '', air: '', wind: '', humidity: '' }
}

/** The next full hour and three more, five hours apart. */
function startRows(now: Date, zone: string): readonly Row[] {
  const next = Math.ceil(now.getTime() / HOUR) * HOUR
  return [0, 5, 10, 15].map((hours, key) => ({
    ...blank(key),
    at: fieldTime(new Date(next + hours * HOUR), zone),
  }))
}

type Typed = 'air' | 'wind' | 'humidity'

function faultOf(what: Typed, text: string): string | null {
  if (text.trim() === '') return null
  const value = readNumber(text)
  const [low, high] = WEATHER_RANGES[what]
  return value !== null && value >= low && value <= high
    ? null
    : `found ${text.trim()}, expected ${rangeText(what)}`
}

/** The hours as they would be recorded, or in a word what is missing. */
function readRows(rows: readonly Row[], zone: string): readonly TypedHour[] | string {
  const typed: TypedHour[] = []
  for (const { at, air, wind, humidity } of rows) {
    if ([air, wind, humidity].every((text) => text.trim() === '')) continue
    const instant = instantOf(at, zone)
    if (instant === null) return 'a time is missing'
    if (faultOf('air', air) ?? faultOf('wind', wind) ?? faultOf('humidity', humidity))
      return 'a value cannot be right'
    if (air.trim() === '') return 'an air temperature is missing'
    typed.push({
      at: Date.parse(instant),
      air: readNumber(air),
      wind: readNumber(wind),
      humidity: readNumber(humidity),
    })
  }
  if (typed.length === 0) return 'type the air for at least two times'
  return typedHours(typed)
}

import { coverResistance, type NightCase, type NightChange } from '@castwright/engine/cure/night'
import { nextClock } from '@castwright/engine/yard'
import { type ReactElement, useState } from 'react'
import { Button, Field, NumberField, readNumber, SelectField } from '../look/index.ts'
import { useYardState } from '../record/index.ts'

const HOUR = 3_600_000
/** What the foreman turns on a night: the hour of uncovering, the cover, the heating of the bed. Nothing of it is recorded. */
export function NightTrial({
  of,
  mixed,
  onChange,
}: {
  readonly of: NightCase
  /** ms since 1970 */
  readonly mixed: number
  readonly onChange: (change: NightChange | null) => void
}): ReactElement {
  const { yard } = useYardState()
  const covers = yard.yard?.covers ?? []
  const zone = yard.yard?.timezone ?? 'UTC'
  const [off, setOff] = useState('')
  const [cover, setCover] = useState('')
  const [watts, setWatts] = useState('')
  const [from, setFrom] = useState('4')
  const [until, setUntil] = useState('10')
  const held = of.input.bottom.temperature !== undefined
  const tell = (next: Partial<Record<'off' | 'cover' | 'watts' | 'from' | 'until', string>>): void => {
    const now = { off, cover, watts, from, until, ...next }
    const listed = covers.find(({ mark }) => mark === now.cover)
    const laid = of.cover.on?.hour ?? of.age
    const power = readNumber(now.watts)
    const [start, end] = [readNumber(now.from), readNumber(now.until)]
    const change: NightChange = {
      ...(/^\d\d:\d\d$/.test(now.off)
        ? { coverOff: (nextClock(now.off, mixed + laid * HOUR, zone) - mixed) / HOUR }
        : {}),
      ...(now.cover === '' ? {} : { resistance: listed === undefined ? 0 : coverResistance(listed) }),
      ...(power === null || start === null || end === null
        ? {}
        : { power: { watts: power, from: start, until: end } }),
    }
    onChange(Object.keys(change).length === 0 ? null : change)
  }
  const back = (): void => {
    setOff('')
    setCover('')
    setWatts('')
    onChange(null)
  }
  return (
    <div className="stack">
      <div className="night-fields">
        <Field
          label="Cover off at"
          type="time"
          value={off}
          note="The yard’s time, the first after it is laid."
          onChange={(event) => {
            setOff(event.currentTarget.value)
            tell({ off: event.currentTarget.value })
          }}
        />
        <SelectField
          label="Cover"
          value={cover}
          onChange={(event) => {
            setCover(event.currentTarget.value)
            tell({ cover: event.currentTarget.value })
          }}
        >
          <option value="">as it is</option>
          {covers.map(({ mark }) => (
            <option key={mark} value={mark}>
              {mark}
            </option>
          ))}
          <option value="none">none, bare</option>
        </SelectField>
        {held ? null : (
          <>
            <NumberField
              label="Heat of the bed"
              unit="W/m²"
              note="Empty: as it is."
              value={watts}
              onText={(text) => {
                setWatts(text)
                tell({ watts: text })
              }}
            />
            <NumberField
              label="Heated from"
              unit="h after mixing"
              value={from}
              onText={(text) => {
                setFrom(text)
                tell({ from: text })
              }}
            />
            <NumberField
              label="Heated to"
              unit="h after mixing"
              value={until}
              onText={(text) => {
                setUntil(text)
                tell({ until: text })
              }}
            />
          </>
        )}
      </div>
      <div>
        <Button onClick={back}>Back to the night as it is</Button>
      </div>
    </div>
  )
}

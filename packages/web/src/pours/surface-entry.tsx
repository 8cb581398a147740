import { type PanelFacts, type SurfaceKind, surfaceSeen } from '@castwright/engine/steps'
import { type FormEvent, type ReactElement, useState } from 'react'
import { announce, Button, NumberField, readNumber, Sheet } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import type { PanelPlace } from '../panel/acts/act.ts'
import { recordAir } from '../panel/acts/record-air.ts'
import { recordSurface } from '../panel/acts/record-surface.ts'
import { takeBackSurface } from '../panel/acts/take-back-surface.ts'
import { mayDo } from '../panel/entitled.ts'
import { KeptWord } from '../panel/kept-word.tsx'
import { usePerson, useRecord, useYardState } from '../record/index.ts'

export interface SurfaceEntryProps {
  readonly facts: PanelFacts
  readonly place: PanelPlace
  readonly clock: (hour: number) => string
  readonly now: Date
}

const PRINTS = [6, 3, 1, 0] as const
const KEPT: Readonly<Record<SurfaceKind, string>> = {
  temperature: 'Surface',
  print: 'Boot print',
  resistance: 'Penetration',
  sheen: 'Sheen gone',
  passes: 'Passes asked',
}

/** What the surface shows, at one tap, and what was read at the panel; each reading moves the times. */
export function SurfaceEntry({ facts, place, clock, now }: SurfaceEntryProps): ReactElement | null {
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const seen = surfaceSeen(facts)
  const mixed = Date.parse(facts.cast?.at ?? '')
  const keep = (kind: SurfaceKind, value: number | true): Promise<boolean> =>
    run(async () => {
      await record.add(recordSurface.draft(place, { kind, value, at: now.toISOString() }))
      announce(`${KEPT[kind]} recorded`)
    })
  if (!mayDo(person.role, 'value') && seen.length === 0) return null
  return (
    <Sheet
      title="What the surface says"
      level={3}
      note="A sign that you see counts before any computed time: what is left then runs as much faster or slower as it did so far."
    >
      <div className="stack">
        {mayDo(person.role, 'value') ? (
          <>
            <fieldset className="finish-signs">
              <legend>Seen now: boot print, sheen</legend>
              {PRINTS.map((depth) => (
                <Button key={depth} disabled={busy} onClick={() => void keep('print', depth)}>
                  {depth === 0 ? 'no mark' : `${depth} mm`}
                  <span className="only-read">, record this boot print</span>
                </Button>
              ))}
              <Button disabled={busy} onClick={() => void keep('sheen', true)}>
                Sheen gone
              </Button>
            </fieldset>
            <ReadAtPanel busy={busy} run={run} place={place} now={now} />
          </>
        ) : null}
        {fault === null ? null : (
          <p role="alert" className="check-fault">
            {fault}
          </p>
        )}
        {seen.length === 0 ? (
          <p>Nothing read on this surface yet.</p>
        ) : (
          <ul className="plain-list finish-seen">
            {seen.map(({ kind, check, recorded }) => (
              <li key={recorded.entry}>
                <span>
                  <strong>{clock((Date.parse(recorded.seen) - mixed) / 3_600_000)}</strong> {KEPT[kind]}
                  {typeof recorded.value === 'number' ? ` ${recorded.value} ${UNIT[kind]}` : ''}, by{' '}
                  {recorded.by.name}, <KeptWord entry={recorded.entry} />
                </span>
                {mayDo(person.role, 'correction') ? (
                  <Button
                    look="plain"
                    disabled={busy}
                    onClick={() =>
                      void run(() =>
                        record.add(takeBackSurface.draft(place, { check, about: recorded.entry })),
                      )
                    }
                  >
                    {takeBackSurface.label}
                    <span className="only-read">: {KEPT[kind]}</span>
                  </Button>
                ) : null}
              </li>
            ))}
          </ul>
        )}
      </div>
    </Sheet>
  )
}

const UNIT: Readonly<Record<SurfaceKind, string>> = {
  temperature: '°C',
  print: 'mm',
  resistance: 'MPa',
  sheen: '',
  passes: '',
}

type Field = 'surface' | 'air' | 'humidity' | 'wind' | 'print' | 'resistance' | 'passes'
/** What a hand can read: outside it is a slip of the finger. */
const FIELDS: readonly (readonly [field: Field, label: string, unit: string, low: number, high: number])[] = [
  ['surface', 'Surface of the concrete', '°C', -10, 60],
  ['air', 'Air', '°C', -40, 60],
  ['humidity', 'Humidity', '%', 0, 100],
  ['wind', 'Wind half a metre over it', 'km/h', 0, 144],
  ['print', 'Boot print of another depth', 'mm', 0, 100],
  ['resistance', 'Penetration resistance', 'MPa', 0.1, 50],
  ['passes', 'Power-float passes asked', '', 1, 8],
]
const EMPTY: Readonly<Record<Field, string>> = {
  surface: '',
  air: '',
  humidity: '',
  wind: '',
  print: '',
  resistance: '',
  passes: '',
}

/** Instruments held at the panel: what is left empty was not read. */
function ReadAtPanel({
  busy,
  run,
  place,
  now,
}: {
  readonly busy: boolean
  readonly run: ReturnType<typeof useActing>['run']
  readonly place: PanelPlace
  readonly now: Date
}): ReactElement {
  const { yard } = useYardState()
  const person = usePerson()
  const record = useRecord()
  const [open, setOpen] = useState(false)
  const [text, setText] = useState(EMPTY)
  const [faults, setFaults] = useState<Readonly<Partial<Record<Field | 'all', string>>>>({})
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const read = readFields(text)
    setFaults(read.faults)
    if (Object.keys(read.faults).length > 0) return
    const { surface, air, humidity, wind, print, resistance, passes } = read.values
    const at = now.toISOString()
    void run(async () => {
      const own = { temperature: surface, print, resistance, passes } as const
      for (const [kind, value] of Object.entries(own) as [SurfaceKind, number | undefined][])
        if (value !== undefined) await record.add(recordSurface.draft(place, { kind, value, at }))
      if (air !== undefined || humidity !== undefined || wind !== undefined)
        await record.add(
          recordAir.draft({
            yard: yard.yard?.name ?? 'yard',
            at,
            air: air ?? null,
            humidity: humidity ?? null,
            wind: wind ?? null,
          }),
        )
    }).then((done) => {
      if (!done) return
      setText(EMPTY)
      setOpen(false)
      announce('Readings recorded')
    })
  }
  if (!open)
    return (
      <div>
        <Button onClick={() => setOpen(true)}>Enter readings</Button>
      </div>
    )
  const weather = mayDo(person.role, 'weather')
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <div className="finish-fields">
        {FIELDS.filter(([field]) => weather || !['air', 'humidity', 'wind'].includes(field)).map(
          ([field, label, unit]) => (
            <NumberField
              key={field}
              label={label}
              unit={unit === '' ? undefined : unit}
              value={text[field]}
              fault={faults[field]}
              onText={(value) => setText({ ...text, [field]: value })}
            />
          ),
        )}
      </div>
      {faults.all === undefined ? null : (
        <p role="alert" className="check-fault">
          {faults.all}
        </p>
      )}
      <div className="row">
        <Button type="submit" disabled={busy}>
          {recordSurface.label} readings
        </Button>
        <Button look="plain" onClick={() => setOpen(false)}>
          leave it
        </Button>
      </div>
    </form>
  )
}

/** What was typed, by field; what is no number or outside what can be read is said at its field. */
export function readFields(text: Readonly<Record<Field, string>>): {
  readonly values: Readonly<Partial<Record<Field, number>>>
  readonly faults: Readonly<Partial<Record<Field | 'all', string>>>
} {
  const values: Partial<Record<Field, number>> = {}
  const faults: Partial<Record<Field | 'all', string>> = {}
  for (const [field, , unit, low, high] of FIELDS) {
    const typed = text[field].trim()
    if (typed === '') continue
    const value = readNumber(typed)
    const whole = field !== 'passes' || Number.isInteger(value)
    if (value === null || !(value >= low && value <= high) || !whole)
      faults[field] =
        `Found ${typed}, expected ${low} to ${high}${unit === '' ? ', a whole number' : ` ${unit}`}.`
    else values[field] = value
  }
  if (Object.keys(values).length === 0 && Object.keys(faults).length === 0)
    faults.all = 'Enter at least one reading.'
  return { values, faults }
}

import type { Card } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { Field, NumberField } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { answersFromDocket } from './acts/answer-from-docket.ts'
import { recordDocket } from './acts/record-docket.ts'
import { Marks } from './cast-form.tsx'
import { type DocketText, EMPTY_DOCKET, readDocket } from './docket-text.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { KeptWord } from './kept-word.tsx'
import { usePanelRoom } from './panel-context.ts'
import { whenText } from './when.ts'

const TIMES = [
  ['batched', 'Batched'],
  ['arrived', 'Arrived'],
  ['discharged', 'Discharge finished'],
] as const
const NUMBERS = [
  ['volume', 'Volume', 'm³'],
  ['slump', 'Slump measured', 'mm'],
  ['temperature', 'Concrete temperature', '°C'],
  ['waterAdded', 'Water added at the truck', 'l'],
] as const

/** Dockets of this pour. */
export function DocketForm({ card }: { readonly card: Card }): ReactElement {
  const { facts, place, state, zone, now } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [text, setText] = useState<DocketText>(EMPTY_DOCKET)
  const [faults, setFaults] = useState<Readonly<Partial<Record<keyof DocketText, string>>>>({})
  const dockets = state.dockets.get(`${facts.job}/${facts.mark}`) ?? []
  const set = (field: keyof DocketText) => (value: string) => setText({ ...text, [field]: value })
  const submit = async (): Promise<boolean> => {
    const read = readDocket(text, zone)
    setFaults(read.ok ? {} : read.faults)
    if (!read.ok) return false
    const done = await run(async () => {
      await record.add(recordDocket.draft(place, read.docket))
      for (const answer of answersFromDocket(place, read.docket, card.rows)) await record.add(answer)
    })
    if (done) setText(EMPTY_DOCKET)
    return done
  }
  return (
    <Extra
      title="Dockets"
      open="Enter a docket"
      button={recordDocket.label}
      busy={busy}
      fault={fault}
      onSubmit={submit}
      fields={
        mayDo(person.role, 'docket') ? (
          <>
            <Field
              label="Number on the docket"
              note="What is entered here also answers the rows above that are still open."
              value={text.number}
              fault={faults.number}
              autoComplete="off"
              onChange={(event) => set('number')(event.currentTarget.value)}
            />
            <Field
              label="Truck number"
              value={text.truck}
              autoComplete="off"
              onChange={(event) => set('truck')(event.currentTarget.value)}
            />
            <Marks
              label="Mix on the docket"
              value={text.mix}
              marks={state.yard.yard?.mixes}
              onMark={set('mix')}
            />
            {TIMES.map(([field, label]) => (
              <Field
                key={field}
                label={label}
                type="datetime-local"
                value={text[field]}
                fault={faults[field]}
                onChange={(event) => set(field)(event.currentTarget.value)}
              />
            ))}
            {NUMBERS.map(([field, label, unit]) => (
              <NumberField
                key={field}
                label={label}
                unit={unit}
                value={text[field]}
                fault={faults[field]}
                onText={set(field)}
              />
            ))}
          </>
        ) : null
      }
    >
      {dockets.length === 0 ? (
        <p>None on record yet.</p>
      ) : (
        <ul className="plain-list">
          {dockets.map((docket) => (
            <li key={docket.entry}>
              <strong>{docket.number}</strong>
              {[
                docket.volume === undefined ? '' : `${docket.volume} m³`,
                docket.slump === undefined ? 'slump not known' : `slump ${docket.slump} mm`,
                docket.temperature === undefined ? '' : `${docket.temperature} °C`,
                docket.waterAdded === undefined ? '' : `${docket.waterAdded} l added`,
                docket.batched === undefined ? '' : `batched ${whenText(docket.batched, zone, now)}`,
              ]
                .filter((part) => part !== '')
                .map((part) => `, ${part}`)}
              , by {docket.by.name}, <KeptWord entry={docket.entry} />
            </li>
          ))}
        </ul>
      )}
    </Extra>
  )
}

import type { Card } from '@castwright/engine/steps'
import type { InputIssue } from '@castwright/engine/working'
import { type ReactElement, useState } from 'react'
import { Field, FileField } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { LOG_ASKED, logInPlace } from './acts/log-in-place.ts'
import { recordTemperature } from './acts/record-temperature.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { KeptWord } from './kept-word.tsx'
import { usePanelRoom } from './panel-context.ts'
import { type LogFile, logFaultSentence, readLogFile } from './temperature-log.ts'

/** Logger files of this pour: header `hours,celsius`. A file with a bad row is not taken, and every bad row is named. */
export function TemperatureForm({ card }: { readonly card: Card }): ReactElement {
  const { facts, place } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [channel, setChannel] = useState('core')
  const [name, setName] = useState<string | null>(null)
  const [log, setLog] = useState<LogFile | null>(null)
  const [missing, setMissing] = useState<string | null>(null)
  const take = (files: readonly File[]): void => {
    const [file] = files
    if (file === undefined) return
    setMissing(null)
    void file.text().then(
      (text) => {
        setName(file.name)
        setLog(readLogFile(text))
      },
      () => setMissing(`${file.name} could not be read.`),
    )
  }
  const submit = async (): Promise<boolean> => {
    const ready = log?.ok === true && channel.trim() !== ''
    setMissing(ready ? null : 'Choose a log that can be read, and name its channel.')
    if (!ready) return false
    const input = { channel: channel.trim(), readings: log.readings }
    const asked = card.rows.find(({ id }) => id === LOG_ASKED)?.asked ?? null
    const done = await run(async () => {
      await record.add(recordTemperature.draft(place, input))
      if (asked !== null) await record.add(logInPlace.draft(place, { ...input, asked }))
    })
    if (done) setLog(null)
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
              accept=".csv,text/csv,text/plain"
              note="Header hours,celsius; hours from mixing, rising."
              onFiles={take}
            />
            <Field
              label="Channel"
              value={channel}
              autoComplete="off"
              onChange={(event) => setChannel(event.currentTarget.value)}
            />
            {log === null ? null : log.ok ? (
              <p role="status">
                {name}: {log.readings.length} readings, {log.readings[0]?.[0]} to {log.readings.at(-1)?.[0]}{' '}
                h.
              </p>
            ) : (
              <LogFaults name={name ?? 'the file'} faults={log.faults} />
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
              <strong>{kept.channel}</strong>, {kept.readings.length} readings to {kept.readings.at(-1)?.[0]}{' '}
              h, <KeptWord entry={kept.entry} />
            </li>
          ))}
        </ul>
      )}
    </Extra>
  )
}

function LogFaults({
  name,
  faults,
}: {
  readonly name: string
  readonly faults: readonly InputIssue[]
}): ReactElement {
  return (
    <div role="alert">
      <p className="check-fault">{name} was not taken:</p>
      <ul className="plain-list">
        {faults.map((fault) => (
          <li key={`${fault.path} ${fault.expected}`}>{logFaultSentence(fault)}</li>
        ))}
      </ul>
    </div>
  )
}

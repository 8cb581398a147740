import { type Asked, limitOf, shown } from '@castwright/engine/working'
import type { Entry } from '@castwright/record'
import { type FormEvent, type ReactElement, type ReactNode, useState } from 'react'
import { Button, Field, NumberField, readNumber, SelectField, TextField } from '../look/index.ts'
import { readReadings } from './readings.ts'
import { TICK_CHOICES } from './row-text.ts'

export interface AnswerProps {
  readonly asked: Asked
  readonly label: string
  readonly busy: boolean
  readonly onValue: (value: Entry['value']) => void
  /** Stands above the button: the reason of a correction. */
  readonly children?: ReactNode
}

/** What a person enters for an asked item: a tick, a number, a choice, words or readings. */
export function Answer({ asked, label, busy, onValue, children }: AnswerProps): ReactElement {
  const [text, setText] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const answer = readAnswer(asked, text)
    setFault(answer.ok ? null : answer.fault)
    if (answer.ok && !busy) onValue(answer.value)
  }
  if (asked.kind === 'tick') {
    return (
      <div className="answer">
        {children}
        <div className="answer-ticks">
          {TICK_CHOICES.map(({ value, word }) => (
            <Button key={word} onClick={() => onValue(value)} disabled={busy}>
              {word}
              <span className="only-read">: {asked.what}</span>
            </Button>
          ))}
        </div>
      </div>
    )
  }
  const limit = limitOf(asked)
  const note = limit === null ? undefined : `Wanted: ${limitWords(asked)}`
  const shared = { label: <span className="only-read">{asked.what}</span>, note, fault }
  return (
    <form className="answer" onSubmit={submit} noValidate>
      <div className="answer-line">
        {asked.kind === 'number' ? (
          <NumberField {...shared} unit={asked.unit} value={text} onText={setText} />
        ) : asked.kind === 'choice' ? (
          <SelectField {...shared} value={text} onChange={(event) => setText(event.currentTarget.value)}>
            <option value="">choose</option>
            {(asked.choices ?? []).map(({ value }) => (
              <option key={value} value={value}>
                {value}
              </option>
            ))}
          </SelectField>
        ) : asked.kind === 'readings' ? (
          <TextField
            {...shared}
            note={readingsNote(asked)}
            inputMode="text"
            value={text}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        ) : (
          <Field
            {...shared}
            value={text}
            autoComplete="off"
            onChange={(event) => setText(event.currentTarget.value)}
          />
        )}
        {children === undefined ? <RecordButton label={label} about={asked.what} busy={busy} /> : null}
      </div>
      {children === undefined ? null : (
        <>
          {children}
          <RecordButton label={label} about={asked.what} busy={busy} />
        </>
      )}
    </form>
  )
}

function RecordButton({
  label,
  about,
  busy,
}: {
  readonly label: string
  readonly about: string
  readonly busy: boolean
}): ReactElement {
  return (
    <Button type="submit" disabled={busy}>
      {label}
      <span className="only-read">: {about}</span>
    </Button>
  )
}

function readingsNote(asked: Asked): string {
  const line = `One reading a line${asked.unit === '' ? '' : `, ${asked.unit}`}`
  // Where each reading has limits it is one number.
  return limitOf(asked) === null
    ? `${line}; several numbers of one reading parted by a space.`
    : `${line}. Wanted each: ${limitWords(asked)}${asked.least === undefined ? '' : `, ${asked.least} readings at least`}.`
}

function limitWords(asked: Asked): string {
  const low = asked.low ?? null
  const high = asked.high ?? null
  const unit = asked.unit === '' ? '' : ` ${asked.unit}`
  if (low !== null && high !== null) {
    return low === high ? `${shown(low)}${unit}` : `${shown(low)} to ${shown(high)}${unit}`
  }
  return low !== null ? `at least ${shown(low)}${unit}` : `at most ${shown(high)}${unit}`
}

type ReadAnswer =
  | { readonly ok: true; readonly value: Entry['value'] }
  | { readonly ok: false; readonly fault: string }

/** The value of what was typed, or what is wrong with it. */
export function readAnswer(asked: Asked, text: string): ReadAnswer {
  switch (asked.kind) {
    case 'number': {
      const value = readNumber(text)
      if (value !== null) return { ok: true, value }
      return {
        ok: false,
        fault: text.trim() === '' ? 'Type the number first.' : `${text.trim()} is no number.`,
      }
    }
    case 'choice':
      return asked.choices?.some(({ value }) => value === text)
        ? { ok: true, value: text }
        : { ok: false, fault: 'Choose one first.' }
    case 'readings': {
      const read = readReadings(text)
      return read.ok ? { ok: true, value: read.readings } : read
    }
    case 'text':
    case 'tick':
      return text.trim() === '' ? { ok: false, fault: 'Write it first.' } : { ok: true, value: text.trim() }
  }
}

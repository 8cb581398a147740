import { type ReactElement, useMemo, useState } from 'react'
import { announce, Button } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import { ReasonForm } from '../panel/reason-form.tsx'
import { whenText } from '../panel/when.ts'
import { useNow, useRecord, useYardState } from '../record/index.ts'
import { type RecordedWeather, recordedWeather } from './recorded-weather.ts'

/** Entries that are listed. */
const SHOWN = 8

/** The last sendings of weather; a wrong one is taken back with a reason, and what it stood before counts again. */
export function TakeBack(): ReactElement | null {
  const { weather, forecast, yard } = useYardState()
  const record = useRecord()
  const now = useNow(60_000)
  const { busy, fault, run } = useActing()
  const [asked, setAsked] = useState<string | null>(null)
  const list = useMemo(() => recordedWeather(weather, forecast).slice(0, SHOWN), [weather, forecast])
  const zone = yard.yard?.timezone ?? 'UTC'
  if (list.length === 0) return null
  const words = ({ forecast: foretold, from, to, count }: RecordedWeather): string =>
    `${foretold ? 'Forecast' : 'Log'}, ${whenText(from, zone, now)} to ${whenText(to, zone, now)}, ${count} ${count === 1 ? 'reading' : 'readings'}`
  const take = async (sent: RecordedWeather, reason: string): Promise<void> => {
    const done = await run(() =>
      record.add({
        kind: 'correction',
        subject: { kind: 'yard', id: yard.yard?.name ?? 'yard' },
        about: sent.entry,
        value: null,
        reason,
      }),
    )
    if (!done) return
    setAsked(null)
    announce('Taken back.')
  }
  return (
    <details className="explain">
      <summary>What was recorded last, to take back</summary>
      <ul className="explain-body plain-list weather-sent">
        {list.map((sent) => (
          <li key={sent.entry}>
            {asked === sent.entry ? (
              <ReasonForm
                label="Why it is wrong"
                button="Take it back"
                about={words(sent)}
                busy={busy}
                fault={fault}
                onReason={(reason) => void take(sent, reason)}
                onCancel={() => setAsked(null)}
              />
            ) : (
              <div className="row">
                <span>{words(sent)}</span>
                <Button look="plain" onClick={() => setAsked(sent.entry)}>
                  take back<span className="only-read">: {words(sent)}</span>
                </Button>
              </div>
            )}
          </li>
        ))}
      </ul>
    </details>
  )
}

import type { Drawing, DrawnInsert } from '@castwright/engine/panel'
import { type ReactElement, useEffect, useRef, useState } from 'react'
import { Button, fixed, Notice, SelectField } from '../look/index.ts'

export interface FoundPlaces {
  readonly inserts: readonly DrawnInsert[]
  /** MPa, averaged over discs. */
  readonly peak: number
  readonly before: number | null
  readonly classical: number | null
  readonly gain: { readonly before: number | null; readonly classical: number | null }
}

export type PicksAnswer = FoundPlaces | { readonly why: string }

export interface BestPlacesProps {
  readonly drawing: Drawing
  readonly kind: 'face' | 'edge'
  readonly count: number
  /** On own weight. */
  readonly factor: number
  /** Null where that many cannot be tried here. */
  readonly onTry: (inserts: readonly DrawnInsert[]) => void
}

/** Searches the places of least tension in a worker that can be stopped, and tells how much better they are. */
export function BestPlaces({ drawing, kind, count, factor, onTry }: BestPlacesProps): ReactElement {
  const [wanted, setWanted] = useState(String([2, 4, 6, 8].includes(count) ? count : 4))
  const [answer, setAnswer] = useState<PicksAnswer | null>(null)
  const [busy, setBusy] = useState(false)
  const worker = useRef<Worker | null>(null)
  const stop = (): void => {
    worker.current?.terminate()
    worker.current = null
    setBusy(false)
  }
  useEffect(() => () => worker.current?.terminate(), [])
  const find = (): void => {
    stop()
    const made = new Worker(new URL('./picks-worker.ts', import.meta.url), { type: 'module' })
    made.onmessage = ({ data }: MessageEvent<PicksAnswer>) => {
      setAnswer(data)
      stop()
    }
    made.onerror = ({ message }) => {
      setAnswer({ why: message || 'its part of the app did not load' })
      stop()
    }
    worker.current = made
    setAnswer(null)
    setBusy(true)
    made.postMessage({ drawing, kind, count: Number(wanted), factor })
  }
  return (
    <div className="stack">
      <div className="row lifts-choice no-print">
        <SelectField
          label="Inserts"
          value={wanted}
          onChange={(event) => setWanted(event.currentTarget.value)}
        >
          {[2, 4, 6, 8].map((many) => (
            <option key={many}>{many}</option>
          ))}
        </SelectField>
        {busy ? (
          <Button onClick={stop}>Stop the search</Button>
        ) : (
          <Button look="main" onClick={find}>
            Find best places for {wanted}
          </Button>
        )}
      </div>
      {busy ? <p role="status">Searching the places of least tension …</p> : null}
      {answer === null ? null : 'why' in answer ? (
        <Notice kind="unknown" title="No places found">
          {answer.why}
        </Notice>
      ) : (
        <div className="stack" role="status">
          <p>
            Least peak found: <span className="number">{fixed(answer.peak, 2)} MPa</span>, averaged over
            discs.
            {better(answer.before, answer.gain.before, 'the drawn inserts')}
            {better(answer.classical, answer.gain.classical, 'the classical places')} Bars and cast-ins are
            not looked at.
          </p>
          <Button onClick={() => onTry(answer.inserts)}>Try these places</Button>
        </div>
      )}
    </div>
  )
}

function better(peak: number | null, gain: number | null, than: string): string {
  if (peak === null || gain === null) return ` No comparison with ${than}.`
  const share = Math.floor(Math.abs(gain) * 100)
  return ` ${share} % ${gain < 0 ? 'above' : 'below'} ${than}, ${fixed(peak, 2)} MPa.`
}

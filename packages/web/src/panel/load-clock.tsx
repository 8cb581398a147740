import { type Load, loadAge } from '@castwright/engine/pour/loads'
import type { ReactElement } from 'react'
import { VerdictMark } from '../look/index.ts'
import { useNow } from '../record/index.ts'
import { whenText } from './when.ts'

const WORDS = { counting: 'left', soon: 'left, soon too old', over: 'past its limit', done: '' } as const

/** Age of a truck's concrete, counting by itself, readable from a few steps away. Shows nothing once it is discharged. */
export function LoadClock({
  load,
  limit,
  zone,
}: {
  readonly load: Load
  /** Greatest age at the end of discharge, minutes; null where not known. */
  readonly limit: number | null
  readonly zone: string
}): ReactElement | null {
  const now = useNow(1000)
  if (load.discharged !== undefined) return null
  const age = loadAge({ load, limit, now: now.toISOString() })
  if (age === null) {
    return (
      <p className="load-clock" data-state="unknown">
        <VerdictMark verdict="unknown" silent />
        <span>
          Age not known: {load.batched === undefined ? 'no batching time' : 'batched later than now'}.
        </span>
      </p>
    )
  }
  const { state, minutes, left, until } = age
  const big = left ?? minutes
  return (
    <div className="load-clock" data-state={state} role="timer" aria-label={`Load ${load.number}`}>
      <p className="load-minutes">
        {state === 'over' ? <VerdictMark verdict="fail" size={32} silent /> : null}
        {clock(Math.abs(big))}
        <span>{left === null ? ' since batching' : ` ${WORDS[state]}`}</span>
      </p>
      <p>
        {left === null ? '' : `${Math.floor(minutes)} min since batching. `}
        {until === null || limit === null
          ? 'No age limit is known: enter it with the mix.'
          : `Discharged by ${whenText(until, zone, now)}, ${limit} min.`}
      </p>
    </div>
  )
}

/** Minutes and seconds: `7:05`, `102:00`. */
export function clock(minutes: number): string {
  const seconds = Math.floor(minutes * 60)
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`
}

import type { CompactionPlan } from '@castwright/engine/pour'
import { INSERTION_SECONDS, stopsOf } from '@castwright/engine/pour/live'
import type { ReactElement } from 'react'
import { Notice } from '../look/index.ts'
import type { WalkHand } from './use-walk.ts'

/** At most so many insertions are named; the picture shows the rest. */
const MOST_NAMED = 12

/** What is wrong with the walk, as it shows: not kept, waited too long, passed over, too short. */
export function WalkFaults({
  hand: { state, full },
  compaction,
}: {
  readonly hand: WalkHand
  readonly compaction: CompactionPlan
}): ReactElement {
  const named = (stops: readonly number[]): string => namesOf(compaction, stops)
  const goesOn = state.left.filter((wait) => wait.goesOn)
  const happened = state.left.filter((wait) => !wait.goesOn)
  const longest = goesOn[0]
  const worst = happened[0]
  return (
    <>
      {full ? (
        <Notice kind="fail" title="This device is full">
          The walk is not kept on it: do not close this page before its zones are recorded.
        </Notice>
      ) : null}
      {longest === undefined ? null : (
        <Notice kind="fail" title={`Concrete waits for ${Math.floor(longest.minutes)} min`}>
          Beside {goesOn.length === 1 ? 'insertion' : 'insertions'} {named(goesOn.map(({ stop }) => stop))}.
          If the vibrator no longer sinks in by itself it is a joint: stop and ask the lead.
        </Notice>
      )}
      {worst === undefined ? null : (
        <Notice kind="fail" title={`Waited too long: up to ${Math.ceil(worst.minutes)} min`}>
          Insertions {named(happened.map(({ stop }) => stop))}. It goes on record with its zone.
        </Notice>
      )}
      {state.missed.length === 0 ? null : (
        <Notice kind="fail" title={`${state.missed.length} not reached`}>
          Insertions {named(state.missed)}: passed over. Tap one to go back, or go on to the end of the order,
          which leads back.
        </Notice>
      )}
      {state.short.length === 0 ? null : (
        <p>
          Shorter than {INSERTION_SECONDS.low} s: {named(state.short)}
        </p>
      )}
    </>
  )
}

/** Numbers of insertions, with the layer where there are several. */
function namesOf(compaction: CompactionPlan, at: readonly number[]): string {
  const stops = stopsOf(compaction)
  const layered = compaction.layers.count > 1
  const names = at.slice(0, MOST_NAMED).flatMap((index) => {
    const stop = stops[index]
    if (stop === undefined) return []
    return [layered ? `${stop.insertion + 1} in layer ${stop.layer}` : String(stop.insertion + 1)]
  })
  return `${names.join(', ')}${at.length > MOST_NAMED ? ' …' : ''}`
}

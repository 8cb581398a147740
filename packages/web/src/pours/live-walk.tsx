import type { Plan } from '@castwright/engine/plan'
import type { CompactionPlan } from '@castwright/engine/pour'
import { INSERTION_SECONDS, stopsOf } from '@castwright/engine/pour/live'
import type { PanelFacts } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { announce, Button, Caution, CheckField } from '../look/index.ts'
import { useYardState } from '../record/index.ts'
import { HeadsHeld } from './heads-held.tsx'
import { insertionSeconds } from './insertion-seconds.ts'
import { TightList } from './tight-list.tsx'
import { useAwake, useDue, useWalk, type WalkHand } from './use-walk.ts'
import { WalkFaults } from './walk-faults.tsx'
import { WalkPicture } from './walk-picture.tsx'
import { WalkZones } from './walk-zones.tsx'

/** The walk over one panel: the counter, what is wrong, the picture and the zones. */
export function LiveWalk({
  facts,
  plan,
  compaction,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
  readonly compaction: CompactionPlan
}): ReactElement | null {
  const [auto, setAuto] = useState(false)
  const { dockets } = useYardState()
  const hand = useWalk(facts, compaction, auto)
  const { state, walk } = hand
  const length = insertionSeconds(
    facts,
    compaction,
    (dockets.get(`${facts.job}/${facts.mark}`) ?? []).map(({ slump }) => slump),
  )
  const due = state.seconds !== null && state.seconds >= length.seconds
  useDue(due, () => {
    navigator.vibrate?.(120)
    if (auto) hand.onward()
  })
  useAwake(walk.current !== null)
  if (facts.drawing === null) return null
  return (
    <div className="stack walk">
      <HeadsHeld heads={plan.pour.heads} held={hand.vibrator} onHeld={hand.follow} />
      <Counter hand={hand} compaction={compaction} seconds={length.seconds} due={due} />
      <div>
        <p className="field-note">
          {length.from}; {INSERTION_SECONDS.low} to {INSERTION_SECONDS.high} s are usual, the surface decides.
        </p>
        <CheckField
          label={`go on by itself after ${Math.round(length.seconds)} s`}
          checked={auto}
          onChange={(event) => setAuto(event.currentTarget.checked)}
        />
      </div>
      <WalkFaults hand={hand} compaction={compaction} />
      <WalkPicture
        drawing={facts.drawing}
        compaction={compaction}
        state={state}
        chute={plan.pour.chute as [number, number]}
        vibrator={hand.vibrator}
        onTap={(at) => {
          hand.to(at)
          announce(`Insertion ${at + 1}`)
        }}
      />
      {compaction.reduced.length === 0 ? null : (
        <p className="field-note">
          Hatched: close steel, where insertions reach{' '}
          {Math.round(Math.min(...compaction.reduced.map(({ radius }) => radius)))} mm instead of{' '}
          {Math.round(compaction.radius)} mm.
        </p>
      )}
      <TightList pour={plan.pour} />
      <WalkZones facts={facts} plan={plan} compaction={compaction} hand={hand} />
      <Caution
        order="Quick in, slow out, never on the steel."
        text="Stop when large bubbles stop and the surface shines. Hands, eyes and feet away from the chute and the head; gloves and eye protection: fresh concrete burns. What the eye sees outranks the clock here."
      />
    </div>
  )
}

/** Seconds to go in figures that are read at arm's length, where the head is, and the three buttons. */
function Counter({
  hand,
  compaction,
  seconds,
  due,
}: {
  readonly hand: WalkHand
  readonly compaction: CompactionPlan
  readonly seconds: number
  readonly due: boolean
}): ReactElement {
  const { state, walk } = hand
  const out = walk.current === null
  const left = state.seconds === null ? null : seconds - state.seconds
  return (
    <div className="walk-now" data-due={due}>
      <div className="walk-head">
        <p className="walk-seconds" aria-hidden="true">
          {left === null ? Math.round(seconds) : left > 0 ? Math.ceil(left) : `+${Math.floor(-left)}`}
          <span> s {left === null ? 'each' : left > 0 ? 'to go' : 'over: go on'}</span>
        </p>
        <p role="status" className="walk-where">
          {whereText(hand, compaction, due)}
        </p>
      </div>
      <div className="row walk-buttons">
        <Button look="main" wide disabled={state.done} onClick={hand.onward}>
          {out ? (walk.visits.length === 0 ? 'Vibrator in' : 'In at the next') : 'Out, on to the next'}
        </Button>
        <Button disabled={out} onClick={hand.out}>
          Out, wait
        </Button>
        <Button disabled={walk.visits.length === 0 && out} onClick={hand.back}>
          Take back
        </Button>
      </div>
    </div>
  )
}

/** Where the vibrator is, or what comes next, in one line. */
function whereText({ state, walk, vibrator }: WalkHand, compaction: CompactionPlan, due: boolean): string {
  const stops = stopsOf(compaction)
  const of = compaction.insertions.length
  const layered = (layer: number): string =>
    compaction.layers.count === 1 ? '' : `, layer ${layer} of ${compaction.layers.count}`
  if (state.done) {
    const all = vibrator === null || state.zones.every((zone) => zone.reached + zone.said === zone.of)
    const said = state.zones.some((zone) => zone.said > 0) ? ' or said to be' : ''
    return `Every insertion${all ? '' : ` of vibrator ${vibrator}`} is reached${said}.`
  }
  const here = state.current === null ? undefined : stops[state.current]
  if (here !== undefined)
    return `Insertion ${here.insertion + 1} of ${of}${layered(here.layer)}${due ? ': go on.' : '.'}`
  if (walk.current !== null) return 'In at a place of the earlier pattern.'
  const next = state.next === null ? undefined : stops[state.next]
  return next === undefined
    ? 'Nothing is left.'
    : `Next is ${next.insertion + 1} of ${of}${layered(next.layer)}.`
}

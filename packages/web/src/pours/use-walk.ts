import type { Ring } from '@castwright/engine/panel'
import type { CompactionPlan } from '@castwright/engine/pour'
import {
  goOn,
  goTo,
  mergedVisits,
  pulledOut,
  reachedOf,
  recordedVisits,
  type StopState,
  stopsOf,
  takeBack,
  tickedZones,
  type Walk,
  type WalkState,
  walkState,
} from '@castwright/engine/pour/live'
import type { PanelFacts } from '@castwright/engine/steps'
import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { keepVibrator, keepWalk, keptVibrator, keptWalk, walkKey } from './kept-walk.ts'

export interface WalkHand {
  readonly walk: Walk
  readonly state: WalkState
  /** The device did not keep the last tap. */
  readonly full: boolean
  /** Vibrator that this device follows, from 1; null: all of them. */
  readonly vibrator: number | null
  readonly follow: (vibrator: number | null) => void
  /** In at the next stop, or on to it. */
  readonly onward: () => void
  readonly out: () => void
  readonly back: () => void
  /** To the stop of an insertion that is in work there. */
  readonly to: (insertion: number) => void
}

const OPEN: readonly (StopState | undefined)[] = ['missed', 'waiting', 'said']

/** The walk over a panel on this device, together with what the record has of others. Kept at every tap. */
export function useWalk(facts: PanelFacts, compaction: CompactionPlan, running: boolean): WalkHand {
  const key = walkKey(`${facts.job}/${facts.mark}`, facts.revision)
  const heads = Math.max(1, ...compaction.zones.map(({ shares }) => shares.length))
  const [walk, setWalk] = useState<Walk>(() => keptWalk(localStorage, key, Date.now()))
  const [full, setFull] = useState(false)
  const [chosen, setChosen] = useState(() => keptVibrator(localStorage, key, heads))
  const vibrator = chosen !== null && chosen <= heads && heads > 1 ? chosen : null
  const now = useSeconds(walk.current !== null || running)
  const recorded = useMemo(() => recordedVisits(facts.steps.place.values), [facts.steps.place.values])
  const reached = useMemo(() => {
    const rings = [facts.drawing?.outline, ...(facts.drawing?.openings ?? []).map(({ outline }) => outline)]
    return reachedOf({
      plan: compaction,
      visits: mergedVisits(walk.visits, recorded),
      rings: rings.filter((ring) => ring !== undefined) as unknown as readonly Ring[],
      ticked: tickedZones(facts.steps.place.values, facts.revision),
    })
  }, [compaction, walk.visits, recorded, facts.drawing, facts.steps.place.values, facts.revision])
  const input = { walk, plan: compaction, reached, vibrator }
  const state = walkState({ ...input, now })
  const put = useCallback(
    (next: Walk): void => {
      setWalk(next)
      setFull(!keepWalk(localStorage, key, next))
    },
    [key],
  )
  return {
    walk,
    state,
    full,
    vibrator,
    follow: (next) => {
      setChosen(next)
      keepVibrator(localStorage, key, next)
    },
    onward: () => put(goOn({ ...input, now: Date.now() })),
    out: () => put(pulledOut(walk, Date.now())),
    back: () => put(takeBack(walk)),
    to: (insertion) => {
      const own = [...stopsOf(compaction).entries()].filter(([, stop]) => stop.insertion === insertion)
      const [, stop] = own.find(([at]) => OPEN.includes(state.stops[at])) ?? own.at(-1) ?? []
      if (stop !== undefined) put(goTo(walk, stop, Date.now()))
    },
  }
}

/** Calls once when the seconds of an insertion are over. */
export function useDue(due: boolean, act: () => void): void {
  const kept = useRef(act)
  kept.current = act
  useEffect(() => {
    if (due) kept.current()
  }, [due])
}

/** Now, each quarter of a second while something runs, and when the page is looked at again. */
function useSeconds(running: boolean): number {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    const tick = (): void => setNow(Date.now())
    tick()
    const timer = setInterval(tick, running ? 250 : 10_000)
    document.addEventListener('visibilitychange', tick)
    return () => {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', tick)
    }
  }, [running])
  return now
}

/** Keeps the screen on while the vibrator is in, where the device lets a page do that; asks anew when the page comes back. */
export function useAwake(awake: boolean): void {
  useEffect(() => {
    if (!awake || !('wakeLock' in navigator)) return
    let lock: WakeLockSentinel | null = null
    let left = false
    const ask = (): void => {
      if (document.visibilityState !== 'visible') return
      navigator.wakeLock.request('screen').then(
        (held) => {
          if (left) void held.release()
          else lock = held
        },
        () => undefined,
      )
    }
    ask()
    document.addEventListener('visibilitychange', ask)
    return () => {
      left = true
      document.removeEventListener('visibilitychange', ask)
      void lock?.release()
    }
  }, [awake])
}

import type { LiftStageId } from '@castwright/engine/lift'
import type { Point } from '@castwright/engine/panel'
import { useCallback, useEffect, useReducer, useRef } from 'react'
import { TrialAsker } from './trial-asker.ts'
import type { TrialCase, TrialWorker } from './trial-messages.ts'
import { drawnPlaces, nextTrial, startTrial, type TrialState } from './trial-state.ts'

export interface Trial {
  readonly state: TrialState
  /** The finger moves: quick. */
  readonly move: (index: number, at: Point) => void
  /** The finger lets go: in full. */
  readonly letGo: () => void
  readonly turn: (angle: number) => void
  readonly choose: (stage: LiftStageId) => void
  readonly back: () => void
  /** All inserts elsewhere at once, in full. */
  readonly put: (places: readonly Point[]) => void
}

/** One panel's plate in a worker of its own, from the first look to leaving the room. */
export function useTrial(of: TrialCase, first: LiftStageId): Trial {
  const [state, tell] = useReducer(nextTrial, first, startTrial)
  const asker = useRef<TrialAsker | null>(null)
  const now = useRef(state)
  now.current = state
  // The record reads the same drawing anew now and then: only what differs opens the panel again.
  const name = JSON.stringify(of)
  const held = useRef(of)
  held.current = of
  // biome-ignore lint/correctness/useExhaustiveDependencies: the name stands for the case
  useEffect(() => {
    const made = new TrialAsker(
      {
        start: startWorker,
        take: (answer) => {
          tell({ kind: 'answer', answer })
          if (answer.kind !== 'opened') return
          const { stage } = now.current
          const places = answer.inserts.map(({ at }): Point => [at[0], at[1]])
          made.ask({ kind: 'settle', ask: { stage, places, angle: 0 } })
        },
        broke: (message) => tell({ kind: 'broke', message }),
      },
      held.current,
    )
    asker.current = made
    return () => {
      made.stop()
      tell({ kind: 'again' })
    }
  }, [name])
  const ask = useCallback((kind: 'move' | 'settle', change: Partial<TrialState> = {}): void => {
    const { stage, places, angle } = { ...now.current, ...change }
    asker.current?.ask({ kind, ask: { stage, places, angle } })
  }, [])
  return {
    state,
    move: useCallback(
      (index, at) => {
        const places = now.current.places.map((place, i) => (i === index ? at : place))
        now.current = { ...now.current, places }
        tell({ kind: 'place', index, at })
        ask('move')
      },
      [ask],
    ),
    letGo: useCallback(() => ask('settle'), [ask]),
    turn: useCallback(
      (angle) => {
        tell({ kind: 'angle', angle })
        ask('move', { angle })
      },
      [ask],
    ),
    choose: useCallback(
      (stage) => {
        tell({ kind: 'stage', stage })
        ask('settle', { stage, angle: 0 })
      },
      [ask],
    ),
    put: useCallback(
      (places) => {
        tell({ kind: 'places', places })
        ask('settle', { places })
      },
      [ask],
    ),
    back: useCallback(() => {
      const places = drawnPlaces(now.current)
      tell({ kind: 'places', places })
      ask('settle', { places })
    }, [ask]),
  }
}

function startWorker(): TrialWorker {
  return new Worker(new URL('./trial-worker.ts', import.meta.url), {
    type: 'module',
  }) as unknown as TrialWorker
}

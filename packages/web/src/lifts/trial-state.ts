import type { LiftStage, LiftStageId } from '@castwright/engine/lift'
import type { TrialView } from '@castwright/engine/lift/trial'
import type { DrawnInsert, Point } from '@castwright/engine/panel'
import type { TrialAnswer } from './trial-messages.ts'

/** What the lift room shows of one panel: the inserts where they are tried, and what the worker last said of them. */
export interface TrialState {
  readonly inserts: readonly DrawnInsert[]
  /** The drawing has none: these are proposed. */
  readonly proposed: boolean
  /** Where each stands now, at once under the finger; mm. */
  readonly places: readonly Point[]
  readonly stage: LiftStageId
  /** Of the panel from flat, degrees. */
  readonly angle: number
  /** The last view that came; null before the first, and where there is none. */
  readonly view: TrialView | null
  /** Why there is none. */
  readonly why: readonly string[]
  /** The first full view of each stage with the inserts as drawn, to compare with. */
  readonly drawn: Readonly<Partial<Record<LiftStageId, TrialView>>>
  /** Every stage with the inserts where they are tried; null until told. */
  readonly stages: readonly LiftStage[] | null
  readonly waits: boolean
}

export function startTrial(stage: LiftStageId): TrialState {
  return {
    inserts: [],
    proposed: false,
    places: [],
    stage,
    angle: 0,
    view: null,
    why: [],
    drawn: {},
    stages: null,
    waits: true,
  }
}

export type TrialEvent =
  | { readonly kind: 'answer'; readonly answer: TrialAnswer }
  | { readonly kind: 'broke'; readonly message: string }
  | { readonly kind: 'place'; readonly index: number; readonly at: Point }
  | { readonly kind: 'places'; readonly places: readonly Point[] }
  | { readonly kind: 'stage'; readonly stage: LiftStageId }
  | { readonly kind: 'angle'; readonly angle: number }
  | { readonly kind: 'again' }

/** The state after an event; what must be asked of the worker is decided beside it. */
export function nextTrial(state: TrialState, event: TrialEvent): TrialState {
  switch (event.kind) {
    case 'answer':
      return afterAnswer(state, event.answer)
    case 'broke':
      return { ...state, view: null, waits: false, why: [`This panel could not be bent: ${event.message}`] }
    case 'place':
      return {
        ...state,
        places: state.places.map((at, i) => (i === event.index ? event.at : at)),
        waits: true,
      }
    case 'places':
      return { ...state, places: event.places, waits: true }
    case 'stage':
      return { ...state, stage: event.stage, angle: 0, waits: true }
    case 'angle':
      return { ...state, angle: event.angle, waits: true }
    case 'again':
      return { ...startTrial(state.stage) }
  }
}

function afterAnswer(state: TrialState, answer: TrialAnswer): TrialState {
  if (answer.kind === 'opened') {
    const places = answer.inserts.map(({ at }): Point => [at[0], at[1]])
    return {
      ...state,
      inserts: answer.inserts,
      proposed: answer.proposed,
      places,
      view: null,
      why: [],
      waits: true,
    }
  }
  const stages = answer.stages ?? state.stages
  // An answer about another stage comes too late to be shown.
  const ask = answer.kind === 'view' ? answer.view : answer.ask
  if (ask !== null && ask.stage !== state.stage) return { ...state, stages }
  if (answer.kind === 'refused') return { ...state, view: null, why: answer.why, stages, waits: false }
  const { view } = answer
  const waits = !samePlaces(view.places, state.places) || view.angle !== state.angle
  const first = view.quality === 'full' && view.angle === 0 && state.drawn[view.stage] === undefined
  const asDrawn = first && samePlaces(view.places, drawnPlaces(state))
  const drawn = asDrawn ? { ...state.drawn, [view.stage]: view } : state.drawn
  return { ...state, view, why: [], stages, drawn, waits }
}

export function drawnPlaces({ inserts }: Pick<TrialState, 'inserts'>): readonly Point[] {
  return inserts.map(({ at }): Point => [at[0], at[1]])
}

/** Whether the inserts stand elsewhere than drawn. */
export function isMoved(state: Pick<TrialState, 'inserts' | 'places'>): boolean {
  return !samePlaces(state.places, drawnPlaces(state))
}

export function samePlaces(a: readonly Point[], b: readonly Point[]): boolean {
  return a.length === b.length && a.every(([x, y], i) => x === b[i]?.[0] && y === b[i]?.[1])
}

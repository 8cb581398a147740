import type { FamilyId } from '@castwright/engine/codes'
import type { LiftStage } from '@castwright/engine/lift'
import type { TrialAsk, TrialView } from '@castwright/engine/lift/trial'
import type { Drawing, DrawnInsert } from '@castwright/engine/panel'
import type { YardFacts } from '@castwright/engine/steps'

/** What the worker holds: one panel with all that its lift is computed from. */
export interface TrialCase {
  readonly drawing: Drawing
  readonly yard: YardFacts['yard']
  readonly limits: YardFacts['limits']
  readonly family: FamilyId
}

export type TrialQuestion =
  /** A panel to hold; every later question is about it. */
  | { readonly kind: 'open'; readonly id: number; readonly of: TrialCase }
  /** A finger moves: quick, on the mesh at hand. */
  | { readonly kind: 'move'; readonly id: number; readonly ask: TrialAsk }
  /** Let go, or another stage: in full, with every stage of handling. */
  | { readonly kind: 'settle'; readonly id: number; readonly ask: TrialAsk }

export type TrialAnswer =
  | {
      readonly kind: 'opened'
      readonly id: number
      readonly inserts: readonly DrawnInsert[]
      readonly proposed: boolean
    }
  | {
      readonly kind: 'view'
      readonly id: number
      readonly view: TrialView
      readonly stages: readonly LiftStage[] | null
    }
  /** Why there is no picture of it, with the stages all the same where they could be told. */
  | {
      readonly kind: 'refused'
      readonly id: number
      readonly why: readonly string[]
      readonly ask: TrialAsk | null
      readonly stages: readonly LiftStage[] | null
    }

/** The part of a worker that is used: tests put a plain object in its place. */
export interface TrialWorker {
  postMessage(question: TrialQuestion): void
  terminate(): void
  onmessage: ((event: { readonly data: TrialAnswer }) => void) | null
  onerror: ((event: { readonly message: string }) => void) | null
}

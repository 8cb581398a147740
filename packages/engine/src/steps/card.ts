import type { LoadDecision } from '../pour/loads/load.ts'
import type { Asked } from '../working/asked.ts'
import type { Source } from '../working/source.ts'
import type { Verdict } from '../working/verdict.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Recorded, Signed, SignedDifference, Signer } from './facts.ts'
import type { StepId } from './steps.ts'

/** One row of a card: a check of the plan, something asked of a person, or a condition that the record decides. */
export interface CardRow {
  readonly id: string
  readonly from: 'plan' | 'asked' | 'record'
  readonly what: string
  readonly verdict: Verdict
  /** Found and wanted, for numbers. `limit` may be words, such as `80 to 120`. */
  readonly demand: number | string | null
  readonly limit: number | string | null
  readonly unit: string
  readonly note: string
  readonly source: Source
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  /** What is missing, where the verdict is `unknown`. */
  readonly unknown: readonly string[]
  readonly asked: Asked | null
  readonly recorded: Recorded | null
  readonly decision: Signed | null
  /** What it rests on was last said then: a decision made before does not cover it. Left out: any decision on record does. */
  readonly since?: string
  /** Who may decide it; left out: lead or engineer. */
  readonly deciders?: readonly Signer['role'][]
  /** What has to end before it can be judged, in words, such as a discharge that runs: until then it keeps the step shut, and no decision covers it. */
  readonly waits?: string
  /** Entry ids that the row rests on. */
  readonly rests: readonly string[]
  /** Computed beside the conditions of the step, as advice: it keeps nothing shut and asks for no decision. */
  readonly advice?: true
  /**
   * What stands in for this result while it fails or is not known, in words: a difference signed by an engineer. A replaced row keeps
   * its verdict and is never counted as passed; it only does not keep the hold shut.
   */
  readonly replaced?: string
  /** How our own result stands beside the confirmed lifting design; only where it does not pass and that design is there. */
  readonly difference?: RowDifference
}

export interface RowDifference {
  /** The signature on record, whether it counts or not. */
  readonly signed: SignedDifference | null
  /** An engineer may sign it now. */
  readonly may: boolean
  /** Why nothing that counts is signed, in words; null where the signature counts. */
  readonly gap: string | null
}

/** A decision, a signed difference or what was decided about a load at an earlier step: later cards go on showing it. */
export interface Carried {
  readonly step: StepId
  readonly kind: 'decision' | 'difference' | 'load'
  /** Id and title of the row. */
  readonly check: string
  readonly what: string
  readonly signed: Signed | SignedDifference | LoadDecision
}

export interface Card {
  readonly step: StepId
  /** `done`; `open`: can be worked on; `waiting`: behind a hold that is shut. */
  readonly state: 'done' | 'open' | 'waiting'
  readonly rows: readonly CardRow[]
  readonly verdict: Verdict
  /** Hold: every row passes. Other steps: every asked row recorded, every fail or not-known decided. */
  readonly ready: boolean
  /** One line, never yes: `All five conditions are met. The lead decides.` */
  readonly answer: string
  /** What the wide button still waits for, as short phrases. */
  readonly missing: readonly string[]
  /** Who may close or open this step. */
  readonly entitled: readonly Signer['role'][]
  /** Entry ids that closing or opening would rest on. */
  readonly rests: readonly string[]
  /** What was decided or signed at earlier steps in spite of a fail or a not-known, in the order of the steps. */
  readonly carried: readonly Carried[]
}

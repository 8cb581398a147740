import type { CutBar, CutList } from '@castwright/engine/steel'

/** To the worker: one list, and how long it may search. */
export interface CutQuestion {
  readonly list: CutList
  readonly within: number
}

export interface CutFound {
  readonly bars: readonly CutBar[]
  /** mm */
  readonly stockLength: number
  readonly lowerBound: number
  /** Null while the search goes on. */
  readonly proven: boolean | null
  /** No plan with as few ways of cutting as wanted was found. */
  readonly tooManyWays?: true
}

export type CutAnswer = CutFound | { readonly why: string }

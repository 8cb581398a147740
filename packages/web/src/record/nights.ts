import type { NightCase, NightChange, NightNow } from '@castwright/engine/cure/night'
import type { Worked } from '@castwright/engine/working'
import { type AnswerWorker, Names, WorkerAnswers } from './worker-answers.ts'

export interface NightQuestion {
  readonly id: number
  readonly of: NightCase
  /** What is tried on it; null for the night as recorded and planned. */
  readonly change: NightChange | null
}

export type NightAnswer =
  | { readonly id: number; readonly night: Worked<NightNow> }
  | { readonly id: number; readonly fault: string }

/** A computed night as a screen sees it. */
export type NightState =
  | { readonly status: 'computing' }
  | { readonly status: 'ready'; readonly night: NightNow }
  /** Not known, with what is missing, or a defect of ours that says itself. */
  | { readonly status: 'none'; readonly gaps: readonly string[] }

export type NightWorker = AnswerWorker<NightQuestion, NightAnswer>

/** Nights that are remembered: a day of many beds, each with some trials. */
const MOST = 400

/** Computes nights in a worker and remembers each by its case: nothing is computed again until something in it changed. */
export class Nights {
  readonly #nights: WorkerAnswers<NightQuestion, NightAnswer, NightState>
  readonly #names = new Names()

  constructor(start: () => NightWorker) {
    this.#nights = new WorkerAnswers<NightQuestion, NightAnswer, NightState>({
      start,
      most: MOST,
      computing: { status: 'computing' },
      ready: stateOf,
      broke: (message) => ({
        status: 'none',
        gaps: [`the night could not be computed: ${message || 'its part of the app did not load'}`],
      }),
    })
  }

  readonly subscribe = (listener: () => void): (() => void) => this.#nights.subscribe(listener)

  /** Rises with every answer. */
  readonly version = (): number => this.#nights.version()

  /** The night of a case, with what is tried on it. */
  night(of: NightCase, change: NightChange | null = null): NightState {
    const key = `${this.#names.of(of)} ${change === null ? '' : JSON.stringify(change)}`
    return this.#nights.ask(key, (id) => ({ id, of, change }))
  }
}

function stateOf(answer: NightAnswer): NightState {
  if ('fault' in answer) return { status: 'none', gaps: [answer.fault] }
  return answer.night.known
    ? { status: 'ready', night: answer.night.value }
    : { status: 'none', gaps: answer.night.gaps }
}

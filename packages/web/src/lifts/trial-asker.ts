import type { TrialAsk } from '@castwright/engine/lift/trial'
import type { TrialAnswer, TrialCase, TrialQuestion, TrialWorker } from './trial-messages.ts'

export interface TrialAskerInput {
  readonly start: () => TrialWorker
  readonly take: (answer: TrialAnswer) => void
  /** The worker could not be loaded, or broke. */
  readonly broke: (message: string) => void
}

type Wanted = { readonly kind: 'move' | 'settle'; readonly ask: TrialAsk }

/**
 * Asks a worker about one panel, one question at a time. A finger asks faster than a plate bends: while one is answered only the last
 * of the others waits, so that the picture is never behind by more than one move.
 */
export class TrialAsker {
  readonly #input: TrialAskerInput
  readonly #worker: TrialWorker
  #count = 0
  #asked: number | null = null
  #waiting: Wanted | null = null
  #stopped = false

  constructor(input: TrialAskerInput, of: TrialCase) {
    this.#input = input
    this.#worker = input.start()
    this.#worker.onmessage = ({ data }) => this.#take(data)
    this.#worker.onerror = ({ message }) => this.#break(message)
    this.#send({ kind: 'open', id: this.#count++, of })
  }

  /** The newest question counts: one that waits is dropped for it. */
  ask(wanted: Wanted): void {
    if (this.#stopped) return
    this.#waiting = wanted
    this.#next()
  }

  stop(): void {
    this.#stopped = true
    this.#worker.terminate()
  }

  #send(question: TrialQuestion): void {
    this.#asked = question.id
    this.#worker.postMessage(question)
  }

  #next(): void {
    if (this.#asked !== null || this.#waiting === null) return
    const wanted = this.#waiting
    this.#waiting = null
    this.#send({ ...wanted, id: this.#count++ })
  }

  #take(answer: TrialAnswer): void {
    if (this.#stopped || answer.id !== this.#asked) return
    this.#asked = null
    this.#next()
    this.#input.take(answer)
  }

  #break(message: string): void {
    if (this.#stopped) return
    this.stop()
    this.#input.broke(message || 'its part of the app did not load')
  }
}

/** The part of a worker that is used: tests put a plain function in its place. */
export interface AnswerWorker<Q, A> {
  postMessage(question: Q): void
  onmessage: ((event: { readonly data: A }) => void) | null
  onerror: ((event: { readonly message: string }) => void) | null
}

export interface WorkerAnswersInput<Q, A, S> {
  readonly start: () => AnswerWorker<Q, A>
  /** What a screen sees until the answer is there. */
  readonly computing: S
  readonly ready: (answer: A) => S
  /** The worker could not be loaded, or broke. */
  readonly broke: (message: string) => S
  /** Answers that are remembered; the oldest goes first. */
  readonly most?: number
}

/** Asks a worker one question at a time, the last asked first, and remembers each answer by its key. */
export class WorkerAnswers<Q extends { readonly id: number }, A extends { readonly id: number }, S> {
  readonly #input: WorkerAnswersInput<Q, A, S>
  readonly #states = new Map<string, S>()
  /** Not sent to the worker yet; the last is answered next, since it is what somebody just opened. */
  readonly #queue: { readonly question: Q; readonly key: string }[] = []
  #asked: { readonly id: number; readonly key: string } | null = null
  readonly #listeners = new Set<() => void>()
  #worker: AnswerWorker<Q, A> | null = null
  #count = 0
  #version = 0

  constructor(input: WorkerAnswersInput<Q, A, S>) {
    this.#input = input
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /** Rises with every answer. */
  readonly version = (): number => this.#version

  /** The answer, or that it is being computed; asking again costs nothing. */
  ask(key: string, question: (id: number) => Q): S {
    const known = this.#states.get(key)
    if (known !== undefined) return known
    const { computing, most = Number.POSITIVE_INFINITY } = this.#input
    this.#states.set(key, computing)
    for (const [old, state] of this.#states) {
      if (this.#states.size <= most) break
      if (state !== computing) this.#states.delete(old)
    }
    this.#queue.push({ question: question(this.#count++), key })
    this.#next()
    return computing
  }

  /** One at a time, so that what was opened in the meantime does not wait for the whole day. */
  #next(): void {
    if (this.#asked !== null) return
    const next = this.#queue.pop()
    if (next === undefined) return
    if (this.#worker === null) {
      this.#worker = this.#input.start()
      this.#worker.onmessage = ({ data }) => this.#take(data)
      this.#worker.onerror = ({ message }) => this.#break(message)
    }
    this.#asked = { id: next.question.id, key: next.key }
    this.#worker.postMessage(next.question)
  }

  #take(answer: A): void {
    if (this.#asked?.id !== answer.id) return
    const { key } = this.#asked
    this.#asked = null
    this.#states.set(key, this.#input.ready(answer))
    this.#next()
    this.#tell()
  }

  /** That answer is not known, and the next question starts a new worker. */
  #break(message: string): void {
    if (this.#asked !== null) this.#states.set(this.#asked.key, this.#input.broke(message))
    this.#asked = null
    this.#worker = null
    this.#next()
    this.#tell()
  }

  #tell(): void {
    this.#version += 1
    for (const listener of this.#listeners) listener()
  }
}

/** The text of an object, made once for each. */
export class Names {
  readonly #names = new WeakMap<object, string>()

  of(value: object): string {
    const known = this.#names.get(value)
    if (known !== undefined) return known
    const name = JSON.stringify(value)
    this.#names.set(value, name)
    return name
  }
}

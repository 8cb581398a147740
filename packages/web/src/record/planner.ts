import type { FamilyId } from '@castwright/engine/codes'
import type { Plan, PlanInput } from '@castwright/engine/plan'
import { type PanelFacts, planInputOf, type YardFacts } from '@castwright/engine/steps'

/** Input of a plan as it goes to the worker: the family by its name, since functions stay here. */
export interface PlanQuestion extends Omit<PlanInput, 'family'> {
  readonly id: number
  readonly family: FamilyId
}

/** The part of a panel's facts that its plan hangs on. */
export type PlannedFacts = Pick<PanelFacts, 'drawing' | 'revision' | 'steps'>

export type PlanAnswer =
  | { readonly id: number; readonly plan: Plan }
  | { readonly id: number; readonly fault: string }

/** A plan as a screen sees it. */
export type PlanState =
  | { readonly status: 'computing' }
  | { readonly status: 'ready'; readonly plan: Plan }
  /** Nothing can be planned: no drawing, no code family, or a defect of ours that says itself. */
  | { readonly status: 'none'; readonly why: string }

const COMPUTING: PlanState = { status: 'computing' }

/** The part of a worker that is used: tests put a plain function in its place. */
export interface PlanWorker {
  postMessage(question: PlanQuestion): void
  onmessage: ((event: { readonly data: PlanAnswer }) => void) | null
  onerror: ((event: { readonly message: string }) => void) | null
}

/** Plans panels in a worker, the last asked first, and remembers each by drawing, yard, limits and family. */
export class Planner {
  readonly #start: () => PlanWorker
  readonly #plans = new Map<string, PlanState>()
  /** Not sent to the worker yet; the last is planned next, since it is what somebody just opened. */
  readonly #queue: { readonly question: PlanQuestion; readonly key: string }[] = []
  #asked: { readonly id: number; readonly key: string } | null = null
  readonly #listeners = new Set<() => void>()
  readonly #names = new WeakMap<object, string>()
  #worker: PlanWorker | null = null
  #count = 0
  #version = 0

  constructor(start: () => PlanWorker) {
    this.#start = start
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /** Rises with every answer. */
  readonly version = (): number => this.#version

  /** The plan, or that it is being computed; asking again costs nothing. */
  plan(facts: PlannedFacts | null, { yard, limits }: Pick<YardFacts, 'yard' | 'limits'>): PlanState {
    if (facts === null || facts.drawing === null)
      return { status: 'none', why: 'There is no drawing in force.' }
    const input = planInputOf(facts, { yard, limits })
    if (input === null) return { status: 'none', why: 'Neither drawing nor yard names a code family.' }
    const family = input.family.id
    const key = `${family} ${this.#name(input.drawing)} ${yard === null ? '' : this.#name(yard)} ${this.#name(limits)} ${JSON.stringify(input.placing)}`
    const known = this.#plans.get(key)
    if (known) return known
    this.#plans.set(key, COMPUTING)
    this.#ask({ ...input, id: this.#count++, family }, key)
    return COMPUTING
  }

  #ask(question: PlanQuestion, key: string): void {
    this.#queue.push({ question, key })
    this.#next()
  }

  /** One at a time, so that a panel opened in the meantime does not wait for the whole day. */
  #next(): void {
    if (this.#asked !== null) return
    const next = this.#queue.pop()
    if (next === undefined) return
    if (this.#worker === null) {
      this.#worker = this.#start()
      this.#worker.onmessage = ({ data }) => this.#take(data)
      this.#worker.onerror = ({ message }) => this.#break(message)
    }
    this.#asked = { id: next.question.id, key: next.key }
    this.#worker.postMessage(next.question)
  }

  #take(answer: PlanAnswer): void {
    if (this.#asked?.id !== answer.id) return
    const { key } = this.#asked
    this.#asked = null
    this.#plans.set(
      key,
      'plan' in answer ? { status: 'ready', plan: answer.plan } : { status: 'none', why: answer.fault },
    )
    this.#next()
    this.#tell()
  }

  /** The worker could not be loaded or broke: that plan is not known, and the next question starts a new worker. */
  #break(message: string): void {
    if (this.#asked !== null) {
      this.#plans.set(this.#asked.key, {
        status: 'none',
        why: `The plan could not be computed: ${message || 'its part of the app did not load'}`,
      })
    }
    this.#asked = null
    this.#worker = null
    this.#next()
    this.#tell()
  }

  #tell(): void {
    this.#version += 1
    for (const listener of this.#listeners) listener()
  }

  /** The text of a drawing or yard, made once for each object. */
  #name(value: object): string {
    const known = this.#names.get(value)
    if (known !== undefined) return known
    const name = JSON.stringify(value)
    this.#names.set(value, name)
    return name
  }
}

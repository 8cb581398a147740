import type { FamilyId } from '@castwright/engine/codes'
import type { Plan, PlanInput } from '@castwright/engine/plan'
import { type PanelFacts, planInputOf, type YardFacts } from '@castwright/engine/steps'
import { type AnswerWorker, Names, WorkerAnswers } from './worker-answers.ts'

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

export type PlanWorker = AnswerWorker<PlanQuestion, PlanAnswer>

/** Plans panels in a worker, the last asked first, and remembers each by drawing, yard, limits and family. */
export class Planner {
  readonly #plans: WorkerAnswers<PlanQuestion, PlanAnswer, PlanState>
  readonly #names = new Names()

  constructor(start: () => PlanWorker) {
    this.#plans = new WorkerAnswers<PlanQuestion, PlanAnswer, PlanState>({
      start,
      computing: { status: 'computing' },
      ready: (answer) =>
        'plan' in answer ? { status: 'ready', plan: answer.plan } : { status: 'none', why: answer.fault },
      broke: (message) => ({
        status: 'none',
        why: `The plan could not be computed: ${message || 'its part of the app did not load'}`,
      }),
    })
  }

  readonly subscribe = (listener: () => void): (() => void) => this.#plans.subscribe(listener)

  /** Rises with every answer. */
  readonly version = (): number => this.#plans.version()

  /** The plan, or that it is being computed; asking again costs nothing. */
  plan(facts: PlannedFacts | null, { yard, limits }: Pick<YardFacts, 'yard' | 'limits'>): PlanState {
    if (facts === null || facts.drawing === null)
      return { status: 'none', why: 'There is no drawing in force.' }
    const input = planInputOf(facts, { yard, limits })
    if (input === null) return { status: 'none', why: 'Neither drawing nor yard names a code family.' }
    const family = input.family.id
    const names = [input.drawing, ...(yard === null ? [] : [yard]), limits].map((each) =>
      this.#names.of(each),
    )
    const key = [family, ...names, JSON.stringify(input.placing)].join(' ')
    return this.#plans.ask(key, (id) => ({ ...input, id, family }))
  }
}

import type { Act, Answer } from '../../codes/bar-acts.ts'
import type { Source } from '../../working/source.ts'

/** Whether something may be done with a bar. */
export interface PermittedAct {
  readonly act: Act
  readonly answer: Answer
  /** Plain sentences; for `unknown` what is missing. */
  readonly conditions: readonly string[]
  readonly source: Source | null
}

/** An answer for one make of bar that the bar in hand may be. */
export interface OfMake {
  /** Example: `quenched and tempered bar`. */
  readonly make: string
  readonly answer: PermittedAct
}

/** From the mildest to the strictest: where a rule is missing nothing may be done without it, and a ban outranks a gap. */
const STRICTNESS: readonly Answer[] = ['yes', 'engineer', 'unknown', 'no']

/**
 * The strictest of the answers that a bar of more than one possible make has, with the conditions of every make that is as strict; where
 * makes differ a condition says which of them decided.
 *
 * @throws Error without any answer.
 */
export function strictest(answers: readonly OfMake[]): PermittedAct {
  const rank = ({ answer }: OfMake) => STRICTNESS.indexOf(answer.answer)
  const top = Math.max(...answers.map(rank))
  const deciding = answers.filter((each) => rank(each) === top)
  const [first] = deciding
  if (first === undefined) throw new Error('strictest: found no answers, expected at least one')
  const conditions = [...new Set(deciding.flatMap(({ answer }) => answer.conditions))]
  if (deciding.length < answers.length) {
    conditions.unshift(
      `The make of the bar is not known: the answer for ${deciding.map(({ make }) => make).join(' and ')}, the strictest, is taken.`,
    )
  }
  return { ...first.answer, conditions }
}

import type { Card, CardRow } from './card.ts'
import { panelStep, type StepId } from './steps.ts'

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]

function word(count: number): string {
  return NUMBERS[count] ?? String(count)
}

function start(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** The card's one line. It counts conditions and names who decides; it never says yes. */
export function answerOf({
  step,
  hold,
  state,
  rows,
  ready,
  behind,
}: {
  readonly step: StepId
  readonly hold: boolean
  readonly state: Card['state']
  readonly rows: readonly CardRow[]
  readonly ready: boolean
  readonly behind: StepId | null
}): string {
  if (state === 'done')
    return hold ? `${panelStep(step).name} was opened.` : `${panelStep(step).name} is closed.`
  if (behind !== null) return `Waits until ${panelStep(behind).name} is opened.`
  const counted = rows.filter((row) => row.replaced === undefined)
  if (counted.length === 0) return 'Nothing is asked here.'
  const failed = counted.filter(({ verdict }) => verdict === 'fail').length
  const open = counted.filter(({ verdict }) => verdict === 'unknown').length
  const replaced = rows.length - counted.length
  const tail =
    replaced === 0
      ? ''
      : replaced === 1
        ? ' One difference is signed by an engineer.'
        : ` ${start(word(replaced))} differences are signed by an engineer.`
  if (failed === 0 && open === 0) {
    const rest = replaced === 0 ? '' : ' other'
    const all =
      counted.length === 1
        ? `The one${rest} condition is met`
        : `All ${word(counted.length)}${rest} conditions are met`
    return `${all}.${tail} ${hold ? 'The lead decides.' : 'Sign to close the step.'}`
  }
  const parts = [
    ...(failed > 0 ? [`${word(failed)} not met`] : []),
    ...(open > 0 ? [`${word(open)} not known`] : []),
  ]
  const decided = ready ? ' Each has a decision.' : ''
  return `${start(parts.join(', '))} of ${word(counted.length)} conditions.${decided}${tail}`
}

import { ownCover } from '@castwright/engine/cure'
import { openPrior, outOfRange, outOfRangeText } from '@castwright/engine/cure/gain'
import { strengthLine } from './strength-line.ts'
import type { StrengthAnswer, StrengthWork } from './strength-work.ts'

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<StrengthWork>) => void) | null
  postMessage(answer: StrengthAnswer): void
}

scope.onmessage = ({ data }) => {
  try {
    scope.postMessage(answerOf(data))
  } catch (error) {
    scope.postMessage({ kind: 'fault', fault: error instanceof Error ? error.message : String(error) })
  }
}

function answerOf(work: StrengthWork): StrengthAnswer {
  if (work.kind === 'cover') return { kind: 'cover', found: ownCover({ mix: work.mix }) }
  const { proportions } = work.mix
  if (proportions === undefined) throw new Error('open tests: found a mix without proportions')
  const outside = outOfRange(proportions)
  const far = outside.some((each) => each.far)
  const line = far ? null : strengthLine({ ...work.line, open: openPrior(proportions) })
  return { kind: 'open', found: { line, warnings: outside.map(outOfRangeText), far } }
}

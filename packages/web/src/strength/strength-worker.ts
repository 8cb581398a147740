import { answerWork } from './answer-work.ts'
import type { StrengthAnswer, StrengthWork } from './strength-work.ts'

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<StrengthWork>) => void) | null
  postMessage(answer: StrengthAnswer): void
}

scope.onmessage = ({ data }) => {
  try {
    scope.postMessage(answerWork(data))
  } catch (error) {
    scope.postMessage({ kind: 'fault', fault: error instanceof Error ? error.message : String(error) })
  }
}

import { changedNight, runNight } from '@castwright/engine/cure/night'
import { InputError, issueSentence } from '@castwright/engine/working'
import type { NightAnswer, NightQuestion } from './nights.ts'

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<NightQuestion>) => void) | null
  postMessage(answer: NightAnswer): void
}

scope.onmessage = ({ data: { id, of, change } }) => {
  try {
    scope.postMessage({ id, night: runNight(change === null ? of : changedNight(of, change)) })
  } catch (error) {
    scope.postMessage({ id, fault: faultOf(error) })
  }
}

function faultOf(error: unknown): string {
  if (error instanceof InputError) return error.issues.map((issue) => issueSentence(issue)).join('; ')
  return error instanceof Error ? error.message : String(error)
}

import { codeFamily } from '@castwright/engine/codes'
import { plan as planPanel } from '@castwright/engine/plan'
import type { PlanAnswer, PlanQuestion } from './planner.ts'

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<PlanQuestion>) => void) | null
  postMessage(answer: PlanAnswer): void
}

scope.onmessage = ({ data: { id, family, ...input } }) => {
  try {
    scope.postMessage({ id, plan: planPanel({ ...input, family: codeFamily(family) }) })
  } catch (error) {
    scope.postMessage({ id, fault: error instanceof Error ? error.message : String(error) })
  }
}

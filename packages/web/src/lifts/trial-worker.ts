import { codeFamily } from '@castwright/engine/codes'
import { TrialBench } from '@castwright/engine/lift/trial'
import { panelOf } from '@castwright/engine/panel'
import { InputError } from '@castwright/engine/working'
import type { TrialAnswer, TrialQuestion } from './trial-messages.ts'

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<TrialQuestion>) => void) | null
  postMessage(answer: TrialAnswer): void
}

let bench: TrialBench | null = null

scope.onmessage = ({ data: question }) => {
  const ask = question.kind === 'open' ? null : question.ask
  try {
    scope.postMessage(answerTo(question))
  } catch (error) {
    scope.postMessage({ kind: 'refused', id: question.id, ask, why: reasons(error), stages: null })
  }
}

function answerTo(question: TrialQuestion): TrialAnswer {
  const { id } = question
  if (question.kind === 'open') {
    const { drawing, yard, limits, family } = question.of
    bench = new TrialBench({ panel: panelOf(drawing), yard, limits, family: codeFamily(family) })
    return { kind: 'opened', id, inserts: bench.inserts, proposed: bench.proposed }
  }
  if (bench === null) throw new Error('a move before a panel was opened')
  const { ask } = question
  const found = question.kind === 'move' ? bench.move(ask) : bench.settle(ask)
  const stages = question.kind === 'move' ? null : bench.stages(ask.places)
  return found.known
    ? { kind: 'view', id, view: found.value, stages }
    : { kind: 'refused', id, why: found.gaps, ask, stages }
}

function reasons(error: unknown): readonly string[] {
  if (error instanceof InputError) {
    return error.issues.map(({ path, found, expected }) => `${path}: found ${found}, expected ${expected}`)
  }
  return [error instanceof Error ? error.message : String(error)]
}

import { codeFamily } from '@castwright/engine/codes'
import type { LiftStageId, StressField } from '@castwright/engine/lift'
import { TrialBench } from '@castwright/engine/lift/trial'
import { panelOf } from '@castwright/engine/panel'
import type { SheetInput } from './sheet.ts'

/** Tension all over the panel at a stage; null where the plate is not known or nothing bends. The plan keeps only what is compared. */
export function stageField({ plan, drawing, yard }: SheetInput, id: LiftStageId): StressField | null {
  const stage = plan.lift.stages.find((one) => one.id === id)
  if (stage === undefined || stage.peak === null || stage.factor === null) return null
  const bench = new TrialBench({
    panel: panelOf(drawing),
    yard: yard.yard,
    family: codeFamily(plan.family),
    limits: yard.limits,
  })
  const view = bench.settle({ stage: id, places: bench.inserts.map(({ at }) => at), angle: 0 })
  return view.known ? view.value.field : null
}

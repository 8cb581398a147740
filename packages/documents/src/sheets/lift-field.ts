import { codeFamily } from '@castwright/engine/codes'
import type { StressField } from '@castwright/engine/lift'
import { TrialBench } from '@castwright/engine/lift/trial'
import { panelOf } from '@castwright/engine/panel'
import type { SheetInput } from './sheet.ts'

/** Tension all over the panel as it leaves the mould; null where the plate is not known. The plan keeps only what is compared. */
export function firstField({ plan, drawing, yard }: SheetInput): StressField | null {
  const stage = plan.lift.stages.find(({ id }) => id === 'release')
  if (stage === undefined || stage.peak === null || stage.factor === null) return null
  const bench = new TrialBench({
    panel: panelOf(drawing),
    yard: yard.yard,
    family: codeFamily(plan.family),
    limits: yard.limits,
  })
  const view = bench.settle({ stage: 'release', places: bench.inserts.map(({ at }) => at), angle: 0 })
  return view.known ? view.value.field : null
}

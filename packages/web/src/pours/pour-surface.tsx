import type { Plan } from '@castwright/engine/plan'
import type { PanelFacts } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { useNow, useYardState } from '../record/index.ts'
import { SurfaceReadings, SurfaceTimes } from './finish-part.tsx'

/** The surface in the pour room, once there is concrete in the mould. */
export function PourSurface({
  facts,
  plan,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
}): ReactElement | null {
  const { yard } = useYardState()
  const now = useNow(60_000)
  const zone = yard.yard?.timezone ?? 'UTC'
  const place = {
    job: facts.job,
    mark: facts.mark,
    revision: facts.revision,
    edition: plan.editions.join('; '),
  }
  if (facts.cast === null) return null
  return (
    <>
      <SurfaceTimes facts={facts} plan={plan} zone={zone} now={now} />
      <SurfaceReadings facts={facts} plan={plan} place={place} zone={zone} now={now} />
    </>
  )
}

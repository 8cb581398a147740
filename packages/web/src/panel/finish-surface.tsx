import type { ReactElement } from 'react'
import { SurfaceReadings, SurfaceTimes } from '../pours/finish-part.tsx'
import { usePlan } from '../record/index.ts'
import { usePanelRoom } from './panel-context.ts'

/** The surface on the finish card: `times` above what is asked, `readings` below it. */
export function FinishSurface({ part }: { readonly part: 'times' | 'readings' }): ReactElement {
  const { facts, place, zone, now } = usePanelRoom()
  const state = usePlan(facts.job, facts.mark)
  const plan = state.status === 'ready' ? state.plan : null
  return part === 'times' ? (
    <SurfaceTimes facts={facts} plan={plan} zone={zone} now={now} />
  ) : (
    <SurfaceReadings facts={facts} plan={plan} place={place} zone={zone} now={now} />
  )
}

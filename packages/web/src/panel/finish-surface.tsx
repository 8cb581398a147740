import type { ReactElement } from 'react'
import { FinishPart } from '../pours/finish-part.tsx'
import { usePlan } from '../record/index.ts'
import { usePanelRoom } from './panel-context.ts'

/** The surface on the finish card. */
export function FinishSurface(): ReactElement {
  const { facts, place, zone, now } = usePanelRoom()
  const plan = usePlan(facts.job, facts.mark)
  return (
    <FinishPart
      facts={facts}
      plan={plan.status === 'ready' ? plan.plan : null}
      place={place}
      zone={zone}
      now={now}
    />
  )
}

import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { PlacingPart } from '../pours/placing-part.tsx'
import { usePlan } from '../record/index.ts'
import { usePanelRoom } from './panel-context.ts'

/** On the card of placing: the way to the live walk, where the chute stands, which heads work. */
export function PlacingHere(): ReactElement | null {
  const { facts } = usePanelRoom()
  const state = usePlan(facts.job, facts.mark)
  if (state.status !== 'ready') return null
  return (
    <>
      {state.plan.pour.compaction === null ? null : (
        <p className="no-print">
          <Link className="button" to="/pours/$job/$mark" params={{ job: facts.job, mark: facts.mark }}>
            Place and vibrate, live
          </Link>
        </p>
      )}
      <PlacingPart facts={facts} plan={state.plan} />
    </>
  )
}

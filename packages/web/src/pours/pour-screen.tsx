import './pours.css'
import { Link, useParams } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Notice, useTitle } from '../look/index.ts'
import { usePanel, usePlan } from '../record/index.ts'
import { LiveWalk } from './live-walk.tsx'
import { PlacingPart } from './placing-part.tsx'
import { PourSurface } from './pour-surface.tsx'

/** The pour room of one panel: where the chute stands, which heads work, and the vibrator's walk, live. */
export function PourScreen(): ReactElement {
  const { job, mark } = useParams({ from: '/rooms/pours/$job/$mark' })
  useTitle(`Pour of ${mark}`)
  const facts = usePanel(job, mark)
  const state = usePlan(job, mark)
  if (facts === null || facts.drawing === null) {
    return (
      <div className="room stack">
        <h1>{mark}</h1>
        <Notice kind="unknown" title="The record has no drawing of this panel" />
      </div>
    )
  }
  const plan = state.status === 'ready' ? state.plan : null
  return (
    <div className="room stack">
      <div className="row pours-head">
        <h1>{mark}: place and vibrate</h1>
        <Link
          className="button no-print"
          to="/panel/$job/$mark"
          params={{ job, mark }}
          search={{ step: 'place' }}
        >
          Card
        </Link>
      </div>
      {plan === null ? (
        <p role="status">{state.status === 'none' ? 'No plan: nothing can be computed.' : 'Computing …'}</p>
      ) : (
        <>
          {plan.pour.compaction === null ? (
            <Notice kind="unknown" title="No pattern">
              {plan.pour.unknown.join('; ') || 'The yard lists no vibrator.'}
            </Notice>
          ) : (
            <LiveWalk facts={facts} plan={plan} compaction={plan.pour.compaction} />
          )}
          <PlacingPart facts={facts} plan={plan} />
          <PourSurface facts={facts} plan={plan} />
        </>
      )}
    </div>
  )
}

import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { usePanelRoom } from './panel-context.ts'

/** The way from the strip card to the stresses, stages and rigging of this lift. */
export function OpenLift(): ReactElement {
  const { facts } = usePanelRoom()
  return (
    <Link className="button" to="/lifts/$job/$mark" params={{ job: facts.job, mark: facts.mark }}>
      Open the lift
    </Link>
  )
}

import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { usePanelRoom } from './panel-context.ts'

/** The way from the cards of steel and cage to where every bar lies, its ties and chairs. */
export function OpenLaid(): ReactElement | null {
  const { facts } = usePanelRoom()
  if ((facts.drawing?.steel?.length ?? 0) === 0) return null
  return (
    <Link className="button" to="/steel/laid" search={{ panel: `${facts.job}/${facts.mark}` }}>
      How the bars lie
    </Link>
  )
}

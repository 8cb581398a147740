import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Notice, Sheet, useTitle } from '../look/index.ts'
import { usePerson, useYardState } from '../record/index.ts'
import { BringIn } from '../yard/bring-in.tsx'
import { NewYard } from '../yard/new-yard.tsx'

/** An empty yard says what to do first. */
export function FirstRun(): ReactElement {
  useTitle('Start')
  const { yard } = useYardState()
  const { role } = usePerson()
  if (role !== 'lead' && role !== 'engineer') {
    return (
      <div className="narrow">
        <Sheet title="Nothing is here yet">
          A lead or an engineer brings in the yard and the first drawing. Then the day shows here.
        </Sheet>
      </div>
    )
  }
  return (
    <div className="narrow">
      <h1>Start here</h1>
      {yard.yard === null ? (
        <>
          <Notice title="First the yard, then a drawing">
            The yard’s file says its code family, time zone, beds, mixes and gear. Its name and code are
            enough to begin; what is missing is then not known, and says so.
          </Notice>
          <Sheet title="Bring in a file" note="Yard, job or drawing as JSON; it is told by its format.">
            <BringIn />
          </Sheet>
          <NewYard />
        </>
      ) : (
        <>
          <Sheet title="Bring in a drawing or a job" note="JSON; a job brings all its drawings at once.">
            <BringIn />
          </Sheet>
          <Sheet
            title="Or enter a drawing by hand"
            note="Outline and openings by dimensions; the picture follows at once."
          >
            <Link className="button button-main button-wide" to="/drawing/new">
              Enter a drawing
            </Link>
          </Sheet>
        </>
      )}
    </div>
  )
}

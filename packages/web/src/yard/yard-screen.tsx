import './yard.css'
import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Sheet, useTitle } from '../look/index.ts'
import { usePerson, useYardState } from '../record/index.ts'
import { BringIn } from './bring-in.tsx'
import { LoggersPart } from './loggers-part.tsx'
import { NewYard } from './new-yard.tsx'
import { People } from './people.tsx'
import { ThisDevice } from './this-device.tsx'
import { YardFactsSheet } from './yard-facts.tsx'

/** The yard's own page: what it has, what is brought in, who works here, and this device. */
export function YardScreen(): ReactElement {
  useTitle('Yard')
  const { role } = usePerson()
  const { yard } = useYardState().yard
  const may = role === 'lead' || role === 'engineer'
  return (
    <div className="room stack">
      <h1>Yard</h1>
      <div className="yard-columns">
        <div className="stack">
          <YardFactsSheet />
          <Sheet title="Weather" note="Forecast and station log: what the nights are computed from.">
            <Link className="button" to="/weather">
              See it, bring it in
            </Link>
          </Sheet>
          {may ? (
            <Sheet title="Bring in" note="Yard, job or drawing as JSON; it is told by its format.">
              <div className="stack">
                <BringIn />
                <Link className="button" to="/drawing/new">
                  Enter a drawing by hand
                </Link>
              </div>
            </Sheet>
          ) : null}
          {may && yard === null ? <NewYard /> : null}
        </div>
        <div className="stack">
          <ThisDevice />
          <LoggersPart />
          <People />
        </div>
      </div>
    </div>
  )
}

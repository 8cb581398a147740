import type { TrialView } from '@castwright/engine/lift/trial'
import { type ReactElement, useId, useState } from 'react'
import { fixed } from '../look/index.ts'
import { axonometric, exaggeration } from './axonometric.ts'

const WIDTH = 640
const HEIGHT = 360

/** The bent panel seen at a slant, its deflection drawn larger as stated; turned by the slider, also with the arrow keys. */
export function DeflectedShape({ view }: { readonly view: TrialView | null }): ReactElement {
  const id = useId()
  const [turn, setTurn] = useState(30)
  if (view?.field == null) return <p>Nothing bends at this stage.</p>
  const { field, sag } = view
  const times = exaggeration(field)
  const words = `Greatest sag ${fixed(sag?.most, 2)} mm, greatest rise ${fixed(sag === null ? null : Math.max(0, -sag.least), 2)} mm. Drawn × ${times}.`
  return (
    <div className="stack">
      <svg
        className="deflected"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Deflected shape. ${words}`}
      >
        {axonometric({ field, turn, times, width: WIDTH, height: HEIGHT }).map(({ path, share }) => (
          <path
            key={path}
            d={path}
            style={{ fill: `color-mix(in srgb, var(--accent) ${Math.round(8 + 62 * share)}%, var(--sheet))` }}
          />
        ))}
      </svg>
      <p>{words} Uncracked concrete, 30 000 MPa assumed.</p>
      <div className="turn-slider">
        <label htmlFor={id}>Turn the view</label>
        <input
          id={id}
          type="range"
          min={0}
          max={355}
          step={5}
          value={turn}
          aria-valuetext={`${turn} degrees`}
          onChange={(event) => setTurn(Number(event.currentTarget.value))}
        />
        <output htmlFor={id}>{turn}°</output>
      </div>
    </div>
  )
}

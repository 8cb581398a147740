import { type ReactElement, useId } from 'react'

export interface TurnSliderProps {
  /** From flat, degrees. */
  readonly angle: number
  readonly onTurn: (angle: number) => void
}

/** Turns the panel from flat to upright. */
export function TurnSlider({ angle, onTurn }: TurnSliderProps): ReactElement {
  const id = useId()
  return (
    <div className="turn-slider">
      <label htmlFor={id}>Turned from flat</label>
      <input
        id={id}
        type="range"
        min={0}
        max={90}
        step={1}
        value={angle}
        aria-valuetext={`${angle} degrees`}
        onChange={(event) => onTurn(Number(event.currentTarget.value))}
      />
      <output htmlFor={id}>{angle}°</output>
    </div>
  )
}

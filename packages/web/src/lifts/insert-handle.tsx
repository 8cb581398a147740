import { lengthText } from '@castwright/documents/picture'
import type { Point } from '@castwright/engine/panel'
import { type KeyboardEvent, type PointerEvent, type ReactElement, useRef, useState } from 'react'
import { loadText } from './load-text.ts'

export interface InsertHandleProps {
  readonly mark: string
  /** mm of the panel. */
  readonly at: Point
  /** Middle of the handle, px in the picture. */
  readonly x: number
  readonly y: number
  readonly load: number | null
  /** A place on the screen, as mm of the panel. */
  readonly place: (client: readonly [number, number]) => Point
  readonly onMove: (wanted: Point) => void
  readonly onLetGo: () => void
}

/** Steps of the arrow keys, mm: alone, and with shift. */
const STEP = 10
const LEAP = 100

const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** One insert to be moved by finger, mouse or arrow keys. Its target is 48 px; the circle in it is the insert. */
export function InsertHandle(props: InsertHandleProps): ReactElement {
  const { mark, at, x, y, load, place, onMove, onLetGo } = props
  /** How far beside the insert the finger took hold, mm. */
  const hold = useRef<Point | null>(null)
  const [held, setHeld] = useState(false)
  const take = (event: PointerEvent<HTMLButtonElement>): void => {
    if (event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    const [px, py] = place([event.clientX, event.clientY])
    hold.current = [at[0] - px, at[1] - py]
    setHeld(true)
  }
  const drag = (event: PointerEvent<HTMLButtonElement>): void => {
    if (hold.current === null) return
    const [px, py] = place([event.clientX, event.clientY])
    onMove(onGrid([px + hold.current[0], py + hold.current[1]], STEP))
  }
  const release = (): void => {
    if (hold.current === null) return
    hold.current = null
    setHeld(false)
    onLetGo()
  }
  const key = (event: KeyboardEvent<HTMLButtonElement>): void => {
    const way = WAYS[event.key]
    if (way === undefined || event.altKey || event.ctrlKey || event.metaKey) return
    event.preventDefault()
    const step = event.shiftKey ? LEAP : STEP
    onMove([nextOnGrid(at[0], way[0], step), nextOnGrid(at[1], way[1], step)])
  }
  return (
    <button
      type="button"
      className={held ? 'lift-handle lift-held' : 'lift-handle'}
      style={{ left: x, top: y }}
      aria-label={`Insert ${mark}, ${lengthText(at[0])} mm right, ${lengthText(at[1])} mm up${load === null ? '' : `, carries ${loadText(load)}`}`}
      aria-describedby="lift-keys"
      onPointerDown={take}
      onPointerMove={drag}
      onPointerUp={release}
      onPointerCancel={release}
      onKeyDown={key}
      onKeyUp={(event) => {
        if (event.key in WAYS) onLetGo()
      }}
    >
      <span>{mark}</span>
    </button>
  )
}

function onGrid([x, y]: Point, step: number): Point {
  return [Math.round(x / step) * step, Math.round(y / step) * step]
}

/** The next line of the grid that way; a place between two lines goes to the nearer in its way first. */
function nextOnGrid(value: number, way: number, step: number): number {
  if (way === 0) return value
  return way > 0
    ? Math.floor(value / step + 1e-6) * step + step
    : Math.ceil(value / step - 1e-6) * step - step
}

import type { Drawing } from '@castwright/engine/panel'
import type { PlacedBar, SteelPlan } from '@castwright/engine/steel'
import { type PointerEvent, type ReactElement, useEffect, useId, useMemo, useRef, useState } from 'react'
import { Button, SelectField } from '../../look/index.ts'
import { paint } from './cage-paint.ts'
import { barAt, cageInSpace, type Look, movedBy, nearerBy } from './cage-space.ts'

const START: Look = { turn: 30, tilt: 35, zoom: 1, stretch: 1, aside: [0, 0] }
/** px: a finger's reach, and how far it moves before it drags. */
const REACH = 14
const STILL = 4
const LARGEST = 8

export interface CageViewProps {
  readonly drawing: Drawing
  readonly steel: SteelPlan
}

/** Every bar in space on a canvas: turned, tilted and brought nearer by sliders, buttons or dragging; one mark may stand out. */
export function CageView({ drawing, steel }: CageViewProps): ReactElement {
  const [look, setLook] = useState(START)
  const [mark, setMark] = useState('')
  const [touched, setTouched] = useState<PlacedBar | null>(null)
  const { box, width } = useWidth()
  const canvas = useRef<HTMLCanvasElement>(null)
  const height = Math.round(Math.min(520, Math.max(240, width * 0.6)))
  const rings = useMemo(
    () => [drawing.outline, ...(drawing.openings ?? []).map(({ outline }) => outline)],
    [drawing],
  )
  const view = useMemo(
    () => cageInSpace({ bars: steel.placed, rings, thickness: drawing.thickness, look, width, height }),
    [steel, rings, drawing, look, width, height],
  )
  const lapped = useMemo(() => new Set(steel.laps.flatMap(({ bars }) => bars)), [steel])
  const bars = useMemo(() => new Map(steel.placed.map((bar) => [bar.id, bar])), [steel])
  useEffect(() => {
    if (canvas.current !== null) paint(canvas.current, view, { bars, lapped, mark, width, height })
  }, [view, bars, lapped, mark, width, height])
  const [wantsMove, setMoves] = useState(false)
  const moves = wantsMove && look.zoom > 1
  const drag = useDrag(
    (dx, dy) =>
      setLook((was) =>
        moves
          ? movedBy(was, dx / width, dy / height)
          : {
              ...was,
              turn: (((was.turn + dx * 0.5) % 360) + 360) % 360,
              tilt: Math.min(90, Math.max(0, was.tilt + dy * 0.3)),
            },
      ),
    (x, y) => setTouched(bars.get(barAt(view.strokes, x, y, REACH) ?? '') ?? null),
  )
  const unseen = steel.placed.filter(({ centreline }) => centreline === null).length
  const words = `${view.strokes.length} bars, turned ${Math.round(look.turn)}°, seen from ${Math.round(look.tilt)}° above level.`
  return (
    <div className="stack">
      <div ref={box} className="cage-box">
        <canvas
          ref={canvas}
          className={moves ? 'cage-canvas cage-moves' : 'cage-canvas'}
          role="img"
          aria-label={`The cage in space: ${words}`}
          {...drag}
        />
      </div>
      <p role="status">
        {touched === null
          ? words
          : `${touched.mark}: ${touched.diameter} mm, ${touched.use === 'mat' ? 'mat' : touched.use} bar, ${layerWord(touched)}.`}
        {unseen > 0 ? ` ${unseen} bars have no height and are left out.` : ''}
      </p>
      <Controls look={look} onLook={setLook} moves={moves} onMoves={setMoves} />
      <SelectField
        label="Mark that stands out"
        value={mark}
        onChange={(event) => setMark(event.currentTarget.value)}
      >
        <option value="">none</option>
        {steel.bars.map((bar) => (
          <option key={bar.mark}>{bar.mark}</option>
        ))}
      </SelectField>
    </div>
  )
}

function layerWord({ layer, height }: PlacedBar): string {
  const where =
    layer === 'both' ? 'from layer to layer' : layer === 'mould' ? 'near the mould' : 'near the top'
  return height === null ? where : `${where}, middle ${Math.round(height)} mm above the mould face`
}

const MOVES = [
  ['Left', 0.2, 0],
  ['Right', -0.2, 0],
  ['Up', 0, 0.2],
  ['Down', 0, -0.2],
] as const

interface ControlsProps {
  readonly look: Look
  readonly onLook: (look: Look) => void
  /** Dragging moves the cage instead of turning it. */
  readonly moves: boolean
  readonly onMoves: (moves: boolean) => void
}

function Controls({ look, onLook, moves, onMoves }: ControlsProps): ReactElement {
  return (
    <div className="stack no-print">
      <Slider label="Turn" most={355} value={look.turn} onValue={(turn) => onLook({ ...look, turn })} />
      <Slider label="Tilt" most={90} value={look.tilt} onValue={(tilt) => onLook({ ...look, tilt })} />
      <div className="row">
        <Button onClick={() => onLook(nearerBy(look, 1.5, LARGEST))}>Nearer</Button>
        <Button onClick={() => onLook(nearerBy(look, 1 / 1.5, LARGEST))}>Farther</Button>
        <Button
          aria-pressed={look.stretch > 1}
          onClick={() => onLook({ ...look, stretch: look.stretch > 1 ? 1 : 4 })}
        >
          Heights × 4
        </Button>
        <Button onClick={() => onLook(START)}>Start again</Button>
      </div>
      {look.zoom > 1 ? (
        <div className="row">
          {MOVES.map(([name, right, down]) => (
            <Button key={name} onClick={() => onLook(movedBy(look, right, down))}>
              {name}
            </Button>
          ))}
          <Button look={moves ? 'main' : 'frame'} aria-pressed={moves} onClick={() => onMoves(!moves)}>
            Dragging moves it
          </Button>
        </div>
      ) : null}
    </div>
  )
}

function Slider({
  label,
  most,
  value,
  onValue,
}: {
  readonly label: string
  readonly most: number
  readonly value: number
  readonly onValue: (value: number) => void
}): ReactElement {
  const id = useId()
  return (
    <div className="cage-slider">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="steel-range"
        type="range"
        min={0}
        max={most}
        step={5}
        value={Math.round(value)}
        aria-valuetext={`${Math.round(value)} degrees`}
        onChange={(event) => onValue(Number(event.currentTarget.value))}
      />
      <output htmlFor={id}>{Math.round(value)}°</output>
    </div>
  )
}

function useWidth() {
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(320)
  useEffect(() => {
    const node = box.current
    if (node === null) return
    const watch = new ResizeObserver(() => setWidth(Math.max(200, Math.floor(node.clientWidth))))
    watch.observe(node)
    return () => watch.disconnect()
  }, [])
  return { box, width }
}

/** Moves by dragging; a touch without a move is a place. */
function useDrag(onMove: (dx: number, dy: number) => void, onPlace: (x: number, y: number) => void) {
  const start = useRef<{ x: number; y: number; moved: boolean } | null>(null)
  return {
    onPointerDown: (event: PointerEvent<HTMLCanvasElement>): void => {
      start.current = { x: event.clientX, y: event.clientY, moved: false }
      event.currentTarget.setPointerCapture(event.pointerId)
    },
    onPointerMove: (event: PointerEvent<HTMLCanvasElement>): void => {
      const from = start.current
      if (from === null) return
      const [dx, dy] = [event.clientX - from.x, event.clientY - from.y]
      if (!from.moved && Math.hypot(dx, dy) < STILL) return
      start.current = { x: event.clientX, y: event.clientY, moved: true }
      onMove(dx, dy)
    },
    onPointerUp: (event: PointerEvent<HTMLCanvasElement>): void => {
      const from = start.current
      start.current = null
      if (from === null || from.moved) return
      const drawn = event.currentTarget.getBoundingClientRect()
      onPlace(event.clientX - drawn.left, event.clientY - drawn.top)
    },
    onPointerCancel: (): void => {
      start.current = null
    },
  }
}

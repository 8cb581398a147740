import type { Drawing } from '@castwright/engine/panel'
import type { CompactionPlan } from '@castwright/engine/pour'
import { type StopState, stopsOf, type WalkState } from '@castwright/engine/pour/live'
import type { PointerEvent, ReactElement } from 'react'
import { useWidth } from '../day/day-picture.tsx'
import { type Place, panelFrame } from './panel-frame.ts'

/** A finger is this wide, px. */
const FINGER = 48

/** The panel from above with every insertion: reached, now, next, missed. A tap goes to the nearest. */
export function WalkPicture({
  drawing,
  compaction,
  state,
  chute,
  vibrator,
  onTap,
}: {
  readonly drawing: Drawing
  readonly compaction: CompactionPlan
  readonly state: WalkState
  readonly chute: Place
  /** Vibrator that this device follows; what others hold is drawn faint. */
  readonly vibrator: number | null
  /** Index of the insertion tapped. */
  readonly onTap: (insertion: number) => void
}): ReactElement {
  const [box, width] = useWidth()
  const frame = panelFrame(drawing, { width, most: 924, beside: 16 })
  const tap = (event: PointerEvent<SVGSVGElement>): void => {
    const drawn = event.currentTarget.getBoundingClientRect()
    const [px, py] = [event.clientX - drawn.left, event.clientY - drawn.top]
    let best: { readonly at: number; readonly far: number } | null = null
    for (const [index, point] of compaction.insertions.entries()) {
      const [x, y] = frame.at(point)
      const far = Math.hypot(x - px, y - py)
      if (best === null || far < best.far) best = { at: index, far }
    }
    if (best !== null && best.far < FINGER) onTap(best.at)
  }
  const r = Math.max(4, Math.min(11, 0.5 * compaction.radius * frame.scale))
  const stops = stopsOf(compaction)
  const next = state.next === null ? null : (stops[state.next]?.insertion ?? null)
  const held = new Map(stops.map((stop) => [stop.insertion, stop.vibrator]))
  return (
    <div ref={box} className="walk-picture">
      {width === 0 ? null : (
        <svg width={width} height={frame.height} aria-hidden="true" onPointerUp={tap}>
          <PanelShape drawing={drawing} path={frame.path} />
          {compaction.zones.slice(1).map(({ id, outlines }) => (
            <path key={id} className="walk-zone" d={outlines.map((ring) => frame.path(ring)).join('')} />
          ))}
          {compaction.reduced.map(({ outlines }) =>
            outlines.map((ring) => {
              const d = frame.path(ring)
              return <path key={d} className="walk-close" d={d} fill="url(#walk-hatch)" />
            }),
          )}
          <defs>
            <pattern
              id="walk-hatch"
              width="8"
              height="8"
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <path d="M0 0V8" className="walk-hatch" />
            </pattern>
          </defs>
          {compaction.insertions.map((point, index) => {
            const its = state.insertions[index] ?? 'waiting'
            const look = index === next && its === 'waiting' ? 'next' : its
            const holder = held.get(index) ?? 1
            return (
              <Insertion
                key={`${point[0]} ${point[1]}`}
                at={frame.at(point)}
                look={look}
                vibrator={holder}
                r={its === 'now' ? 1.9 * r : r}
                faint={vibrator !== null && holder !== vibrator}
              />
            )
          })}
          <ChuteMark at={frame.at(chute)} />
        </svg>
      )}
      {frame.upright ? (
        <p className="field-note">Drawn turned a quarter to the right of the drawing.</p>
      ) : null}
    </div>
  )
}

export function PanelShape({
  drawing,
  path,
}: {
  readonly drawing: Drawing
  readonly path: (ring: readonly Place[]) => string
}): ReactElement {
  return (
    <>
      <path className="walk-panel" d={path(drawing.outline as unknown as readonly Place[])} />
      {(drawing.openings ?? []).map(({ mark, outline }) => (
        <path key={mark} className="walk-hole" d={path(outline as unknown as readonly Place[])} />
      ))}
      {(drawing.voids ?? []).map(({ mark, outline }) => (
        <path key={mark} className="walk-void" d={path(outline as unknown as readonly Place[])} />
      ))}
      {(drawing.ducts ?? []).map(({ mark, line }) => (
        // A duct is open: its path ends where it ends.
        <path
          key={mark}
          className="walk-duct"
          d={path(line as unknown as readonly Place[]).replace(/Z$/, '')}
        />
      ))}
    </>
  )
}

export function ChuteMark({ at: [x, y] }: { readonly at: Place }): ReactElement {
  return <path className="walk-chute" d={`M${x - 10} ${y - 11}h20l-10 17z`} />
}

/** One insertion: its shape says whose it is, its fill how it stands; what was missed is crossed out. */
function Insertion({
  at: [x, y],
  look,
  vibrator,
  r,
  faint,
}: {
  readonly at: Place
  readonly look: StopState | 'next'
  readonly vibrator: number
  readonly r: number
  readonly faint: boolean
}): ReactElement {
  return (
    <g className={faint ? 'walk-faint' : undefined}>
      <path className={`walk-${look === 'now' ? 'here' : look}`} d={shapeOf(vibrator, [x, y], r)} />
      {look === 'missed' ? (
        <path
          className="walk-cross"
          d={`M${x - 0.6 * r} ${y - 0.6 * r}L${x + 0.6 * r} ${y + 0.6 * r}M${x + 0.6 * r} ${y - 0.6 * r}L${x - 0.6 * r} ${y + 0.6 * r}`}
        />
      ) : null}
    </g>
  )
}

/** Shapes of vibrators 1, 2, 3 …: disc, diamond, square, triangle, then around again. */
export const SHAPE_WORDS = ['disc', 'diamond', 'square', 'triangle'] as const

export function shapeOf(vibrator: number, [x, y]: Place, r: number): string {
  const corners = (angles: readonly number[], far: number): string =>
    `${angles
      .map((angle, i) => {
        const turn = (angle * Math.PI) / 180
        return `${i === 0 ? 'M' : 'L'}${(x + far * Math.cos(turn)).toFixed(1)} ${(y + far * Math.sin(turn)).toFixed(1)}`
      })
      .join('')}Z`
  switch (SHAPE_WORDS[(vibrator - 1) % SHAPE_WORDS.length]) {
    case 'diamond':
      return corners([0, 90, 180, 270], 1.3 * r)
    case 'square':
      return corners([45, 135, 225, 315], 1.25 * r)
    case 'triangle':
      return corners([30, 150, 270], 1.4 * r)
    default:
      return `M${(x - r).toFixed(1)} ${y.toFixed(1)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`
  }
}

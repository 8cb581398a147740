import type { Drawing } from '@castwright/engine/panel'
import type { CompactionPlan } from '@castwright/engine/pour'
import type { WalkState } from '@castwright/engine/pour/live'
import type { PointerEvent, ReactElement } from 'react'
import { useWidth } from '../day/day-picture.tsx'

type Point = readonly [number, number]

/** The panel from above with every insertion: reached, now, next, missed. A tap goes to the nearest. */
export function WalkPicture({
  drawing,
  compaction,
  state,
  chute,
  onTap,
}: {
  readonly drawing: Drawing
  readonly compaction: CompactionPlan
  readonly state: WalkState
  readonly chute: Point
  readonly onTap: (insertion: number) => void
}): ReactElement {
  const [box, width] = useWidth()
  const outline = drawing.outline as unknown as readonly Point[]
  const [left, right] = [Math.min(...outline.map(([x]) => x)), Math.max(...outline.map(([x]) => x))]
  const [low, high] = [Math.min(...outline.map(([, y]) => y)), Math.max(...outline.map(([, y]) => y))]
  // A long panel stands upright on a phone, so that its points are wide enough for a finger.
  const upright = width < 600 && right - left > 1.2 * (high - low)
  const [across, up] = upright ? [high - low, right - left] : [right - left, high - low]
  const scale = Math.min((width - 24) / across, 900 / up)
  const at = ([x, y]: Point): Point =>
    upright
      ? [12 + (y - low) * scale, 12 + (x - left) * scale]
      : [12 + (x - left) * scale, 12 + (high - y) * scale]
  const path = (ring: readonly Point[]): string =>
    `${ring
      .map(
        (point, index) =>
          `${index === 0 ? 'M' : 'L'}${at(point)
            .map((v) => v.toFixed(1))
            .join(' ')}`,
      )
      .join('')}Z`
  const tap = (event: PointerEvent<SVGSVGElement>): void => {
    const frame = event.currentTarget.getBoundingClientRect()
    const [px, py] = [event.clientX - frame.left, event.clientY - frame.top]
    let best: { readonly at: number; readonly far: number } | null = null
    for (const [index, point] of compaction.insertions.entries()) {
      const [x, y] = at(point)
      const far = Math.hypot(x - px, y - py)
      if (best === null || far < best.far) best = { at: index, far }
    }
    if (best !== null && best.far < 48) onTap(best.at)
  }
  const r = Math.max(4, Math.min(11, 90 * scale))
  return (
    <div ref={box} className="walk-picture">
      {width === 0 ? null : (
        <svg width={width} height={up * scale + 24} aria-hidden="true" onPointerUp={tap}>
          <path className="walk-panel" d={path(outline)} />
          {(drawing.openings ?? []).map(({ mark, outline: hole }) => (
            <path key={mark} className="walk-hole" d={path(hole as unknown as readonly Point[])} />
          ))}
          <Mark at={at(chute)} />
          {compaction.insertions.map((point, index) => {
            const [x, y] = at(point)
            const its = state.insertions[index] ?? 'waiting'
            const look = index === state.next && its === 'waiting' ? 'next' : its
            return its === 'missed' ? (
              <rect
                key={`${x} ${y}`}
                className="walk-missed"
                x={x - r}
                y={y - r}
                width={2 * r}
                height={2 * r}
              />
            ) : (
              <circle
                key={`${x} ${y}`}
                className={`walk-${look === 'now' ? 'here' : look}`}
                cx={x}
                cy={y}
                r={its === 'now' ? 1.9 * r : r}
              />
            )
          })}
        </svg>
      )}
      {upright ? <p className="field-note">Drawn turned a quarter to the right of the drawing.</p> : null}
    </div>
  )
}

function Mark({ at: [x, y] }: { readonly at: Point }): ReactElement {
  return <path className="walk-chute" d={`M${x - 9} ${y - 9}h18l-9 15z`} />
}

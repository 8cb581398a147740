import type { CutBar } from '@castwright/engine/steel'
import type { ReactElement } from 'react'

/** px of the picture; it is scaled to the room that it has. */
const WIDE = 1000
const HIGH = 30

/** One way of cutting to scale: pieces side by side, hatched what is left. `longest`: the bar that fills the width, mm. */
export function BarPicture({
  bar,
  longest,
}: {
  readonly bar: CutBar
  readonly longest: number
}): ReactElement {
  const scale = WIDE / longest
  let at = 0
  const pieces = bar.pieces.flatMap(({ length, count }, line) =>
    Array.from({ length: count }, (_, i) => {
      const x = at
      at += length * scale
      return { key: `${line}-${i}`, x, wide: length * scale, length }
    }),
  )
  const left = bar.offcut * scale
  return (
    <svg
      className="cut-bar"
      viewBox={`-1 -1 ${WIDE + 2} ${HIGH + 2}`}
      role="img"
      aria-label={`${bar.pieces.map(({ length, count }) => `${count} of ${length} mm`).join(', ')}; ${Math.round(bar.offcut)} mm left`}
    >
      {pieces.map(({ key, x, wide, length }) => (
        <g key={key}>
          <rect className="cut-piece" x={x} y={0} width={wide} height={HIGH} />
          {wide > 52 ? (
            <text x={x + wide / 2} y={HIGH / 2 + 6} textAnchor="middle">
              {length}
            </text>
          ) : null}
        </g>
      ))}
      {left > 0.5 ? (
        <rect className="cut-left" x={bar.stock * scale - left} y={0} width={left} height={HIGH} />
      ) : null}
    </svg>
  )
}

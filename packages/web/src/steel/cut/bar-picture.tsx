import type { CutBar } from '@castwright/engine/steel'
import type { ReactElement } from 'react'

const MOST_DRAWN = 400

/** One way of cutting to scale: pieces side by side, dashed what is left. `longest`: the bar that fills the width, mm. */
export function BarPicture({
  bar,
  longest,
}: {
  readonly bar: CutBar
  readonly longest: number
}): ReactElement {
  const wide = (mm: number): { readonly width: string } => ({ width: `${(100 * mm) / longest}%` })
  const all = bar.pieces.reduce((sum, { count }) => sum + count, 0)
  // More than can be told apart on any screen: each length is drawn as one block.
  const pieces = bar.pieces.flatMap(({ length, count }, line) =>
    all > MOST_DRAWN
      ? [{ key: `${line}`, length: length * count }]
      : Array.from({ length: count }, (_, i) => ({ key: `${line}-${i}`, length })),
  )
  const words = bar.pieces.map(({ length, count }) => `${count} of ${length} mm`).join(', ')
  return (
    <div className="cut-bar" role="img" aria-label={`${words}; ${Math.round(bar.offcut)} mm left`}>
      {pieces.map(({ key, length }) => (
        <span key={key} className="cut-piece" style={wide(length)}>
          <b>{length}</b>
        </span>
      ))}
      {bar.offcut > 0 ? <span className="cut-left" style={wide(bar.offcut)} /> : null}
    </div>
  )
}

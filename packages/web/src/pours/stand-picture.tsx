import type { Drawing } from '@castwright/engine/panel'
import type { PointerEvent, ReactElement } from 'react'
import { useWidth } from '../day/day-picture.tsx'
import { type Place, panelFrame } from './panel-frame.ts'
import { ChuteMark, PanelShape } from './walk-picture.tsx'

/** The panel from above with the chute; a tap puts it there, on the panel or beside it. Corner and numbers say the same without a finger. */
export function StandPicture({
  drawing,
  stand,
  onPlace,
}: {
  readonly drawing: Drawing
  readonly stand: Place
  readonly onPlace: (place: Place) => void
}): ReactElement {
  const [box, width] = useWidth()
  const frame = panelFrame(drawing, { width, most: 460, beside: 40 })
  const tap = (event: PointerEvent<SVGSVGElement>): void => {
    const drawn = event.currentTarget.getBoundingClientRect()
    onPlace(frame.place([event.clientX - drawn.left, event.clientY - drawn.top]))
  }
  return (
    <div ref={box} className="walk-picture">
      {width === 0 ? null : (
        <svg
          width={width}
          height={frame.height}
          aria-hidden="true"
          onPointerUp={tap}
          className="stand-picture"
        >
          <PanelShape drawing={drawing} path={frame.path} />
          <ChuteMark at={within(frame.at(stand), frame)} />
        </svg>
      )}
      <p className="field-note">
        Tap where the concrete comes from.{frame.upright ? ' Drawn turned a quarter to the right.' : ''}
      </p>
    </div>
  )
}

/** A stand far away is drawn at the border of the picture. */
function within(
  [x, y]: Place,
  { width, height }: { readonly width: number; readonly height: number },
): Place {
  return [Math.max(12, Math.min(width - 12, x)), Math.max(14, Math.min(height - 14, y))]
}

/** Corners of the outline, whole mm. */
export function cornersOf({ outline }: Drawing): readonly Place[] {
  return (outline as unknown as readonly Place[]).map(([x, y]): Place => [Math.round(x), Math.round(y)])
}

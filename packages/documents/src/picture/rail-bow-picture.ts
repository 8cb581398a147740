import { bowedRail } from '@castwright/engine/mould'
import type { Point } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { ceilTo } from '@castwright/engine/working'
import { dimensionShapes } from './dimensions.ts'
import { timesLarger, timesText } from './enlarged.ts'
import { layOut } from './layout.ts'
import type { Frame, Picture, Shape } from './picture.ts'

export interface RailBowInput {
  readonly mark: string
  readonly mould: Plan['mould']
  readonly frame: Frame
}

/** Spans that are drawn: from the third on every one is like the third, or less. */
const MOST_SPANS = 3
/** Parts of the drawn length: breadth of the rail, and room for the bow. */
const RAIL = 0.03
const ROOM = 0.07

/** The rail of the side that bows most, from above: its props, the even load on it, and its shape between them, larger. Null without a form. */
export function railBowPicture({ mark, mould, frame }: RailBowInput): Picture | null {
  const worst = mould.sides.reduce<Plan['mould']['sides'][number] | null>(
    (most, next) => (most === null || next.bow > most.bow ? next : most),
    null,
  )
  if (worst === null || mould.thrust === null) return null
  const spans = Math.min(MOST_SPANS, worst.spans) as 1 | 2 | 3
  const length = spans * worst.spacing
  const [rail, room] = [RAIL * length, ROOM * length]
  const props = Array.from({ length: spans + 1 }, (_, k) => k * worst.spacing)
  const layout = layOut({
    outline: [
      [0, -rail - room],
      [length, -rail - room],
      [length, room],
      [0, room],
    ],
    frame,
    chains: { bottom: [props] },
  })
  const times = timesLarger(worst.bow, room * 0.9)
  const line = Array.from({ length: 97 }, (_, k): Point => {
    const along = (k / 96) * spans
    return layout.at([along * worst.spacing, -worst.bow * times * bowedRail(spans, along)])
  })
  const band: Point[] = [
    [0, -rail],
    [length, -rail],
    [length, 0],
    [0, 0],
  ]
  const loads = Array.from({ length: spans * 6 }, (_, k): Shape => {
    const x = ((k + 0.5) / (spans * 6)) * length
    return {
      kind: 'line',
      role: 'load',
      points: [layout.at([x, room]), layout.at([x, rail * 0.15])],
      arrow: true,
    }
  })
  const bow = Number(ceilTo(worst.bow, 0.001).toPrecision(4))
  return {
    width: layout.width,
    height: layout.height,
    scale: layout.scale,
    ratio: layout.ratio,
    origin: layout.origin,
    shapes: [
      { kind: 'polygon', role: 'form', rings: [band.map(layout.at)], pattern: 'hatch' },
      ...loads,
      { kind: 'line', role: 'now', points: line },
      ...props.map(
        (x): Shape => ({
          kind: 'circle',
          role: 'prop',
          at: layout.at([x, -rail]),
          radius: layout.text * 0.35,
        }),
      ),
      ...dimensionShapes(layout),
    ],
    title: `Panel ${mark}, side ${worst.side} from above: the rail bows ${bow} mm between its props.`,
    key: [
      {
        role: 'now',
        text: `side ${worst.side} as it bows between its props, ${bow} mm ${timesText(times)}${worst.spans > MOST_SPANS ? `; the first ${MOST_SPANS} of ${worst.spans} spans` : ''}`,
      },
      { role: 'load', text: `${Number(ceilTo(mould.thrust, 0.001).toPrecision(6))} kN/m along the rail` },
    ],
    notes: [],
  }
}

import type { Drawing, Point } from '@castwright/engine/panel'
import type { LayerTies, PlacedBar, SteelPlan } from '@castwright/engine/steel'
import { TIE } from '@castwright/engine/steel'
import { basePicture, finishPicture, sizeTitle } from './panel-picture.ts'
import type { Frame, KeyLine, Picture, Shape } from './picture.ts'

export interface TiePictureInput {
  readonly drawing: Drawing
  readonly steel: Pick<SteelPlan, 'placed'>
  readonly ties: LayerTies
  readonly frame: Frame
}

/** Every crossing of a layer that is tied, as a dot; ends of laps as strokes across the bar. A crossing without a dot is left. */
export function tiePicture({ drawing, steel, ties, frame }: TiePictureInput): Picture {
  const base = basePicture({ drawing, frame })
  const { layout } = base
  const bars = steel.placed.filter(({ layer, use }) => layer === ties.layer && use === 'mat')
  const radius = Math.max(1.2, Math.min(3, layout.text * 0.22, 0.3 * gapOf(ties) * layout.scale))
  const dots: Shape[] = []
  for (let k = 0; k < ties.why.length; k += 1) {
    if (ties.why[k] === TIE.left) continue
    const at = layout.at([ties.x[k] as number, ties.y[k] as number])
    dots.push({ kind: 'circle', role: ties.why[k] === TIE.rim ? 'peak' : 'met', at, radius })
  }
  const size = Math.max(3, radius * 1.6)
  const ends = Array.from(ties.lapX, (x, i): Shape => {
    const [px, py] = layout.at([x, ties.lapY[i] as number])
    return {
      kind: 'line',
      role: 'now',
      points: [
        [px - size, py + size],
        [px + size, py - size],
      ],
    }
  })
  const name = ties.layer === 'mould' ? 'near the mould' : 'near the top'
  return finishPicture({
    base,
    inside: [...bars.map((bar) => barLine(bar, layout.at)), ...dots, ...ends],
    title: `${sizeTitle(drawing)}. Ties ${name}: ${ties.tied} of ${ties.x.length} crossings, ${ends.length} ends of laps.`,
    key: keyOf(ties),
  })
}

function barLine({ path }: PlacedBar, at: (point: Point) => Point): Shape {
  return { kind: 'line', role: 'opening', points: path.map(at) }
}

function keyOf({ rim, tied, lapX, x }: LayerTies): KeyLine[] {
  return [
    { role: 'peak', text: `${rim} crossings of the rim, each tied` },
    { role: 'met', text: `${tied - rim} inside, every other tied; ${x.length - tied} left` },
    ...(lapX.length > 0 ? [{ role: 'now', text: `${lapX.length} ends of laps, each tied` } as const] : []),
  ]
}

/** Least gap between neighbouring crossings of a row, mm. */
function gapOf({ x, y }: LayerTies): number {
  let least = Number.POSITIVE_INFINITY
  for (let k = 1; k < x.length; k += 1) {
    if (y[k] !== y[k - 1]) continue
    const gap = Math.abs((x[k] as number) - (x[k - 1] as number))
    if (gap > 1) least = Math.min(least, gap)
  }
  return Number.isFinite(least) ? least : 200
}

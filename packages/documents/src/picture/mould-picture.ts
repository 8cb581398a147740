import { type Drawing, offset, type Point, type Ring, ringsOf, signedArea } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { lengthText } from './chain.ts'
import { cornerNumbers, inward } from './corner-numbers.ts'
import { placesAround, setText } from './labels.ts'
import type { Layout } from './layout.ts'
import type { MarkShapes } from './marks.ts'
import { basePicture, concreteOf, finishPicture, sizeTitle } from './panel-picture.ts'
import type { Frame, Picture, Shape } from './picture.ts'
import { textWidth } from './text-width.ts'

export interface MouldPictureInput {
  readonly drawing: Drawing
  readonly mould: Plan['mould']
  readonly frame: Frame
}

/** How wide a side form is drawn, mm: it says where the form stands, not how thick it is. */
const FORM_BAND = 90

/** Side forms around the concrete with their props, measured along each side, and the numbers of the corners. */
export function mouldPicture({ drawing, mould, frame }: MouldPictureInput): Picture {
  const base = basePicture({ drawing, frame, halo: frame.text * 2.6 })
  const { layout } = base
  const concrete = concreteOf(drawing)
  const band = Math.max(FORM_BAND, (frame.text * 0.4) / layout.scale)
  const form: Shape = {
    kind: 'polygon',
    role: 'form',
    rings: [...ringsOf(offset(concrete, band)), ...ringsOf(concrete)].map((ring) => ring.map(layout.at)),
    pattern: 'hatch',
  }
  const props = mould.props.map(
    (prop): Shape => ({ kind: 'circle', role: 'prop', at: layout.at(prop), radius: frame.text * 0.25 }),
  )
  const numbers = cornerNumbers(layout, drawing)
  const chains = mould.sides.map((side) => sideChain(layout, drawing, side, band * layout.scale))
  return finishPicture({
    base,
    inside: [form],
    onTop: [...chains.flatMap(({ shapes }) => shapes), ...props, ...numbers.shapes],
    title: `${sizeTitle(drawing)}: side forms and ${props.length} props.${sidesWords(mould.sides)}`,
    key: [
      { role: 'form', text: mould.form === null ? 'side form, none chosen' : `side form ${mould.form}` },
      ...(props.length > 0
        ? [
            {
              role: 'prop',
              text: `props, ${props.length}${mould.propSpacing === null ? '' : `, at most ${lengthText(mould.propSpacing)} mm apart`}`,
            } as const,
          ]
        : []),
      ...(numbers.shapes.length > 0
        ? [{ role: 'zone-mark', text: 'corners by number; side 1 runs from corner 1 to 2' } as const]
        : []),
    ],
    notes: [...chains.flatMap(({ notes }) => notes), ...numbers.notes],
  })
}

type PropSide = Plan['mould']['sides'][number]

function sidesWords(sides: readonly PropSide[]): string {
  return sides.length === 0
    ? ''
    : ` Props by side: ${sides.map(({ side, spans, spacing }) => `${side}: ${spansText(spans, spacing)}`).join(', ')}.`
}

/** Example: `4 × 1500`. */
export function spansText(spans: number, spacing: number): string {
  return spans === 1 ? lengthText(spacing) : `${spans} × ${lengthText(spacing)}`
}

/**
 * A dimension line beside the form with a tick at every prop and one number for their equal distances. A side that its two ends hold has none:
 * its length stands in the chains of the panel.
 */
function sideChain(layout: Layout, drawing: Drawing, side: PropSide, band: number): MarkShapes {
  if (side.spans === 1) return { shapes: [], notes: [] }
  const outline = drawing.outline as unknown as Ring
  const [a, b] = [outline[side.side - 1], outline[side.side % outline.length]]
  if (a === undefined || b === undefined) return { shapes: [], notes: [] }
  const text = layout.text
  const [ix, iy] = inward(a, b, Math.sign(signedArea(outline)) || 1)
  // The picture's y runs down: outward across the side, in its units.
  const out: Point = [-ix, iy]
  const [from, to] = [layout.at(a), layout.at(b)]
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const place = (share: number, away: number): Point => [
    from[0] + (to[0] - from[0]) * share + out[0] * away,
    from[1] + (to[1] - from[1]) * share + out[1] * away,
  ]
  const away = band + text * 0.95
  const words = spansText(side.spans, side.spacing)
  const upright = Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0])
  const label = {
    role: 'dimension',
    text: words,
    size: text,
    turn: upright ? -90 : 0,
    backed: true,
  } as const
  const long = textWidth(words, text) + text
  const onLine = long < length ? [0.5, 0.35, 0.65, 0.25, 0.75] : []
  const near = onLine.map((share) => place(share, away))
  const set =
    setText(layout.labels, label, near) ??
    setText(layout.labels, { ...label, turn: 0 }, placesAround(place(0.5, away), text * 0.4, label))
  const ticks = Array.from({ length: side.spans + 1 }, (_, k): Shape => {
    const share = k / side.spans
    return line(place(share, away - text * 0.3), place(share, away + text * 0.3))
  })
  return {
    shapes: [line(place(0, away), place(1, away)), ...ticks, ...(set === null ? [] : [set])],
    notes: set === null ? [`side ${side.side}: props ${words} mm`] : [],
  }
}

function line(from: Point, to: Point): Shape {
  return { kind: 'line', role: 'dimension', points: [from, to] }
}

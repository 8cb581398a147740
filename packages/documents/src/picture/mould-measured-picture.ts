import type { MouldLength, MouldShape, ShapeCorner } from '@castwright/engine/mould'
import type { Drawing, Point, Ring } from '@castwright/engine/panel'
import { cornerNumbers, numberPlace } from './corner-numbers.ts'
import { timesLarger, timesText } from './enlarged.ts'
import { setText } from './labels.ts'
import type { Layout } from './layout.ts'
import type { MarkShapes } from './marks.ts'
import { basePicture, finishPicture, sizeTitle } from './panel-picture.ts'
import type { Frame, Picture, Shape } from './picture.ts'
import { textWidth } from './text-width.ts'

export interface MouldMeasuredInput {
  readonly drawing: Drawing
  /** The lengths to tape, and the corners between which they run. */
  readonly survey: { readonly corners: readonly number[]; readonly lengths: readonly MouldLength[] }
  /** Ids of the lengths that are on record. */
  readonly taped: ReadonlySet<string>
  /** Null until all are. */
  readonly shape: MouldShape | null
  readonly frame: Frame
}

/** What is still to be taped in a mould; then the mould as it was set up over the mould as it is drawn. */
export function mouldMeasuredPicture(input: MouldMeasuredInput): Picture {
  return input.shape === null ? toTapePicture(input) : setUpPicture({ ...input, shape: input.shape })
}

/** Every length that is taped, those that are missing heavier. */
function toTapePicture({ drawing, survey, taped, frame }: MouldMeasuredInput): Picture {
  const base = basePicture({ drawing, frame, chains: {}, halo: frame.text })
  const { layout } = base
  const outline = drawing.outline as unknown as Ring
  const missing = survey.lengths.filter(({ id }) => !taped.has(id))
  const lines = survey.lengths.map(
    ({ id, from, to }): Shape => ({
      kind: 'line',
      role: taped.has(id) ? 'measure' : 'picked',
      points: [layout.at(outline[from] as Point), layout.at(outline[to] as Point)],
    }),
  )
  const numbers = cornerNumbers(layout, drawing, survey.corners)
  return finishPicture({
    base,
    onTop: [...lines, ...numbers.shapes],
    title: `${sizeTitle(drawing)}: ${missing.length} of ${survey.lengths.length} lengths still to tape.`,
    key: [
      { role: 'picked', text: `still to tape, ${missing.length}` },
      ...(missing.length < survey.lengths.length
        ? [{ role: 'measure', text: `taped, ${survey.lengths.length - missing.length}` } as const]
        : []),
      { role: 'zone-mark', text: 'corners by number' },
    ],
    notes: numbers.notes,
  })
}

/** Larger deviations are drawn this share of the panel's smaller side, at most. */
const SHOWN = 0.09
/** Deviations under this are not measured by a tape, mm. */
const LEAST = 0.5

function setUpPicture({
  drawing,
  survey,
  shape,
  frame,
}: MouldMeasuredInput & { readonly shape: MouldShape }): Picture {
  const base = basePicture({ drawing, frame, chains: {}, halo: frame.text * 2.4 })
  const { layout } = base
  const most = Math.max(LEAST, ...shape.corners.map(({ out }) => out))
  const { right, left, bottom, top } = layout.panel
  const small = Math.min(right - left, bottom - top) / layout.scale
  const times = timesLarger(most, SHOWN * small)
  const at = ({ drawn, at: found }: ShapeCorner): Point => [
    drawn[0] + (found[0] - drawn[0]) * times,
    drawn[1] + (found[1] - drawn[1]) * times,
  ]
  const numbers = cornerNumbers(layout, drawing, survey.corners)
  const found: Shape = {
    kind: 'polygon',
    role: 'picked',
    rings: [shape.corners.map((corner) => layout.at(at(corner)))],
  }
  const pushes = shape.corners
    .filter(({ out }) => out >= LEAST)
    .map(
      (corner): Shape => ({
        kind: 'line',
        role: 'load',
        points: [layout.at(at(corner)), layout.at(corner.drawn)],
        arrow: true,
      }),
    )
  const outs = shape.corners.map((corner, index) =>
    outText(layout, drawing, survey.corners[index] ?? 0, corner),
  )
  const loose = shape.misfit > shape.misfitLimit
  return finishPicture({
    base,
    onTop: [found, ...pushes, ...numbers.shapes, ...outs.flatMap(({ shapes }) => shapes)],
    title: `${sizeTitle(drawing)}, mould as measured: ${shape.corners.map(({ corner, out }) => `corner ${corner} out by ${mm(out)}`).join(', ')}.`,
    key: [
      { role: 'outline', text: 'as drawn; beside a corner how far it is out' },
      {
        role: 'picked',
        text: `as measured, deviations ${timesText(times)}${loose ? '; the lengths do not fit each other, so this is not to be trusted' : ''}`,
      },
      ...(pushes.length > 0 ? [{ role: 'load', text: 'arrows: which way to push' } as const] : []),
    ],
    notes: [...numbers.notes, ...outs.flatMap(({ notes }) => notes)],
  })
}

/** How far a corner is out, beside its number towards the middle of the panel. */
function outText(layout: Layout, drawing: Drawing, index: number, { corner, out }: ShapeCorner): MarkShapes {
  if (out < LEAST) return { shapes: [], notes: [] }
  const text = mm(out)
  const { panel, text: size, labels } = layout
  const label = { role: 'label', text, size, bold: true } as const
  const [x, y] = layout.at(numberPlace(layout, drawing.outline as unknown as Ring, index))
  const [toX, toY] = [
    x < (panel.left + panel.right) / 2 ? 1 : -1,
    y < (panel.top + panel.bottom) / 2 ? 1 : -1,
  ]
  const wide = textWidth(text, size) / 2 + size * 1.1
  const places: Point[] = [
    [x + toX * wide, y],
    [x, y + toY * size * 1.7],
    [x - toX * wide, y],
    [x, y - toY * size * 1.7],
  ]
  const set = setText(labels, label, places)
  return set === null ? { shapes: [], notes: [`corner ${corner}: ${text}`] } : { shapes: [set], notes: [] }
}

function mm(size: number): string {
  return `${size < LEAST ? 'under 1' : Math.round(size)} mm`
}

import type { Drawing, Point, Ring } from '@castwright/engine/panel'
import { markShapes } from './marks.ts'
import { basePicture, finishPicture, sizeTitle } from './panel-picture.ts'
import type { Frame, Picture, Shape } from './picture.ts'

export interface AsBuiltPictureInput {
  readonly drawing: Drawing
  readonly frame: Frame
}

/** More corners than this are not numbered. */
const MOST_CORNERS = 24

/** Corners numbered in the order they are measured, and the diagonals of a panel with four. */
export function asBuiltPicture({ drawing, frame }: AsBuiltPictureInput): Picture {
  const base = basePicture({ drawing, frame, halo: frame.text * 0.6 })
  const corners = drawing.outline as unknown as Ring
  const marks = markShapes(
    base.layout,
    'insert',
    corners.length > MOST_CORNERS ? [] : corners.map((at, index) => ({ at, letter: String(index + 1) })),
  )
  const [a, b, c, d] = corners
  const four = corners.length === 4 && a && b && c && d
  const diagonals: Shape[] = four ? [measure(base.layout.at, a, c), measure(base.layout.at, b, d)] : []
  return finishPicture({
    base,
    inside: diagonals,
    onTop: marks.shapes,
    title: `${sizeTitle(drawing)}: corners in the order they are measured.`,
    key: [
      { role: 'insert', text: 'corners in the order they are measured' },
      ...(diagonals.length > 0 ? [{ role: 'measure', text: 'diagonals' } as const] : []),
    ],
    notes: marks.notes,
  })
}

function measure(at: (point: Point) => Point, from: Point, to: Point): Shape {
  return { kind: 'line', role: 'measure', points: [at(from), at(to)] }
}

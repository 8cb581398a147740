import { bounds, type Drawing, type Ring } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { lengthText } from './chain.ts'
import { holdDownKey, holdDownShapes, voidPlaces } from './hold-down-shapes.ts'
import type { Chains, Layout } from './layout.ts'
import { markShapes } from './marks.ts'
import { basePicture, chainsOf, finishPicture, shapeChains, sizeTitle } from './panel-picture.ts'
import type { Frame, KeyLine, Picture, Shape } from './picture.ts'

type ChairGrid = Plan['mould']['chairs'][number]

export interface SetPictureInput {
  readonly drawing: Drawing
  /** Null where the plan is not there yet: inserts alone. */
  readonly mould: Plan['mould'] | null
  readonly frame: Frame
}

/** What goes into the mould: chairs, straps and ties, void formers and inserts dimensioned from the edges. */
export function setPicture({ drawing, mould, frame }: SetPictureInput): Picture {
  const base = basePicture({
    drawing,
    frame,
    chains: { ...shapeChains(drawing, voidPlaces(drawing)), ...insertChains(drawing) },
  })
  const inserts = drawing.inserts ?? []
  const marks = markShapes(
    base.layout,
    'insert',
    inserts.map((insert) => ({ at: insert.at, letter: insert.mark })),
  )
  return finishPicture({
    base,
    inside: (mould?.chairs ?? []).flatMap((grid) => chairShapes(base.layout, grid)),
    onTop: [...(mould === null ? [] : holdDownShapes(base.layout, mould, drawing)), ...marks.shapes],
    title: `${sizeTitle(drawing)}: ${inserts.length} inserts measured from the edges.`,
    key: [
      ...(inserts.length > 0
        ? [{ role: 'insert', text: 'inserts, measured above and at the right' } as const]
        : []),
      ...(mould?.chairs ?? []).map(chairKey),
      ...(mould === null ? [] : holdDownKey(mould)),
    ],
    notes: marks.notes,
  })
}

/** Places of the inserts along top and right, from edge to edge. */
export function insertChains(drawing: Drawing): Chains {
  const inserts = drawing.inserts ?? []
  if (inserts.length === 0) return {}
  const box = bounds(drawing.outline as unknown as Ring)
  const inner = (places: number[], from: number, to: number): number[][] =>
    chainsOf(places, from, to).slice(0, 1)
  return {
    top: inner(
      inserts.map(({ at }) => at[0]),
      box.left,
      box.right,
    ),
    right: inner(
      inserts.map(({ at }) => at[1]),
      box.bottom,
      box.top,
    ),
  }
}

/** Chairs under the mat near the mould are rings, those that carry the top mat are crosses. */
function chairShapes(layout: Layout, grid: ChairGrid): Shape[] {
  const size = Math.max(2, layout.text * 0.2)
  return grid.at.flatMap((place): Shape[] => {
    const [x, y] = layout.at(place)
    if (grid.layer === 'mould') return [{ kind: 'circle', role: 'chair', at: [x, y], radius: size }]
    return [
      {
        kind: 'line',
        role: 'chair',
        points: [
          [x - size, y - size],
          [x + size, y + size],
        ],
      },
      {
        kind: 'line',
        role: 'chair',
        points: [
          [x - size, y + size],
          [x + size, y - size],
        ],
      },
    ]
  })
}

function chairKey(grid: ChairGrid): KeyLine {
  const mark = grid.layer === 'mould' ? 'rings' : 'crosses'
  return {
    role: 'chair',
    text: `${mark}: ${grid.at.length} chairs ${lengthText(grid.height)} mm high, at most ${lengthText(grid.spacing)} mm apart`,
  }
}

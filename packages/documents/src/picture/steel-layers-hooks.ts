import { bounds, type Drawing, type Point, type Ring } from '@castwright/engine/panel'
import type { CagePlan, SteelPlan } from '@castwright/engine/steel'
import { markShapes } from './marks.ts'
import { basePicture, chainsOf, finishPicture, shapeChains, sizeTitle } from './panel-picture.ts'
import type { Frame, Picture, Shape } from './picture.ts'

export interface HooksPictureInput {
  readonly drawing: Drawing
  readonly steel: Pick<SteelPlan, 'placed'>
  readonly cage: Pick<CagePlan, 'hooks' | 'placedCentre' | 'centre'>
  readonly frame: Frame
}

/** Where a cage is hooked, numbered and measured from the edges, and where its weight hangs. */
export function hooksPicture({ drawing, steel, cage, frame }: HooksPictureInput): Picture {
  const { hooks, placedCentre } = cage
  const box = bounds(drawing.outline as unknown as Ring)
  const top = chainsOf(
    hooks.map(([x]) => Math.round(x)),
    box.left,
    box.right,
  ).slice(0, 1)
  const right = chainsOf(
    hooks.map(([, y]) => Math.round(y)),
    box.bottom,
    box.top,
  ).slice(0, 1)
  const base = basePicture({
    drawing,
    frame,
    chains: { ...shapeChains(drawing), ...(hooks.length > 0 ? { top, right } : {}) },
  })
  const { layout } = base
  const marks = markShapes(
    layout,
    'insert',
    hooks.map((at, i) => ({ at, letter: String(i + 1) })),
  )
  const centre: Shape[] =
    placedCentre === null ? [] : centreShapes(layout.at([placedCentre[0], placedCentre[1]]), layout.text)
  return finishPicture({
    base,
    inside: steel.placed.map(
      (bar): Shape => ({ kind: 'line', role: 'opening', points: bar.path.map(layout.at) }),
    ),
    onTop: [...centre, ...marks.shapes],
    title: `${sizeTitle(drawing)}: cage on ${hooks.length} hooks.`,
    key: [
      ...(hooks.length > 0
        ? [
            {
              role: 'insert',
              text: `${hooks.length} hooks at crossings, measured above and at the right`,
            } as const,
          ]
        : []),
      ...(placedCentre === null
        ? []
        : [
            {
              role: 'centre',
              text: cage.centre.known ? 'centre of mass' : 'centre of mass of the bars that have a place',
            } as const,
          ]),
    ],
    notes: marks.notes,
  })
}

function centreShapes([x, y]: Point, text: number): Shape[] {
  const size = text * 0.6
  return [
    { kind: 'circle', role: 'centre', at: [x, y], radius: size * 0.7 },
    {
      kind: 'line',
      role: 'centre',
      points: [
        [x - size * 1.4, y],
        [x + size * 1.4, y],
      ],
    },
    {
      kind: 'line',
      role: 'centre',
      points: [
        [x, y - size * 1.4],
        [x, y + size * 1.4],
      ],
    },
  ]
}

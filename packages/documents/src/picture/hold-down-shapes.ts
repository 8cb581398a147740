import { bounds, type Drawing, type Point, type Ring } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { lengthText } from './chain.ts'
import type { Layout } from './layout.ts'
import type { KeyLine, Shape } from './picture.ts'

type Held = Pick<Plan['mould'], 'voids' | 'ducts'>

/** How far a strap runs past the former on both sides, and half of a tie across its duct, in sizes of the text. */
const PAST = 0.5

/** Straps across void formers and ties on ducts, where they are planned. */
export function holdDownShapes(layout: Layout, { voids, ducts }: Held, drawing: Drawing): Shape[] {
  return [
    ...voids.flatMap(({ at }) => at.map(([a, b]) => strapLine(layout, a, b))),
    ...ducts.flatMap(({ mark, at }) => {
      const line = (drawing.ducts ?? []).find((duct) => duct.mark === mark)?.line
      return line === undefined ? [] : at.map((place) => tieMark(layout, place))
    }),
  ]
}

function strapLine(layout: Layout, from: Point, to: Point): Shape {
  const [a, b] = [layout.at(from), layout.at(to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
  const [ux, uy] = [
    ((b[0] - a[0]) / length) * layout.text * PAST,
    ((b[1] - a[1]) / length) * layout.text * PAST,
  ]
  return {
    kind: 'line',
    role: 'strap',
    points: [
      [a[0] - ux, a[1] - uy],
      [b[0] + ux, b[1] + uy],
    ],
  }
}

function tieMark(layout: Layout, place: Point): Shape {
  return { kind: 'circle', role: 'strap', at: layout.at(place), radius: layout.text * 0.22 }
}

/** How many hold what. */
export function holdDownKey({ voids, ducts }: Held): KeyLine[] {
  const straps = voids.flatMap(({ mark, straps: count, spacing }) =>
    count === null || count === 0 || spacing === null
      ? []
      : [`${count} straps over ${mark}, ${lengthText(Math.floor(spacing))} mm apart`],
  )
  const ties = ducts.flatMap(({ mark, ties: count, spacing }) =>
    count === null || spacing === null
      ? []
      : [`${count} ties of ${mark}, at most ${lengthText(Math.floor(spacing))} mm apart`],
  )
  return [...straps, ...ties].length === 0 ? [] : [{ role: 'strap', text: [...straps, ...ties].join('; ') }]
}

/** Places along x and y that somebody measures to set formers and ducts. */
export function voidPlaces({ voids = [], ducts = [] }: Drawing): Point[] {
  return [
    ...voids.flatMap(({ outline }): Point[] => {
      const box = bounds(outline as unknown as Ring)
      return [
        [box.left, box.bottom],
        [box.right, box.top],
      ]
    }),
    ...ducts.flatMap(({ line }) => line as unknown as readonly Point[]),
  ]
}

import type { DrawnDuct, DrawnVoid } from '../panel/drawn-voids.ts'
import type { Panel } from '../panel/panel.ts'
import type { Point, Ring } from '../panel/point.ts'
import { distanceToSegment, edges } from '../panel/polygon.ts'
import { ringsOf } from '../panel/region.ts'
import { linesApart, partsApart } from '../panel/way.ts'
import { type Check, compare } from '../working/check.ts'
import { enteredBy } from '../working/source.ts'
import type { Step } from '../working/worked.ts'
import type { YardStrap } from '../yard/yard.ts'
import { type HeldDuct, type HeldVoid, strapGap } from './held-down.ts'

/** Load on one strap or tie against the yard's, for each thing that floats. */
export function holdDownCheck(
  held: Pick<HeldVoid | HeldDuct, 'mark' | 'hold' | 'load'>,
  {
    kind,
    strap,
    working,
  }: { readonly kind: 'void' | 'duct'; readonly strap: YardStrap | null; readonly working: readonly Step[] },
): Check[] {
  if (held.hold === 0) return []
  const gap = strapGap(strap)
  const what =
    kind === 'void'
      ? `Hold-down of void former ${held.mark}, each strap`
      : `Hold-down of duct ${held.mark}, each tie`
  return [
    compare({
      id: `${kind}-hold:${held.mark}`,
      step: 'set',
      what,
      demand: held.load,
      limit: strap?.rated ?? null,
      unit: 'kN',
      sense: 'at most',
      source: enteredBy('yard: strap'),
      working,
      missing: gap === null ? [] : [gap],
    }),
  ]
}

type Face = 'mould' | 'top' | 'edge'
const FACES: Readonly<Record<Face, string>> = {
  mould: 'the mould face',
  top: 'the top face',
  edge: 'the nearest edge',
}

/** Concrete between a void former and each face against the drawing's cover there; one on the bed has none at the mould face. */
export function voidCoverChecks({ drawing, region }: Panel): Check[] {
  const { voids = [], ducts = [], thickness } = drawing
  return [
    ...voids.flatMap((one) => {
      const clear: Record<Face, number | null> = {
        mould: one.above > 0 ? one.above : null,
        top: thickness - one.above - one.depth,
        edge: ringToEdges(one, region),
      }
      return coverChecks('void', one.mark, clear, drawing.cover)
    }),
    ...ducts.flatMap((one) => {
      const radius = one.diameter / 2
      const clear: Record<Face, number | null> = {
        mould: one.height - radius,
        top: thickness - one.height - radius,
        edge: ductToEdges(one, region),
      }
      return coverChecks('duct', one.mark, clear, drawing.cover)
    }),
  ]
}

function coverChecks(
  kind: 'void' | 'duct',
  mark: string,
  clear: Readonly<Record<Face, number | null>>,
  cover: Panel['drawing']['cover'],
): Check[] {
  const name = kind === 'void' ? `void former ${mark}` : `duct ${mark}`
  return (['mould', 'top', 'edge'] as const).flatMap((face) => {
    const found = clear[face]
    if (found === null) return []
    return [
      compare({
        id: `${kind}-cover:${mark}:${face}`,
        step: 'set',
        what: `Concrete between ${name} and ${FACES[face]}`,
        demand: Math.round(found * 1e6) / 1e6,
        limit: cover?.[face] ?? null,
        unit: 'mm',
        sense: 'at least',
        source: enteredBy('the drawing'),
        missing: cover?.[face] === undefined ? [`cover.${face}: not on the drawing`] : [],
      }),
    ]
  })
}

function ringToEdges({ outline }: DrawnVoid, region: Panel['region']): number {
  const own = edges(outline as unknown as Ring)
  return ringsOf(region)
    .flatMap(edges)
    .reduce(
      (least, side) => own.reduce((near, edge) => Math.min(near, partsApart(edge, side)), least),
      Number.POSITIVE_INFINITY,
    )
}

/** To edges that the duct does not come out of; null where it comes out of all. */
function ductToEdges({ line, diameter }: DrawnDuct, region: Panel['region']): number | null {
  const points = line as unknown as readonly Point[]
  const ends = [points[0] as Point, points.at(-1) as Point]
  const left = ringsOf(region)
    .flatMap(edges)
    .filter((side) => ends.every((end) => distanceToSegment(end, side) >= diameter / 2))
  const least = left.reduce(
    (near, side) => Math.min(near, linesApart(points, side)),
    Number.POSITIVE_INFINITY,
  )
  return Number.isFinite(least) ? least - diameter / 2 : null
}

import type { Panel } from '../../panel/panel.ts'
import { distance, type Point, type Ring } from '../../panel/point.ts'
import { type Piece, subtract } from '../../panel/region.ts'
import type { KeptClear } from './limits.ts'

/** Where inserts may be looked for: concrete of the full thickness. Void formers count as openings; where that would cut the panel in two, the panel as it is. */
export function fullConcrete({ region, drawing }: Pick<Panel, 'region' | 'drawing'>): Piece {
  const piece = region[0] as Piece
  const voids = (drawing.voids ?? []).map(({ outline }) => outline as unknown as Ring)
  if (voids.length === 0) return piece
  const left = subtract(piece.outline, [...piece.holes, ...voids])
  return left.length === 1 ? (left[0] as Piece) : piece
}

/** Ducts, kept clear of by as much as edges are. */
export function ductsClear({ drawing }: Pick<Panel, 'drawing'>, edge: number): KeptClear[] {
  return (drawing.ducts ?? []).map(({ mark, line, diameter }) => ({
    what: `duct ${mark}`,
    path: line as unknown as readonly Point[],
    distance: edge + diameter / 2,
  }))
}

/** What a search on an even plate leaves out; empty for a full panel. */
export function notSearched({ bodies, centre, faceCentre }: Panel): string[] {
  if (bodies.length === 0) return []
  const off = Math.round(distance(centre, faceCentre))
  return [
    `void formers and ducts: the search takes the weight as even and the section as full; the centre of gravity is ${off} mm off, the peak on the reduced section is that of the lift plan`,
  ]
}

import { GRAVITY, type Panel } from '../panel/panel.ts'
import type { Point, Ring } from '../panel/point.ts'
import { bounds, centroid } from '../panel/polygon.ts'
import { intersect, regionArea } from '../panel/region.ts'
import { alongLine } from '../panel/way.ts'

export interface OwnWeight {
  /** Even part, N/mm² of face. */
  readonly pressure: number
  /** Void formers and ducts taken off where they lie, N downward: below 0. */
  readonly forces: readonly { readonly at: Point; readonly force: number }[]
}

/** Cells across the longer side of a void former, each with a force of its own. */
const CELLS = 12
/** Longest piece of a duct with one force, mm. */
const PIECE = 250

/**
 * Own weight of a panel as the plate is loaded: even over a full panel; with void formers and ducts the full section's, less what each displaces and with what it weighs, spread
 * over its own plan. Sum and centre are those of the panel.
 */
export function ownWeight(panel: Panel): OwnWeight {
  const { bodies, drawing, density } = panel
  if (bodies.length === 0) return { pressure: panel.weight / panel.faceArea / 1000, forces: [] }
  const { voids = [], ducts = [] } = drawing
  const forces = bodies.flatMap((body) => {
    const force = (body.mass - body.volume * density) * GRAVITY
    const former = body.kind === 'void' ? voids.find(({ mark }) => mark === body.mark) : undefined
    const duct = body.kind === 'duct' ? ducts.find(({ mark }) => mark === body.mark) : undefined
    const pieces =
      former !== undefined
        ? cellsOf(former.outline as unknown as Ring)
        : alongLine((duct?.line ?? []) as unknown as readonly Point[], PIECE).map(({ at, length }) => ({
            at,
            size: length,
          }))
    const whole = pieces.reduce((sum, { size }) => sum + size, 0)
    return pieces.map(({ at, size }) => ({ at, force: (force * size) / whole }))
  })
  return { pressure: fullWeight(panel) / 1000, forces }
}

/** Own weight of the full section on its face, kN/m². */
export function fullWeight({ drawing, density }: Pick<Panel, 'drawing' | 'density'>): number {
  return (density * GRAVITY * drawing.thickness) / 1e6
}

/** A ring cut into small pieces, each with its own centre. */
function cellsOf(ring: Ring): { readonly at: Point; readonly size: number }[] {
  const box = bounds(ring)
  const step = Math.max(box.right - box.left, box.top - box.bottom) / CELLS
  const found: { at: Point; size: number }[] = []
  for (let x = box.left; x < box.right - 1e-6; x += step) {
    for (let y = box.bottom; y < box.top - 1e-6; y += step) {
      const cell: Ring = [
        [x, y],
        [x + step, y],
        [x + step, y + step],
        [x, y + step],
      ]
      for (const piece of intersect([ring], [cell])) {
        const at = centroid(piece.outline)
        if (at !== null) found.push({ at, size: regionArea([piece]) })
      }
    }
  }
  return found
}

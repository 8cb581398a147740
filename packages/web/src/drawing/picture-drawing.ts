import { DRAWING_FORMAT, type Drawing, parseDrawing } from '@castwright/engine/panel'
import { InputError } from '@castwright/engine/working'
import { readNumber } from '../look/index.ts'
import { rectangle } from './acts/shape-outline.ts'
import type { Draft, DraftCorner, DraftOpening } from './draft.ts'

/**
 * As much of a draft as can be drawn: the outline with those openings, void formers, ducts and inserts that are complete. Null while the outline is
 * not. For the picture alone, never recorded: thickness and strength are not the panel's.
 */
export function pictureDrawing(draft: Draft): Drawing | null {
  const outline = ringOf(draft.form === 'box' ? rectangle(draft.length, draft.width) : draft.corners)
  if (outline === null) return null
  const base = {
    format: DRAWING_FORMAT,
    mark: draft.mark.trim() || '…',
    outline,
    thickness: THICKEST,
    concrete: { strength: 1 },
  }
  const alone = tryDrawing(base)
  if (alone === null) return null
  const openings = draft.openings.flatMap((opening, index) => {
    const ring = ringOf(openingCorners(opening))
    const drawn = ring === null ? null : { mark: `${index}`, outline: ring }
    return drawn !== null && tryDrawing({ ...base, openings: [drawn] }) !== null ? [drawn] : []
  })
  const inserts = draft.inserts.flatMap(({ mark, x, y }, index) => {
    const [right, up] = [readNumber(x), readNumber(y)]
    const taken = draft.inserts.findIndex((other) => other.mark.trim() === mark.trim()) !== index
    if (right === null || up === null || mark.trim() === '' || taken) return []
    return [{ mark: mark.trim(), at: [right, up], kind: 'face' }]
  })
  const bodies = bodiesIn(draft, base)
  return (
    tryDrawing({ ...base, openings, inserts, ...bodies }) ??
    tryDrawing({ ...base, openings, inserts }) ??
    alone
  )
}

/** Any void former and duct fits in this, mm. */
const THICKEST = 10_000

/** Those void formers and ducts that are complete, each with a mark of its own. */
function bodiesIn(draft: Draft, base: object): { readonly voids: unknown[]; readonly ducts: unknown[] } {
  const marks = [...draft.voids, ...draft.ducts].map(({ mark }) => mark.trim())
  const own = (mark: string): boolean => mark !== '' && marks.filter((other) => other === mark).length === 1
  const voids = draft.voids.flatMap((former) => {
    const outline = ringOf(openingCorners(former))
    const [depth, above] = [readNumber(former.depth), readNumber(former.above)]
    const drawn = { mark: former.mark.trim(), outline, depth, above }
    return own(drawn.mark) && tryDrawing({ ...base, voids: [drawn] }) !== null ? [drawn] : []
  })
  const ducts = draft.ducts.flatMap((duct) => {
    const line = duct.corners.map(({ x, y }) => [readNumber(x), readNumber(y)])
    const [diameter, height] = [readNumber(duct.diameter), readNumber(duct.height)]
    const drawn = { mark: duct.mark.trim(), line, diameter, height }
    return own(drawn.mark) && tryDrawing({ ...base, ducts: [drawn] }) !== null ? [drawn] : []
  })
  return { voids, ducts }
}

function openingCorners(opening: DraftOpening): readonly DraftCorner[] {
  if (opening.form === 'corners') return opening.corners
  const [x, y, width, height] = [opening.x, opening.y, opening.width, opening.height].map(readNumber)
  if (x == null || y == null || width == null || height == null || !(width > 0) || !(height > 0)) return []
  return rectangle(String(width), String(height)).map((corner) => ({
    x: String(Number(corner.x) + x),
    y: String(Number(corner.y) + y),
  }))
}

function ringOf(corners: readonly DraftCorner[]): [number, number][] | null {
  const ring = corners.map(({ x, y }) => [readNumber(x), readNumber(y)] as const)
  if (ring.length < 3 || ring.some(([x, y]) => x === null || y === null)) return null
  return ring as unknown as [number, number][]
}

function tryDrawing(value: unknown): Drawing | null {
  try {
    return parseDrawing(value)
  } catch (error) {
    if (error instanceof InputError) return null
    throw error
  }
}

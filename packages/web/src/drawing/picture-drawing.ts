import { DRAWING_FORMAT, type Drawing, parseDrawing } from '@castwright/engine/panel'
import { InputError } from '@castwright/engine/working'
import { readNumber } from '../look/index.ts'
import { rectangle } from './acts/shape-outline.ts'
import type { Draft, DraftCorner, DraftOpening } from './draft.ts'

/**
 * As much of a draft as can be drawn: the outline with those openings and inserts that are complete. Null while the outline is
 * not. For the picture alone, never recorded: what is not typed yet stands in as 1.
 */
export function pictureDrawing(draft: Draft): Drawing | null {
  const outline = ringOf(draft.form === 'box' ? rectangle(draft.length, draft.width) : draft.corners)
  if (outline === null) return null
  const base = {
    format: DRAWING_FORMAT,
    mark: draft.mark.trim() || '…',
    outline,
    thickness: 1,
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
  return tryDrawing({ ...base, openings, inserts }) ?? alone
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

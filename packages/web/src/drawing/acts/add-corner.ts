import { readNumber } from '../../look/index.ts'
import type { DraftCorner } from '../draft.ts'
import { type DraftAct, type RingAt, withCorners } from './act.ts'

/** A corner after the given one, half-way to the next; at the end where the list is empty. */
export const addCorner: DraftAct<{ readonly ring: RingAt; readonly after: number }> = {
  name: 'add-corner',
  label: 'Add a corner',
  next: (draft, { ring, after }) =>
    withCorners(draft, ring, (corners) => {
      const closed = ring.of !== 'bar' && ring.of !== 'duct'
      const from = corners[after]
      const to = corners[after + 1] ?? (closed ? corners[0] : undefined)
      return [...corners.slice(0, after + 1), between(from, to), ...corners.slice(after + 1)]
    }),
}

function between(from: DraftCorner | undefined, to: DraftCorner | undefined): DraftCorner {
  return { x: middle(from?.x, to?.x), y: middle(from?.y, to?.y) }
}

function middle(from: string | undefined, to: string | undefined): string {
  const [a, b] = [readNumber(from ?? ''), readNumber(to ?? '')]
  return a === null || b === null ? '' : String(Math.round((a + b) / 2))
}

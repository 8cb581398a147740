import type { Draft, DraftCorner } from '../draft.ts'

/** One act of a person at a draft: what it is called, and the draft after it. */
export interface DraftAct<Input> {
  readonly name: string
  /** The word on its button, and what undo says that it takes back. */
  readonly label: string
  readonly next: (draft: Draft, input: Input) => Draft
  /** Acts in a row with the same text are one for undo: letters typed into one field. */
  readonly merge?: (input: Input) => string
}

/** A list of corners in a draft: the outline's, an opening's, a void former's, or the points of a duct or a listed bar. */
export type RingAt =
  | { readonly of: 'outline' }
  | { readonly of: 'opening'; readonly index: number }
  | { readonly of: 'void'; readonly index: number }
  | { readonly of: 'duct'; readonly index: number }
  | { readonly of: 'bar'; readonly index: number }

export function ringName(ring: RingAt): string {
  return ring.of === 'outline' ? 'outline' : `${ring.of} ${ring.index}`
}

/** The draft with one of its lists of corners changed; a list that is not there changes nothing. */
export function withCorners(
  draft: Draft,
  ring: RingAt,
  change: (corners: readonly DraftCorner[]) => readonly DraftCorner[],
): Draft {
  switch (ring.of) {
    case 'outline':
      return { ...draft, corners: change(draft.corners) }
    case 'opening':
      return {
        ...draft,
        openings: draft.openings.map((opening, index) =>
          index === ring.index ? { ...opening, corners: change(opening.corners) } : opening,
        ),
      }
    case 'void':
      return {
        ...draft,
        voids: draft.voids.map((former, index) =>
          index === ring.index ? { ...former, corners: change(former.corners) } : former,
        ),
      }
    case 'duct':
      return {
        ...draft,
        ducts: draft.ducts.map((duct, index) =>
          index === ring.index ? { ...duct, corners: change(duct.corners) } : duct,
        ),
      }
    case 'bar':
      return {
        ...draft,
        steel: draft.steel.map((steel, index) =>
          index === ring.index && steel.kind === 'bar' ? { ...steel, corners: change(steel.corners) } : steel,
        ),
      }
  }
}

import type { CutPieces } from '@castwright/engine/steel'
import type { ValueOf } from '@castwright/record'

type Piece = ValueOf<'cut-plan'>['lines'][number]['pieces'][number]

/** Example: `2 × 880 (N05 MY1), 1 × 2900`. A panel's job is left out: the pieces of a plan are mostly of one. */
export function piecesText(pieces: readonly (CutPieces | Piece)[]): string {
  return pieces
    .map(({ length, count, mark, panel }) => {
      const name = [panel?.slice(panel.indexOf('/') + 1), mark].filter((each) => each !== undefined).join(' ')
      return `${count} × ${length}${name === '' ? '' : ` (${name})`}`
    })
    .join(', ')
}

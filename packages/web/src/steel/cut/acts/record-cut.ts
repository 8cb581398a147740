import { type CutPlanFacts, leftAfterCut, type ValueOf } from '@castwright/record'
import type { EntryDraft } from '../../../record/index.ts'

type CutValue = ValueOf<'cut'>

export interface CutInput {
  readonly plan: CutPlanFacts
  /** From 1. */
  readonly line: number
  readonly from: CutValue['from']
  readonly bars: number
  /** Pieces of each of these bars that came out wrong, in the order of the line's pieces. */
  readonly lost: readonly number[]
  readonly kept: boolean
}

/** Bars of one line were cut: so many good pieces, so many wrong ones, and where the offcut went. */
export const recordCut = {
  name: 'record-cut',
  label: 'Record the cut',
  draft: ({ plan, line, from, bars, lost, kept }: CutInput): EntryDraft => {
    const { diameter, grade, kerf, lines } = plan.plan
    const planned = lines[line - 1]
    if (planned === undefined) throw new Error(`recordCut: found line ${line}, expected 1 to ${lines.length}`)
    const good = planned.pieces.map((piece, at) => ({ ...piece, count: piece.count - (lost[at] ?? 0) }))
    const wrong = planned.pieces.map((piece, at) => ({ ...piece, count: lost[at] ?? 0 }))
    return {
      kind: 'cut',
      subject: { kind: 'bar', id: `${diameter} ${grade}` },
      value: {
        plan: plan.entry,
        line,
        diameter,
        grade,
        from,
        stock: planned.stock,
        bars,
        pieces: good.filter(({ count }) => count > 0),
        ...(wrong.some(({ count }) => count > 0) ? { lost: wrong.filter(({ count }) => count > 0) } : {}),
        // The cut that takes the offcut off costs a kerf too.
        offcut: leftAfterCut({ kerf }, planned),
        kept,
      } as unknown as EntryDraft['value'],
    }
  },
}

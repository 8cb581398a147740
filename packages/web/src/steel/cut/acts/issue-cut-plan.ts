import type { CutBar } from '@castwright/engine/steel'
import type { EntryDraft } from '../../../record/index.ts'

export interface IssueInput {
  readonly yard: string
  readonly diameter: number
  readonly grade: string
  readonly kerf: number
  readonly keep: number | null
  readonly bars: readonly CutBar[]
  /** The plan whose rest it cuts. */
  readonly replaces?: string
}

/** A cutting plan is handed to the shear; from then on its lines are ticked off. */
export const issueCutPlan = {
  name: 'issue-cut-plan',
  label: 'Hand it to the shear',
  draft: ({ yard, diameter, grade, kerf, keep, bars, replaces }: IssueInput): EntryDraft => ({
    kind: 'cut-plan',
    subject: { kind: 'yard', id: yard },
    value: {
      diameter,
      grade,
      kerf,
      keep,
      lines: bars.map(({ stock, count, rack, pieces, offcut }) => ({
        stock,
        count,
        rack: rack === true,
        pieces: pieces.map((piece) => plain(piece)),
        offcut: Math.max(0, offcut),
      })),
    },
    ...(replaces === undefined ? {} : { about: replaces }),
  }),
}

function plain(piece: CutBar['pieces'][number]): Record<string, string | number> {
  return Object.fromEntries(
    Object.entries(piece).filter((field): field is [string, string | number] => field[1] !== undefined),
  )
}

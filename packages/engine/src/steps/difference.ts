import type { CardRow, RowDifference } from './card.ts'
import type { PanelFacts, SignedDifference } from './facts.ts'

/** Our own results of the lift, at the strength wanted and at that of now, which a confirmed lifting design is held beside. */
const OURS = /^(now:)?lift-(peak|insert)(:|$)/

/** Rows that the lifting design answers for: its confirmation, the strength that it wants, its load against the inserts. */
const THE_DESIGN = /^((now:)?design-load(:|$)|design$|strength$)/
const DESIGN_LOAD_NOW = /^now:design-load(:|$)/

/** Equal to what was signed counts; this only takes up the rounding of floating point. */
const RELATIVE_TOLERANCE = 1e-9

/** Whether a row of the strip card may differ from the lifting design at all. No other row of any card may. */
export function mayDiffer(id: string): boolean {
  return OURS.test(id)
}

export interface DifferencesInput {
  /** Every row of the strip card. */
  readonly rows: readonly CardRow[]
  readonly facts: PanelFacts
  /** The lifting design is on the drawing and an engineer has confirmed it for the revision in force. */
  readonly confirmed: boolean
}

/**
 * Holds our own results beside the lifting design. The stricter governs: where ours fails or is not known and every row of
 * the design passes, the row waits until an engineer has signed that difference with a reason for the revision in force.
 *
 * A signed row keeps its verdict; it is `replaced`, and the signature is in its `rests`. Nothing else is replaced here.
 */
export function withDifferences({ rows, facts, confirmed }: DifferencesInput): CardRow[] {
  const stands = confirmed && designPasses(rows)
  return rows.map((row) => {
    if (row.verdict === 'pass' || !mayDiffer(row.id)) return row
    const signed = facts.steps.strip.differences[row.id] ?? null
    if (!stands) {
      return signed === null
        ? row
        : { ...row, difference: { signed, may: false, gap: 'the lifting design does not hold on this card' } }
    }
    const gap = signed === null ? 'not signed' : gapOf(row, signed, facts)
    const difference: RowDifference = { signed, may: gap !== null, gap }
    if (signed === null || gap !== null) return { ...row, difference }
    return {
      ...row,
      difference,
      replaced: `difference signed by ${signed.by.name}, engineer: ${(signed.reason ?? '').trim()}`,
      rests: [...row.rests, signed.entry],
    }
  })
}

function designPasses(rows: readonly CardRow[]): boolean {
  const own = rows.filter(({ id }) => THE_DESIGN.test(id))
  return (
    own.every(({ verdict }) => verdict === 'pass') &&
    ['design', 'strength'].every((id) => own.some((row) => row.id === id)) &&
    own.some(({ id }) => DESIGN_LOAD_NOW.test(id))
  )
}

/**
 * Why a signature does not count for the row as it stands now; null where it does. It covers what was signed and anything
 * better: a result that grew, a limit that fell, another verdict, or something missing that was not missing then wants a
 * new look.
 */
function gapOf(row: CardRow, signed: SignedDifference, { revision, drawing }: PanelFacts): string | null {
  if (signed.by.role !== 'engineer') return `signed by ${signed.by.name}, who is no engineer`
  if ((signed.reason ?? '').trim() === '') return 'signed without a reason'
  if (signed.revision !== revision) {
    return `signed for revision ${signed.revision ?? 'none'}, now ${revision ?? 'none'}`
  }
  if (signed.reference !== drawing?.lifting?.reference) {
    return `signed for another lifting design, ${signed.reference}`
  }
  if (signed.verdict !== row.verdict) {
    const words = { fail: 'fails', unknown: 'is not known', pass: 'passes' } as const
    return `signed while it ${signed.verdict === 'fail' ? 'failed' : 'was not known'}, now it ${words[row.verdict]}`
  }
  return row.verdict === 'fail' ? worse(row, signed) : missingNow(row, signed)
}

function worse({ demand, limit, unit }: CardRow, signed: SignedDifference): string | null {
  if (typeof demand !== 'number' || typeof limit !== 'number') return 'signed for numbers, now there are none'
  if (signed.demand === null || signed.limit === null) return 'signed without the numbers'
  if (signed.unit !== unit) return `signed in ${signed.unit}, now in ${unit}`
  const within = (a: number, b: number): boolean =>
    a <= b + RELATIVE_TOLERANCE * Math.max(Math.abs(a), Math.abs(b))
  if (!within(demand, signed.demand)) return 'the result is worse than what was signed'
  return within(signed.limit, limit) ? null : 'the limit is lower than what was signed'
}

function missingNow({ unknown }: CardRow, signed: SignedDifference): string | null {
  const more = unknown.filter((gap) => !signed.missing.includes(gap))
  return more.length === 0 ? null : `missing now and not when it was signed: ${more.join('; ')}`
}

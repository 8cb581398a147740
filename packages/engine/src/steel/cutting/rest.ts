import type { CutList } from './list.ts'
import type { CutBar, CutPieces, CutPlan } from './plan.ts'

/** Bars of one line of a plan that have been cut. */
export interface CutSoFar {
  /** Place of the line in the plan, from 0. */
  readonly line: number
  readonly bars: number
}

export interface RestInput {
  readonly list: CutList
  readonly plan: Pick<CutPlan, 'bars'>
  readonly cut: readonly CutSoFar[]
  /** Pieces of the bars cut that came out wrong: they are wanted again. */
  readonly lost?: readonly CutPieces[]
}

/** What is left to be cut, from what is left. */
export interface CutRest {
  /** Null where nothing is wanted any more. */
  readonly list: CutList | null
  /** What speaks against what was told: more bars than the line has, or more pieces lost than were cut. */
  readonly wrong: readonly string[]
}

/**
 * The list that remains once bars have been cut: what is cut stays cut, pieces lost are wanted again, new stock and rack are less what was
 * taken, and offcuts that the list calls worth keeping lie in the rack, a kerf shorter. A plan of it replans the rest.
 */
export function restOfCut({ list, plan, cut, lost = [] }: RestInput): CutRest {
  const wrong: string[] = []
  const barsCut = plan.bars.map(() => 0)
  for (const { line, bars } of cut) {
    const known = barsCut[line]
    if (known === undefined || !Number.isInteger(bars) || bars < 0) {
      wrong.push(`line ${line + 1}: ${bars} bars`)
      continue
    }
    barsCut[line] = known + bars
  }
  const done: CutBar[] = plan.bars.map((bar, line) => ({ ...bar, count: barsCut[line] ?? 0 }))
  for (const [line, bar] of plan.bars.entries()) {
    const count = barsCut[line] ?? 0
    if (count > bar.count) wrong.push(`line ${line + 1}: ${count} bars cut, ${bar.count} planned`)
  }
  const made = new Map<string, number>()
  for (const { pieces, count } of done) {
    for (const piece of pieces) add(made, keyOf(piece), piece.count * count)
  }
  for (const piece of lost) {
    const key = keyOf(piece)
    const left = (made.get(key) ?? 0) - piece.count
    if (!Number.isInteger(piece.count) || piece.count < 1 || left < 0) {
      wrong.push(`${piece.count} × ${piece.length}${piece.mark === undefined ? '' : ` ${piece.mark}`} lost`)
      continue
    }
    made.set(key, left)
  }
  if (wrong.length > 0) return { list: null, wrong }

  const pieces = list.pieces.flatMap((piece) => {
    const key = keyOf(piece)
    const here = Math.min(piece.count, made.get(key) ?? 0)
    add(made, key, -here)
    return here < piece.count ? [{ ...piece, count: piece.count - here }] : []
  })
  if (pieces.length === 0) return { list: null, wrong }
  const stock = lessTaken(list.stock, takenOf(done, false))
  const { offcuts: _offcuts, ...same } = list
  const kept = done
    .filter(({ offcutTo, count }) => offcutTo === 'rack' && count > 0)
    .map(({ offcut, count }) => ({ length: Number((offcut - (list.kerf ?? 0)).toFixed(4)), count }))
  const offcuts = [...lessTaken(list.offcuts ?? [], takenOf(done, true)), ...kept]
  return { list: { ...same, stock, ...(offcuts.length === 0 ? {} : { offcuts }), pieces }, wrong }
}

/** Pieces are the same where length and every label are. */
function keyOf({ length, mark, panel, machine, order }: Omit<CutList['pieces'][number], 'count'>): string {
  return JSON.stringify([length, mark, panel, machine, order])
}

function takenOf(done: readonly CutBar[], rack: boolean): Map<number, number> {
  const taken = new Map<number, number>()
  for (const bar of done) if ((bar.rack === true) === rack) add(taken, bar.stock, bar.count)
  return taken
}

/** Bars with a count, less what was taken; those without one stay. */
function lessTaken<T extends { readonly length: number; readonly count?: number | undefined }>(
  bars: readonly T[],
  taken: Map<number, number>,
): T[] {
  return bars.flatMap((bar) => {
    if (bar.count === undefined) return [bar]
    const here = Math.min(bar.count, taken.get(bar.length) ?? 0)
    add(taken, bar.length, -here)
    return here < bar.count ? [{ ...bar, count: bar.count - here }] : []
  })
}

function add<K>(sums: Map<K, number>, key: K, count: number): void {
  sums.set(key, (sums.get(key) ?? 0) + count)
}

import type { BundleFacts, CutPlanFacts, SteelState } from './fold-steel.ts'
import type { ValueOf } from './values.ts'

type Piece = ValueOf<'cut'>['pieces'][number]

/** Pieces that a plan still owes: planned less those that were made good. Labels and order of the plan are kept. */
export function restOfPlan({ plan, cuts }: Pick<CutPlanFacts, 'plan' | 'cuts'>): Piece[] {
  const wanted = new Map<string, Piece>()
  for (const { pieces, count } of plan.lines) {
    for (const piece of pieces) {
      const key = keyOf(piece)
      const before = wanted.get(key)
      wanted.set(key, { ...piece, count: (before?.count ?? 0) + piece.count * count })
    }
  }
  for (const { cut } of cuts) {
    for (const piece of cut.pieces) {
      const key = keyOf(piece)
      const before = wanted.get(key)
      if (before !== undefined) wanted.set(key, { ...before, count: before.count - piece.count * cut.bars })
    }
  }
  return [...wanted.values()].filter(({ count }) => count > 0)
}

/** Whether a plan still lies at the shear: nothing took its place, and pieces are owed. */
export function isOpenPlan(plan: CutPlanFacts): boolean {
  return plan.replacedBy === null && restOfPlan(plan).length > 0
}

/** Left of a bar after the cut that takes its offcut off, mm. Lengths have four decimals at most: the difference of two is brought back to them. */
export function leftAfterCut(
  { kerf }: { readonly kerf: number },
  { offcut }: { readonly offcut: number },
): number {
  return Math.max(0, Number((offcut - kerf).toFixed(4)))
}

/** What makes two bars of a panel interchangeable: a mark whose size, grade or length was revised is another bar. */
export interface TakenBar {
  readonly diameter: number
  readonly grade: string
  readonly mark: string
  /** Cut length, mm; compared to the whole mm. */
  readonly length: number
}

/** Example: `["MX1",12,"500E",2900]`. */
export function takenKey({ mark, diameter, grade, length }: TakenBar): string {
  return JSON.stringify([mark, Math.round(diameter), grade, Math.round(length)])
}

/** Pieces that plans in force hold or that are cut, by panel and `takenKey`: what need not be planned again. */
export function piecesTaken({
  plans,
  cuts,
}: Pick<SteelState, 'plans' | 'cuts'>): ReadonlyMap<string, ReadonlyMap<string, number>> {
  const taken = new Map<string, Map<string, number>>()
  const add = ({ panel, mark, length, count }: Piece, steel: Steel, times: number): void => {
    if (panel === undefined || mark === undefined) return
    const here = taken.get(panel) ?? new Map<string, number>()
    taken.set(panel, here)
    const key = takenKey({ ...steel, mark, length })
    here.set(key, (here.get(key) ?? 0) + count * times)
  }
  const inForce = new Set(plans.filter(({ replacedBy }) => replacedBy === null).map(({ entry }) => entry))
  for (const { entry, plan } of plans) {
    if (!inForce.has(entry)) continue
    const { diameter, grade } = plan
    for (const { pieces, count } of plan.lines)
      for (const piece of pieces) add(piece, { diameter, grade }, count)
  }
  for (const { cut } of cuts) {
    // Pieces of a plan in force are counted with the plan.
    if (cut.plan !== null && inForce.has(cut.plan)) continue
    const { diameter, grade } = cut
    for (const piece of cut.pieces) add(piece, { diameter, grade }, cut.bars)
  }
  return taken
}

/** Bars of one length that open plans have still to cut, from the rack or not. */
export interface PromisedBars extends Steel {
  readonly length: number
  readonly count: number
  readonly rack: boolean
}

/** Bars that the plans at the shear still need, so that no other plan is made from them. `without`: a plan that is to be replaced. */
export function barsPromised(plans: readonly CutPlanFacts[], without?: string): PromisedBars[] {
  return plans
    .filter((facts) => facts.entry !== without && isOpenPlan(facts))
    .flatMap(({ plan: { diameter, grade, lines }, cut }) =>
      lines.flatMap(({ stock, count, rack }, at) => {
        const left = count - (cut[at] ?? 0)
        return left > 0 ? [{ diameter, grade, length: stock, count: left, rack }] : []
      }),
    )
}

interface Steel {
  readonly diameter: number
  readonly grade: string
}

/** Bars that a bundle held as it came: counted, else by docket or order; null where nobody said. */
export function barsThere({ came }: Pick<BundleFacts, 'came'>): number | null {
  return came.counted ?? came.docket?.count ?? came.ordered.count ?? null
}

/** Bars that a bundle still holds; null where nobody counted them. */
export function barsLeft(facts: BundleFacts): number | null {
  const there = barsThere(facts)
  return there === null ? null : Math.max(0, there - facts.cutBars)
}

/** Whether size and grade are the same; US bars are named by several diameters within half a millimetre. */
export function isSameSteel(a: Steel, b: Steel): boolean {
  return Math.abs(a.diameter - b.diameter) <= 0.5 && a.grade === b.grade
}

/** Length that a bar of a bundle can be cut for, mm: the shortest measured, else as ordered; null where neither is known. */
export function barLength({ came }: BundleFacts): number | null {
  const known = [...(came.lengths ?? []), ...(came.ordered.length === undefined ? [] : [came.ordered.length])]
  return known.length === 0 ? null : Math.min(...known)
}

function keyOf({ length, mark, panel }: Piece): string {
  return JSON.stringify([length, mark, panel])
}

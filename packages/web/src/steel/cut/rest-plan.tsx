import { codeFamily } from '@castwright/engine/codes'
import { type CutList, jobCutLists, type ScheduledBar } from '@castwright/engine/steel'
import { barsPromised, type CutPlanFacts, isSameSteel, restOfPlan } from '@castwright/record'
import { type ReactElement, useMemo } from 'react'
import { Notice } from '../../look/index.ts'
import { useYardState } from '../../record/index.ts'
import { OneList } from './one-list.tsx'
import { piecesText } from './piece-text.ts'
import { countedBars, lessPromised, rackOffcuts } from './what-is-there.ts'

/** What a plan still owes, planned again from what lies there now. */
export function RestPlan({ facts }: { readonly facts: CutPlanFacts }): ReactElement | null {
  const { steel, yard } = useYardState()
  const { plan } = facts
  const { list, left } = useMemo(() => {
    const code = yard.yard?.code
    const owed = restOfPlan(facts)
    const promised = barsPromised(steel.plans, facts.entry)
    const counted = code === undefined ? [] : countedBars(steel, codeFamily(code).steel)
    // Named by the plan's own diameter, whatever the bundle's order calls it.
    const own = <T extends { readonly diameter: number; readonly grade: string }>(bars: readonly T[]): T[] =>
      bars.map((bar) => (isSameSteel(bar, plan) ? { ...bar, diameter: plan.diameter } : bar))
    const { lists } = jobCutLists({
      panels: [{ panel: '', bars: owed.map(({ length, count }) => barOf(plan, length, count)) }],
      stock: own(yard.yard?.stock ?? []),
      offcuts: own(lessPromised(rackOffcuts(steel), promised, true)),
      counted: own(lessPromised(counted, promised, false)),
      kerf: plan.kerf,
      ...(plan.keep === null ? {} : { keep: plan.keep }),
    })
    const [first] = lists
    if (first === undefined) return { list: null, left: owed }
    const { stock, offcuts = [] } = first.list
    const longest = Math.max(...[...stock, ...offcuts].map(({ length }) => length))
    const pieces = owed.filter(({ length }) => length <= longest) as CutList['pieces']
    return {
      list: { ...first, list: { ...first.list, pieces } },
      left: owed.filter(({ length }) => length > longest),
    }
  }, [facts, plan, steel, yard.yard])
  return (
    <details>
      <summary>Plan the rest again</summary>
      {left.length === 0 ? null : (
        <Notice kind="unknown" title="Pieces that no bar is long enough for">
          {piecesText(left)}. A new plan does not hold them.
        </Notice>
      )}
      {list === null ? null : <OneList key={JSON.stringify(list)} of={list} replaces={facts.entry} />}
    </details>
  )
}

/** Straight bars of the plan's steel: where they come from is asked, not what becomes of them. */
function barOf({ diameter, grade }: CutPlanFacts['plan'], length: number, count: number): ScheduledBar {
  return {
    mark: '',
    shape: '',
    diameter,
    grade,
    role: 'main',
    count,
    cutLength: length,
    legs: [],
    turns: [],
    inside: null,
    mass: 0,
  }
}

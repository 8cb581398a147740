import { codeFamily } from '@castwright/engine/codes'
import { jobCutLists } from '@castwright/engine/steel'
import { type CutPlanFacts, restOfPlan } from '@castwright/record'
import { type ReactElement, useMemo } from 'react'
import { useYardState } from '../../record/index.ts'
import { OneList } from './one-list.tsx'
import { countedBars, rackOffcuts } from './what-is-there.ts'

/** What a plan still owes, planned again from what lies there now. */
export function RestPlan({ facts }: { readonly facts: CutPlanFacts }): ReactElement | null {
  const { steel, yard } = useYardState()
  const { plan } = facts
  const lists = useMemo(() => {
    const code = yard.yard?.code
    const bars = restOfPlan(facts).map(({ length, count, mark, panel }) => ({
      panel: panel ?? '',
      bar: {
        mark: mark ?? '',
        shape: '',
        diameter: plan.diameter,
        grade: plan.grade,
        role: 'main' as const,
        count,
        cutLength: length,
        legs: [],
        turns: [],
        inside: null,
        mass: 0,
      },
    }))
    return jobCutLists({
      panels: bars.map(({ panel, bar }) => ({ panel, bars: [bar] })),
      stock: yard.yard?.stock ?? [],
      offcuts: rackOffcuts(steel),
      counted: code === undefined ? [] : countedBars(steel, codeFamily(code).steel),
      kerf: plan.kerf,
      ...(plan.keep === null ? {} : { keep: plan.keep }),
    }).lists
  }, [facts, plan, steel, yard.yard])
  return (
    <details>
      <summary>Plan the rest again</summary>
      {lists.map((each) => (
        <OneList key={JSON.stringify(each)} of={each} replaces={facts.entry} />
      ))}
    </details>
  )
}

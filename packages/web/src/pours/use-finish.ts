import type { Plan } from '@castwright/engine/plan'
import { type FinishNow, finishNow, type PanelFacts } from '@castwright/engine/steps'
import { useMemo } from 'react'
import { useYardState } from '../record/index.ts'

/** The surface of a panel as it stands: computed on the device, anew each minute and with each reading. */
export function useFinish(facts: PanelFacts, plan: Plan | null, now: Date): FinishNow | null {
  const { yard, weather, forecast } = useYardState()
  const minute = now.toISOString().slice(0, 16)
  return useMemo(
    () =>
      plan === null
        ? null
        : finishNow({
            plan,
            facts,
            yard: yard.yard,
            weather,
            forecast,
            now: `${minute}:00.000Z`,
          }),
    [plan, facts, yard, weather, forecast, minute],
  )
}

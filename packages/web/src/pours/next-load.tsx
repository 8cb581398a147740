import type { Plan } from '@castwright/engine/plan'
import { nextLoad } from '@castwright/engine/pour/loads'
import { airOfPour, type PanelFacts } from '@castwright/engine/steps'
import { type ReactElement, useMemo } from 'react'
import { fixed, Notice } from '../look/index.ts'
import { clock } from '../panel/load-clock.tsx'
import { whenText } from '../panel/when.ts'
import { useNow, useYardState } from '../record/index.ts'

/** Until when the next load of a pour must begin, counting down; nothing where none is waited for. */
export function NextLoadPart({
  facts,
  plan,
  zone,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
  readonly zone: string
}): ReactElement | null {
  const { yard } = useYardState()
  const now = useNow(1000)
  const { next, gap } = useMemo(
    () =>
      nextLoad({
        loads: facts.dockets,
        net: plan.pour.netVolume,
        air: (at) => airOfPour({ facts, yard }, at),
      }),
    [facts, plan, yard],
  )
  if (gap !== null) {
    return (
      <Notice kind="unknown" title="How long the surface may wait for the next load is not known">
        Missing: {gap}.
      </Notice>
    )
  }
  if (next === null) return null
  const left = (Date.parse(next.until) - now.getTime()) / 60_000
  const short = next.short > 0 ? `${fixed(next.short, 2)} m³ of the panel are still to come. ` : ''
  const why = `Load ${next.after.number} ended ${whenText(next.ended, zone, now)}; air ${fixed(next.air.celsius, 0)} °C, ${next.air.from}: ${next.minutes} min, common practice, halved for a visible face.`
  return left < 0 ? (
    <Notice kind="fail" title={`The surface has waited ${clock(-left)} min too long`}>
      {short}The next load was to begin by {whenText(next.until, zone, now)}. If the vibrator no longer sinks
      in by itself it is a joint: stop and ask the lead. {why}
    </Notice>
  ) : (
    <Notice title={`The next load begins by ${whenText(next.until, zone, now)}: ${clock(left)} min left`}>
      {short}
      {why}
    </Notice>
  )
}

import type { ReactElement } from 'react'
import { NightPart } from '../night/night-part.tsx'
import { useNight, usePlan } from '../record/index.ts'
import { usePanelRoom } from './panel-context.ts'

/** The computed night beside the card of the cure, whose rows say what it comes to. */
export function CureNight(): ReactElement | null {
  const { facts } = usePanelRoom()
  const plan = usePlan(facts.job, facts.mark)
  const night = useNight(facts, plan.status === 'ready' ? plan.plan : null)
  return facts.cast === null ? null : <NightPart facts={facts} night={night} onCard />
}

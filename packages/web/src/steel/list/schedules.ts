import type { PanelSchedule } from '@castwright/documents/bar-list'
import { codeFamily } from '@castwright/engine/codes'
import { panelOf } from '@castwright/engine/panel'
import { planSteel } from '@castwright/engine/steel'
import type { PanelFacts, YardFacts } from '@castwright/engine/steps'
import { InputError } from '@castwright/engine/working'

/** The scheduled bars of one panel, as its plan has them; what keeps it from being planned stands in `unknown`. */
export function scheduleOf({ job, mark, drawing }: PanelFacts, yard: YardFacts['yard']): PanelSchedule {
  const code = drawing?.code ?? yard?.code
  const none = (why: string): PanelSchedule => ({
    job,
    panel: mark,
    family: code ?? null,
    bars: [],
    unknown: [why],
  })
  if (drawing === null) return none('no drawing in force')
  if (code === undefined) return none('neither drawing nor yard names a code family')
  try {
    const { bars, unknown } = planSteel({ panel: panelOf(drawing), yard, family: codeFamily(code) })
    return { job, panel: mark, family: code, bars, unknown }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return none(error.message)
  }
}

/** Schedules of panels one after the other; the screen is drawn in between, and `stop` ends it. */
export async function schedulesOf(
  panels: readonly PanelFacts[],
  yard: YardFacts['yard'],
  { onDone, stop }: { readonly onDone: (done: number) => void; readonly stop: AbortSignal },
): Promise<PanelSchedule[]> {
  const schedules: PanelSchedule[] = []
  for (const panel of panels) {
    stop.throwIfAborted()
    schedules.push(scheduleOf(panel, yard))
    onDone(schedules.length)
    await new Promise((drawn) => setTimeout(drawn, 0))
  }
  return schedules
}

import { codeFamily } from '../codes/index.ts'
import type { Plan } from '../plan.ts'
import { type AirThen, airAt } from '../pour/loads/air.ts'
import { loadRows } from '../pour/loads/load-rows.ts'
import type { PourOrder } from '../pour/loads/one-load.ts'
import type { CardRow } from './card.ts'
import { decisionCounts } from './decision.ts'
import type { PanelFacts, YardFacts } from './facts.ts'
import { plainRow } from './rows.ts'

export interface PourFacts {
  readonly plan: Pick<Plan, 'family' | 'pour'>
  readonly facts: PanelFacts
  readonly yard: YardFacts
}

/** Loads of the pour as rows of the card; an accepted load carries its decision at each row that does not pass. */
export function loadCardRows(pour: PourFacts): CardRow[] {
  const { plan, facts } = pour
  if (facts.dockets.length === 0) return []
  const rows = loadRows({
    loads: facts.dockets,
    order: pourOrder(pour),
    family: codeFamily(plan.family),
    air: (at) => airOfPour(pour, at),
  })
  const accepted = facts.dockets.flatMap(({ number, decision }) =>
    decision?.decision === 'accept' ? [{ before: `load:${number}:`, decision }] : [],
  )
  return rows.map(({ since, ...row }) => {
    const plain = plainRow({ ...row, ...(since === null ? {} : { since }) })
    const found = accepted.find(({ before }) => row.id.startsWith(before))
    if (row.verdict === 'pass' || found === undefined) return plain
    const { decision } = found
    return decisionCounts(plain, decision, facts.revision)
      ? { ...plain, decision, rests: [...plain.rests, decision.entry] }
      : plain
  })
}

/** What was ordered: the mix entered with the pour, else the planned one; its slump and age limit from the yard's file. */
export function pourOrder({ plan, facts, yard: { yard } }: PourFacts): PourOrder {
  const mark = facts.cast?.mix ?? plan.pour.mix
  const mixes = yard?.mixes ?? []
  const mix = mixes.find((each) => each.mark === mark)
  return {
    mix: mark,
    strength: facts.drawing?.concrete.strength ?? null,
    slump: mix?.slump ?? null,
    dischargeMinutes: mix?.dischargeMinutes ?? null,
    net: plan.pour.netVolume,
    mixes,
  }
}

/** An hour on either side: what was measured at the pour speaks for it. */
const MEASURED_FOR = 60 * 60_000

/** Air at an instant of the pour: as measured there within the hour, else as logged, else as foretold; null where nobody knows. */
export function airOfPour({ facts, yard }: Pick<PourFacts, 'facts' | 'yard'>, at: string): AirThen | null {
  const measured = facts.steps.deliver.values['air-temperature']
  if (
    typeof measured?.value === 'number' &&
    Number.isFinite(measured.value) &&
    Math.abs(Date.parse(measured.seen) - Date.parse(at)) <= MEASURED_FOR
  )
    return { celsius: measured.value, from: 'measured' }
  return airAt({ at, logged: yard.weather ?? [], forecast: yard.forecast ?? [] })
}

import type { CurePlan } from '../cure/cure-plan.ts'
import { liveCurve } from '../cure/live-curve.ts'
import type { Yard } from '../yard/yard.ts'
import { concreteLogs } from './curve-low.ts'
import type { PanelFacts } from './facts.ts'

export interface CureNowInput {
  readonly cure: Pick<CurePlan, 'wanted' | 'hour' | 'hourLow' | 'curve'>
  readonly facts: Pick<PanelFacts, 'cast' | 'temperatures'>
  readonly yard: Yard | null
  /** Last hour of the curve, from mixing. */
  readonly until: number
}

/** Hours from mixing and curve, and which temperature they stand on. */
export interface CureNow extends Pick<CurePlan, 'hour' | 'hourLow' | 'curve'> {
  /** `logged`: along this pour's own log and on at its last temperature; `planned`: nothing is logged. */
  readonly temperature: 'logged' | 'planned'
  readonly unknown: readonly string[]
}

/**
 * Strength curve of a panel as it stands now: once its pour has a log, the planned temperature counts no more. Of several
 * channels the one whose low edge meets the wanted strength last counts, one that never meets it before all others.
 *
 * A log that cannot be used (no mix, no curve) leaves the hours not known; it never falls back to the plan.
 */
export function cureNow({ cure, facts, yard, until }: CureNowInput): CureNow {
  const logs = concreteLogs(facts.temperatures)
  if (facts.cast === null || logs.length === 0) {
    return { hour: cure.hour, hourLow: cure.hourLow, curve: cure.curve, temperature: 'planned', unknown: [] }
  }
  const mix = yard?.mixes?.find(({ mark }) => mark === facts.cast?.mix)
  if (mix === undefined) {
    return { hour: null, hourLow: null, curve: [], temperature: 'logged', unknown: ['mix of the pour'] }
  }
  const wanted = cure.wanted?.strength ?? null
  const live = logs.map(({ readings }) => liveCurve({ mix, readings, wanted, until }))
  const slowest = live.reduce((worst, next) => (meets(next.hourLow) > meets(worst.hourLow) ? next : worst))
  const { hour, hourLow, curve, unknown } = slowest
  return { hour, hourLow, curve, temperature: 'logged', unknown }
}

function meets(hour: number | null): number {
  return hour ?? Number.POSITIVE_INFINITY
}

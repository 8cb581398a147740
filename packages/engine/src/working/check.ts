import type { StepId } from '../steps/steps.ts'
import type { Source } from './source.ts'
import type { Verdict } from './verdict.ts'
import type { Assumed, Step } from './worked.ts'

/** A comparison that drawing, yard and code decide. */
export interface Check {
  /** Stable and unique in a plan. Example: `bend:T1`. */
  readonly id: string
  readonly step: StepId
  /** What is compared, in the trade's words. Example: `Bend of T1`. */
  readonly what: string
  readonly demand: number | null
  readonly limit: number | null
  readonly unit: string
  /** Which side of the limit is good. */
  readonly sense: 'at most' | 'at least'
  /** Demand over limit, or limit over demand for `at least`: above 1 fails. Null where either is not known. */
  readonly ratio: number | null
  readonly verdict: Verdict
  readonly source: Source
  readonly working: readonly Step[]
  readonly assumed?: readonly Assumed[]
  /** What is missing; present exactly where the verdict is `unknown`. */
  readonly unknown?: readonly string[]
  /** What it depends on, one short sentence for the floor. */
  readonly note?: string
}

export interface Compared {
  readonly id: string
  readonly step: StepId
  readonly what: string
  readonly demand: number | null | undefined
  readonly limit: number | null | undefined
  readonly unit: string
  readonly sense: 'at most' | 'at least'
  readonly source: Source
  readonly working?: readonly Step[]
  readonly assumed?: readonly Assumed[]
  readonly missing?: readonly string[]
  readonly note?: string
}

/** Equal to the limit passes; the tolerance only takes up the rounding of floating point. */
const RELATIVE_TOLERANCE = 1e-9

/**
 * Compares a demand with its limit. Missing or not finite on either side, or anything listed as missing, is `unknown`.
 */
export function compare(input: Compared): Check {
  const missing = [...(input.missing ?? [])]
  const demand = finiteOrNull(input.demand)
  const limit = finiteOrNull(input.limit)
  if (missing.length === 0) {
    if (demand === null) missing.push(`${input.what}: the value`)
    if (limit === null) missing.push(`${input.what}: no confirmed limit`)
  }
  const base = {
    id: input.id,
    step: input.step,
    what: input.what,
    demand,
    limit,
    unit: input.unit,
    sense: input.sense,
    source: input.source,
    working: input.working ?? [],
    ...(input.assumed && input.assumed.length > 0 ? { assumed: input.assumed } : {}),
    ...(input.note === undefined ? {} : { note: input.note }),
  }
  if (missing.length > 0 || demand === null || limit === null) {
    return { ...base, ratio: null, verdict: 'unknown', unknown: missing }
  }
  return {
    ...base,
    ratio: ratioOf(demand, limit, input.sense),
    verdict: verdictOf(demand, limit, input.sense),
  }
}

/** Which side of the limit a finite demand lies on. */
export function verdictOf(demand: number, limit: number, sense: 'at most' | 'at least'): Verdict {
  if (!Number.isFinite(demand) || !Number.isFinite(limit)) return 'unknown'
  const slack = RELATIVE_TOLERANCE * Math.max(Math.abs(demand), Math.abs(limit), 1e-9)
  const over = sense === 'at most' ? demand - limit : limit - demand
  return over <= slack ? 'pass' : 'fail'
}

function ratioOf(demand: number, limit: number, sense: 'at most' | 'at least'): number | null {
  const [above, below] = sense === 'at most' ? [demand, limit] : [limit, demand]
  return below > 0 && Number.isFinite(above / below) ? above / below : null
}

function finiteOrNull(value: number | null | undefined): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null
}

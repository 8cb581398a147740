import { verdictOf } from '../working/check.ts'
import type { Source } from '../working/source.ts'
import type { Step } from '../working/worked.ts'
import type { AcceptanceRule } from './quality-rules.ts'

export interface AcceptanceCompared {
  readonly rule: string
  readonly demand: number | null
  readonly limit: number
  readonly source: Source
  readonly missing: readonly string[]
  readonly working: readonly Step[]
  readonly note?: string
}

/** Holds the statistic that was found against what it must reach; anything missing is `unknown`. */
export function acceptanceRule(input: AcceptanceCompared): AcceptanceRule {
  const { rule, demand, limit, source, missing, working, note } = input
  const base = { rule, demand, limit, source, working, ...(note === undefined ? {} : { note }) }
  if (demand === null || missing.length > 0)
    return {
      ...base,
      verdict: 'unknown',
      unknown: missing.length > 0 ? missing : [`${rule}: the statistic`],
    }
  return { ...base, verdict: verdictOf(demand, limit, 'at least') }
}

/** Mean of at least one value. */
export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

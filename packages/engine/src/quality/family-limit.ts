import type { CodeFamily } from '../codes/family.ts'
import type { ToleranceInput, ToleranceLimit } from '../codes/quality-rules.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import { known, type Worked } from '../working/worked.ts'

/** Key of the yard's entered limits for a tolerance, mm either way: `quality.bow`. */
export function toleranceKey(what: ToleranceInput['what']): string {
  return `quality.${what}`
}

export interface FamilyLimitInput extends ToleranceInput {
  readonly family: CodeFamily
  readonly limits?: Readonly<Record<string, EnteredLimit>> | undefined
}

/** The family's limit, or, where it has none that is confirmed, the one that an engineer entered for the yard. */
export function familyLimit({ what, size, family, limits = {} }: FamilyLimitInput): Worked<ToleranceLimit> {
  const rule = family.quality.tolerance({ what, size })
  if (rule.known) return rule
  const entered = limits[toleranceKey(what)]
  if (entered === undefined || entered.unit !== 'mm' || !(entered.value > 0)) return rule
  const source = { standard: entered.standard, clause: entered.edition, status: 'entered' } as const
  return known({ low: -entered.value, high: entered.value, source }, [
    {
      symbol: 'Δ',
      formula: `limit entered by ${entered.by.name}`,
      given: { what },
      result: entered.value,
      unit: 'mm',
      source,
      by: 'table',
    },
  ])
}

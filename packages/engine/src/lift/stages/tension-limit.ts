import type { CodeFamily } from '../../codes/family.ts'
import type { EnteredLimit } from '../../steps/facts.ts'
import { notAboveZero } from '../../working/guard.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'

/** Key under which an engineer enters k of a tension limit k √f, unit √MPa. */
export const TENSION_LIMIT = 'lift.tension'

export interface TensionLimitInput {
  readonly family: CodeFamily
  readonly limits: Readonly<Record<string, EnteredLimit>>
  /** Strength of the concrete at the hour, MPa. */
  readonly strength: number
  /** mm */
  readonly thickness: number
}

/**
 * Tension that the concrete may have in bending at a strength: the family's limit for a strip; where it has none, k √f as an engineer
 * entered it. An entry beside a family's limit may only be stricter. MPa.
 */
export function tensionLimit({ family, limits, strength, thickness }: TensionLimitInput): Worked<number> {
  const gaps = notAboveZero({ strength, thickness })
  if (gaps.length > 0) return unknown(...gaps)
  const rule = family.lift.tension({ strength, thickness })
  const entered = limits[TENSION_LIMIT]
  const usable = entered !== undefined && Number.isFinite(entered.value) && entered.value > 0
  if (!usable) return rule
  const value = entered.value * Math.sqrt(strength)
  const step: Step = {
    symbol: 'ft',
    formula: 'k √f',
    given: { k: entered.value, f: strength },
    result: value,
    unit: 'MPa',
    source: { standard: entered.standard, clause: entered.edition, status: 'entered' },
    note: `entered by ${entered.by.name}`,
  }
  if (!rule.known) return known(value, [step])
  return rule.value <= value ? rule : known(value, [...rule.working, step])
}

import { notAboveZero } from '../working/guard.ts'
import type { Source } from '../working/source.ts'
import { known, unknown, type Worked } from '../working/worked.ts'

export interface ClearSpacingRule {
  /** Times the bar diameter. */
  readonly perDiameter: number
  /** Times the aggregate size; null where the rule does not count it. */
  readonly perAggregate: number | null
  /** Added to the aggregate term, mm. */
  readonly added: number
  /** mm */
  readonly least: number
  readonly source: Source
}

/**
 * Least clear distance between parallel bars, mm. Unknown where the rule counts the aggregate and its size is not given.
 * Example: EN 1992-1-1, 16 mm bar, 20 mm aggregate: 25 mm.
 */
export function clearSpacing(
  { diameter, aggregate }: { readonly diameter: number; readonly aggregate: number | null },
  rule: ClearSpacingRule,
): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  if (rule.perAggregate === null) {
    const value = Math.max(rule.perDiameter * diameter, rule.least)
    return known(value, [
      {
        symbol: 'a',
        formula: 'max(k · d, least)',
        given: { k: rule.perDiameter, d: diameter, least: rule.least },
        result: value,
        unit: 'mm',
        source: rule.source,
      },
    ])
  }
  if (!(aggregate !== null && aggregate > 0 && Number.isFinite(aggregate))) {
    return unknown('concrete.aggregate: size of the largest aggregate, mm')
  }
  const value = Math.max(rule.perDiameter * diameter, rule.perAggregate * aggregate + rule.added, rule.least)
  return known(value, [
    {
      symbol: 'a',
      formula: 'max(k · d, n · dg + added, least)',
      given: {
        k: rule.perDiameter,
        d: diameter,
        n: rule.perAggregate,
        dg: aggregate,
        added: rule.added,
        least: rule.least,
      },
      result: value,
      unit: 'mm',
      source: rule.source,
    },
  ])
}

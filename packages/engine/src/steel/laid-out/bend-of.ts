import type { SteelRules } from '../../codes/steel-rules.ts'
import { type Check, compare } from '../../working/check.ts'
import type { Source } from '../../working/source.ts'
import type { Assumed, Worked } from '../../working/worked.ts'

export const NO_RULE: Source = { standard: 'no confirmed rule', clause: '', status: 'common practice' }

export interface BendOf {
  /** Inside diameter as made, mm: the drawing's, else the code's least; null where not known. */
  readonly inside: number | null
  readonly least: Worked<number>
  readonly check: Check
  readonly assumed: readonly Assumed[]
}

export interface BendOfInput {
  readonly rules: SteelRules
  /** Name for checks: mark or place in the drawing. */
  readonly key: string
  readonly diameter: number
  readonly grade: string
  readonly role: 'main' | 'stirrup'
  /** As drawn, mm. */
  readonly inside: number | undefined
}

/** The bend of a bar that the drawing gives no shape, held against the code's least. */
export function bendOf({ rules, key, diameter, grade, role, inside: drawn }: BendOfInput): BendOf {
  const least = rules.leastBend({ diameter, grade, role, plain: false, galvanised: false })
  const inside = drawn ?? (least.known ? least.value : null)
  const assumed: Assumed[] =
    drawn === undefined && inside !== null
      ? [
          {
            field: `steel.${key}.inside`,
            value: inside,
            unit: 'mm',
            why: 'the drawing gives no inside diameter: the least that the code allows',
          },
        ]
      : []
  const check = compare({
    id: `bend:${key}`,
    step: 'cut-bend',
    what: `Inside diameter of the bends of ${key}`,
    demand: inside,
    limit: least.known ? least.value : null,
    unit: 'mm',
    sense: 'at least',
    source: least.known ? (least.working[0]?.source ?? NO_RULE) : NO_RULE,
    working: least.known ? least.working : [],
    missing: least.known ? [] : least.gaps,
    assumed,
  })
  return { inside, least, check, assumed }
}

import { bondCondition } from '../../codes/eu/en1992-1-1-2004/lap.ts'
import type { DrawnStarters } from '../../panel/drawn-steel.ts'
import { type Check, compare } from '../../working/check.ts'
import { unknown, type Worked } from '../../working/worked.ts'
import { leastEndLeg } from '../bend-legs.ts'
import { cutLength } from '../cut-length.ts'
import { gradeOf } from '../mats.ts'
import { NO_RULE } from './bend-of.ts'
import type { LayContext } from './lay-context.ts'

export interface FootCheckInput {
  readonly drawn: Pick<DrawnStarters, 'diameter' | 'grade' | 'embed'>
  /** Its leg, outside, mm. */
  readonly foot: number
  readonly key: string
  /** Inside diameter of the bend, mm; null where not known. */
  readonly inside: number | null
  /** Clear to the next starter, mm. */
  readonly gap: number
}

/**
 * A foot is a standard hook of the code where its leg is long enough. The concrete beside the stem is taken as the edge cover: starters on a
 * line may stand as near as that.
 */
export function footCheck(
  { drawn: { diameter, grade, embed }, foot, key, inside, gap }: FootCheckInput,
  { panel, rules, edgeCover }: Pick<LayContext, 'panel' | 'rules' | 'edgeCover'>,
): Check {
  const { thickness, concrete } = panel.drawing
  const along = rules.hookMeasured === 'centreline'
  const cut = cutLength({ diameter, inside, legs: [foot, embed], turns: [90] })
  const found = along ? (cut.known ? cut.value.length : null) : embed
  const leg =
    inside === null
      ? unknown('inside: inside diameter of the bend, mm')
      : leastEndLeg({ rules, diameter, inside, turn: 90, role: 'main', plain: false })
  const steel = gradeOf(rules, grade)
  const hook = (): Worked<number> => {
    if (!leg.known) return { known: false, gaps: leg.gaps }
    if (foot < leg.value - 1e-6)
      return unknown(`foot: ${foot} mm is no standard hook, its least leg is ${leg.value.toFixed(0)} mm`)
    if (steel === null) return unknown(`grade: ${grade} is no grade of this code family`)
    return rules.hookAnchorage({
      diameter,
      yield: steel.yield,
      concrete: concrete.strength,
      cover: edgeCover,
      gap,
      below: edgeCover,
      bond: bondCondition({ below: edgeCover, depth: thickness }),
      sideCover: edgeCover,
      tailCover: thickness - embed,
    })
  }
  const anchorage = hook()
  return compare({
    id: `anchor:${key}`,
    step: 'cage',
    what: `Length of ${key} in the concrete, as a standard hook`,
    demand: found,
    limit: anchorage.known ? anchorage.value : null,
    unit: 'mm',
    sense: 'at least',
    source: anchorage.known ? (anchorage.working.at(-1)?.source ?? NO_RULE) : NO_RULE,
    working: [...(along && cut.known ? cut.working : []), ...(anchorage.known ? anchorage.working : [])],
    missing: [...(anchorage.known ? [] : anchorage.gaps), ...(found === null && !cut.known ? cut.gaps : [])],
    note: along ? 'along the centreline of stem and foot' : 'from the top face to the outside of the foot',
  })
}

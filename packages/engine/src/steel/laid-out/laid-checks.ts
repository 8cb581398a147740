import { bondCondition } from '../../codes/eu/en1992-1-1-2004/lap.ts'
import type { LapLength } from '../../codes/steel-rules.ts'
import { type Check, compare } from '../../working/check.ts'
import { enteredBy, GEOMETRY } from '../../working/source.ts'
import { unknown, type Worked } from '../../working/worked.ts'
import { NO_RULE } from './bend-of.ts'
import type { LayContext } from './lay-context.ts'

/** Widest spacing of bars as laid against the drawing's; none where no two bars stand beside each other. */
export function spacingLaid(key: string, spacings: readonly number[], asked: number): Check[] {
  if (spacings.length === 0) return []
  return [
    compare({
      id: `spacing:${key}`,
      step: 'cage',
      what: `Spacing of ${key} as laid`,
      demand: Math.max(...spacings),
      limit: asked,
      unit: 'mm',
      sense: 'at most',
      source: enteredBy('the drawing'),
    }),
  ]
}

/** Bars that had to be left out because the concrete less its cover has no room for them. */
export function leftOutCheck(key: string, count: number, why: string): Check {
  return compare({
    id: `room:${key}`,
    step: 'cage',
    what: `Bars of ${key} without room in the concrete`,
    demand: count,
    limit: 0,
    unit: '',
    sense: 'at most',
    source: GEOMETRY,
    ...(count > 0 ? { note: why } : {}),
  })
}

/** Outside height between the covers against what two bends take. */
export function fitCheck({
  key,
  height,
  inside,
  diameter,
  bends,
}: {
  readonly key: string
  readonly height: number
  readonly inside: number | null
  readonly diameter: number
  readonly bends: 1 | 2
}): Check {
  const needed = inside === null ? null : bends === 2 ? inside + 2 * diameter : inside / 2 + diameter
  return compare({
    id: `fit:${key}`,
    step: 'cut-bend',
    what: `Height of ${key} between the covers, outside`,
    demand: height,
    limit: needed,
    unit: 'mm',
    sense: 'at least',
    source: GEOMETRY,
    working:
      inside === null || needed === null
        ? []
        : [
            {
              symbol: 'h',
              formula: bends === 2 ? 'D + 2 d' : 'D / 2 + d',
              given: { D: inside, d: diameter },
              result: needed,
              unit: 'mm',
              source: GEOMETRY,
              note: bends === 2 ? 'its two bends' : 'its bend',
            },
          ],
    missing: inside === null ? ['inside: inside diameter of the bends, mm'] : [],
  })
}

/** Anchorage of a straight bar of the drawing by its code; `cover` is the least on any side, mm. */
export function anchorageOf(
  { panel, rules, edgeCover }: Pick<LayContext, 'panel' | 'rules' | 'edgeCover'>,
  {
    diameter,
    grade,
    depth,
    gap,
    below,
  }: {
    readonly diameter: number
    readonly grade: string
    /** Concrete over the bar at the nearer face, mm; null where not known. */
    readonly depth: number | null
    /** Clear to the next bar of its kind, mm. */
    readonly gap: number
    /** Fresh concrete below it, mm. */
    readonly below: number
  },
): Worked<LapLength> {
  if (depth === null) return unknown('cover: cover at the face, mm')
  const steel = rules.grades.find((each) => each.grade === grade)
  if (steel === undefined) return unknown(`grade: ${grade} is no grade of this code family`)
  return rules.lap({
    diameter,
    yield: steel.yield,
    concrete: panel.drawing.concrete.strength,
    cover: Math.min(depth, edgeCover),
    gap,
    below,
    bond: bondCondition({ below, depth: panel.drawing.thickness }),
    share: 100,
    apart: 0,
  })
}

/** A length in the concrete against the anchorage of its code. */
export function anchorCheck({
  key,
  what,
  found,
  anchorage,
  note,
}: {
  readonly key: string
  readonly what: string
  readonly found: number | null
  readonly anchorage: Worked<LapLength>
  readonly note?: string
}): Check {
  return compare({
    id: `anchor:${key}`,
    step: 'cage',
    what,
    demand: found,
    limit: anchorage.known ? anchorage.value.development : null,
    unit: 'mm',
    sense: 'at least',
    source: anchorage.known ? anchorage.value.source : NO_RULE,
    working: anchorage.known ? anchorage.working : [],
    missing: anchorage.known ? [] : anchorage.gaps,
    ...(note === undefined ? {} : { note }),
  })
}

import type { CodeFamily } from '../codes/family.ts'
import type { LiftingDesign } from '../panel/drawing.ts'
import { type Check, compare } from '../working/check.ts'
import { commonPractice, enteredBy, STATICS } from '../working/source.ts'
import type { Worked } from '../working/worked.ts'
import type { DrawnKinds } from './insert-kinds.ts'
import { ratedLoad } from './rated-load.ts'
import type { Sling } from './sling.ts'

export const ANGLE_CHECK = 'lift-angle'

/** No support may have to push down. Nothing to check while the loads are unknown. */
export function upliftCheck({
  loads,
  marks,
}: {
  readonly loads: Worked<readonly number[]>
  readonly marks: readonly string[]
}): Check[] {
  if (!loads.known) return []
  const least = Math.min(...loads.value)
  return [
    compare({
      id: 'lift-uplift',
      step: 'strip',
      what: 'Least insert load: no insert may have to push down',
      demand: least,
      limit: 0,
      unit: 'kN',
      sense: 'at least',
      source: STATICS,
      working: loads.working,
      note: `Least at insert ${marks[loads.value.indexOf(least)] ?? ''}.`,
    }),
  ]
}

export function angleCheck({
  sling,
  family,
}: {
  readonly sling: Worked<Sling>
  readonly family: CodeFamily
}): Check {
  return compare({
    id: ANGLE_CHECK,
    step: 'strip',
    what: 'Sling angle from the vertical',
    demand: sling.known ? sling.value.angle : null,
    limit: family.lift.largestAngle.value,
    unit: '°',
    sense: 'at most',
    source: family.lift.largestAngle.source,
    working: sling.known ? sling.working : [],
    missing: sling.known ? [] : sling.gaps,
    note: 'Precast practice keeps to 30° from the vertical; the lifting design may ask for less than the limit.',
  })
}

/** The design's load on any one insert against each kind's rating at a strength. */
export function designLoadChecks({
  lifting,
  kinds,
  strength,
}: {
  readonly lifting: LiftingDesign | undefined
  readonly kinds: DrawnKinds
  readonly strength: Worked<number>
}): Check[] {
  const missing = [
    ...(lifting ? [] : ['lifting: the drawing has no lifting design']),
    ...(strength.known ? [] : strength.gaps),
    ...kinds.gaps,
  ]
  const groups = kinds.kinds.map(({ kind, inserts }) => {
    const rated = strength.known ? ratedLoad({ insert: kind, strength: strength.value }) : strength
    return { id: kind.mark, marks: inserts.map(({ mark }) => mark).join(', '), rated, kind }
  })
  const base = {
    step: 'strip',
    unit: 'kN',
    sense: 'at most',
    demand: lifting?.load ?? null,
  } as const
  if (groups.length === 0) {
    return [
      compare({
        ...base,
        id: 'design-load',
        what: 'Load of the lifting design against the rated load of the inserts',
        limit: null,
        source: commonPractice('rated load by the maker'),
        missing: missing.length > 0 ? missing : ['inserts'],
      }),
    ]
  }
  return groups.map(({ id, marks, rated }) =>
    compare({
      ...base,
      id: `design-load:${id}`,
      what: `Load of the lifting design against the rated load of ${marks} (${id})`,
      limit: rated.known ? rated.value : null,
      source: enteredBy(`the yard: insert ${id}`),
      working: rated.known ? rated.working : [],
      missing: [...new Set([...missing, ...(rated.known ? [] : rated.gaps)])],
    }),
  )
}

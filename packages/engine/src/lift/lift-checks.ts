import type { CodeFamily } from '../codes/family.ts'
import type { LiftingDesign } from '../panel/drawing.ts'
import type { Panel } from '../panel/panel.ts'
import { type Check, compare } from '../working/check.ts'
import { commonPractice, enteredBy, STATICS } from '../working/source.ts'
import type { Step, Worked } from '../working/worked.ts'
import type { DrawnKinds } from './insert-kinds.ts'
import type { LoadFactor } from './load-factor.ts'
import { ratedLoad } from './rated-load.ts'
import type { Sling } from './sling.ts'
import type { WantedStrength } from './wanted-strength.ts'

/** Ids of our own results that a confirmed lifting design may stand in for while they are unknown. */
export const PEAK_CHECK = 'lift-peak'
export const LOAD_CHECK = 'lift-load'
export const ANGLE_CHECK = 'lift-angle'

/** An edge insert lifts a panel from flat across its own axis before it hangs along it. */
const TURNING = 'turning from flat: pull across the edge inserts, not computed yet'
const PLATE = 'not computed yet: needs plate bending'

export function peakCheck({
  panel,
  family,
  wanted,
  factor,
}: {
  readonly panel: Panel
  readonly family: CodeFamily
  readonly wanted: Worked<WantedStrength>
  readonly factor: Worked<LoadFactor>
}): Check {
  const limit = wanted.known
    ? family.lift.tension({ strength: wanted.value.strength, thickness: panel.drawing.thickness })
    : wanted
  return compare({
    id: PEAK_CHECK,
    step: 'strip',
    what: 'Peak tension of the panel at the first lift',
    demand: null,
    limit: limit.known ? limit.value : null,
    unit: 'MPa',
    sense: 'at most',
    source: (limit.known && limit.working.at(-1)?.source) || STATICS,
    working: [...(factor.known ? factor.working : []), ...(limit.known ? limit.working : [])],
    missing: [
      `peak tension: ${PLATE}`,
      ...(factor.known ? [] : factor.gaps),
      ...(limit.known ? [] : limit.gaps),
    ],
  })
}

/** Greatest of the insert loads, stage and angle factors in it, against the rating at the wanted strength. */
export function loadCheck({
  loads,
  kinds,
  marks,
  factor,
  sling,
  wanted,
}: {
  readonly loads: Worked<readonly number[]>
  readonly kinds: DrawnKinds
  /** Marks of the inserts in the order of `loads`. */
  readonly marks: readonly string[]
  readonly factor: Worked<LoadFactor>
  readonly sling: Worked<Sling>
  readonly wanted: Worked<WantedStrength>
}): Check {
  const gaps = [loads, factor, sling, wanted].flatMap((part) => (part.known ? [] : part.gaps))
  gaps.push(...kinds.gaps)
  if (kinds.kinds.some(({ kind }) => kind.kind === 'edge')) gaps.push(TURNING)
  const base = {
    id: LOAD_CHECK,
    step: 'strip',
    what: 'Load on the most loaded insert against its rated load',
    unit: 'kN',
    sense: 'at most',
    source: STATICS,
  } as const
  if (!loads.known || !factor.known || !sling.known || !wanted.known || gaps.length > 0) {
    return compare({ ...base, demand: null, limit: null, missing: [...new Set(gaps)] })
  }
  let governing: { demand: number; limit: number; working: readonly Step[]; mark: string } | null = null
  for (const { kind, inserts } of kinds.kinds) {
    const rated = ratedLoad({ insert: kind, strength: wanted.value.strength })
    if (!rated.known) return compare({ ...base, demand: null, limit: null, missing: rated.gaps })
    for (const insert of inserts) {
      const own = loads.value[marks.indexOf(insert.mark)] ?? Number.NaN
      const demand = (own * factor.value.factor) / Math.cos((sling.value.angle * Math.PI) / 180)
      if (governing === null || demand / rated.value > governing.demand / governing.limit) {
        governing = {
          demand,
          limit: rated.value,
          mark: insert.mark,
          working: [
            ...loads.working,
            ...factor.working,
            ...sling.working,
            {
              symbol: `F ${insert.mark}`,
              formula: 'R f / cos(β°)',
              given: { R: own, f: factor.value.factor, β: sling.value.angle },
              result: demand,
              unit: 'kN',
              source: STATICS,
            },
            ...rated.working,
          ],
        }
      }
    }
  }
  return compare({
    ...base,
    demand: governing?.demand,
    limit: governing?.limit,
    working: governing?.working ?? [],
    note: `Insert ${governing?.mark ?? ''} governs; the maker’s sheet and the engineer outrank this.`,
  })
}

/** No support may have to push down. Nothing to check while the loads are unknown: `loadCheck` says so. */
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

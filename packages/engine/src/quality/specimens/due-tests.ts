import type { CodeFamily } from '../../codes/family.ts'
import type { PanelFacts, SpecimenResult, SpecimenSet } from '../../steps/facts.ts'
import { dayIn } from '../../steps/in-date.ts'

/**
 * `done`: a result is on record. `missed`: the time that the standard gives for that age is past. `overdue`: due on a day
 * before today, with no confirmed tolerance. `due`: today, or its time runs. `coming`: later.
 */
export type DueState = 'done' | 'missed' | 'overdue' | 'due' | 'coming'

/** A specimen that is to be tested, or was. */
export interface DueTest {
  readonly set: SpecimenSet
  /** Panels that it stands for, `<job>/<mark>`. */
  readonly panels: readonly string[]
  readonly specimen: string
  /** h from making */
  readonly age: number
  readonly cured: 'panel' | 'standard'
  /** UTC */
  readonly due: string
  /** Between these the age counts as met, UTC; null where the family has no confirmed tolerance for it. */
  readonly within: { readonly from: string; readonly to: string } | null
  readonly state: DueState
  readonly result: SpecimenResult | null
  /** By how much the test missed its age beyond the tolerance, h: below 0 too early; 0 within it; null where that is not known. */
  readonly missedBy: number | null
}

export interface DueTestsInput {
  readonly panels: Iterable<Pick<PanelFacts, 'job' | 'mark' | 'cast' | 'specimens' | 'sets'>>
  readonly family: CodeFamily
  /** IANA zone of the yard. */
  readonly timezone: string
  /** UTC */
  readonly now: string
}

const HOUR = 3_600_000

/**
 * Every specimen of every set, in the order in which they are due. A set that stands for several panels is listed once.
 *
 * Ages count from making. Unknown tolerance: `within` is null, and nothing is ever `missed`.
 */
export function dueTests({ panels, family, timezone, now }: DueTestsInput): DueTest[] {
  const sets = new Map<string, { set: SpecimenSet; panels: string[]; results: Tested[] }>()
  for (const { job, mark, cast, specimens, sets: its = [] } of panels) {
    for (const set of its) {
      const key = `${set.set} ${set.made}`
      const one = sets.get(key) ?? { set, panels: [], results: [] }
      sets.set(key, one)
      one.panels.push(`${job}/${mark}`)
      one.results.push(...specimens.map((result) => ({ result, mixed: cast?.at ?? null })))
    }
  }
  const today = dayIn(timezone, now)
  const tests = [...sets.values()].flatMap(({ set, panels: its, results }) =>
    set.tests.flatMap(({ age, cured, specimens }) =>
      specimens.map((specimen): DueTest => {
        const made = Date.parse(set.made)
        const due = new Date(made + age * HOUR).toISOString()
        const tolerance = family.quality.testAge(age)
        const within = tolerance.known ? span(made, age, tolerance.value) : null
        const found = results.find(({ result }) => result.specimen === specimen) ?? null
        return {
          set,
          panels: its,
          specimen,
          age,
          cured,
          due,
          within,
          state: found === null ? stateOf({ due, within, today, timezone, now }) : 'done',
          result: found?.result ?? null,
          missedBy: found === null ? null : missedBy(found, within),
        }
      }),
    ),
  )
  return tests.sort((a, b) => (a.due < b.due ? -1 : a.due > b.due ? 1 : a.specimen < b.specimen ? -1 : 1))
}

interface Tested {
  readonly result: SpecimenResult
  /** Mixing that the age of the result counts from, UTC. */
  readonly mixed: string | null
}

function span(made: number, age: number, tolerance: number): NonNullable<DueTest['within']> {
  return {
    from: new Date(made + (age - tolerance) * HOUR).toISOString(),
    to: new Date(made + (age + tolerance) * HOUR).toISOString(),
  }
}

function stateOf({
  due,
  within,
  today,
  timezone,
  now,
}: Pick<DueTest, 'due' | 'within'> & {
  readonly today: string | null
  readonly timezone: string
  readonly now: string
}): DueState {
  if (within !== null && now > within.to) return 'missed'
  if (within !== null && now >= within.from) return 'due'
  const day = dayIn(timezone, due)
  if (day === null || today === null) return now < due ? 'coming' : 'overdue'
  return day > today ? 'coming' : day === today ? 'due' : 'overdue'
}

function missedBy({ result, mixed }: Tested, within: DueTest['within']): number | null {
  if (within === null || mixed === null) return null
  const tested = Date.parse(mixed) + result.age * HOUR
  if (!Number.isFinite(tested)) return null
  const [early, late] = [tested - Date.parse(within.from), tested - Date.parse(within.to)]
  // To a second: an age in hours does not carry a time of day to the millisecond.
  return early < -1000 ? early / HOUR : late > 1000 ? late / HOUR : 0
}

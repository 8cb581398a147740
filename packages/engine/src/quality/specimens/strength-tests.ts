import type { PanelFacts, SpecimenResult, SpecimenSet } from '../../steps/facts.ts'

/** Results that are one test: specimens of one load, pressed at one age, cured alike. */
export interface StrengthTested {
  readonly mix: string
  /** Panels that it stands for, `<job>/<mark>`. */
  readonly panels: readonly string[]
  readonly kind: SpecimenResult['kind']
  /** With the panel where nobody said. */
  readonly cured: 'panel' | 'standard'
  readonly specimens: readonly string[]
  /** MPa, in the order of `specimens`. */
  readonly strengths: readonly number[]
  /** Mean of the strengths, MPa. */
  readonly strength: number
  /** Mean age, h from mixing. */
  readonly age: number
  /** Water met cement, UTC: the order of sampling. */
  readonly mixed: string
}

/** Results within this of the first of a test are of it, where no set says otherwise, h. */
const SAME_TEST = 2

/**
 * Tests on record in the order of sampling. Specimens of a set that were planned for one age are one test; without a set those of
 * one pour within two hours. A specimen that stands for several panels counts once. Pours without a mix are left out.
 */
export function strengthTests(
  panels: Iterable<Pick<PanelFacts, 'job' | 'mark' | 'cast' | 'specimens' | 'sets'>>,
): StrengthTested[] {
  const groups = new Map<string, Group>()
  for (const { job, mark, cast, specimens, sets = [] } of panels) {
    if (cast === null || cast.mix === null) continue
    const panel = `${job}/${mark}`
    const own = new Map<string, Group>()
    for (const result of [...specimens].sort((a, b) => a.age - b.age)) {
      const planned = plannedTest(result.specimen, sets)
      const key =
        planned ??
        openGroup(own, result) ??
        `${panel} ${result.kind} ${result.cured ?? 'panel'} ${result.age}`
      const group = groups.get(key) ?? {
        mix: cast.mix,
        mixed: cast.at,
        panels: new Set(),
        results: new Map(),
      }
      groups.set(key, group)
      if (planned === null) own.set(key, group)
      group.panels.add(panel)
      const name = `${result.specimen} ${result.strength}`
      if (!group.results.has(name)) group.results.set(name, result)
    }
  }
  return withoutTwins([...groups.values()])
    .map(testOf)
    .sort((a, b) => (a.mixed < b.mixed ? -1 : a.mixed > b.mixed ? 1 : a.age - b.age))
}

interface Group {
  readonly mix: string
  readonly mixed: string
  readonly panels: Set<string>
  readonly results: Map<string, SpecimenResult>
}

function plannedTest(specimen: string, sets: readonly SpecimenSet[]): string | null {
  for (const { set, made, tests } of sets)
    for (const [at, test] of tests.entries())
      if (test.specimens.includes(specimen)) return `set ${set} ${made} ${at}`
  return null
}

/** A test of this pour, in no set, that the result belongs to. */
function openGroup(own: ReadonlyMap<string, Group>, result: SpecimenResult): string | null {
  for (const [key, { results }] of own) {
    const [first] = results.values()
    if (first === undefined) continue
    const alike = first.kind === result.kind && (first.cured ?? 'panel') === (result.cured ?? 'panel')
    if (alike && result.age - first.age <= SAME_TEST) return key
  }
  return null
}

/** The same specimens entered for several panels of a day, without a set that says so. */
function withoutTwins(groups: readonly Group[]): Group[] {
  const kept = new Map<string, Group>()
  for (const group of groups) {
    const key = `${group.mix} ${group.mixed.slice(0, 10)} ${[...group.results.values()]
      .map(({ specimen, strength, kind }) => `${kind} ${specimen} ${strength}`)
      .sort()
      .join(', ')}`
    const before = kept.get(key)
    if (before === undefined) kept.set(key, group)
    else for (const panel of group.panels) before.panels.add(panel)
  }
  return [...kept.values()]
}

function testOf({ mix, mixed, panels, results }: Group): StrengthTested {
  const all = [...results.values()]
  const first = all[0] as SpecimenResult
  const mean = (of: (each: SpecimenResult) => number) =>
    all.reduce((sum, each) => sum + of(each), 0) / all.length
  return {
    mix,
    panels: [...panels],
    kind: first.kind,
    cured: first.cured ?? 'panel',
    specimens: all.map(({ specimen }) => specimen),
    strengths: all.map(({ strength }) => strength),
    strength: mean(({ strength }) => strength),
    age: mean(({ age }) => age),
    mixed,
  }
}

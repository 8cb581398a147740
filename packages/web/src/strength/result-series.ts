import { type StrengthTested, strengthTests } from '@castwright/engine/quality/specimens'
import type { PanelFacts } from '@castwright/engine/steps'

/** Tests of one mix at about one age, of one kind and cured alike, in the order of sampling. */
export interface ResultSeries {
  readonly key: string
  readonly mix: string
  /** Name of the age: `28 d`, `14 to 24 h`. */
  readonly age: string
  readonly kind: StrengthTested['kind']
  readonly cured: StrengthTested['cured']
  readonly tests: readonly StrengthTested[]
}

const DAY = 24
/** Ages that are put together: name, from and to, h. Common practice, no source. */
const AGES = [
  ['under 14 h', 0, 14],
  ['14 to 24 h', 14, 24],
  ['1 to 2 d', 24, 2 * DAY],
  ['3 d', 2 * DAY, 4 * DAY],
  ['7 d', 6 * DAY, 9 * DAY],
  ['28 d', 27 * DAY, 31 * DAY],
  ['56 d', 54 * DAY, 60 * DAY],
] as const

/** Tests on record by mix, age, kind and cure: what differs in one of them never stands on one chart. */
export function resultSeries(panels: Iterable<PanelFacts>): ResultSeries[] {
  const series = new Map<string, ResultSeries & { readonly tests: StrengthTested[] }>()
  for (const test of strengthTests(panels)) {
    const age = AGES.find(([, from, to]) => test.age >= from && test.age < to)?.[0]
    if (age === undefined) continue
    const { mix, kind, cured } = test
    const key = `${mix}/${age}/${kind}/${cured}`
    const one = series.get(key) ?? { key, mix, age, kind, cured, tests: [] }
    series.set(key, one)
    one.tests.push(test)
  }
  return [...series.values()].sort(
    (a, b) =>
      a.mix.localeCompare(b.mix, 'en') ||
      AGES.findIndex(([n]) => n === a.age) - AGES.findIndex(([n]) => n === b.age) ||
      a.key.localeCompare(b.key, 'en'),
  )
}

/** `K40, 7 d, cylinders by the standard: 12 tests`. */
export function seriesText({ mix, age, kind, cured, tests }: ResultSeries): string {
  const how =
    kind === 'probe' ? 'probes' : `${kind}s ${cured === 'panel' ? 'with the panel' : 'by the standard'}`
  return `${mix}, ${age}, ${how}: ${tests.length} ${tests.length === 1 ? 'test' : 'tests'}`
}

/** Early and 28-day tests of the same pours of a mix, of one kind. */
export function earlyPairs(
  series: readonly ResultSeries[],
  { mix, kind }: Pick<ResultSeries, 'mix' | 'kind'>,
): { readonly early: number; readonly late: number }[] {
  const byPour = (age: string): Map<string, number[]> => {
    const pours = new Map<string, number[]>()
    for (const of of series)
      if (of.mix === mix && of.kind === kind && of.age === age)
        for (const { panels, strength } of of.tests)
          for (const panel of panels) pours.set(panel, [...(pours.get(panel) ?? []), strength])
    return pours
  }
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length
  const [early, late] = [byPour('14 to 24 h'), byPour('28 d')]
  return [...late].flatMap(([panel, strengths]) => {
    const first = early.get(panel)
    return first === undefined ? [] : [{ early: mean(first), late: mean(strengths) }]
  })
}

import type { PanelFacts } from '@castwright/engine/steps'

/** Results of one mix at about one age, in order of the pours. */
export interface ResultSeries {
  readonly mix: string
  /** Name of the age: `28 d`, `16 to 24 h`. */
  readonly age: string
  readonly results: readonly {
    readonly panel: string
    readonly specimen: string
    readonly age: number
    readonly strength: number
    /** Water met cement, UTC. */
    readonly mixed: string
  }[]
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

/** Results on record by mix and age. A specimen that stands for several panels is one result. */
export function resultSeries(panels: Iterable<PanelFacts>): ResultSeries[] {
  const series = new Map<
    string,
    { mix: string; age: string; results: Map<string, ResultSeries['results'][number]> }
  >()
  for (const { job, mark, cast, specimens } of panels) {
    if (cast === null || cast.mix === null) continue
    for (const { specimen, age, strength } of specimens) {
      const name = AGES.find(([, from, to]) => age >= from && age < to)?.[0]
      if (name === undefined) continue
      const key = `${cast.mix}/${name}`
      const one = series.get(key) ?? { mix: cast.mix, age: name, results: new Map() }
      series.set(key, one)
      const id = `${specimen}/${age}/${strength}/${cast.at.slice(0, 10)}`
      if (!one.results.has(id))
        one.results.set(id, { panel: `${job}/${mark}`, specimen, age, strength, mixed: cast.at })
    }
  }
  return [...series.values()]
    .map(({ mix, age, results }) => ({
      mix,
      age,
      results: [...results.values()].sort((a, b) => (a.mixed < b.mixed ? -1 : a.mixed > b.mixed ? 1 : 0)),
    }))
    .sort(
      (a, b) =>
        a.mix.localeCompare(b.mix, 'en') ||
        AGES.findIndex(([n]) => n === a.age) - AGES.findIndex(([n]) => n === b.age),
    )
}

/** Early and 28-day results of the same pours of a mix. */
export function earlyPairs(
  series: readonly ResultSeries[],
  mix: string,
): { readonly early: number; readonly late: number }[] {
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length
  const byPour = (of: ResultSeries | undefined): Map<string, number[]> => {
    const pours = new Map<string, number[]>()
    for (const { panel, strength } of of?.results ?? [])
      pours.set(panel, [...(pours.get(panel) ?? []), strength])
    return pours
  }
  const own = series.filter((each) => each.mix === mix)
  const late = byPour(own.find(({ age }) => age === '28 d'))
  const early = byPour(own.find(({ age }) => age === '14 to 24 h'))
  return [...late].flatMap(([panel, strengths]) => {
    const first = early.get(panel)
    return first === undefined ? [] : [{ early: mean(first), late: mean(strengths) }]
  })
}

import type { CodeFamily } from '../../codes/family.ts'
import { area } from '../../panel/polygon.ts'
import { counts, volumeHere } from '../../pour/loads/load.ts'
import type { PanelFacts } from '../../steps/facts.ts'
import { dayIn } from '../../steps/in-date.ts'
import { type Check, compare } from '../../working/check.ts'
import { commonPractice } from '../../working/source.ts'
import type { Assumed } from '../../working/worked.ts'

export interface SamplesWantedInput {
  readonly panels: Iterable<Pick<PanelFacts, 'job' | 'mark' | 'cast' | 'sets' | 'drawing' | 'dockets'>>
  readonly family: CodeFamily
  /** IANA zone of the yard. */
  readonly timezone: string
  /** UTC: the day that is looked at. */
  readonly now: string
}

/** Samples of one mix on one day: sets made against tests wanted. */
export interface SamplesWanted {
  readonly mix: string
  /** m³ by the dockets; null where one does not say. */
  readonly volume: number | null
  readonly panels: readonly string[]
  readonly sets: readonly string[]
  readonly check: Check
  readonly assumed: readonly Assumed[]
}

/**
 * For each mix poured on a day: the sets of specimens made against the tests that the family wants for that concrete.
 *
 * Volume is that of the dockets; a pour whose docket does not say leaves it unknown. The surface is that of the outlines,
 * openings counted in, which asks for no fewer tests.
 */
export function samplesWanted({ panels, family, timezone, now }: SamplesWantedInput): SamplesWanted[] {
  const today = dayIn(timezone, now)
  const mixes = new Map<
    string,
    { volume: number; area: number; missing: string[]; panels: string[]; sets: Set<string> }
  >()
  for (const { job, mark, cast, sets = [], drawing, dockets } of panels) {
    if (cast === null || today === null || dayIn(timezone, cast.at) !== today) continue
    const mix = cast.mix ?? 'mix not said'
    const one = mixes.get(mix) ?? { volume: 0, area: 0, missing: [], panels: [], sets: new Set<string>() }
    mixes.set(mix, one)
    const name = `${job}/${mark}`
    one.panels.push(name)
    const delivered = dockets.filter(counts).map(volumeHere)
    const volume = delivered.reduce<number | null>(
      (sum, each) => (sum === null || each === null ? null : sum + each),
      0,
    )
    if (volume === null || volume === 0) one.missing.push(`volume of ${mark} by its dockets`)
    else one.volume += volume
    if (drawing === null) one.missing.push(`drawing of ${mark}`)
    else one.area += area(drawing.outline) / 1e6
    for (const { set, made } of sets) one.sets.add(`${set} ${made}`)
  }
  return [...mixes].map(([mix, found]) => {
    const whole = found.missing.length === 0
    const wanted = whole ? family.quality.sampling({ volume: found.volume, area: found.area }) : null
    const gaps = wanted === null || wanted.known ? [] : wanted.gaps
    return {
      mix,
      volume: whole ? found.volume : null,
      panels: found.panels,
      sets: [...found.sets].map((key) => key.slice(0, key.lastIndexOf(' '))),
      assumed: wanted?.assumed ?? [],
      check: compare({
        id: `samples:${mix}`,
        step: 'deliver',
        what: `Sets of specimens of ${mix} today`,
        demand: found.sets.size,
        limit: wanted?.known ? wanted.value.tests : null,
        unit: '',
        sense: 'at least',
        source: wanted?.known ? wanted.value.source : commonPractice('samples of a day'),
        working: wanted?.known ? wanted.working : [],
        missing: [...found.missing, ...gaps],
      }),
    }
  })
}

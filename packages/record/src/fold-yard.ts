import type { YardFacts } from '@castwright/engine/steps'
import type { Yard } from '@castwright/engine/yard'
import { chainsOf } from './chains.ts'
import type { Flag } from './flags.ts'
import type { OutsideCorrection } from './late.ts'
import { type AnyEntry, compareEntries } from './order.ts'
import type { ValueOf } from './values.ts'

/** What the record knows of a job beside its panels. */
export interface JobFacts {
  readonly entry: string
  readonly mark: string
  readonly yard: string
  /** Day a panel is due on site, by mark. */
  readonly due: Readonly<Record<string, string>>
}

/** Weather at a time, as logged or as foretold; null where nothing was given. */
export interface WeatherReading {
  readonly entry: string
  /** UTC */
  readonly at: string
  /** °C */
  readonly air: number | null
  /** % */
  readonly humidity: number | null
  /** km/h, at a height in m: a station's 10 m where left out. */
  readonly wind: number | null
  readonly windHeight?: number | undefined
  /** On a level face, W/m²; °C that the sky radiates at. */
  readonly sun?: number | null | undefined
  readonly sky?: number | null | undefined
}

export interface FoldedYard {
  readonly facts: YardFacts
  readonly jobs: ReadonlyMap<string, JobFacts>
  /** As logged, by time. */
  readonly weather: readonly WeatherReading[]
  /** As foretold, by time: the forecast recorded last counts for its hours. */
  readonly forecast: readonly WeatherReading[]
  readonly flags: readonly Flag[]
  /** Corrections in order, for the holds that rested on what they correct. */
  readonly corrections: readonly OutsideCorrection[]
}

/** Entries about the yard, its gear, jobs and whatever else is no panel. In any order, each once. */
export function foldYard(unordered: readonly AnyEntry[]): FoldedYard {
  const entries = [...unordered].sort(compareEntries)
  const { live, flags, rootOf } = chainsOf(entries, null)
  let yard: Yard | null = null
  const gear: Record<string, { entry: string; due: string }> = {}
  const limits: Record<string, YardFacts['limits'][string]> = {}
  const jobs = new Map<string, JobFacts>()
  const weather = new Map<string, WeatherReading>()
  const forecast = new Map<string, WeatherReading>()

  for (const { value } of live.get('yard') ?? []) yard = value as Yard
  for (const { root, tip, value } of live.get('gear') ?? []) {
    gear[root.subject.id] = { entry: tip.id, due: (value as ValueOf<'gear'>).due }
  }
  for (const { root, tip, value } of live.get('limit') ?? []) {
    if (root.check === undefined) continue
    limits[root.check] = {
      entry: tip.id,
      ...(value as ValueOf<'limit'>),
      by: tip.person,
      reason: tip.reason ?? null,
    }
  }
  for (const { tip, value } of live.get('job') ?? []) {
    const job = value as ValueOf<'job'>
    jobs.set(job.mark, { entry: tip.id, mark: job.mark, yard: job.yard, due: job.due ?? {} })
  }
  for (const { tip, value } of live.get('weather') ?? []) {
    const { forecast: foretold, readings } = value as ValueOf<'weather'>
    for (const reading of readings) {
      ;(foretold === true ? forecast : weather).set(reading.at, { entry: tip.id, ...reading })
    }
  }
  const [logged, foretold] = [byTime(weather), byTime(forecast)]
  return {
    facts: {
      yard,
      gear,
      limits,
      ...(logged.length === 0 ? {} : { weather: logged }),
      ...(foretold.length === 0 ? {} : { forecast: foretold }),
    },
    jobs: new Map([...jobs].sort(([a], [b]) => (a < b ? -1 : 1))),
    weather: logged,
    forecast: foretold,
    flags,
    corrections: entries.flatMap((entry) => {
      const root = rootOf.get(entry.id)
      return root === undefined ? [] : [{ entry, root }]
    }),
  }
}

function byTime(readings: ReadonlyMap<string, WeatherReading>): WeatherReading[] {
  return [...readings.values()].sort((a, b) => (a.at < b.at ? -1 : 1))
}

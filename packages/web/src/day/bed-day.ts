import type { Plan } from '@castwright/engine/plan'
import {
  type CureNow,
  cureNow,
  type FinishNowInput,
  finishNow,
  holdIsOpen,
  type PanelFacts,
  type StripHour,
  stepIsDone,
  stripHour,
  type YardFacts,
} from '@castwright/engine/steps'
import type { YardBed } from '@castwright/engine/yard'
import type { DayWindow } from './day-window.ts'

export interface PanelRef {
  readonly job: string
  readonly mark: string
}

/** One piece of work in a bed's row. */
export interface DayBlock {
  readonly kind: 'set' | 'pour' | 'finish' | 'strip'
  readonly panel: PanelRef
  /** ms since 1970 UTC. */
  readonly from: number
  readonly to: number
  /** It happened, or is planned. */
  readonly done: boolean
  /** What the time of `finish` rests on; `plan` for all other work. */
  readonly by: 'plan' | 'readings'
  /** Concrete, m³, for `set`. */
  readonly volume: number | null
}

/** Strength against time: while concrete gains strength the row is this curve. */
export interface DayCurve {
  readonly panel: PanelRef
  readonly points: readonly {
    readonly at: number
    readonly strength: number
    readonly low: number | null
    readonly high: number | null
  }[]
  /** Strength at which the last condition of the first lift is met, else what is asked, MPa; null where nobody says. */
  readonly wanted: number | null
  /** When the low edge meets it; null where it is not known or not met, or a condition of the lift never is. */
  readonly met: number | null
  /** Poured already; else the whole curve is planned. */
  readonly cast: boolean
  /** Whether the curve runs along this pour's own log. */
  readonly temperature: CureNow['temperature']
}

export interface BedDay {
  readonly bed: string
  readonly note: string
  readonly blocks: readonly DayBlock[]
  readonly curves: readonly DayCurve[]
  /** What is missing to draw the row, in words. */
  readonly unknown: readonly string[]
}

export interface PlannedPanel {
  readonly facts: PanelFacts
  readonly plan: Plan | null
  /** Why there is no plan; null while it is computed. */
  readonly why: string | null
}

/** The yard's air, as the state of the record has it. */
export interface DayReadings {
  readonly weather: FinishNowInput['weather']
  readonly forecast: FinishNowInput['forecast']
}

const MINUTE = 60_000
const HOUR = 3_600_000
const NO_READINGS: DayReadings = { weather: [], forecast: [] }

/** Rows of the day: one a bed of the yard, and one for each bed that the record names and the yard does not list. */
export function bedDays({
  beds,
  panels,
  window,
  now,
  yard,
  readings = NO_READINGS,
}: {
  readonly beds: readonly YardBed[]
  readonly panels: readonly PlannedPanel[]
  readonly yard: YardFacts
  readonly window: DayWindow
  readonly now: number
  readonly readings?: DayReadings
}): readonly BedDay[] {
  const rows = new Map<string, { note: string; panels: PlannedPanel[] }>(
    beds.map((bed) => [bed.mark, { note: bedNote(bed), panels: [] }]),
  )
  for (const panel of panels) {
    const bed = bedOf(panel.facts, beds)
    if (bed === null) continue
    const row = rows.get(bed) ?? { note: 'not in the yard’s list', panels: [] }
    row.panels.push(panel)
    rows.set(bed, row)
  }
  return [...rows].map(([bed, row]) => {
    const parts = row.panels.map((panel) => panelDay(panel, window, now, yard, readings))
    return {
      bed,
      note: row.note,
      blocks: parts.flatMap(({ blocks }) => blocks).sort((a, b) => a.from - b.from),
      curves: parts.flatMap(({ curve }) => (curve === null ? [] : [curve])),
      unknown: parts.flatMap(({ unknown }) => unknown),
    }
  })
}

/** Panels that may have something on a bed in the window: a cheap look at the facts, before anything is planned. */
export function onBeds(
  panels: Iterable<PanelFacts>,
  beds: readonly YardBed[],
  window: DayWindow,
): PanelFacts[] {
  return [...panels].filter((facts) => {
    if (bedOf(facts, beds) === null) return false
    if (facts.cast === null) return true
    const cast = Date.parse(facts.cast.at)
    const stripped = stripTime(facts)
    return (
      cast < window.to && (stripped === null ? cast > window.from - 21 * 24 * HOUR : stripped >= window.from)
    )
  })
}

/** The bed that a panel was cast on or stands on. */
export function bedOf(facts: PanelFacts, beds: readonly YardBed[]): string | null {
  if (facts.cast?.bed) return facts.cast.bed
  if (facts.cast) return null
  const place = facts.place?.trim() ?? ''
  return (
    beds.find(({ mark }) => place === mark || place.toLowerCase() === `bed ${mark}`.toLowerCase())?.mark ??
    null
  )
}

function panelDay(
  { facts, plan, why }: PlannedPanel,
  window: DayWindow,
  now: number,
  yard: YardFacts,
  readings: DayReadings,
): { readonly blocks: DayBlock[]; readonly curve: DayCurve | null; readonly unknown: string[] } {
  const panel = { job: facts.job, mark: facts.mark }
  if (plan === null)
    return { blocks: [], curve: null, unknown: why === null ? [] : [`${facts.mark}: ${why}`] }
  const { setUp, pour, strip } = plan.pour.minutes
  const began = setStart(facts)
  const cast = facts.cast === null ? null : Date.parse(facts.cast.at)
  const mixing = cast ?? plannedMixing({ facts, setUp, began, now })
  const stripped = stripTime(facts)
  const cure = cureNow({ cure: plan.cure, facts, yard: yard.yard, until: (window.to - mixing) / HOUR + 1 })
  // The strictest of all conditions of the first lift, not the strength asked alone.
  const first = stripHour({ plan, facts, yard, now: new Date(now).toISOString() })
  const met = first.hour === null ? null : mixing + first.hour * HOUR
  const blocks: DayBlock[] = [
    {
      kind: 'set',
      panel,
      from: began ?? mixing - setUp * MINUTE,
      to: mixing,
      done: holdIsOpen('set', facts),
      by: 'plan',
      volume: plan.pour.netVolume,
    },
    {
      kind: 'pour',
      panel,
      from: mixing,
      to: mixing + pour * MINUTE,
      done: stepIsDone('place', facts),
      by: 'plan',
      volume: null,
    },
  ]
  const { finish, basis } = finishNow({
    plan,
    facts,
    yard: yard.yard,
    weather: readings.weather,
    forecast: readings.forecast,
    now: new Date(now).toISOString(),
  })
  if (finish !== null) {
    const { opens, closes } = finish
    blocks.push({
      kind: 'finish',
      panel,
      from: mixing + opens * HOUR,
      to: mixing + closes * HOUR,
      done: stepIsDone('finish', facts),
      by: basis === 'readings' ? 'readings' : 'plan',
      volume: null,
    })
  }
  const lift = stripped ?? (met === null ? null : Math.max(met, now))
  if (lift !== null) {
    blocks.push({
      kind: 'strip',
      panel,
      from: lift,
      to: lift + strip * MINUTE,
      done: stripped !== null,
      by: 'plan',
      volume: null,
    })
  }
  return {
    blocks: blocks.filter(({ from, to }) => to > window.from && from < window.to),
    curve: curveIn({
      panel,
      plan,
      cure,
      first,
      mixing,
      met,
      until: stripped ?? window.to,
      window,
      closes: finish?.closes ?? 0,
      cast: cast !== null,
    }),
    unknown: [
      ...(cure.temperature === 'logged' ? cure.unknown : plan.cure.unknown),
      ...(finish === null ? ['finishing window'] : []),
      ...(stripped === null ? first.open : []),
    ].map((gap) => `${facts.mark}: ${gap}`),
  }
}

function curveIn(input: {
  readonly panel: PanelRef
  readonly plan: Plan
  readonly cure: CureNow
  readonly first: StripHour
  readonly mixing: number
  readonly met: number | null
  readonly until: number
  readonly window: DayWindow
  /** When the finishing window shuts, h from mixing. */
  readonly closes: number
  readonly cast: boolean
}): DayCurve | null {
  const { panel, plan, cure, first, mixing, met, window, cast } = input
  const until = Math.min(input.until, window.to)
  const from = Math.max(window.from, mixing + input.closes * HOUR)
  const points = cure.curve
    .map(([hour, strength, low, high]) => ({ at: mixing + hour * HOUR, strength, low, high }))
    .filter(({ at }, index, all) => {
      // One point beyond each end, so that the line runs to the edge of the picture.
      const [before, after] = [all[index - 1], all[index + 1]]
      return (
        (at >= from && at <= until) ||
        (after && after.at > from && at < from) ||
        (before && before.at < until && at > until)
      )
    })
  if (points.length < 2 || from >= until) return null
  return {
    panel,
    points: clip(points, from, until),
    wanted: first.strength ?? plan.cure.wanted?.strength ?? null,
    met: met !== null && met >= window.from && met < until ? met : null,
    cast,
    temperature: cure.temperature,
  }
}

/** Cuts the line at the ends, straight between its points. */
function clip(points: DayCurve['points'], from: number, to: number): DayCurve['points'] {
  return points.map((point, index) => {
    if (point.at < from) return between(point, points[index + 1], from)
    if (point.at > to) return between(points[index - 1], point, to)
    return point
  })
}

function between(
  a: DayCurve['points'][number] | undefined,
  b: DayCurve['points'][number] | undefined,
  at: number,
): DayCurve['points'][number] {
  if (a === undefined || b === undefined || b.at === a.at) return (a ?? b) as DayCurve['points'][number]
  const part = (at - a.at) / (b.at - a.at)
  const mix = (x: number | null, y: number | null): number | null =>
    x === null || y === null ? null : x + (y - x) * part
  return {
    at,
    strength: a.strength + (b.strength - a.strength) * part,
    low: mix(a.low, b.low),
    high: mix(a.high, b.high),
  }
}

/** First thing recorded beside the mould: work on the bed has begun. */
function setStart(facts: PanelFacts): number | null {
  const times = (['mould', 'set'] as const).flatMap((step) =>
    Object.values(facts.steps[step].values).map(({ seen }) => Date.parse(seen)),
  )
  return times.length === 0 ? null : Math.min(...times)
}

/** Not poured yet: set up from when it began, or from now, and never in the past. */
function plannedMixing({
  facts,
  setUp,
  began,
  now,
}: {
  readonly facts: PanelFacts
  readonly setUp: number
  readonly began: number | null
  readonly now: number
}): number {
  if (holdIsOpen('set', facts)) return now
  return Math.max(now, (began ?? now) + setUp * MINUTE)
}

function stripTime(facts: PanelFacts): number | null {
  const { opening } = facts.steps.strip
  return opening === null ? null : Date.parse(opening.seen)
}

function bedNote(bed: YardBed): string {
  const metres = `${(bed.length / 1000).toFixed(1).replace(/\.0$/, '')} m`
  return [metres, bed.heated ? 'heated' : null].filter((part) => part !== null).join(', ')
}

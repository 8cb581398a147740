import { type SurfaceReading, shareOfPrint, shareOfResistance } from '../pour/finish/index.ts'
import { counts, type Load } from '../pour/loads/load.ts'
import { concreteLogs } from './curve-low.ts'
import type { PanelFacts, Recorded, TemperatureLog } from './facts.ts'

/**
 * What is read and seen on a fresh surface, recorded at the step `finish` as values. Each may come many times: an id carries the
 * moment behind an at sign, `boot-print@2026-06-01T12:00:00.000Z`.
 */
export const SURFACE_IDS = {
  temperature: 'surface-temperature',
  print: 'boot-print',
  resistance: 'penetration',
  sheen: 'sheen-gone',
  passes: 'passes-asked',
} as const

/** A sign of stiffness that somebody saw. */
export interface SeenSign {
  readonly entry: string
  /** From mixing. */
  readonly hour: number
  readonly what: 'boot print' | 'penetration resistance'
  /** mm; MPa. */
  readonly value: number
  readonly share: number
  readonly by: string
}

export interface FinishReadings {
  /** In order of time; empty where nothing is measured. */
  readonly temperatures: readonly SurfaceReading[]
  /** Channel of the log that counts; null where none does. */
  readonly channel: string | null
  /** Hours from mixing at which the concrete lay in the mould; null where nothing says it. */
  readonly placed: number | null
  /** The last sign of stiffness. */
  readonly sign: SeenSign | null
  /** Hour at which somebody said that the sheen was gone; `by`: floated by then, so it was gone at the latest. */
  readonly sheen: { readonly hour: number; readonly said: 'at' | 'by' } | null
  /** Power-float passes asked; null where nobody says. */
  readonly passes: number | null
}

const HOUR = 3_600_000
const AT_SURFACE = /surface|top|face|skin/i
/** No fresh concrete is colder or hotter: what reads so is a slip or a dead sensor, °C. */
const COLDEST = -10
const HOTTEST = 60
/** Concrete lies in the mould and stiffens within this of mixing, h: what is seen later is a slip of a date. */
const FRESH = 72

/** What the record holds of a surface, in hours from mixing. What came from before mixing, or no concrete reads, is left out. */
export function finishReadings(
  facts: Pick<PanelFacts, 'steps' | 'temperatures' | 'dockets'>,
  mixed: string,
): FinishReadings {
  const hourOf = (instant: string): number => (Date.parse(instant) - Date.parse(mixed)) / HOUR
  const { finish, deliver, place } = facts.steps
  const hand = numbersAt(finish.values, SURFACE_IDS.temperature).map(({ value, seen }) => ({
    hour: hourOf(seen),
    celsius: value,
    from: 'surface' as const,
  }))
  const loads = facts.dockets.filter(counts)
  const onDocket = loads.map(({ temperature, began, arrived, discharged, seen }) => ({
    hour: hourOf(began ?? arrived ?? discharged ?? seen),
    celsius: temperature ?? Number.NaN,
  }))
  const asked = deliver.values['concrete-temperature']
  // With a load sent back nobody knows whose temperature the step's own row holds.
  const answered =
    typeof asked?.value === 'number' && loads.length === facts.dockets.length
      ? [{ hour: hourOf(asked.seen), celsius: asked.value }]
      : []
  const truck = [...onDocket, ...answered].filter(isConcrete)
  const log = nearestLog(facts.temperatures)
  const logged = (log?.readings ?? []).map(([hour, celsius]) => ({ hour, celsius, from: 'log' as const }))
  const atSurface = log !== null && AT_SURFACE.test(log.channel)
  const end = logged.at(-1)?.hour ?? Number.NEGATIVE_INFINITY
  // A log at the surface is followed by the hand; one deeper down gives way to it.
  const near = atSurface
    ? [...logged, ...hand.filter(({ hour }) => hour > end)]
    : hand.length > 0
      ? hand
      : logged
  const counted = near.filter(isConcrete)
  const first = counted[0]?.hour ?? Number.POSITIVE_INFINITY
  // Of several trucks the first: the panel's oldest concrete sets first.
  const [arrived] = [...truck].sort((a, b) => a.hour - b.hour)
  return {
    temperatures: [
      ...(arrived !== undefined && arrived.hour < first ? [{ ...arrived, from: 'truck' as const }] : []),
      ...counted,
    ].sort((a, b) => a.hour - b.hour),
    channel: counted.some(({ from }) => from === 'log') ? (log?.channel ?? null) : null,
    placed: placedHour(place.values, loads, hourOf),
    sign: lastSign(finish.values, hourOf),
    sheen: sheenHour(finish.values, hourOf),
    passes: passesOf(finish.values[SURFACE_IDS.passes]),
  }
}

export type SurfaceKind = keyof typeof SURFACE_IDS

/** Everything read or seen on a surface, oldest first. */
export function surfaceSeen(
  facts: Pick<PanelFacts, 'steps'>,
): readonly { readonly kind: SurfaceKind; readonly check: string; readonly recorded: Recorded }[] {
  return Object.entries(facts.steps.finish.values)
    .flatMap(([check, recorded]) => {
      const kind = (Object.keys(SURFACE_IDS) as SurfaceKind[]).find((each) => isAt(check, SURFACE_IDS[each]))
      return kind === undefined ? [] : [{ kind, check, recorded }]
    })
    .sort((a, b) => Date.parse(a.recorded.seen) - Date.parse(b.recorded.seen))
}

function isAt(check: string, id: string): boolean {
  return check === id || check.startsWith(`${id}@`)
}

function isConcrete({ hour, celsius }: { readonly hour: number; readonly celsius: number }): boolean {
  return hour >= 0 && Number.isFinite(hour) && celsius >= COLDEST && celsius <= HOTTEST
}

/** A channel named for the surface, else the first one in the concrete. */
function nearestLog(logs: readonly TemperatureLog[]): TemperatureLog | null {
  const concrete = concreteLogs(logs)
  return concrete.find(({ channel }) => AT_SURFACE.test(channel)) ?? concrete[0] ?? null
}

type Values = Readonly<Record<string, Recorded>>

/** Every value under an id, with or without its moment, by the time it was seen. */
function valuesAt(values: Values, id: string): Recorded[] {
  return Object.entries(values)
    .filter(([key]) => isAt(key, id))
    .map(([, value]) => value)
    .sort((a, b) => Date.parse(a.seen) - Date.parse(b.seen))
}

function numbersAt(values: Values, id: string): (Recorded & { readonly value: number })[] {
  return valuesAt(values, id).filter(
    (one): one is Recorded & { readonly value: number } =>
      typeof one.value === 'number' && Number.isFinite(one.value),
  )
}

function lastSign(values: Values, hourOf: (instant: string) => number): SeenSign | null {
  const prints = numbersAt(values, SURFACE_IDS.print).map((one) => ({
    one,
    what: 'boot print' as const,
    share: shareOfPrint(one.value),
  }))
  const resistances = numbersAt(values, SURFACE_IDS.resistance).map((one) => ({
    one,
    what: 'penetration resistance' as const,
    share: one.value > 0 ? shareOfResistance(one.value) : null,
  }))
  const last = [...prints, ...resistances]
    .map(({ one, what, share }) => ({ one, what, share, hour: hourOf(one.seen) }))
    .filter(({ share, hour }) => share !== null && hour > 0 && hour <= FRESH)
    .sort((a, b) => a.hour - b.hour)
    .at(-1)
  if (last === undefined || last.share === null) return null
  const { one, what, share, hour } = last
  return { entry: one.entry, hour, what, value: one.value, share, by: one.by.name }
}

/** Said outright, else by the tick that it was floated once the sheen was gone. */
function sheenHour(values: Values, hourOf: (instant: string) => number): FinishReadings['sheen'] {
  const hoursAt = (id: string): number[] =>
    valuesAt(values, id)
      .filter(({ value }) => value === true)
      .map((one) => hourOf(one.seen))
      .filter((hour) => hour > 0 && hour <= FRESH)
  const [said] = hoursAt(SURFACE_IDS.sheen)
  if (said !== undefined) return { hour: said, said: 'at' }
  const [floated] = hoursAt('floated')
  return floated === undefined ? null : { hour: floated, said: 'by' }
}

/** The first zone vibrated, else the end of the first discharge. */
function placedHour(
  values: Values,
  loads: readonly Load[],
  hourOf: (instant: string) => number,
): number | null {
  const zones = Object.entries(values)
    .filter(([key, { value }]) => (key.startsWith('zone:') || key === 'vibrated') && value === true)
    .map(([, { seen }]) => hourOf(seen))
  const discharged = loads.flatMap((load) => (load.discharged === undefined ? [] : [hourOf(load.discharged)]))
  const hours = (zones.length > 0 ? zones : discharged).filter((hour) => hour >= 0 && hour <= FRESH)
  return hours.length === 0 ? null : Math.min(...hours)
}

function passesOf(recorded: Recorded | undefined): number | null {
  const value = recorded?.value
  return typeof value === 'number' && Number.isInteger(value) && value >= 1 && value <= 8 ? value : null
}

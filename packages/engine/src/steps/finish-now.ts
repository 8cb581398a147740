import type { Plan } from '../plan.ts'
import { type Drying, drying, dryingGaps } from '../pour/drying.ts'
import {
  airGaps,
  airThen,
  type BleedKind,
  DRYING_LINE,
  type DryingAdvice,
  dryingAdvice,
  type FinishWindow,
  finishWindows,
  readAt,
  type Sheen,
  type SurfaceAir,
  type SurfaceReading,
  setShare,
  sheenGone,
  surfaceTemperature,
  surfaceWater,
  temperatureAt,
  type WaterPoint,
} from '../pour/finish/index.ts'
import { ASSUMED_ACTIVATION, type TemperatureReadings } from '../pour/setting.ts'
import type { InputIssue } from '../working/issue.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Mix, Yard } from '../yard/yard.ts'
import type { PanelFacts } from './facts.ts'
import { type FinishReadings, finishReadings, type SeenSign } from './finish-readings.ts'
import { ASSUMED_PASSES, BATCH_SCATTER, finishAssumed, finishSteps } from './finish-working.ts'
import { surfaceAir, weatherOutside, type YardAir } from './surface-air.ts'

export interface FinishNowInput extends YardAir {
  readonly plan: { readonly thickness: number; readonly pour: Pick<Plan['pour'], 'finish' | 'mix'> }
  readonly facts: Pick<PanelFacts, 'cast' | 'steps' | 'temperatures' | 'dockets'>
  readonly yard: Yard | null
  /** UTC */
  readonly now: string
}

/** A window with the band of its beginning, hours from mixing. */
export interface BandedWindow extends FinishWindow {
  readonly low: number
  readonly high: number
}

export interface DryingNow {
  readonly rate: number
  readonly other: number
  /** What the formulas' scatter of 40 % leaves open, kg/m²/h. */
  readonly low: number
  readonly high: number
  /** Where precautions start for this mix, kg/m²/h. */
  readonly limit: number
  /** Against that line, scatter counted: `near` where it lies inside the scatter. */
  readonly against: 'under' | 'near' | 'over'
  readonly check: Drying['check']
}

/** A surface as it stands now. Hours count from mixing. */
export interface FinishNow {
  /** What the temperature rests on: `readings` of this concrete, the `air`, or the `plan` alone. */
  readonly basis: 'readings' | 'air' | 'plan'
  /** °C now, and the last reading that it goes on from. */
  readonly celsius: number | null
  readonly reading: SurfaceReading | null
  /** Reference of the mix's initial set, °C. */
  readonly reference: number | null
  readonly initialSet: { readonly hour: number; readonly low: number; readonly high: number } | null
  /** In order of time; empty where not known. */
  readonly windows: readonly BandedWindow[]
  /** Floating opens and shuts, as in the plan; the planned one where nothing better is known. */
  readonly finish: Plan['pour']['finish']
  /** How much later than planned floating opens, minutes; below 0: earlier. Null where there is nothing to compare. */
  readonly shift: number | null
  /** How much later a sign seen on the surface puts initial set, minutes; below 0: earlier. Null where none was seen. */
  readonly shiftBySign: number | null
  readonly sheen: Sheen
  /** Somebody saw it, else it is computed. */
  readonly sheenSeen: boolean
  readonly sign: (SeenSign & { readonly computed: number }) | null
  readonly drying: DryingNow | null
  readonly water: readonly WaterPoint[]
  readonly advice: readonly DryingAdvice[]
  /** Weather that no instrument gives, by its moment: left out, never mended. */
  readonly weatherFaults: readonly InputIssue[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

/** From mixing to lying in the mould where nothing says it, h. */
const ASSUMED_PLACED = 0.5
/** Actual drying differs from the formulas by this share (Hover 2020). */
const DRYING_SCATTER = 0.4
/** The other end of the usual activation energies, J/mol. */
const LOW_ACTIVATION = 33_500
const HOUR = 3_600_000
const LONGEST = 72

/**
 * Finishing windows, sheen, initial set and drying of one panel along the temperatures really measured: at the truck, in the log or on the
 * surface, from the last of them on by a stated model. Without a reading the air stands in, without air the plan's reference; each is told.
 *
 * A sign seen on the surface (boot print, penetration) outranks the computed time. Whatever is missing leaves its part not known and
 * is named in `unknown`; the planned window stays only where the concrete is not mixed yet, or its mix does not say at which temperature it was tested.
 */
export function finishNow(input: FinishNowInput): FinishNow {
  const { plan, facts, yard, now } = input
  const { cast } = facts
  const mark = cast?.mix ?? plan.pour.mix
  const mix = yard?.mixes?.find((each) => each.mark === mark) ?? null
  const gaps = mixGaps(cast !== null, mark, mix)
  if (cast === null || mix === null || mix.initialSet === undefined || mix.reference === undefined)
    return { ...NOTHING, finish: mark === plan.pour.mix ? plan.pour.finish : null, unknown: gaps }
  const mixed = cast.at
  const hour = (Date.parse(now) - Date.parse(mixed)) / HOUR
  const bed = yard?.beds?.find((each) => each.mark === cast.bed)
  const readings = finishReadings(facts, mixed)
  const air = surfaceAir({ ...input, mixed, roofed: bed?.roofed === true, until: LONGEST })
  const surface = new Surface({
    mix: { ...mix, initialSet: mix.initialSet, reference: mix.reference },
    thickness: plan.thickness,
    readings,
    air,
    hour: Math.max(0, hour),
    roofed: bed?.roofed === true,
  })
  const weatherFaults = weatherOutside({ ...input, mixed, until: hour + LONGEST })
  return { ...surface.now(plan.pour.finish), weatherFaults }
}

const NOTHING: FinishNow = {
  basis: 'plan',
  celsius: null,
  reading: null,
  reference: null,
  initialSet: null,
  windows: [],
  finish: null,
  shift: null,
  shiftBySign: null,
  sheen: 'not known',
  sheenSeen: false,
  sign: null,
  drying: null,
  water: [],
  advice: [],
  weatherFaults: [],
  working: [],
  assumed: [],
  unknown: [],
}

function mixGaps(cast: boolean, mark: string | null, mix: Mix | null): string[] {
  if (!cast) return ['when it was mixed']
  if (mark === null) return ['mix of the pour']
  if (mix === null) return [`yard: mix ${mark}`]
  return [
    ...(mix.initialSet === undefined ? [`yard: mix ${mark}: initial set`] : []),
    ...(mix.reference === undefined ? [`yard: mix ${mark}: temperature of its initial set`] : []),
  ]
}

export interface SurfaceInput {
  readonly mix: Mix & { readonly initialSet: number; readonly reference: number }
  readonly thickness: number
  readonly readings: FinishReadings
  readonly air: SurfaceAir
  /** Now, from mixing. */
  readonly hour: number
  readonly roofed: boolean
}

/** One surface: its temperature is made once, the windows of each activation energy along it. */
class Surface {
  private readonly readings: readonly SurfaceReading[]
  private readonly temperature: TemperatureReadings
  private readonly activation: number
  private readonly kind: BleedKind
  private readonly placed: number

  constructor(private readonly input: SurfaceInput) {
    const { mix, readings, air, thickness } = input
    const start = readAt(air.air, 0)
    this.readings =
      readings.temperatures.length > 0
        ? readings.temperatures
        : [
            start === null
              ? { hour: 0, celsius: mix.reference, from: 'plan' }
              : { hour: 0, celsius: start, from: 'air' },
          ]
    const planned = this.readings[0]?.from === 'plan'
    this.temperature = surfaceTemperature({
      readings: this.readings,
      air: (hour) => (planned ? null : readAt(air.air, hour)),
      thickness,
      until: LONGEST,
    })
    this.activation = mix.activation ?? ASSUMED_ACTIVATION
    this.kind = mix.bleeds ?? 'little'
    this.placed = readings.placed ?? ASSUMED_PLACED
  }

  now(planned: Plan['pour']['finish']): FinishNow {
    const { mix, readings, hour, air } = this.input
    const { sign } = readings
    const main = this.windows(this.activation, true)
    const frost = this.temperature.find(
      ([at, then]) => then < 0 && at <= (main?.windows.at(-1)?.to ?? LONGEST),
    )
    // The law of setting says nothing of ice: fresh concrete that freezes is for the engineer, not for the float.
    if (frost !== undefined)
      return {
        ...NOTHING,
        unknown: [`setting: the surface is below 0 °C ${Math.round(frost[0] * 10) / 10} h after mixing`],
      }
    if (main === null)
      return { ...NOTHING, unknown: [`initial set: not within ${LONGEST} h at these temperatures`] }
    const bySign = sign === null ? null : this.windows(this.activation, false)
    const others = [ASSUMED_ACTIVATION, LOW_ACTIVATION].map((activation) => this.windows(activation, true))
    const windows = this.banded(
      main.windows,
      others.flatMap((other) => (other === null ? [] : [other.windows])),
    )
    const opens = opensOf(main.windows)
    const close = windows.at(-1) as BandedWindow
    const last = this.readings.at(-1) ?? null
    const celsius = temperatureAt(this.temperature, hour)
    const then = airThen(air, hour)
    const drying = then === null ? null : this.drying({ ...then, concrete: celsius })
    const measured = last !== null && last.from !== 'air' && last.from !== 'plan'
    const unsigned = bySign?.windows.at(-1)?.to ?? null
    return {
      basis: measured ? 'readings' : last?.from === 'air' ? 'air' : 'plan',
      celsius,
      reading: last,
      reference: mix.reference,
      initialSet: {
        hour: close.to,
        ...this.bandOf(
          close.to,
          others.flatMap((other) => other?.windows.at(-1)?.to ?? []),
        ),
      },
      windows,
      finish: { opens, closes: close.to },
      shift: planned === null ? null : wholeMinutes(opens - planned.opens),
      shiftBySign: unsigned === null ? null : wholeMinutes(close.to - unsigned),
      sheen: main.sheen,
      sheenSeen: readings.sheen !== null && main.sheen === readings.sheen.hour,
      sign:
        sign === null ? null : { ...sign, computed: this.share(this.activation, false).shareAt(sign.hour) },
      drying,
      water: main.water,
      advice: then === null ? [] : dryingAdvice({ over: then, concrete: celsius }),
      weatherFaults: [],
      working: finishSteps({
        mix,
        activation: this.activation,
        windows,
        sign,
        kind: this.kind,
        thickness: this.input.thickness,
        drying: drying?.check.working ?? [],
        readings: this.readings,
      }),
      assumed: finishAssumed({
        ...this.input,
        measured: this.readings,
        kind: this.kind,
        placed: this.placed,
        activation: this.activation,
      }),
      unknown: then === null ? airGaps(air, hour) : dryingGaps({ ...then, concrete: celsius }),
    }
  }

  private share(activation: number, withSign: boolean) {
    const { mix, readings } = this.input
    return setShare({
      temperature: this.temperature,
      initial: mix.initialSet,
      reference: mix.reference,
      activation,
      seen: withSign ? readings.sign : null,
    })
  }

  private windows(activation: number, withSign: boolean) {
    const { mix, readings, air, thickness } = this.input
    const set = this.share(activation, withSign)
    const closes = set.hourOf(1)
    if (closes === null) return null
    const water = surfaceWater({
      temperature: this.temperature,
      air,
      placed: this.placed,
      until: Math.max(closes, this.placed + 0.5),
      thickness,
      kind: this.kind,
      activation,
    })
    const sheen = seenSheen(sheenGone(water), readings.sheen)
    const windows = finishWindows({
      set,
      placed: this.placed,
      sheen,
      passes: readings.passes ?? ASSUMED_PASSES,
      initial: mix.initialSet,
      reference: mix.reference,
      activation,
    })
    return windows === null ? null : { windows, sheen, water }
  }

  private banded(
    main: readonly FinishWindow[],
    others: readonly (readonly FinishWindow[])[],
  ): readonly BandedWindow[] {
    return main.map((window, at) => ({
      ...window,
      ...this.bandOf(
        window.from,
        others.flatMap((other) => other[at]?.from ?? []),
      ),
    }))
  }

  /** From both activation energies, and the scatter of a batch since mixing or since the last sign. */
  private bandOf(hour: number, others: readonly number[]): { readonly low: number; readonly high: number } {
    const anchor = Math.max(this.input.readings.sign?.hour ?? 0, 0)
    const scatter = hour <= this.placed ? 0 : BATCH_SCATTER * Math.max(0, hour - anchor)
    return {
      low: Math.max(0, Math.min(hour - scatter, ...others)),
      high: Math.max(hour + scatter, ...others),
    }
  }

  private drying(then: Parameters<typeof drying>[0]): DryingNow | null {
    const { limit } = DRYING_LINE[this.kind]
    const found = drying({ ...then, limit })
    if (!found.known) return null
    const { rate, other, check } = found.value
    const [low, high] = [
      Math.min(rate, other) * (1 - DRYING_SCATTER),
      Math.max(rate, other) * (1 + DRYING_SCATTER),
    ]
    const against = high <= limit ? 'under' : low > limit ? 'over' : 'near'
    return { rate, other, low, high, limit, against, check }
  }
}

/** What somebody said outranks what is computed; that it was floated says only by when. */
function seenSheen(computed: Sheen, seen: FinishReadings['sheen']): Sheen {
  if (seen === null) return computed
  return seen.said === 'by' && typeof computed === 'number' ? Math.min(computed, seen.hour) : seen.hour
}

function wholeMinutes(hours: number): number {
  return Math.round(hours * 60) || 0 // never −0
}

function opensOf(windows: readonly FinishWindow[]): number {
  return windows.find(({ id }) => id === 'pass:1')?.from ?? 0
}

import type { CurePlan } from '../cure/cure-plan.ts'
import type { StrengthPrior } from '../cure/gain/strength-prior.ts'
import { type LiveCurve, liveCurve } from '../cure/live-curve.ts'
import type { Reading } from '../cure/readings.ts'
import { ASSUMED_REFERENCE } from '../cure/strength-from-log.ts'
import type { Assumed } from '../working/worked.ts'
import type { Mix, Yard } from '../yard/yard.ts'
import { concreteLogs } from './curve-low.ts'
import type { PanelFacts, SpecimenResult } from './facts.ts'
import type { PourResults } from './pour-results.ts'

export interface CureNowInput {
  readonly cure: Pick<CurePlan, 'wanted' | 'hour' | 'hourLow' | 'curve'>
  readonly facts: Pick<PanelFacts, 'cast' | 'temperatures'>
  readonly yard: Yard | null
  /** Last hour of the curve, from mixing. */
  readonly until: number
  /** Strength that the hours and the probability are of, MPa; that of the plan where it is left out. */
  readonly wanted?: number | null
  /** Results of this pour that bring the curve up to date; left out: the mix alone speaks. */
  readonly results?: PourResults
  /** What open tests say of the mix by its proportions, for a mix that has neither curve nor tests. */
  readonly open?: StrengthPrior
}

/** Hours from mixing and curve, and what they stand on. */
export interface CureNow extends Pick<LiveCurve, 'hour' | 'hourLow' | 'curve' | 'chance' | 'restsOn'> {
  /** `logged`: along this pour's own log and on at its last temperature; `planned`: nothing is logged. */
  readonly temperature: 'logged' | 'planned'
  /** Last hour of the log that counts; null where nothing is logged. */
  readonly loggedTo: number | null
  /** Results that the curve took in; empty where it took none. */
  readonly taken: readonly SpecimenResult[]
  /** Of these, those too high to fit, which count for less, and those that do not fit and count all the same. */
  readonly slipped: readonly SpecimenResult[]
  readonly kept: readonly SpecimenResult[]
  readonly unknown: readonly string[]
  readonly assumed: readonly Assumed[]
}

/**
 * Strength curve of a panel as it stands now: once its pour has a log, the planned temperature counts no more. Of several
 * channels the one whose low edge meets the wanted strength last counts, one that never meets it before all others.
 *
 * With `results` the curve is brought up to date by them; where they cannot be taken in, the mix speaks alone and what
 * is missing is named. Nothing here opens a hold: that waits for `pourStrength`.
 *
 * A log that cannot be used (no mix, no curve) leaves the hours not known; it never falls back to the plan.
 */
export function cureNow(input: CureNowInput): CureNow {
  const { cure, facts, yard, until, results, open } = input
  const logs = concreteLogs(facts.temperatures)
  const logged = logs.length > 0
  const mix = yard?.mixes?.find(({ mark }) => mark === facts.cast?.mix)
  const wanted = input.wanted === undefined ? (cure.wanted?.strength ?? null) : input.wanted
  const told = (results?.cylinders.length ?? 0) > 0
  const more = told || open !== undefined || input.wanted !== undefined
  if (facts.cast === null || (!logged && (!more || mix === undefined))) return planned(cure)
  if (mix === undefined)
    return { ...planned({ hour: null, hourLow: null, curve: [] }), ...LOGGED, unknown: ['mix of the pour'] }
  const channels = logged ? logs.map(({ readings }) => readings) : [atReference(mix)]
  const live = channels.map((readings) => {
    const asked = { mix, readings, wanted, until, ...(open === undefined ? {} : { open }) }
    const alone = () => liveCurve(asked)
    if (!told) return { readings, curve: alone(), took: false }
    const curve = liveCurve({ ...asked, cylinders: results?.cylinders ?? [] })
    if (curve.curve.length > 0) return { readings, curve, took: true }
    const without = alone()
    const why = curve.unknown.map((gap) => `results not taken in: ${gap}`)
    return { readings, curve: { ...without, unknown: [...without.unknown, ...why] }, took: false }
  })
  const slowest = live.reduce((worst, next) =>
    meets(next.curve.hourLow) > meets(worst.curve.hourLow) ? next : worst,
  )
  const { readings, curve, took } = slowest
  const counted = took ? (results?.counted ?? []) : []
  const of = (places: readonly number[]) => places.flatMap((place) => counted[place] ?? [])
  return {
    hour: curve.hour,
    hourLow: curve.hourLow,
    curve: curve.curve,
    chance: curve.chance,
    restsOn: curve.restsOn ?? restsOnMix(mix),
    temperature: logged ? 'logged' : 'planned',
    loggedTo: logged ? (readings.at(-1)?.[0] ?? null) : null,
    taken: counted,
    slipped: of(curve.slipped),
    kept: of(curve.kept),
    unknown: curve.unknown,
    assumed: [
      ...curve.assumed.filter(({ field }) => field !== 'cylinders[].celsius'),
      ...(logged ? [] : [referenceAssumed(readings)]),
      ...(took ? (results?.assumed ?? []) : []),
    ],
  }
}

/** What a curve without results rests on, in words; null where the mix has nothing. */
function restsOnMix({ tests = [], curve }: Mix): string | null {
  if (curve !== undefined)
    return curve.form === 'ec2' ? 'the code’s curve for the mix' : 'the curve of the mix'
  return tests.length === 0 ? null : `${tests.length} tests of the mix`
}

const LOGGED = { temperature: 'logged', loggedTo: null } as const

function planned({ hour, hourLow, curve }: Pick<CurePlan, 'hour' | 'hourLow' | 'curve'>): CureNow {
  return {
    hour,
    hourLow,
    curve,
    chance: [],
    restsOn: null,
    temperature: 'planned',
    loggedTo: null,
    taken: [],
    slipped: [],
    kept: [],
    unknown: [],
    assumed: [],
  }
}

/** A night at the temperature of the plan, until something is logged. */
function atReference(mix: Mix): readonly Reading[] {
  const celsius = mix.reference ?? ASSUMED_REFERENCE
  return [
    [0, celsius],
    [1, celsius],
  ]
}

function referenceAssumed(readings: readonly Reading[]): Assumed {
  return {
    field: 'temperatures',
    value: readings[0]?.[1] ?? ASSUMED_REFERENCE,
    unit: '°C',
    why: 'nothing is logged: the concrete is taken at the reference temperature of its mix',
  }
}

function meets(hour: number | null): number {
  return hour ?? Number.POSITIVE_INFINITY
}

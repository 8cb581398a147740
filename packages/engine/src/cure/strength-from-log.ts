import type { Assumed, Step } from '../working/worked.ts'
import type { Mix } from '../yard/yard.ts'
import type { AgeMethod } from './age-method.ts'
import { equivalentAge } from './equivalent-age.ts'
import { maturity } from './maturity.ts'
import { type Reading, readingsUntil } from './readings.ts'
import { type StrengthSource, strengthModel } from './strength-model.ts'

export const ASSUMED_REFERENCE = 20
export const ASSUMED_ACTIVATION = 40_000
export const ASSUMED_DATUM = 0

export interface LogStrengthInput {
  readonly readings: readonly Reading[]
  readonly source: StrengthSource
  readonly method: AgeMethod
  /** Datum of the maturity, °C. */
  readonly datum: number
}

/** What a temperature log says of a mix. Null where not known; `unknown` says what is missing. */
export interface LogStrength {
  /** °C·h above the datum. */
  readonly maturity: number | null
  /** Age at the reference temperature, h. */
  readonly equivalentAge: number | null
  /** Expected strength, MPa, and the 90 % band of one later test. */
  readonly strength: number | null
  readonly low: number | null
  readonly high: number | null
  readonly unknown: readonly string[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

/**
 * Maturity, equivalent age and strength at the end of a temperature log.
 *
 * Each value is known on its own: a mix without scatter gives a strength without a band. The hours before the first
 * reading count as nothing, and are listed as assumed.
 */
export function strengthFromLog({ readings, source, method, datum }: LogStrengthInput): LogStrength {
  const degrees = maturity({ readings, datum })
  const age = equivalentAge({ readings, method })
  const model = strengthModel({ source, method })
  const gaps = new Set<string>()
  for (const part of [degrees, age, model]) if (!part.known) for (const gap of part.gaps) gaps.add(gap)
  const working = [...(degrees.known ? degrees.working : []), ...(age.known ? age.working : [])]
  const assumed: Assumed[] = [...startAssumed(readings), ...(model.assumed ?? [])]
  const base = {
    maturity: degrees.known ? degrees.value : null,
    equivalentAge: age.known ? age.value : null,
    assumed,
  }
  if (!age.known || !model.known)
    return { ...base, strength: null, low: null, high: null, unknown: [...gaps], working }
  const strength = model.value.strength(age.value)
  const band = model.value.band(age.value)
  if (strength === null) gaps.add(outsideText(age.value, model.value.from, model.value.to))
  else if (band === null) for (const gap of model.value.bandGaps) gaps.add(gap)
  if (strength !== null && band === null && model.value.bandGaps.length === 0)
    gaps.add('band: the tests do not fix it at this age')
  return {
    ...base,
    strength,
    low: band?.low ?? null,
    high: band?.high ?? null,
    unknown: [...gaps],
    working: [...working, ...model.value.steps(age.value), ...model.value.bandSteps(age.value)],
  }
}

export interface StrengthNowInput {
  readonly mix: Pick<Mix, 'curve' | 'tests' | 'scatter' | 'reference' | 'activation'>
  /** Logged readings, hours from mixing. */
  readonly readings: readonly Reading[]
  /** Hours from mixing to now. */
  readonly hour: number
}

/**
 * Strength of a pour now, from its logged temperatures: the log up to this hour, by the mix's own reference and
 * activation energy (20 °C and 40 000 J/mol assumed where it gives none). Readings that end before this hour count to
 * their end only, which is listed as assumed: the strength is then that of the last reading, not above what is there.
 */
export function strengthNow({ mix, readings, hour }: StrengthNowInput): LogStrength {
  const sound = Number.isFinite(hour) && hour >= 0
  const { method, assumed } = mixMethod(mix)
  const until = sound ? readingsUntil(readings, hour) : []
  const found = strengthFromLog({ readings: until, source: mix, method, datum: ASSUMED_DATUM })
  const last = until.at(-1)?.[0]
  const late: Assumed[] =
    sound && last !== undefined && last < hour
      ? [
          {
            field: 'readings',
            value: last,
            unit: 'h',
            why: `the log ends before hour ${hour}: the hours after it count as nothing`,
          },
        ]
      : []
  return {
    ...found,
    unknown: sound ? found.unknown : ['hour: hours from mixing, not below 0', ...found.unknown],
    assumed: [
      ...assumed,
      { field: 'datum', value: ASSUMED_DATUM, unit: '°C', why: 'no datum determined for the mix' },
      ...found.assumed,
      ...late,
    ],
  }
}

/** Arrhenius by the mix's own constants, with what had to be assumed. */
export function mixMethod(mix: Pick<Mix, 'reference' | 'activation'>): {
  readonly method: Extract<AgeMethod, { kind: 'arrhenius' }>
  readonly assumed: readonly Assumed[]
} {
  const assumed: Assumed[] = []
  if (mix.reference === undefined) {
    assumed.push({
      field: 'reference',
      value: ASSUMED_REFERENCE,
      unit: '°C',
      why: 'the mix gives no reference temperature',
    })
  }
  if (mix.activation === undefined) {
    assumed.push({
      field: 'activation',
      value: ASSUMED_ACTIVATION,
      unit: 'J/mol',
      why: 'the mix gives no activation energy',
    })
  }
  return {
    method: {
      kind: 'arrhenius',
      reference: mix.reference ?? ASSUMED_REFERENCE,
      activation: mix.activation ?? ASSUMED_ACTIVATION,
    },
    assumed,
  }
}

function startAssumed(readings: readonly Reading[]): Assumed[] {
  const first = readings[0]?.[0]
  if (first === undefined || !(first > 0)) return []
  return [
    {
      field: 'readings',
      value: first,
      unit: 'h',
      why: 'the log begins after mixing: the hours before it count as nothing',
    },
  ]
}

function outsideText(age: number, from: number, to: number): string {
  const range = Number.isFinite(to)
    ? `from ${numberText(from)} to ${numberText(to)} h`
    : `from ${numberText(from)} h on`
  return `strength: the mix says nothing at an equivalent age of ${numberText(age)} h, only ${range}`
}

function numberText(value: number): string {
  return String(Math.round(value * 100) / 100)
}

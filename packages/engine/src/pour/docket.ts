import type { CodeFamily } from '../codes/family.ts'
import type { PourLimit, SlumpSample } from '../codes/pour-rules.ts'
import { type Check, compare } from '../working/check.ts'
import { enteredBy, type Source } from '../working/source.ts'

export interface DocketInput {
  readonly family: CodeFamily
  /** From batching on the ticket to the end of discharge, minutes. */
  readonly ageMinutes?: number | null | undefined
  /** Limit that the order or the mix states, minutes: outranks the family's. */
  readonly statedMinutes?: number | null | undefined
  /** Measured, mm. */
  readonly slump?: number | null | undefined
  /** Ordered: a target, mm, judged by the family's tolerance, or a band [low, high] that is taken as given. */
  readonly ordered?: number | readonly [low: number, high: number] | null | undefined
  readonly sample?: SlumpSample | undefined
  /** Concrete, °C. */
  readonly temperature?: number | null | undefined
  /** Litres added on site, those that the ticket allows, and whether discharge had begun (over about 0.2 m³). */
  readonly water?:
    | { readonly added: number; readonly allowed: number | null; readonly afterDischarge: boolean }
    | null
    | undefined
}

const WATER: Source = { standard: 'ASTM C94/C94M-21', clause: '12.7', status: 'from memory' }

/** Checks of one load as it arrives: age, slump on both sides, temperature on both sides, water added. */
export function docketCheck(input: DocketInput): Check[] {
  return [ageCheck(input), ...slumpChecks(input), ...temperatureChecks(input), waterCheck(input)]
}

/** The stated limit where there is one, else the family's. */
export function dischargeLimit(family: CodeFamily, stated: number | null | undefined): PourLimit {
  return stated === null || stated === undefined
    ? family.pour.dischargeMinutes
    : { value: stated, source: enteredBy('the mix or the order') }
}

function ageCheck({ family, ageMinutes, statedMinutes }: DocketInput): Check {
  const limit = dischargeLimit(family, statedMinutes)
  return compare({
    id: 'docket-age',
    step: 'deliver',
    what: 'Age from batching to the end of discharge',
    demand: atLeastZero(ageMinutes),
    limit: limit.value,
    unit: 'min',
    sense: 'at most',
    source: limit.source,
    missing: [
      ...(limit.gap === undefined ? [] : [limit.gap]),
      ...lack(atLeastZero(ageMinutes), 'age of the load, minutes'),
    ],
    ...(limit.note === undefined ? {} : { note: limit.note }),
  })
}

function slumpChecks({ family, slump, ordered, sample = 'spot' }: DocketInput): Check[] {
  const band = slumpBand(family, ordered, sample)
  const base = {
    step: 'deliver',
    demand: atLeastZero(slump),
    unit: 'mm',
    source: band.source,
    missing: [...band.missing, ...lack(atLeastZero(slump), 'slump, mm')],
    ...(band.note === undefined ? {} : { note: band.note }),
  } as const
  return [
    compare({
      ...base,
      id: 'docket-slump-low',
      what: 'Slump, lower edge',
      limit: band.low,
      sense: 'at least',
    }),
    compare({
      ...base,
      id: 'docket-slump-high',
      what: 'Slump, upper edge',
      limit: band.high,
      sense: 'at most',
    }),
  ]
}

export interface SlumpBand {
  readonly low: number | null
  readonly high: number | null
  readonly source: Source
  readonly missing: readonly string[]
  readonly note?: string
}

/** Slumps that are accepted, mm: the band as ordered, or the family's tolerance on the target. */
export function slumpBand(
  family: CodeFamily,
  ordered: DocketInput['ordered'],
  sample: SlumpSample,
): SlumpBand {
  const source = enteredBy('the mix or the order')
  if (ordered === null || ordered === undefined)
    return { low: null, high: null, source, missing: ['slump: ordered slump of the mix'] }
  if (typeof ordered !== 'number') {
    const [low, high] = ordered
    return low <= high
      ? { low, high, source, missing: [] }
      : { low: null, high: null, source, missing: ['slump: ordered band runs backwards'] }
  }
  const tolerance = family.pour.slumpTolerance(ordered, sample)
  if (tolerance === null)
    return { low: null, high: null, source, missing: ['slump: no confirmed tolerance for this target'] }
  return {
    low: Math.max(0, ordered - tolerance.below),
    high: ordered + tolerance.above,
    source: tolerance.source,
    missing: [],
    ...(tolerance.note === undefined ? {} : { note: tolerance.note }),
  }
}

function temperatureChecks({ family, temperature }: DocketInput): Check[] {
  const { concreteLow, concreteHigh } = family.pour
  const one = (id: string, what: string, limit: PourLimit, sense: 'at least' | 'at most'): Check =>
    compare({
      id,
      step: 'deliver',
      what,
      demand: temperature,
      limit: limit.value,
      unit: '°C',
      sense,
      source: limit.source,
      missing: [
        ...(limit.gap === undefined ? [] : [limit.gap]),
        ...lack(temperature, 'concrete temperature, °C'),
      ],
    })
  return [
    one('docket-temperature-low', 'Concrete temperature, lowest', concreteLow, 'at least'),
    one('docket-temperature-high', 'Concrete temperature, highest', concreteHigh, 'at most'),
  ]
}

function waterCheck({ water }: DocketInput): Check {
  const added = atLeastZero(water?.added)
  // Once discharge has begun nothing may be added, whatever the ticket still allows.
  const allowed = water?.afterDischarge === true || added === 0 ? 0 : atLeastZero(water?.allowed)
  return compare({
    id: 'docket-water',
    step: 'deliver',
    what: 'Water added on site',
    demand: added,
    limit: added === null ? null : allowed,
    unit: 'L',
    sense: 'at most',
    source: water?.afterDischarge === true || added === 0 ? WATER : enteredBy('the ticket'),
    missing: [
      ...lack(added, 'water added, litres'),
      ...(added !== null && allowed === null ? ['water that the ticket allows, litres'] : []),
    ],
    note: 'Once, on arrival, then at least 30 turns at mixing speed; none after discharge has begun.',
  })
}

function atLeastZero(value: number | null | undefined): number | null {
  return typeof value === 'number' && Number.isFinite(value) && value >= 0 ? value : null
}

function lack(value: number | null | undefined, name: string): string[] {
  return typeof value === 'number' && Number.isFinite(value) ? [] : [name]
}

import type { CodeFamily } from '../../codes/family.ts'
import type { PourLimit } from '../../codes/pour-rules.ts'
import { compare, verdictOf } from '../../working/check.ts'
import { commonPractice, enteredBy, type Source } from '../../working/source.ts'
import type { Assumed } from '../../working/worked.ts'
import type { Mix } from '../../yard/yard.ts'
import { dischargeLimit, type OrderedSlump, slumpBand } from './limits.ts'
import type { DocketField, Load } from './load.ts'
import {
  type LoadRow,
  loadRow,
  loadRowId,
  loadRowTitle,
  rowOfCheck,
  saidBy,
  waitsForEnd,
} from './load-row.ts'
import { remixRow } from './remix.ts'

/** What was ordered for a pour, as far as it is known. */
export interface PourOrder {
  /** Mark of the mix; null where nobody has said. */
  readonly mix: string | null
  /** Strength that the drawing asks for, MPa; null where not known. */
  readonly strength: number | null
  readonly slump: OrderedSlump | null
  /** Greatest age at the end of discharge that order or mix states, minutes; outranks the family's. */
  readonly dischargeMinutes: number | null
  /** Concrete in the panel, m³. */
  readonly net: number
  /** Mixes of the yard. */
  readonly mixes: readonly Mix[]
}

export interface OneLoadInput {
  readonly load: Load
  readonly order: PourOrder
  readonly family: CodeFamily
}

const WATER: Source = { standard: 'ASTM C94/C94M-21', clause: '12.7', status: 'from memory' }
const TICKET = enteredBy('the ticket')
const MINUTE = 60_000

/** Conditions of one load by what is on record of it: mix, volume, age, slump, temperature, water, mixing again. */
export function oneLoadRows(input: OneLoadInput): LoadRow[] {
  return [
    ...twiceRow(input),
    mixRow(input),
    ...volumeRow(input),
    ageRow(input),
    slumpRow(input),
    temperatureRow(input),
    waterRow(input),
    ...remixRow(input),
  ]
}

function base(
  load: Load,
  key: string,
): { readonly id: string; readonly what: string; readonly step: 'deliver' } {
  const id = loadRowId(load.number, key)
  return { id, what: loadRowTitle(id) ?? id, step: 'deliver' }
}

/** Two recordings under one number that say different things: nobody knows which holds until one is corrected. */
function twiceRow({ load }: OneLoadInput): LoadRow[] {
  if (load.differs.length === 0) return []
  return [
    loadRow({
      ...base(load, 'twice'),
      verdict: 'unknown',
      demand: load.differs.map((field) => FIELD_WORDS[field] ?? field).join(', '),
      note: 'What was seen last counts until one of them is corrected.',
      source: commonPractice('one docket, one set of facts'),
      unknown: load.differs.map(
        (field) => `${FIELD_WORDS[field] ?? field}: which of the two recordings holds`,
      ),
      rests: load.entries,
      since: saidBy([load], load.differs).since,
    }),
  ]
}

const FIELD_WORDS: Readonly<Partial<Record<DocketField, string>>> = {
  ordered: 'volume ordered',
  used: 'volume into this panel',
  batched: 'batching time',
  began: 'begin of discharge',
  discharged: 'end of discharge',
  slumpTarget: 'slump ordered',
  slumpSample: 'kind of slump sample',
  waterAllowed: 'water allowed',
  waterAdded: 'water added',
  waterAfterDischarge: 'whether water was added after discharge had begun',
  admixtureAdded: 'admixture added',
  remixTurns: 'turns of mixing again',
  remixMinutes: 'minutes of mixing again',
}

function mixRow({ load, order }: OneLoadInput): LoadRow {
  const { mix } = load
  const strength = order.mixes.find(({ mark }) => mark === mix)?.strength
  const unknown = [
    ...(mix === undefined ? ['mix on the docket'] : []),
    ...(order.mix === null ? ['mix that was ordered'] : []),
    ...(order.strength === null ? ['strength that is drawn'] : []),
    ...(mix !== undefined && mix === order.mix && strength === undefined
      ? [`yard.mixes: a mix ${mix}, for its strength`]
      : []),
  ]
  const weak =
    strength !== undefined &&
    order.strength !== null &&
    verdictOf(strength, order.strength, 'at least') === 'fail'
  const other = mix !== undefined && order.mix !== null && mix !== order.mix
  return loadRow({
    ...base(load, 'mix'),
    verdict: other || weak ? 'fail' : unknown.length > 0 ? 'unknown' : 'pass',
    demand: mix ?? null,
    limit: order.mix,
    note: weak ? `${mix} has ${strength} MPa, the drawing asks for ${order.strength}.` : '',
    source: enteredBy('the order'),
    unknown: other || weak ? [] : unknown,
    ...saidBy([load], ['mix']),
  })
}

/** Only where the ticket says what was ordered for this load, or nothing of its volume: the sum of all loads is a row of its own. */
function volumeRow({ load, family }: OneLoadInput): LoadRow[] {
  const { ordered, volume } = load
  if (ordered === undefined && volume !== undefined) return []
  const rule = family.pour.underDelivery
  const check = compare({
    ...base(load, 'volume'),
    demand: volume,
    limit: ordered === undefined ? null : ordered * (1 - (rule?.share ?? 0)),
    unit: 'm³',
    sense: 'at least',
    source: rule?.source ?? TICKET,
    missing: volume === undefined ? ['volume on the docket, m³'] : [],
    note:
      rule === null
        ? 'As ordered by the ticket; no allowance for less is known.'
        : `${rule.share * 100} % less than ordered is allowed.`,
  })
  return [rowOfCheck(check, saidBy([load], ['ordered', 'volume']))]
}

function ageRow({ load, order, family }: OneLoadInput): LoadRow {
  const limit = dischargeLimit(family, order.dischargeMinutes)
  const { batched, discharged } = load
  const minutes = (Date.parse(discharged ?? '') - Date.parse(batched ?? '')) / MINUTE
  const backwards = backwardsOf(load)
  const check = compare({
    ...base(load, 'age'),
    demand: Number.isFinite(minutes) && backwards === null ? minutes : null,
    limit: limit.value,
    unit: 'min',
    sense: 'at most',
    source: limit.source,
    missing: [
      ...(limit.gap === undefined ? [] : [limit.gap]),
      ...(batched === undefined ? ['batching time on the docket'] : []),
      ...(discharged === undefined ? ['end of discharge'] : []),
      ...(backwards === null ? [] : [`age: ${backwards}`]),
    ],
    ...(limit.note === undefined ? {} : { note: limit.note }),
  })
  return rowOfCheck(check, saidBy([load], ['batched', 'arrived', 'began', 'discharged']), waitsForEnd(load))
}

const WAY = [
  ['batched', 'batching'],
  ['arrived', 'arrival'],
  ['began', 'begin of discharge'],
  ['discharged', 'end of discharge'],
] as const

/** The first two moments of a load that stand in the wrong order, in words; null where none do. One of them is a slip: nobody knows which. */
function backwardsOf(load: Load): string | null {
  const told = WAY.flatMap(([field, words]) => {
    const at = Date.parse(load[field] ?? '')
    return Number.isFinite(at) ? [{ at, words }] : []
  })
  const late = told.findIndex(({ at }, index) => at < (told[index - 1]?.at ?? at))
  return late < 1 ? null : `${told[late]?.words} before ${told[late - 1]?.words}`
}

function slumpRow({ load, order, family }: OneLoadInput): LoadRow {
  const { slump, slumpTarget, slumpSample } = load
  const ordered = order.slump ?? slumpTarget ?? null
  const band = slumpBand(family, ordered, slumpSample ?? 'spot')
  const assumed: Assumed[] =
    typeof ordered === 'number' && slumpSample === undefined
      ? [
          {
            field: 'kind of slump sample',
            value: 'spot, from the first discharge',
            unit: '',
            why: 'not said',
          },
        ]
      : []
  return bandRow({
    load,
    key: 'slump',
    value: slump,
    low: band.low,
    high: band.high,
    unit: 'mm',
    source: band.source,
    missing: [...band.missing, ...(slump === undefined ? ['slump, mm'] : [])],
    note: band.note ?? '',
    assumed,
    fields: ['slump', 'slumpTarget', 'slumpSample'],
  })
}

function temperatureRow({ load, family }: OneLoadInput): LoadRow {
  const { concreteLow, concreteHigh } = family.pour
  const none = concreteLow.value === null && concreteHigh.value === null
  const gap = ({ value, gap: why }: PourLimit): string =>
    value === null && why !== undefined ? `${why}.` : ''
  return bandRow({
    load,
    key: 'temperature',
    value: load.temperature,
    low: concreteLow.value,
    high: concreteHigh.value,
    unit: '°C',
    source: concreteLow.value === null ? concreteHigh.source : concreteLow.source,
    missing: [
      ...(none ? [concreteLow.gap ?? 'concrete temperature: no confirmed value'] : []),
      ...(load.temperature === undefined ? ['concrete temperature, °C'] : []),
    ],
    note: none ? '' : [gap(concreteLow), gap(concreteHigh)].filter((part) => part !== '').join(' '),
    assumed: [],
    fields: ['temperature'],
  })
}

interface BandRowInput {
  readonly load: Load
  readonly key: string
  readonly value: number | undefined
  /** Null on a side where the family has no limit. */
  readonly low: number | null
  readonly high: number | null
  readonly unit: string
  readonly source: Source
  readonly missing: readonly string[]
  readonly note: string
  readonly assumed: readonly Assumed[]
  readonly fields: readonly DocketField[]
}

function bandRow({ load, key, value, low, high, missing, fields, ...rest }: BandRowInput): LoadRow {
  const limit = low !== null && high !== null ? `${low} to ${high}` : (low ?? high)
  const outside =
    value !== undefined &&
    ((low !== null && verdictOf(value, low, 'at least') === 'fail') ||
      (high !== null && verdictOf(value, high, 'at most') === 'fail'))
  return loadRow({
    ...base(load, key),
    ...rest,
    verdict:
      missing.length > 0 || value === undefined || limit === null ? 'unknown' : outside ? 'fail' : 'pass',
    demand: value ?? null,
    limit,
    unknown: missing,
    ...saidBy([load], fields),
  })
}

function waterRow({ load }: OneLoadInput): LoadRow {
  const { waterAdded: added, waterAllowed, waterAfterDischarge: after } = load
  // Once discharge has begun nothing may be added, whatever the ticket still allows.
  const nothing = after === true || added === 0
  const check = compare({
    ...base(load, 'water'),
    demand: added,
    limit: added === undefined ? null : nothing ? 0 : waterAllowed,
    unit: 'L',
    sense: 'at most',
    source: nothing || added === undefined ? WATER : TICKET,
    missing: [
      ...(added === undefined ? ['water added, litres'] : []),
      ...(added !== undefined && !nothing && waterAllowed === undefined
        ? ['water that the ticket allows, litres']
        : []),
      ...(added !== undefined && !nothing && after === undefined
        ? ['whether discharge had begun when water was added']
        : []),
    ],
    note: 'Once, on arrival, then mixed again; none after discharge has begun.',
  })
  return rowOfCheck(check, saidBy([load], ['waterAdded', 'waterAllowed', 'waterAfterDischarge']))
}

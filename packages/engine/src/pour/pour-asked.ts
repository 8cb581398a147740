import type { CodeFamily } from '../codes/family.ts'
import type { Asked } from '../working/asked.ts'
import { commonPractice, enteredBy, type Source } from '../working/source.ts'
import type { Mix } from '../yard/yard.ts'
import type { Tight } from './close-steel/tight.ts'
import { dischargeLimit } from './loads/limits.ts'
import type { CompactionPlan, PourPlan } from './pour-plan.ts'

const DELIVERY: Source = commonPractice('record of a delivery')
const PLACING: Source = commonPractice('placing and compaction')
const FINISHING: Source = commonPractice('finishing')
const WATER: Source = { standard: 'ASTM C94/C94M-21', clause: '12.7', status: 'from memory' }

function tick(step: Asked['step'], id: string, what: string, source: Source, note?: string): Asked {
  return { id, step, what, kind: 'tick', unit: '', source, ...(note === undefined ? {} : { note }) }
}

function kept(step: Asked['step'], id: string, what: string, kind: Asked['kind'], unit = ''): Asked {
  return { id, step, what, kind, unit, recordOnly: true, source: DELIVERY }
}

/** What is read from the docket and measured when the concrete arrives. */
export function askedAtDelivery(family: CodeFamily, mix: Mix | null): Asked[] {
  return [
    kept('deliver', 'docket-number', 'Docket number', 'text'),
    kept('deliver', 'truck', 'Truck', 'text'),
    kept('deliver', 'batch-time', 'Batching time on the docket', 'text'),
    age(family, mix),
    slump(mix),
    temperature(family),
    {
      id: 'water-added',
      step: 'deliver',
      what: 'Water added on site',
      kind: 'choice',
      unit: '',
      choices: [
        { value: 'none', good: true },
        { value: 'within the ticket, before discharge', good: true },
        { value: 'more, or after discharge began', good: false },
      ],
      source: WATER,
      note: 'Once, on arrival, then at least 30 turns at mixing speed.',
    },
    {
      ...kept('deliver', 'specimens-made', 'Cylinders or cubes made', 'number', 'pieces'),
      ...(family.quality.samplingWords === null ? {} : { note: family.quality.samplingWords }),
    },
    air(family),
  ]
}

function age(family: CodeFamily, mix: Mix | null): Asked {
  const limit = dischargeLimit(family, mix?.dischargeMinutes)
  return {
    id: 'age-at-discharge',
    step: 'deliver',
    what: 'Age from batching to the end of discharge',
    kind: 'number',
    unit: 'min',
    ...(limit.value === null
      ? { unknown: [limit.gap ?? 'no confirmed limit'] }
      : { low: 0, high: limit.value }),
    source: limit.source,
    ...(limit.note === undefined ? {} : { note: limit.note }),
  }
}

function slump(mix: Mix | null): Asked {
  const base = {
    id: 'slump',
    step: 'deliver',
    what: 'Slump at discharge',
    kind: 'number',
    unit: 'mm',
  } as const
  const band = mix?.slump
  return mix === null || band === undefined
    ? { ...base, unknown: ['slump: ordered slump of the mix'], source: enteredBy('yard: mixes') }
    : { ...base, low: band[0], high: band[1], source: enteredBy(`yard: mix ${mix.mark}`) }
}

function temperature(family: CodeFamily): Asked {
  const { concreteLow, concreteHigh } = family.pour
  const none = concreteLow.value === null && concreteHigh.value === null
  return {
    id: 'concrete-temperature',
    step: 'deliver',
    what: 'Temperature of the concrete',
    kind: 'number',
    unit: '°C',
    ...(none
      ? { unknown: [concreteLow.gap ?? 'concrete temperature: no confirmed value'] }
      : { low: concreteLow.value, high: concreteHigh.value }),
    source: concreteLow.value === null ? concreteHigh.source : concreteLow.source,
    ...(concreteHigh.value === null && !none ? { note: `${concreteHigh.gap ?? ''}.` } : {}),
  }
}

function air(family: CodeFamily): Asked {
  const { airLow } = family.pour
  const base = {
    id: 'air-temperature',
    step: 'deliver',
    what: 'Air temperature',
    kind: 'number',
    unit: '°C',
  } as const
  return airLow.value === null
    ? { ...base, recordOnly: true, source: DELIVERY }
    : {
        ...base,
        low: airLow.value,
        source: airLow.source,
        ...(airLow.note === undefined ? {} : { note: airLow.note }),
      }
}

/** Zones vibrated in order, and what else is seen while placing. */
export function askedAtPlacing(compaction: CompactionPlan | null, tight: readonly Tight[] = []): Asked[] {
  const zones = (compaction?.zones ?? []).map((zone) =>
    tick(
      'place',
      `zone:${zone.id}`,
      `Zone ${zone.order}: placed and vibrated`,
      PLACING,
      `${zone.insertions.length} insertions, about ${Math.ceil(zone.minutes)} min, ${(Math.ceil(zone.volume * 100) / 100).toFixed(2)} m³.`,
    ),
  )
  return [
    ...(zones.length > 0
      ? zones
      : [tick('place', 'vibrated', 'Every part placed and vibrated, from the far corner back', PLACING)]),
    ...(compaction === null ? [] : headAsked(compaction, tight)),
    tick('place', 'no-stop', 'No stop so long that the vibrator no longer sinks in', PLACING),
    tick('place', 'steel-in-place', 'Steel, inserts and openings have not moved', PLACING),
  ]
}

/** At most so many insertions with little room are named on the card; the room lists them all. */
const MOST_TIGHT = 3

/** `12: 40 mm from a face`. */
export function tightText(one: Tight): string {
  const number = one.insertion + 1
  if (one.at === 'face') return `${number}: ${Math.round(one.clear)} mm from a face`
  return one.move === null
    ? `${number}: over bar ${one.mark}, no gap near it takes the head`
    : `${number}: over bar ${one.mark}, the nearest gap is ${Math.ceil(one.move)} mm away`
}

/** How the head is used: both radii, time, layers, splash board. */
function headAsked(compaction: CompactionPlan, tight: readonly Tight[]): Asked[] {
  const { radius, action, layers, pace, reduced } = compaction
  const radii =
    action === null
      ? `Insertions reach ${Math.round(radius)} mm, a covering radius given as it is.`
      : `Insertions reach ${Math.round(radius)} mm, planned at 0.866 of the ${Math.round(action)} mm radius of action.`
  const deep =
    layers.count === 1
      ? ''
      : ` ${layers.count} layers of ${Math.round(layers.depth)} mm, the head 100 mm into the one below.`
  const least = reduced.reduce((most, zone) => Math.min(most, zone.radius), Number.POSITIVE_INFINITY)
  const cut =
    reduced.length === 0
      ? ''
      : ` In close steel (hatched) they reach ${Math.round(least)} mm and stand closer.`
  const room =
    tight.length === 0
      ? ''
      : ` ${tight.length} have little room: ${tight.slice(0, MOST_TIGHT).map(tightText).join('; ')}${tight.length > MOST_TIGHT ? ' …' : ''}.`
  const rate = ` All heads keep up with ${(Math.floor(pace * 10) / 10).toFixed(1)} m³/h: no faster from the chute.`
  return [
    tick(
      'place',
      'head',
      `Head in quickly, about ${Math.round(compaction.seconds.in)} s, out slowly; off faces and cage`,
      PLACING,
      `${radii}${cut}${room}${deep}${rate}`,
    ),
    tick(
      'place',
      'splash-board',
      'Splash board stands where concrete falls against a finished face or side form',
      PLACING,
    ),
  ]
}

/** Passes of finishing, and the cover. */
export function askedAtFinish(finish: PourPlan['finish']): Asked[] {
  const window =
    finish === null
      ? undefined
      : `Planned at the reference temperature of the mix: ${hours(finish.opens)} to ${hours(finish.closes)} after mixing. The times by readings stand under Surface in the app; the surface decides.`
  return [
    tick('finish', 'screeded', 'Screeded to level', FINISHING, 'Before bleed water shows.'),
    tick('finish', 'floated', 'Floated once the sheen is gone', FINISHING, 'A boot print of 6 mm or less.'),
    tick('finish', 'power-float', 'Power float passes as ordered', FINISHING, window),
    tick('finish', 'cover-on', 'Curing cover on, edges held down', FINISHING, 'At once after the last pass.'),
  ]
}

function hours(value: number): string {
  return `${Math.round(value * 10) / 10} h`
}

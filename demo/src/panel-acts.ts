import { strengthNow } from '@castwright/engine/cure'
import type { Plan } from '@castwright/engine/plan'
import { ASKED_BY_DOCKETS } from '@castwright/engine/pour/loads'
import type { StepId } from '@castwright/engine/steps'
import { type Asked, judge, limitOf } from '@castwright/engine/working'
import type { Mix, Yard } from '@castwright/engine/yard'
import { type Draft, panelSubject } from '@castwright/record'
import { BED_ORDER, DEMO_ZONE } from './calendar.ts'
import { type Delivery, deliveriesOf } from './deliveries.ts'
import { Dice, seedOf } from './dice.ts'
import { differenceReason, stageReason } from './difference-reason.ts'
import { DEMO_JOB } from './drawings.ts'
import { goodValue } from './good-value.ts'
import { decidedRows, formHeights, tapedMould } from './mould-found.ts'
import { nightLog } from './night.ts'
import type { PanelRow } from './panels.ts'
import type { DemoPerson } from './people.ts'
import type { Act, SignDifferences } from './telling.ts'
import type { Timetable } from './timetable.ts'
import { airAt } from './weather.ts'

export interface PanelActsInput {
  readonly row: PanelRow
  readonly index: number
  readonly plan: Plan
  readonly yard: Yard
  readonly times: Timetable
  readonly people: (id: string) => DemoPerson
  /** Where the job stands, ms. */
  readonly clock: number
  /** Values other than the good ones, by id of the asked item. */
  readonly found?: Readonly<Record<string, number>>
  /** The step that is left open on purpose, though its time has come. */
  readonly leftOpen?: StepId
  /** The cover was lost in the night. */
  readonly bare?: boolean
}

const SECOND = 1000
const MINUTE = 60 * SECOND
const HOUR = 60 * MINUTE
/** A cylinder of this panel was to be tested at three days. */
const FORGOTTEN = 'S02'
/** Number on the first docket of the job. */
const DOCKETS = 7310

/** Everything that is done to one panel, in no order: acts carry their times. */
export function panelActs(input: PanelActsInput): (Act | SignDifferences)[] {
  return new PanelTelling(input).acts()
}

class PanelTelling {
  private readonly list: (Act | SignDifferences)[] = []
  private readonly dice: Dice
  private readonly subject: Draft['subject']
  private readonly bed: string
  private readonly mix: Mix
  private readonly tablet: string
  private readonly hand: DemoPerson
  private readonly lead: DemoPerson
  private readonly mould: ReadonlyMap<string, number>

  constructor(private readonly input: PanelActsInput) {
    const { row, index, yard, plan, people } = input
    this.dice = new Dice(seedOf(row.mark))
    this.subject = panelSubject(DEMO_JOB, row.mark)
    const bed = index % BED_ORDER.length
    this.bed = BED_ORDER[bed] ?? '1'
    this.tablet = bed < 2 ? 'tablet-beds-1-2' : 'tablet-beds-3-4'
    this.hand = people(bed < 2 ? 'sam' : 'lena')
    this.lead = people(index % 3 === 2 ? 'tom' : 'orla')
    const mix = yard.mixes?.find(({ mark }) => mark === plan.cure.mix)
    if (mix === undefined) throw new Error(`${row.mark}: found no mix, expected one of the yard's`)
    this.mix = mix
    this.mould = tapedMould(row)
  }

  acts(): (Act | SignDifferences)[] {
    const { times, people } = this.input
    const jo = people('jo')
    this.step('steel-in', times.steelIn, jo, 'tablet-steel')
    this.step('cut-bend', times.cutBend, jo, 'tablet-steel')
    this.step('cage', times.cage, jo, 'tablet-steel')
    this.step('mould', times.mould, this.hand, this.tablet)
    this.add(times.mould + 20 * MINUTE, this.hand, { kind: 'place', value: { place: `bed ${this.bed}` } })
    this.values('set', times.set, this.hand, this.tablet)
    this.hold('set', times.setHold)
    this.pour()
    this.cure()
    this.values('strip', times.strip, this.hand, this.tablet)
    this.differences(times.stripHold - 8 * MINUTE)
    this.hold('strip', times.stripHold)
    this.step('as-built', times.asBuilt, people('lena'), 'tablet-beds-3-4', 90 * SECOND)
    this.store()
    this.leave()
    return this.list
  }

  private pour(): void {
    const { times } = this.input
    if (!Number.isFinite(times.deliver)) return
    const batched = iso(times.mixed)
    this.add(times.deliver, this.hand, {
      kind: 'cast',
      value: { at: batched, bed: this.bed, mix: this.mix.mark },
    })
    const [low, high] = this.mix.slump ?? [80, 120]
    const slump = Math.round(this.dice.between(low + 12, high - 12) / 5) * 5
    this.specimenSet()
    for (const delivery of deliveriesOf(this.input.row.mark)) this.load(delivery, slump)
    const rest = this.asked('deliver').filter(({ id }) => !ASKED_BY_DOCKETS.has(id))
    for (const [index, item] of rest.entries())
      this.value(item, times.deliver + (40 + 20 * index) * SECOND, this.hand, this.tablet)
    this.decisions('deliver', times.place + 20 * SECOND)
    this.close('deliver', times.place + MINUTE, this.hand, this.tablet)
    const zones = this.asked('place').filter(({ id }) => id.startsWith('zone:'))
    for (const [index, zone] of zones.entries())
      this.value(zone, times.place + index * 10 * MINUTE, this.hand, this.tablet)
    const poured = times.place + zones.length * 10 * MINUTE
    for (const [index, rest] of this.asked('place')
      .filter((item) => !zones.includes(item))
      .entries())
      this.value(rest, poured + index * 15 * SECOND, this.hand, this.tablet)
    this.close('place', poured + 2 * MINUTE, this.hand, this.tablet)
    this.finish()
  }

  /** Two cylinders that lie beside the panel until the morning, two for 7 and two for 28 days in the tank. */
  private specimenSet(): void {
    const { row, times, index } = this.input
    const made = times.place + 8 * MINUTE
    if (!Number.isFinite(made)) return
    const marked = (...numbers: number[]) => numbers.map((number) => `${row.mark}-${number}`)
    const morning = Number.isFinite(times.cylinders) ? times.cylinders : made + 21 * HOUR
    this.add(made + 3 * MINUTE, this.hand, {
      kind: 'specimen-set',
      step: 'deliver',
      value: {
        set: row.mark,
        kind: 'cylinder',
        size: 150,
        made: iso(made),
        docket: String(DOCKETS + 3 * index),
        tests: [
          { age: Math.round((morning - made) / HOUR), cured: 'panel', specimens: marked(1, 2) },
          // Three days fell on a Sunday, and nobody thought of it since.
          ...(row.mark === FORGOTTEN ? [{ age: 72, cured: 'standard', specimens: marked(7) }] : []),
          { age: 168, cured: 'standard', specimens: marked(3, 4) },
          { age: 672, cured: 'standard', specimens: marked(5, 6) },
        ],
      },
    })
  }

  /** A truck: its ticket and tests as it comes, a decision where there is one, then its discharge. */
  private load(delivery: Delivery, usual: number): void {
    const { times, plan, row, index } = this.input
    const { share, next, decision, reason, running = false } = delivery
    const from = (minutes: number): string => iso(times.mixed + minutes * MINUTE)
    const number = String(DOCKETS + 3 * index + next)
    const back = decision === 'send-back'
    const arrived =
      delivery.arrived === undefined ? times.deliver - 6 * MINUTE : Date.parse(from(delivery.arrived))
    const tested = arrived + 6 * MINUTE + 20 * SECOND
    const key = `${row.mark} docket ${number}`
    const volume = Math.round(plan.pour.orderVolume * share * 10) / 10
    this.add(
      tested,
      this.hand,
      {
        kind: 'docket',
        step: 'deliver',
        value: {
          number,
          supplier: 'Quay Concrete',
          truck: `truck ${1 + ((index + next) % 5)}`,
          mix: this.mix.mark,
          ordered: volume,
          volume,
          batched: from(delivery.batched ?? 0),
          waterAllowed: 20,
          arrived: iso(arrived),
          slump: delivery.slump ?? usual,
          slumpSample: 'spot',
          temperature: this.input.bare ? 15 : 18.5,
          waterAdded: 0,
        },
      },
      this.tablet,
      key,
    )
    if (decision !== undefined && reason !== undefined) {
      this.add(
        tested + 4 * MINUTE,
        this.lead,
        { kind: 'docket-decision', step: 'deliver', value: { decision }, reason },
        this.tablet,
        undefined,
        key,
      )
    }
    if (back) return
    const began = delivery.began === undefined ? times.deliver + 4 * MINUTE : Date.parse(from(delivery.began))
    const say = (when: number, words: Record<string, string | string[]>): void =>
      this.add(when, this.hand, { kind: 'docket', step: 'deliver', value: { number, ...words } })
    say(began, { began: iso(began) })
    if (running) return
    say(times.place, { discharged: iso(times.place) })
    say(times.place + 12 * MINUTE, { specimens: this.specimenMarks() })
  }

  private specimenMarks(): string[] {
    const { mark } = this.input.row
    return [1, 2, 3, 4, 5, 6, ...(mark === FORGOTTEN ? [7] : [])].map((number) => `${mark}-${number}`)
  }

  private finish(): void {
    const { times } = this.input
    const when: Readonly<Record<string, number>> = {
      screeded: times.screed,
      floated: times.float,
      'power-float': times.powerFloat,
      'cover-on': times.cover,
    }
    for (const item of this.asked('finish'))
      this.value(item, when[item.id] ?? times.cover, this.hand, this.tablet)
    this.close('finish', times.cover + 2 * MINUTE, this.hand, this.tablet)
  }

  private cure(): void {
    const { times, people, clock } = this.input
    if (!Number.isFinite(times.cylinders)) return
    // What still lies in its mould has a log up to now, the rest one up to its test.
    const read = Math.min(times.cylinders, times.cureEnd, clock - 20 * MINUTE)
    const log = this.log(read)
    if (log.length < 2) return
    this.add(read + 4 * MINUTE, this.hand, {
      kind: 'temperature',
      value: { channel: 'panel edge', readings: log },
    })
    for (const [number, strength] of this.cylinders(log).entries())
      this.add(times.cylinders + number * MINUTE, people('lena'), {
        kind: 'specimen',
        value: {
          specimen: `${this.input.row.mark}-${number + 1}`,
          kind: 'cylinder',
          age: Math.round(((times.cylinders - times.mixed) / HOUR) * 100) / 100,
          strength,
          cured: 'panel',
        },
      })
    const celsius = log.map(([, value]) => value)
    const last = celsius.at(-1) ?? 0
    const special: Readonly<Record<string, number>> = {
      'peak-temperature': Math.max(...celsius),
      'least-temperature': Math.min(...celsius),
      'cover-off': Math.round(Math.max(0, last - airAt(times.cureEnd, DEMO_ZONE)) * 10) / 10,
    }
    for (const [index, item] of this.asked('cure').entries()) {
      if (item.id === 'covered') this.value(item, times.cover + 4 * MINUTE, this.hand, this.tablet)
      else if (item.kind === 'readings')
        this.put(item, [log[0], log.at(-1)] as number[][], times.cureEnd + index * 20 * SECOND, {
          reason: `first and last of ${log.length} readings, channel panel edge`,
        })
      else this.value(item, times.cureEnd + index * 20 * SECOND, this.hand, this.tablet, special[item.id])
    }
    this.close('cure', times.cureEnd + 4 * MINUTE, this.hand, this.tablet)
  }

  private log(until: number): [number, number][] {
    const { row, times, bare = false } = this.input
    return nightLog({
      mixed: times.mixed,
      until,
      zone: DEMO_ZONE,
      thickness: row.thickness,
      heated: this.bed === '2',
      bare,
    })
  }

  /** Two cylinders that lay beside the panel: the mix's strength by the log, and what tests scatter. */
  private cylinders(log: readonly (readonly [number, number])[]): number[] {
    const hour = log.at(-1)?.[0] ?? 0
    const { strength } = strengthNow({ mix: this.mix, readings: log, hour })
    if (strength === null) return []
    return [0, 1].map(() => Math.round(strength * this.dice.between(0.985, 1.045) * 10) / 10)
  }

  private store(): void {
    const { times, index } = this.input
    const spot =
      this.input.row.pick.on !== 'edge'
        ? `stack ground, row ${index}`
        : `rack ${index % 2 === 0 ? 'A' : 'B'}, place ${1 + (index % 14)}`
    this.step('store', times.store, this.hand, this.tablet, 20 * SECOND, { 'stored-at': spot })
    this.add(times.store + 4 * MINUTE, this.hand, { kind: 'place', value: { place: spot } })
  }

  private leave(): void {
    const { times, people, row } = this.input
    if (times.load === null || times.handOver === null) return
    const trailer = row.pick.on === 'edge' ? 'A-frame trailer' : 'flat trailer'
    this.step('load', times.load, people('jo'), 'tablet-steel', 30 * SECOND, {
      trailer: `${trailer}, plate KL 114`,
    })
    this.add(
      times.load + 6 * MINUTE,
      people('jo'),
      { kind: 'place', value: { place: trailer } },
      'tablet-steel',
    )
    this.step('hand-over', times.handOver, people('tom'), 'office', 30 * SECOND, {
      'received-by': 'P. Nolan, Saltmarsh Library site',
    })
  }

  /** Records every asked item of a step, then closes it. */
  private step(
    step: StepId,
    from: number,
    person: DemoPerson,
    device: string,
    every = 25 * SECOND,
    special: Readonly<Record<string, number | string>> = {},
  ): void {
    const last = this.values(step, from, person, device, every, special)
    this.decisions(step, last)
    this.close(step, last + 4 * MINUTE, person, device)
  }

  private decisions(step: StepId, last: number): void {
    // What no confirmed limit can judge, the lead decides: by name and with a reason.
    for (const [index, item] of this.asked(step).entries())
      if (item.unknown !== undefined && item.unknown.length > 0)
        this.add(last + (20 + 5 * index) * SECOND, this.lead, {
          kind: 'decision',
          step,
          check: item.id,
          value: null,
          reason: 'No confirmed limit for this size. Taped twice, within 3 mm of the drawing: accepted.',
        })
    for (const [index, check] of this.input.plan.checks
      .filter((planned) => planned.step === step && planned.verdict !== 'pass')
      .entries())
      this.add(last + (60 + 5 * index) * SECOND, this.lead, {
        kind: 'decision',
        step,
        check: check.id,
        value: null,
        verdict: check.verdict,
        reason: stageReason(check),
      })
    if (step !== 'mould') return
    const { checks, verdict, reason } = decidedRows(this.input.row)
    for (const [index, check] of checks.entries())
      this.add(last + (120 + 5 * index) * SECOND, this.lead, {
        kind: 'decision',
        step,
        check,
        value: null,
        verdict,
        reason,
      })
  }

  private values(
    step: StepId,
    from: number,
    person: DemoPerson,
    device: string,
    every = 25 * SECOND,
    special: Readonly<Record<string, number | string>> = {},
  ): number {
    const items = this.asked(step)
    for (const [index, item] of items.entries())
      this.value(item, from + index * every, person, device, special[item.id])
    return from + items.length * every
  }

  private value(
    item: Asked,
    at: number,
    person: DemoPerson,
    device: string,
    special?: number | string,
  ): void {
    const value = this.input.found?.[item.id] ?? special ?? this.special(item) ?? goodValue(item, this.dice)
    this.put(item, value, at, {}, person, device)
  }

  private put(
    item: Asked,
    value: Draft['value'],
    at: number,
    rest: Partial<Draft>,
    person = this.hand,
    device = this.tablet,
  ): void {
    this.add(
      at,
      person,
      { kind: 'value', step: item.step, check: item.id, value, ...judgedDraft(item, value), ...rest },
      device,
      `${this.input.row.mark} ${item.id}`,
    )
  }

  /** Words and numbers that hang on the panel, its mould and its day. */
  private special(item: Asked): number | string | number[] | undefined {
    const { times, row } = this.input
    const taped = this.mould.get(item.id)
    if (taped !== undefined) return taped
    if (item.id.startsWith('docket:')) return `docket ${4000 + (seedOf(item.id) % 900)}`
    switch (item.id) {
      case 'form-heights':
        return formHeights(row)
      case 'air-temperature':
        return Math.round(airAt(times.deliver, DEMO_ZONE) * 10) / 10
      case 'crane':
        return this.input.index % 2 === 0 ? 'gantry north' : 'gantry south'
      case 'crane-radius':
        return 12_500
      case 'below-hook':
        return 340
      default:
        return undefined
    }
  }

  private close(step: StepId, at: number, person: DemoPerson, device: string): void {
    if (this.input.leftOpen === step) return
    this.add(at, person, { kind: 'close', step, value: null }, device)
  }

  /** Before the lead signs, the engineer signs what our own figures leave open where the lifting design holds. */
  private differences(at: number): void {
    if (!Number.isFinite(at)) return
    this.list.push({
      at,
      device: 'office',
      person: this.input.people('ines'),
      differencesOf: this.subject,
      reason: differenceReason,
    })
  }

  private hold(step: StepId, at: number): void {
    this.add(at, this.lead, { kind: 'request', step, value: null })
  }

  private add(
    at: number,
    person: DemoPerson,
    draft: Omit<Draft, 'subject'>,
    device = this.tablet,
    key?: string,
    aboutKey?: string,
  ): void {
    const { row, plan } = this.input
    this.list.push({
      at,
      device,
      person,
      draft: {
        ...draft,
        subject: this.subject,
        revision: row.revision,
        ...(draft.kind === 'value' ? { edition: plan.editions.join('; ').slice(0, 200) } : {}),
      },
      ...(key === undefined ? {} : { key }),
      ...(aboutKey === undefined ? {} : { aboutKey }),
    })
  }

  private asked(step: StepId): readonly Asked[] {
    return this.input.plan.toRecord.filter((item) => item.step === step)
  }
}

/** Unit, verdict, limit and source of a value as they stood when it was seen. */
export function judgedDraft(
  asked: Asked,
  value: unknown,
): Pick<Draft, 'unit' | 'verdict' | 'limit' | 'source'> {
  return {
    ...(asked.unit === '' ? {} : { unit: asked.unit }),
    verdict: judge(asked, value),
    limit: limitOf(asked),
    source: asked.source,
  }
}

function iso(instant: number): string {
  return Number.isFinite(instant) ? new Date(instant).toISOString() : ''
}

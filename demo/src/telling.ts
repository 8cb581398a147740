import type { Plan } from '@castwright/engine/plan'
import { type CardRow, cardOf, type PanelFacts, type StepId } from '@castwright/engine/steps'
import {
  createFold,
  type DeviceState,
  type Draft,
  differenceValue,
  type Entry,
  entryHash,
  type Fold,
  makeEntry,
  newDevice,
  type StoredEntry,
  type YardState,
} from '@castwright/record'
import { Dice } from './dice.ts'
import type { DemoPerson } from './people.ts'

/** An entry with the time at which the record had it. */
export type ToldEntry = Entry & { readonly stored: string }

/** Something that somebody does at a time. */
export interface Act {
  /** ms since 1970, UTC. */
  readonly at: number
  readonly device: string
  readonly person: DemoPerson
  readonly draft: Draft
  /** Name under which a later act may speak of this one. */
  readonly key?: string
  readonly aboutKey?: string
}

/** An engineer looks at the strip card and signs each difference from the lifting design that it waits for. */
export interface SignDifferences extends Omit<Act, 'draft' | 'key' | 'aboutKey'> {
  readonly differencesOf: Draft['subject']
  /** Why the lifting design governs, in the engineer's words. */
  readonly reason: (row: CardRow) => string
}

export interface TellerInput {
  readonly yard: string
  readonly seed: number
  /** Plan of a panel by what is on record of it and of the yard. */
  readonly planOf: (facts: PanelFacts, state: YardState) => Plan
}

/** The device whose entries the record makes itself: the openings. */
const RECORD_DEVICE = 'record'
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'

/**
 * Tells acts as entries: numbered and chained on each device, stored some seconds after they were seen. A hold opens and a
 * step closes only where its card is ready by what was told before, as in the real record.
 */
export class Teller {
  readonly told: ToldEntry[] = []
  private readonly folding: Fold = createFold()
  private readonly devices = new Map<string, DeviceState>()
  private readonly keys = new Map<string, string>()
  private readonly dice: Dice
  private stored = 0

  constructor(private readonly input: TellerInput) {
    this.dice = new Dice(input.seed)
  }

  /** @throws Error where a hold or a close is told too early: it names what is missing. */
  tell(act: Act | SignDifferences): void {
    if ('differencesOf' in act) {
      this.signDifferences(act)
      return
    }
    const about = act.aboutKey === undefined ? undefined : this.keys.get(act.aboutKey)
    const draft = about === undefined ? act.draft : { ...act.draft, about }
    if (draft.kind === 'close') this.readyCard(draft, act.at)
    const entry = this.make(act.device, act.person, draft, act.at)
    if (act.key !== undefined) this.keys.set(act.key, entry.id)
    if (draft.kind === 'request') this.open(act, entry)
  }

  state(): YardState {
    return this.folding.state()
  }

  private signDifferences({ differencesOf: subject, reason, at, device, person }: SignDifferences): void {
    const { card, facts } = this.card(subject, 'strip', at)
    const wanted = card.rows.filter(({ difference }) => difference?.may)
    for (const [index, row] of wanted.entries())
      this.make(
        device,
        person,
        {
          kind: 'difference',
          subject,
          step: 'strip',
          check: row.id,
          ...(facts.revision === null ? {} : { revision: facts.revision }),
          value: differenceValue(row, facts.drawing?.lifting?.reference ?? ''),
          reason: reason(row),
        },
        at + index * 8000,
      )
  }

  private open(act: Act, request: Entry): void {
    const { draft } = act
    const { card, plan } = this.readyCard(draft, act.at)
    this.make(
      RECORD_DEVICE,
      act.person,
      {
        kind: 'opening',
        subject: draft.subject,
        ...(draft.step === undefined ? {} : { step: draft.step }),
        value: null,
        about: request.id,
        rests: [...new Set([...card.rests, request.id])],
        ...(draft.revision === undefined ? {} : { revision: draft.revision }),
        edition: plan.editions.join('; ').slice(0, 200),
      },
      this.stored,
    )
  }

  private card(subject: Draft['subject'], step: StepId, at: number) {
    const state = this.folding.state()
    const facts = state.panels.get(subject.id)
    if (facts === undefined) throw new Error(`${step} of ${subject.id}: found no panel`)
    const plan = this.input.planOf(facts, state)
    const card = cardOf({ plan, step, facts, yard: state.yard, now: new Date(at).toISOString() })
    return { card, plan, facts }
  }

  private readyCard({ subject, step, kind }: Draft, at: number) {
    if (step === undefined) throw new Error(`${kind} of ${subject.id}: found no step`)
    const { card, plan } = this.card(subject, step, at)
    if (!card.ready)
      throw new Error(
        `${kind} of ${step}, ${subject.id}: expected a ready card, found ${card.state}: ${card.missing.join('; ')}`,
      )
    return { card, plan }
  }

  private make(device: string, person: DemoPerson, draft: Draft, at: number): Entry {
    const state = this.devices.get(device) ?? { ...newDevice(device), clockOffset: 0 }
    const made = makeEntry({
      device: state,
      person,
      yard: this.input.yard,
      now: at,
      draft,
      nextId: (now) => this.ulid(now),
    })
    this.devices.set(device, made.device)
    const wait = device === RECORD_DEVICE ? 1 : Math.round(this.dice.between(900, 4800))
    this.stored = Math.max(at + wait, this.stored + 1)
    const stored = new Date(this.stored).toISOString()
    this.folding.add([{ ...made.entry, stored, index: this.told.length } satisfies StoredEntry])
    this.told.push({ ...made.entry, stored })
    return made.entry
  }

  private ulid(now: number): string {
    let time = ''
    for (let left = now, i = 0; i < 10; i += 1, left = Math.floor(left / 32))
      time = ALPHABET[left % 32] + time
    return time + Array.from({ length: 16 }, () => ALPHABET[Math.floor(this.dice.next() * 32)]).join('')
  }
}

/** Fingerprint of a told history: the hash of its last entry on each device, by device. */
export function chainEnds(told: readonly ToldEntry[]): Readonly<Record<string, string>> {
  const ends: Record<string, string> = {}
  for (const { stored: _, ...entry } of told) ends[entry.device.id] = entryHash(entry)
  return ends
}

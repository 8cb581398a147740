import {
  createFold,
  type DeviceState,
  type Draft,
  entryHash,
  type Fold,
  makeEntry,
  newDevice,
  type Person,
  type StoredEntry,
  type YardState,
} from '@castwright/record'
import type { AppendResult, Store } from '@castwright/record/store'
import { type Clock, instantOf } from '../door/clock.ts'
import { type CardMaker, panelCard } from './cards.ts'
import type { Notices } from './notices.ts'
import { Turns } from './turns.ts'

/** The device that entries made by the server itself come from: openings, and what is imported. */
export const RECORD_DEVICE = 'record'

const PAGE = 2000

export interface YardLogInput {
  readonly store: Store
  readonly clock: Clock
  readonly notices: Notices
  /** How a card is made from the record; the engine's where not given. */
  readonly makeCard?: CardMaker
}

/**
 * The log of the yard with its fold beside it. What reads the state and then writes takes a turn, so that nothing of this
 * process comes between.
 */
export class YardLog {
  readonly store: Store
  readonly clock: Clock
  readonly makeCard: CardMaker
  private readonly notices: Notices
  private readonly turns = new Turns()
  private readonly reading = new Turns()
  private readonly folding: Fold = createFold()
  private folded = 0
  private device: DeviceState = { ...newDevice(RECORD_DEVICE), clockOffset: 0 }

  constructor({ store, clock, notices, makeCard = panelCard }: YardLogInput) {
    this.makeCard = makeCard
    this.store = store
    this.clock = clock
    this.notices = notices
  }

  now(): string {
    return instantOf(this.clock)
  }

  /** One writer at a time. */
  turn<T>(act: () => Promise<T>): Promise<T> {
    return this.turns.take(act)
  }

  async idle(): Promise<void> {
    await this.turns.idle()
    await this.reading.idle()
  }

  /** The state by everything that is in the record now, other processes' entries included. */
  state(): Promise<YardState> {
    return this.reading.take(async () => {
      for (;;) {
        const page = await this.store.read({ after: this.folded - 1, limit: PAGE })
        this.folding.add(page)
        for (const entry of page) this.follow(entry)
        this.folded += page.length
        if (page.length < PAGE) return this.folding.state()
      }
    })
  }

  async append(entries: readonly unknown[]): Promise<AppendResult[]> {
    const results = await this.store.append(entries, { now: this.now() })
    if (results.some(({ status }) => status === 'stored')) this.notices.tell(await this.store.size())
    return results
  }

  /** Makes entries of the server's own and stores them, all in one. Within a turn. */
  async make(person: Person, drafts: readonly Draft[]): Promise<StoredEntry[]> {
    await this.state()
    let device = this.device
    const entries = drafts.map((draft) => {
      const made = makeEntry({ device, person, yard: this.store.yard, now: this.clock(), draft })
      device = made.device
      return made.entry
    })
    const results = await this.append(entries)
    return results.map((result) => {
      if (result.status !== 'stored') {
        throw new Error(`an entry made here was ${result.status}: ${JSON.stringify(result)}`)
      }
      return result.stored
    })
  }

  private follow(entry: StoredEntry): void {
    if (entry.device.id !== RECORD_DEVICE || entry.device.counter <= this.device.counter) return
    this.device = {
      id: RECORD_DEVICE,
      counter: entry.device.counter,
      previous: entryHash(entry),
      clockOffset: 0,
    }
  }
}

import type { PanelFacts, YardFacts } from '@castwright/engine/steps'
import { deviceFlags, newSeenDevice, type SeenDevice, seeOn } from './devices.ts'
import { docketFlags } from './docket-flags.ts'
import type { Role } from './entry.ts'
import { type Flag, sortFlags } from './flags.ts'
import { type Docket, type FoldedPanel, foldPanel, type Photo } from './fold-panel.ts'
import { type FoldedSteel, foldSteel, isSteel, type SteelState } from './fold-steel.ts'
import { type FoldedYard, foldYard, type JobFacts, type WeatherReading } from './fold-yard.ts'
import { type AnyEntry, compareEntries, isStored } from './order.ts'

/** Somebody who made entries, as last seen. */
export interface PersonSeen {
  readonly id: string
  readonly name: string
  readonly role: Role
  readonly entries: number
  readonly lastSeen: string
}

/** Everything that the entries of one yard say. Nothing in it is stored: it is folded again from the entries. */
export interface YardState {
  readonly yard: YardFacts
  /** By `<job>/<mark>`, in that order. */
  readonly panels: ReadonlyMap<string, PanelFacts>
  readonly jobs: ReadonlyMap<string, JobFacts>
  readonly people: ReadonlyMap<string, PersonSeen>
  /** In order of time. */
  readonly weather: readonly WeatherReading[]
  readonly forecast: readonly WeatherReading[]
  /** By `<job>/<mark>`. */
  readonly dockets: ReadonlyMap<string, readonly Docket[]>
  readonly photos: ReadonlyMap<string, readonly Photo[]>
  readonly passports: ReadonlyMap<string, FoldedPanel['passports']>
  /** Bundles, rack, cutting plans, and which panel holds whose steel. */
  readonly steel: SteelState
  readonly flags: readonly Flag[]
  /** Entries that are folded in. */
  readonly size: number
}

export interface Fold {
  /** Takes entries in any order; those known already change nothing, a stored one takes the place of its kept copy. */
  add(entries: Iterable<AnyEntry>): void
  /** The state now. Panels that nothing new speaks of are the same objects as before. */
  state(): YardState
}

/**
 * The state that a set of entries says: the same whatever order they come in and however often.
 *
 * Entries have passed `parseEntry`. All are of one yard. What breaks a rule is left out and flagged.
 */
export function fold(entries: Iterable<AnyEntry>): YardState {
  const folding = createFold()
  folding.add(entries)
  return folding.state()
}

/** A fold that takes entries as they come and folds again only the panels that they speak of. */
export function createFold(): Fold {
  const byId = new Map<string, AnyEntry>()
  const twice = new Map<string, Flag>()
  const panels = new Map<string, AnyEntry[]>()
  let others: AnyEntry[] = []
  let steelEntries: AnyEntry[] = []
  const devices = new Map<string, SeenDevice>()
  const people = new Map<string, Maker>()
  const folded = new Map<string, FoldedPanel>()
  const dirty = new Set<string>()
  let yard: FoldedYard | null = null
  let yardBefore: FoldedYard | null = null
  let steel: FoldedSteel | null = null
  const withSteel = new Map<string, PanelWithSteel>()
  let state: YardState | null = null

  function place(entry: AnyEntry): void {
    byId.set(entry.id, entry)
    state = null
    if (entry.subject.kind === 'panel') {
      const { id } = entry.subject
      const bucket = panels.get(id)
      if (bucket) bucket.push(entry)
      else panels.set(id, [entry])
      dirty.add(id)
    } else if (isSteel(entry)) {
      steelEntries.push(entry)
      steel = null
    } else {
      others.push(entry)
      yard = null
    }
  }

  function see(entry: AnyEntry): void {
    const device = devices.get(entry.device.id) ?? newSeenDevice(entry.device.id)
    devices.set(device.id, device)
    seeOn(device, entry)
    const maker = people.get(entry.person.id)
    if (maker === undefined) people.set(entry.person.id, { last: entry, entries: 1 })
    else {
      maker.entries++
      if (compareEntries(entry, maker.last) > 0) maker.last = entry
    }
  }

  /** Puts an entry in the place of its other copy: mostly the stored one in that of the one kept here. */
  function replace(before: AnyEntry, entry: AnyEntry): void {
    const { id } = before.subject
    const without = (list: readonly AnyEntry[]) => list.filter((one) => one !== before)
    if (before.subject.kind === 'panel') {
      panels.set(id, without(panels.get(id) ?? []))
      dirty.add(id)
    } else if (isSteel(before)) {
      steelEntries = without(steelEntries)
      steel = null
    } else {
      others = without(others)
      yard = null
    }
    place(entry)
    if (sameFact(before, entry)) {
      const maker = people.get(entry.person.id)
      if (maker?.last === before) maker.last = entry
      const device = devices.get(entry.device.id)
      if (device?.offClock === before) device.offClock = entry
      return
    }
    people.clear()
    devices.clear()
    for (const one of byId.values()) see(one)
  }

  function addOne(entry: AnyEntry): void {
    const before = byId.get(entry.id)
    if (before === undefined) {
      place(entry)
      see(entry)
    }
    if (before === undefined || before === entry) return
    if (!sameFact(before, entry)) {
      state = null
      twice.set(entry.id, {
        kind: 'twice',
        panel: null,
        device: null,
        entries: [entry.id],
        text: 'One id came with two different contents.',
      })
    }
    if (standsBefore(entry, before)) {
      replace(before, entry)
    }
  }

  /** Folds the yard again; where a correction came, the panels whose holds may have rested on what it corrects go with it. */
  function foldOthers(): FoldedYard {
    const before = yardBefore?.corrections ?? []
    const now = foldYard(others)
    yardBefore = now
    const same =
      before.length === now.corrections.length &&
      before.every(({ entry }, at) => entry === now.corrections[at]?.entry)
    if (!same)
      for (const [id, { facts }] of folded)
        if (facts.steps.set.opening || facts.steps.strip.opening) dirty.add(id)
    return now
  }

  function make(): YardState {
    yard ??= foldOthers()
    for (const id of dirty) {
      const bucket = panels.get(id)
      if (bucket && bucket.length > 0) folded.set(id, foldPanel(id, bucket, yard.corrections))
      else folded.delete(id)
    }
    dirty.clear()
    steel ??= foldSteel(steelEntries)
    const { byPanel } = steel.state
    const flags: Flag[] = [...twice.values(), ...yard.flags, ...steel.flags]
    for (const panel of folded.values()) for (const flag of panel.flags) flags.push(flag)
    flags.push(...docketFlags([...folded.values()].map(({ facts }) => facts)))
    for (const device of devices.values()) flags.push(...deviceFlags(device))
    for (const [id, its] of byPanel) flags.push(...steelFlags(id, its, folded.get(id)?.facts))
    const ids = [...folded.keys()].sort()
    const pick = <T>(read: (panel: FoldedPanel) => T): Map<string, T> =>
      new Map(ids.map((id) => [id, read(folded.get(id) as FoldedPanel)]))
    return {
      yard: yard.facts,
      panels: new Map(ids.map((id) => [id, factsOf(id, byPanel.get(id))])),
      jobs: yard.jobs,
      people: peopleOf(people),
      weather: yard.weather,
      forecast: yard.forecast,
      dockets: pick((panel) => panel.dockets),
      photos: pick((panel) => panel.photos),
      passports: pick((panel) => panel.passports),
      steel: steel.state,
      flags: sortFlags(flags),
      size: byId.size,
    }
  }

  /** Facts of a panel with its steel; the same object as before where neither changed. */
  function factsOf(id: string, its: PanelFacts['steel']): PanelFacts {
    const { facts } = folded.get(id) as FoldedPanel
    if (its === undefined) return facts
    const before = withSteel.get(id)
    if (before?.from === facts && before.steel === its) return before.facts
    const text = JSON.stringify(its)
    if (before?.from === facts && before.text === text) return before.facts
    const made = { from: facts, steel: its, text, facts: { ...facts, steel: its } }
    withSteel.set(id, made)
    return made.facts
  }

  return {
    add(entries) {
      for (const entry of entries) addOne(entry)
    },
    state() {
      state ??= make()
      return state
    },
  }
}

/** Bundles that somebody kept apart after the panel with their steel was cleared for the pour. The panel is not loaded until that is decided. */
function steelFlags(panel: string, steel: NonNullable<PanelFacts['steel']>, facts?: PanelFacts): Flag[] {
  const opening = facts?.steps.set.opening ?? null
  if (opening === null) return []
  return steel.flatMap(({ bundle, decisions }): Flag[] => {
    const last = decisions.at(-1)
    if (last === undefined || last.decision === 'accept' || opening.rests.includes(last.entry)) return []
    const text = `Bundle ${bundle}, whose steel is in this panel, was kept apart after set was opened.`
    return [{ kind: 'late', panel, device: null, entries: [last.entry], text }]
  })
}

interface PanelWithSteel {
  readonly from: PanelFacts
  readonly steel: PanelFacts['steel']
  readonly text: string
  readonly facts: PanelFacts
}

interface Maker {
  last: AnyEntry
  entries: number
}

function peopleOf(people: ReadonlyMap<string, Maker>): ReadonlyMap<string, PersonSeen> {
  return new Map(
    [...people]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([id, { last, entries }]) => [
        id,
        { id, name: last.person.name, role: last.person.role, entries, lastSeen: last.seen },
      ]),
  )
}

/** The same fact, whether stored or still kept on the device. */
function sameFact(a: AnyEntry, b: AnyEntry): boolean {
  return factText(a) === factText(b)
}

function factText(entry: AnyEntry): string {
  const { stored: _stored, index: _index, ...fact } = entry as AnyEntry & { stored?: string; index?: number }
  return JSON.stringify(fact, (_key, value: unknown) =>
    value !== null && typeof value === 'object' && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([x], [y]) => (x < y ? -1 : 1)))
      : value,
  )
}

/** Of two copies of one id: stored before kept, earlier in the log before later, then by text, so that all agree. */
function standsBefore(entry: AnyEntry, before: AnyEntry): boolean {
  if (isStored(entry) !== isStored(before)) return isStored(entry)
  if (isStored(entry) && isStored(before) && entry.index !== before.index) return entry.index < before.index
  return factText(entry) < factText(before)
}

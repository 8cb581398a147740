import { panelOf } from '@castwright/engine/panel'
import { panelStep } from '@castwright/engine/steps'
import { InputError, type InputIssue } from '@castwright/engine/working'
import {
  type Entry,
  entryHash,
  mayMake,
  type Person,
  parseEntry,
  type StoredEntry,
  type ValueOf,
} from '@castwright/record'
import type { YardLog } from './yard-log.ts'

/** What became of one entry that was sent. */
export interface EntryResult {
  readonly id: string
  readonly status: 'stored' | 'known' | 'refused'
  readonly index?: number
  readonly stored?: StoredEntry
  readonly reason?: string
  readonly issues?: readonly InputIssue[]
  /** Of a request: whether the hold opened by it, and what kept it shut. */
  readonly opened?: boolean
  readonly missing?: readonly string[]
}

export interface Opening {
  readonly opened: boolean
  readonly opening: StoredEntry | null
  readonly missing: readonly string[]
}

/**
 * Takes the entries of the person who is signed in, each on its own: one that is refused stops no other. Results are in
 * the order of what was sent. A close needs its card to be ready, a request opens its hold if it is, both by what the record
 * holds at that moment.
 */
export function acceptEntries(
  log: YardLog,
  person: Person,
  sent: readonly unknown[],
): Promise<EntryResult[]> {
  return log.turn(async () => {
    const results: (EntryResult | undefined)[] = sent.map(() => undefined)
    const waiting: { readonly place: number; readonly entry: Entry }[] = []
    const batch = new Map<string, Entry>()

    /** Entries that need no look at a card go in together: one sync of the disk for all of them. */
    async function flush(): Promise<void> {
      if (waiting.length === 0) return
      const taken = waiting.splice(0)
      const appended = await log.append(taken.map(({ entry }) => entry))
      for (const [i, result] of appended.entries()) {
        const place = taken[i]?.place
        if (place !== undefined) results[place] = result
      }
    }

    for (const [place, raw] of sent.entries()) {
      const read = readEntry(raw)
      if ('status' in read) {
        results[place] = read
        continue
      }
      const entry = read
      const refused = (await strangeness(log, person, entry, batch)) ?? null
      if (refused !== null) {
        results[place] = refused
        continue
      }
      batch.set(entry.id, entry)
      if (entry.kind !== 'close' && entry.kind !== 'request') {
        waiting.push({ place, entry })
        continue
      }
      await flush()
      results[place] =
        entry.kind === 'close' ? await acceptClose(log, entry) : await acceptRequest(log, entry)
    }
    await flush()
    return results.map((result, place) => result ?? refusal(sent[place], 'not looked at'))
  })
}

/** Stores a request and opens its hold if every condition is met by what the record holds. Within the same turn. */
export function signRequest(log: YardLog, entry: Entry): Promise<{ readonly result: EntryResult } & Opening> {
  return log.turn(async () => {
    const refused = await strangeness(log, entry.person, entry, new Map())
    if (refused !== null) return { result: refused, opened: false, opening: null, missing: [] }
    const [result] = await log.append([entry])
    if (result === undefined || result.status === 'refused') {
      return { result: result ?? refusal(entry, 'not stored'), opened: false, opening: null, missing: [] }
    }
    return { result, ...(await openIfReady(log, result.stored)) }
  })
}

function readEntry(raw: unknown): Entry | EntryResult {
  try {
    const entry = parseEntry(raw)
    // What a schema cannot say of a drawing: that its concrete is one piece.
    if (entry.kind === 'drawing') panelOf(entry.value as ValueOf<'drawing'>)
    return entry
  } catch (error) {
    if (error instanceof InputError)
      return { ...refusal(raw, 'the entry does not fit its form'), issues: error.issues }
    throw error
  }
}

/** Why an entry may not come in from this person, or null. */
async function strangeness(
  log: YardLog,
  person: Person,
  entry: Entry,
  batch: ReadonlyMap<string, Entry>,
): Promise<EntryResult | null> {
  if (entry.yard !== log.store.yard) {
    return refusal(entry, `it is of yard ${entry.yard}; this is the log of ${log.store.yard}`)
  }
  const { id, name, role } = entry.person
  if (id !== person.id || name !== person.name || role !== person.role) {
    return refusal(entry, `it is by ${name} (${role}); ${person.name} (${person.role}) is signed in`)
  }
  if (entry.kind === 'opening') return refusal(entry, 'a hold is opened by the record alone')
  if (!mayMake(person.role, entry.kind, await targetOf(log, entry, batch))) {
    return refusal(
      entry,
      `a ${person.role} may not make a ${entry.kind} entry${entry.kind === 'correction' ? ' for that' : ''}`,
    )
  }
  return null
}

/** The entry that a correction speaks of in the end, where it is here. */
async function targetOf(
  log: YardLog,
  entry: Entry,
  batch: ReadonlyMap<string, Entry>,
): Promise<Entry | undefined> {
  let at: Entry | undefined = entry
  // Corrections of corrections: no chain is longer, and a ring ends here too.
  for (let step = 0; step < 1000 && at?.kind === 'correction'; step++) {
    const about: string | undefined = at.about
    if (about === undefined) return undefined
    at = batch.get(about) ?? (await log.store.find([about]))[0]
  }
  return at === entry ? undefined : at
}

async function acceptClose(log: YardLog, entry: Entry): Promise<EntryResult> {
  const shut = (await isKnown(log, entry)) ? null : await notReady(log, entry)
  if (shut !== null)
    return { ...refusal(entry, `the step cannot be closed: ${shut.join('; ')}`), missing: shut }
  const [result] = await log.append([entry])
  return result ?? refusal(entry, 'not stored')
}

async function acceptRequest(log: YardLog, entry: Entry): Promise<EntryResult> {
  const [result] = await log.append([entry])
  if (result === undefined) return refusal(entry, 'not stored')
  if (result.status !== 'stored') return result
  const { opened, missing } = await openIfReady(log, result.stored)
  return { ...result, opened, missing }
}

async function isKnown(log: YardLog, entry: Entry): Promise<boolean> {
  const [known] = await log.store.find([entry.id])
  return known !== undefined && entryHash(known) === entryHash(entry)
}

/** What a step still waits for, or null where it may be closed. */
async function notReady(
  log: YardLog,
  { subject, step, revision, person }: Entry,
): Promise<readonly string[] | null> {
  if (step === undefined) return ['the step is not named']
  const found = log.makeCard(await log.state(), subject.id, step, log.now())
  if ('missing' in found) return [found.missing]
  const { card, facts } = found
  if (revision !== (facts.revision ?? undefined)) return [revisionGap(revision, facts.revision)]
  if (!card.entitled.includes(person.role)) return [`signed by ${card.entitled.join(' or ')}`]
  if (card.state === 'done' || card.ready) return null
  return card.missing.length > 0 ? card.missing : [card.answer]
}

/** Opens the hold that a stored request asks for, or says what keeps it shut. Called within the writer's turn. */
async function openIfReady(log: YardLog, request: StoredEntry): Promise<Opening> {
  const shut = (missing: readonly string[]): Opening => ({ opened: false, opening: null, missing })
  const { step, subject, person } = request
  if (step === undefined || !panelStep(step).hold) return shut(['a hold point'])
  const found = log.makeCard(await log.state(), subject.id, step, log.now())
  if ('missing' in found) return shut([found.missing])
  const { card, facts, plan } = found
  if (card.state === 'done') {
    const open = facts.steps[step].opening
    const [opening] = open === null ? [] : await log.store.find([open.entry])
    return { opened: opening !== undefined, opening: opening ?? null, missing: [] }
  }
  if (request.revision !== (facts.revision ?? undefined)) {
    return shut([revisionGap(request.revision, facts.revision)])
  }
  if (!card.entitled.includes(person.role)) return shut([`signed by ${card.entitled.join(' or ')}`])
  if (!card.ready) return shut(card.missing.length > 0 ? card.missing : [card.answer])
  const edition = plan.editions.join('; ').slice(0, 200)
  const [opening] = await log.make(person, [
    {
      kind: 'opening',
      subject,
      step,
      value: null,
      about: request.id,
      rests: [...new Set([...card.rests, request.id])],
      ...(facts.revision === null ? {} : { revision: facts.revision }),
      ...(edition === '' ? {} : { edition }),
    },
  ])
  return { opened: opening !== undefined, opening: opening ?? null, missing: [] }
}

function revisionGap(found: string | undefined, inForce: string | null): string {
  return `signed for revision ${found ?? 'none'}; ${inForce ?? 'none'} is in force`
}

function refusal(raw: unknown, reason: string): EntryResult {
  const id = (raw as { readonly id?: unknown } | null)?.id
  return { id: typeof id === 'string' ? id : '', status: 'refused', reason }
}

import { createHash } from 'node:crypto'
import type { Kysely, Transaction } from 'kysely'
import { canonicalText } from '../canonical.ts'
import type { Entry, StoredEntry } from '../entry.ts'
import { type Hash, toHex } from '../hash.ts'
import { appendLeaf, frontierOf, leafHash, type TreeNode } from '../merkle.ts'
import { readNodes } from './nodes.ts'
import type { AppendResult } from './store.ts'
import type { RecordTables } from './tables.ts'

/** node:crypto, some ten times as fast as the browser's. */
export const nodeHash256: Hash = (bytes) => createHash('sha256').update(bytes).digest()

/** Entries of one caller, with the time that the record gives them. */
export interface Submission {
  readonly entries: readonly HashedEntry[]
  readonly now: string
}

/** An entry with the hash that its device's next one points back at; made before the transaction, so that nothing in it can fail. */
export interface HashedEntry {
  readonly entry: Entry
  readonly hash: string
}

/** Rows a statement: far below the 32,766 values of SQLite and the 65,535 of PostgreSQL. */
const ROWS = 500

type EntryRow = RecordTables['entries']
type NodeRow = RecordTables['nodes']

/** Takes many submissions in with one transaction, so with one sync of the disk. One result an entry, in their order. */
export async function appendAll(
  db: Kysely<RecordTables>,
  yard: string,
  submissions: readonly Submission[],
): Promise<AppendResult[][]> {
  return db.transaction().execute(async (tx) => {
    // Writing first takes the lock at once, on both engines: nobody else numbers leaves until this commits.
    const { size } = await tx
      .updateTable('yards')
      .set((row) => ({ size: row.ref('size') }))
      .where('yard', '=', yard)
      .returning('size')
      .executeTakeFirstOrThrow()
    const offered = submissions.flatMap(({ entries }) => entries.map(({ entry }) => entry))
    const known = await knownOf(
      tx,
      yard,
      offered.map(({ id }) => id),
    )
    const hashes = await chainsBefore(tx, yard, offered)
    let frontier = await frontierAt(tx, yard, size)
    let next = size
    const entryRows: EntryRow[] = []
    const nodeRows: NodeRow[] = []

    const results = submissions.map(({ entries, now }) =>
      entries.map(({ entry, hash }): AppendResult => {
        const before = known.get(entry.id)
        if (before !== undefined) return knownResult(entry, hash, before, hashes)
        const stored: StoredEntry = { ...entry, stored: now, index: next }
        const body = canonicalText(stored)
        const leaf = leafHash(new TextEncoder().encode(body), nodeHash256)
        const grown = appendLeaf(frontier, leaf, nodeHash256)
        frontier = grown.frontier
        for (const node of grown.made.slice(1)) nodeRows.push(nodeRow(yard, node))
        const chain = chainOf(entry, hashes)
        keepHash(hashes, entry, hash)
        entryRows.push(entryRow({ yard, entry, position: next, hash, leaf: toHex(leaf), body }))
        known.set(entry.id, { stored, hash })
        next++
        return { id: entry.id, status: 'stored', index: stored.index, stored, chain }
      }),
    )
    if (entryRows.length > 0) {
      for (const rows of slices(entryRows)) await tx.insertInto('entries').values(rows).execute()
      for (const rows of slices(nodeRows)) await tx.insertInto('nodes').values(rows).execute()
      await tx.updateTable('yards').set({ size: next }).where('yard', '=', yard).execute()
    }
    return results
  })
}

interface KnownEntry {
  readonly stored: StoredEntry
  readonly hash: string
}

/** Hashes in each place of the devices' chains, by device and counter. */
type ChainHashes = Map<string, Set<string>>

function knownResult(entry: Entry, hash: string, before: KnownEntry, hashes: ChainHashes): AppendResult {
  if (before.hash !== hash) {
    return {
      id: entry.id,
      status: 'refused',
      reason: 'another entry with this id is in the record',
      issues: [{ path: 'id', found: JSON.stringify(entry.id), expected: 'an id used once' }],
    }
  }
  const { stored } = before
  return { id: entry.id, status: 'known', index: stored.index, stored, chain: chainOf(entry, hashes) }
}

function chainOf({ device }: Entry, hashes: ChainHashes): 'follows' | 'gap' | 'fork' {
  const here = hashes.get(placeOf(device.id, device.counter))
  if (here !== undefined && here.size > 1) return 'fork'
  if (device.counter === 1) return device.previous === null ? 'follows' : 'fork'
  const before = hashes.get(placeOf(device.id, device.counter - 1))
  if (before === undefined) return 'gap'
  return before.has(device.previous ?? '') ? 'follows' : 'fork'
}

function placeOf(device: string, counter: number): string {
  return `${counter} ${device}`
}

function keepHash(hashes: ChainHashes, { device }: Entry, hash: string): void {
  const place = placeOf(device.id, device.counter)
  hashes.set(place, (hashes.get(place) ?? new Set()).add(hash))
}

async function knownOf(
  tx: Transaction<RecordTables>,
  yard: string,
  ids: readonly string[],
): Promise<Map<string, KnownEntry>> {
  const known = new Map<string, KnownEntry>()
  for (const some of slices(ids)) {
    const rows = await tx
      .selectFrom('entries')
      .select(['id', 'hash', 'body'])
      .where('yard', '=', yard)
      .where('id', 'in', some)
      .execute()
    for (const { id, hash, body } of rows) known.set(id, { stored: JSON.parse(body) as StoredEntry, hash })
  }
  return known
}

async function chainsBefore(
  tx: Transaction<RecordTables>,
  yard: string,
  entries: readonly Entry[],
): Promise<ChainHashes> {
  const spans = new Map<string, { from: number; to: number }>()
  for (const { device } of entries) {
    const span = spans.get(device.id) ?? { from: device.counter, to: device.counter }
    spans.set(device.id, { from: Math.min(span.from, device.counter), to: Math.max(span.to, device.counter) })
  }
  const hashes: ChainHashes = new Map()
  for (const [device, { from, to }] of spans) {
    const rows = await tx
      .selectFrom('entries')
      .select(['counter', 'hash'])
      .where('yard', '=', yard)
      .where('device', '=', device)
      .where('counter', '>=', from - 1)
      .where('counter', '<=', to)
      .execute()
    for (const { counter, hash } of rows) {
      const place = placeOf(device, counter)
      hashes.set(place, (hashes.get(place) ?? new Set()).add(hash))
    }
  }
  return hashes
}

export async function frontierAt(db: Kysely<RecordTables>, yard: string, size: number): Promise<TreeNode[]> {
  const ids = frontierOf(size)
  const read = await readNodes(db, yard, ids)
  return ids.map((id) => ({ ...id, hash: read(id) }))
}

function nodeRow(yard: string, { level, index, hash }: TreeNode): NodeRow {
  return { yard, level, position: index, hash: toHex(hash) }
}

function entryRow(input: {
  yard: string
  entry: Entry
  position: number
  hash: string
  leaf: string
  body: string
}): EntryRow {
  const { yard, entry, position, hash, leaf, body } = input
  const { id, kind, subject, device } = entry
  return {
    yard,
    position,
    id,
    kind,
    subject: `${subject.kind} ${subject.id}`,
    device: device.id,
    counter: device.counter,
    hash,
    leaf,
    body,
  }
}

function slices<T>(items: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(items.length / ROWS) }, (_, index) =>
    items.slice(index * ROWS, (index + 1) * ROWS),
  )
}

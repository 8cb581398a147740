import type { Entry, Role } from './entry.ts'
import type { Flag } from './flags.ts'
import { type AnyEntry, compareEntries } from './order.ts'
import { mayMake, mayOpen } from './roles.ts'
import { isValueOf } from './values.ts'

/** One entry and its corrections: what it says now. */
export interface Chain<V = unknown> {
  readonly root: AnyEntry
  /** Root or the correction in force. */
  readonly tip: AnyEntry
  /** What it says; the root's value where nothing corrects it. */
  readonly value: V
  /** Ids before the tip, oldest first. */
  readonly corrects: readonly string[]
}

export interface Chains {
  /** By kind of the root, in order of the tips. Those taken back are left out. */
  readonly live: ReadonlyMap<Entry['kind'], readonly Chain[]>
  /** Root of every correction that has one. */
  readonly rootOf: ReadonlyMap<string, AnyEntry>
  readonly flags: readonly Flag[]
}

/** Kinds that take no new value, only taking back (`null`), since they are signatures and not readings. */
const SIGNED_ONLY: ReadonlySet<Entry['kind']> = new Set([
  'close',
  'request',
  'decision',
  'docket-decision',
  'design',
  'difference',
  'release',
])
/** Decisions that somebody of a lower role cannot take back. */
const RANKED: ReadonlySet<Entry['kind']> = new Set(['release', 'docket-decision'])
/** Kinds that nothing corrects: a new entry of the same kind or a disposition speaks instead. */
const FIXED: ReadonlySet<Entry['kind']> = new Set([
  'opening',
  'defect',
  'disposition',
  'inspection',
  'drawing',
  'yard',
  'job',
  'cut-plan',
  'passport',
])

/**
 * Applies corrections. `entries` are all of one subject, in order. A correction speaks for the whole chain that it points
 * into; the last one in order is in force. What its maker was not entitled to, or points nowhere, is left out and flagged.
 */
export function chainsOf(entries: readonly AnyEntry[], panel: string | null): Chains {
  const flags: Flag[] = []
  const byId = new Map(entries.map((entry) => [entry.id, entry]))
  const rootOf = new Map<string, AnyEntry>()
  const corrections = new Map<string, AnyEntry[]>()
  const flag = (kind: Flag['kind'], entry: AnyEntry, text: string) =>
    flags.push({ kind, panel, device: entry.device.id, entries: [entry.id], text })

  for (const entry of entries) {
    if (entry.kind !== 'correction') continue
    const root = rootFor(entry, byId)
    if (root === null || FIXED.has(root.kind) || !fits(entry, root)) {
      flag('astray', entry, 'A correction that fits nothing here.')
    } else if (!mayMake(entry.person.role, 'correction', root)) {
      flag('entitled', entry, `A ${entry.person.role} may not correct a ${root.kind}.`)
    } else if (RANKED.has(root.kind) && RANK[entry.person.role] < RANK[root.person.role]) {
      flag('entitled', entry, `A ${entry.person.role} may not take back what a ${root.person.role} decided.`)
    } else {
      rootOf.set(entry.id, root)
      const list = corrections.get(root.id)
      if (list) list.push(entry)
      else corrections.set(root.id, [entry])
    }
  }

  const live = new Map<Entry['kind'], Chain[]>()
  for (const root of entries) {
    if (root.kind === 'correction') continue
    const { role } = root.person
    if (root.kind === 'opening' ? !mayOpen(role) : !mayMake(role, root.kind)) {
      flag('entitled', root, `A ${role} may not make a ${root.kind}.`)
      continue
    }
    const after = corrections.get(root.id) ?? NONE
    const tip = after[after.length - 1] ?? root
    if (tip !== root && tip.value === null) continue
    const corrects = tip === root ? NO_IDS : [root.id, ...after.slice(0, -1).map(({ id }) => id)]
    const chain: Chain = { root, tip, value: tip.value, corrects }
    const list = live.get(root.kind)
    if (list) list.push(chain)
    else live.set(root.kind, [chain])
  }
  if (corrections.size > 0)
    for (const list of live.values()) list.sort((a, b) => compareEntries(a.tip, b.tip))
  return { live, rootOf, flags }
}

export const RANK: Readonly<Record<Role, number>> = { viewer: 0, floor: 1, lead: 2, engineer: 3 }
const NONE: readonly AnyEntry[] = []
const NO_IDS: readonly string[] = []

function rootFor(entry: AnyEntry, byId: ReadonlyMap<string, AnyEntry>): AnyEntry | null {
  const passed = new Set<string>()
  let at: AnyEntry | undefined = entry
  while (at !== undefined && at.kind === 'correction') {
    if (at.about === undefined || passed.has(at.id)) return null
    passed.add(at.id)
    at = byId.get(at.about)
  }
  return at ?? null
}

function fits(correction: AnyEntry, root: AnyEntry): boolean {
  if (correction.value === null) return true
  return !SIGNED_ONLY.has(root.kind) && isValueOf(root.kind, correction.value)
}

import type { DocketField, Load, LoadDecision } from '@castwright/engine/pour/loads'
import { type Chain, type Chains, RANK } from './chains.ts'
import type { Flag } from './flags.ts'
import { sameJson } from './same-json.ts'
import { signed } from './signed.ts'
import type { ValueOf } from './values.ts'

type DocketChain = Chain<ValueOf<'docket'>>

/** Words that no limit hangs on: two spellings of a truck are no two loads. */
const FREE: ReadonlySet<DocketField> = new Set(['number', 'supplier', 'truck', 'arrived', 'specimens'])

export interface FoldedLoads {
  readonly loads: readonly Load[]
  readonly flags: readonly Flag[]
}

/**
 * The loads of a panel's pour: all dockets of one number are one load, each field as it was said last. A correction speaks for the entry that it corrects.
 * Where two entries say different things of what is judged, the load says so and a flag is raised, until one of them is corrected.
 */
export function loadsOf(panel: string, chains: Chains): FoldedLoads {
  const flags: Flag[] = []
  const byNumber = new Map<string, DocketChain[]>()
  for (const chain of (chains.live.get('docket') ?? []) as readonly DocketChain[]) {
    const number = chain.value.number.trim()
    byNumber.set(number, [...(byNumber.get(number) ?? []), chain])
  }
  const decisions = decisionsOf(panel, chains, flags)
  const loads = [...byNumber].map(([number, parts]): Load => {
    const load = { ...joinedLoad(parts), number }
    const decision = parts.reduce<LoadDecision | null>(
      (found, { root }) => later(found, decisions.get(root.id) ?? null),
      null,
    )
    if (load.differs.length > 0)
      flags.push({
        kind: 'conflict',
        panel,
        device: null,
        entries: [...load.entries].sort(),
        text: `deliver: docket ${number} was recorded twice with different ${load.differs.join(', ')}; what was seen last is in force.`,
      })
    return { ...load, decision }
  })
  return { loads: loads.sort((a, b) => (a.number < b.number ? -1 : 1)), flags }
}

/** Parts in the order of their tips: what is said later counts. */
function joinedLoad(parts: readonly DocketChain[]): Omit<Load, 'decision'> {
  const words: Record<string, unknown> = {}
  const said: Partial<Record<DocketField, { entry: string; seen: string }>> = {}
  const differs = new Set<DocketField>()
  const specimens: string[] = []
  for (const { root, tip, value, corrects } of parts) {
    // What a single correction left as it was is as old as it was.
    const before = corrects.length === 1 ? (root.value as ValueOf<'docket'>) : null
    for (const field of Object.keys(value) as (keyof typeof value)[]) {
      const found = value[field]
      if (found === undefined) continue
      const known = words[field] !== undefined
      const same = known && sameJson(words[field], found)
      if (known && !same && !FREE.has(field)) differs.add(field)
      if (field === 'specimens') specimens.push(...(value.specimens ?? []))
      else words[field] = found
      if (same) continue
      const unchanged = before !== null && sameJson(before[field], found)
      said[field] = unchanged ? { entry: tip.id, seen: root.seen } : { entry: tip.id, seen: tip.seen }
    }
  }
  const last = parts[parts.length - 1] as DocketChain
  return {
    ...(words as unknown as ValueOf<'docket'>),
    ...(specimens.length > 0 ? { specimens: [...new Set(specimens)] } : {}),
    entry: last.tip.id,
    entries: parts.map(({ tip }) => tip.id),
    by: last.tip.person,
    seen: last.tip.seen,
    said,
    differs: [...differs].sort(),
  }
}

/** What was decided, by the id of the docket's first entry; in order, so that the later one of the same or a higher role stands. */
function decisionsOf(panel: string, chains: Chains, flags: Flag[]): ReadonlyMap<string, LoadDecision> {
  const dockets = new Set((chains.live.get('docket') ?? []).map(({ root }) => root.id))
  const found = new Map<string, LoadDecision>()
  const list = (chains.live.get('docket-decision') ?? []) as readonly Chain<ValueOf<'docket-decision'>>[]
  for (const { tip, root, value } of list) {
    const about = root.about ?? ''
    const docket = chains.rootOf.get(about)?.id ?? about
    const flag = (kind: Flag['kind'], text: string): void => {
      flags.push({ kind, panel, device: root.device.id, entries: [root.id], text })
    }
    if (!dockets.has(docket)) {
      flag('astray', 'A decision about a docket that is not here.')
      continue
    }
    const before = found.get(docket)
    if (before !== undefined && RANK[tip.person.role] < RANK[before.by.role]) {
      flag('entitled', `A ${tip.person.role} may not decide again what the ${before.by.role} decided.`)
      continue
    }
    found.set(docket, { ...signed(tip), decision: value.decision })
  }
  return found
}

/** Of two decisions on one load, made on two entries of its docket: the higher role, else the later one. */
function later(a: LoadDecision | null, b: LoadDecision | null): LoadDecision | null {
  if (a === null || b === null) return a ?? b
  const [x, y] = [RANK[a.by.role], RANK[b.by.role]]
  return x === y ? (a.seen > b.seen ? a : b) : x > y ? a : b
}

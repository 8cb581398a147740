import {
  type Bundle,
  type BundleDecision,
  heatKey,
  heatsOf,
  type PanelSteel,
} from '@castwright/engine/steel/incoming'
import type { Signer } from '@castwright/engine/steps'
import { type Chain, chainsOf } from './chains.ts'
import type { EntryKind } from './entry.ts'
import type { Flag } from './flags.ts'
import { type AnyEntry, compareEntries } from './order.ts'
import type { ValueOf } from './values.ts'

/** A bundle as it came, and what was decided about it. */
export interface BundleFacts {
  readonly id: string
  readonly entry: string
  readonly came: Bundle
  readonly by: Signer
  readonly seen: string
  /** In order of time. */
  readonly decisions: readonly BundleDecision[]
  /** Bars cut from it. */
  readonly cutBars: number
}

/** Offcuts of one length in the rack. */
export interface RackPiece {
  /** The entry that put them there. */
  readonly entry: string
  readonly diameter: number
  readonly grade: string
  readonly length: number
  /** Left in the rack. */
  readonly count: number
  /** Where they came from; null where nobody knows. */
  readonly bundle: string | null
}

export interface CutFacts {
  readonly cut: ValueOf<'cut'>
  readonly entry: string
  readonly by: Signer
  readonly seen: string
  /** The correction in force, or the entry itself. */
  readonly tip: string
  /** The bundle, also of a bar from the rack; null where nobody knows. */
  readonly bundle: string | null
  /** Entries that put the offcuts on the way there into the rack. */
  readonly through: readonly string[]
}

/** A cutting plan at the shear and how far it is. */
export interface CutPlanFacts {
  readonly entry: string
  readonly plan: ValueOf<'cut-plan'>
  readonly by: Signer
  readonly seen: string
  /** The entry of the plan that took its place. */
  readonly replacedBy: string | null
  /** Bars cut of each line, in the order of the lines. */
  readonly cut: readonly number[]
  readonly cuts: readonly CutFacts[]
}

export interface SteelState {
  /** By name, in its order. */
  readonly bundles: ReadonlyMap<string, BundleFacts>
  readonly rack: readonly RackPiece[]
  /** Oldest first. */
  readonly plans: readonly CutPlanFacts[]
  /** Oldest first. */
  readonly cuts: readonly CutFacts[]
  /** By `<job>/<mark>`: the bundles whose steel it holds. */
  readonly byPanel: ReadonlyMap<string, readonly PanelSteel[]>
  /** Names of bundles by heat number, as `heatKey` writes it. */
  readonly byHeat: ReadonlyMap<string, readonly string[]>
}

/** Bundles, rack and shear are folded apart from the yard, so that a cut does not fold the weather again. */
export function isSteel({ subject, kind }: AnyEntry): boolean {
  return subject.kind === 'bundle' || subject.kind === 'bar' || kind === 'cut-plan'
}

export interface FoldedSteel {
  readonly state: SteelState
  readonly flags: readonly Flag[]
}

/** Entries of bundles, rack and shear, corrections of them included, to what the yard has and where it went. In any order, each once. */
export function foldSteel(unordered: readonly AnyEntry[]): FoldedSteel {
  const entries = [...unordered].sort(compareEntries)
  const { live, flags: chainFlags } = chainsOf(entries, null)
  const flags: Flag[] = [...chainFlags]
  const of = <K extends EntryKind>(kind: K) => (live.get(kind) ?? []) as readonly Chain<ValueOf<K>>[]
  const cuts = cutsOf(of('cut'), of('rack'))
  const bundles = bundlesOf(of('bundle'), of('release'), cuts)
  return {
    state: {
      bundles,
      rack: rackOf(of('rack'), cuts, flags),
      plans: plansOf(of('cut-plan'), cuts, flags),
      cuts,
      byPanel: byPanel(cuts, of('used'), bundles),
      byHeat: byHeat(bundles),
    },
    flags,
  }
}

function cutsOf(
  chains: readonly Chain<ValueOf<'cut'>>[],
  racks: readonly Chain<ValueOf<'rack'>>[],
): CutFacts[] {
  const cutById = new Map(chains.map((chain) => [chain.root.id, chain]))
  const rackById = new Map(racks.map((chain) => [chain.root.id, chain]))
  const originOf = ({ value }: Chain<ValueOf<'cut'>>): Pick<CutFacts, 'bundle' | 'through'> => {
    const through: string[] = []
    let from = value.from
    // An offcut of an offcut leads back bar by bar; a ring of entries that name each other leads nowhere.
    while ('rack' in from) {
      if (through.includes(from.rack)) return { bundle: null, through }
      through.push(from.rack)
      const cut = cutById.get(from.rack)
      if (cut === undefined) return { bundle: rackById.get(from.rack)?.value.bundle ?? null, through }
      from = cut.value.from
    }
    return { bundle: from.bundle, through }
  }
  return chains.map((chain) => ({
    cut: chain.value,
    entry: chain.root.id,
    tip: chain.tip.id,
    by: chain.tip.person,
    seen: chain.tip.seen,
    ...originOf(chain),
  }))
}

function bundlesOf(
  came: readonly Chain<ValueOf<'bundle'>>[],
  releases: readonly Chain<ValueOf<'release'>>[],
  cuts: readonly CutFacts[],
): Map<string, BundleFacts> {
  const cutBars = new Map<string, number>()
  for (const {
    cut: { from, bars },
  } of cuts) {
    if ('bundle' in from) cutBars.set(from.bundle, (cutBars.get(from.bundle) ?? 0) + bars)
  }
  const decided = groupBy(releases, ({ root }) => root.subject.id)
  const latest = new Map(came.map((chain) => [chain.root.subject.id, chain]))
  return new Map(
    [...latest]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([id, { root, tip, value }]) => [
        id,
        {
          id,
          entry: tip.id,
          came: value,
          by: root.person,
          seen: root.seen,
          decisions: (decided.get(id) ?? []).map((chain) => ({
            entry: chain.tip.id,
            decision: chain.value.decision,
            by: chain.tip.person,
            seen: chain.tip.seen,
            reason: chain.tip.reason ?? null,
            stale: compareEntries(chain.tip, tip) < 0,
          })),
          cutBars: cutBars.get(id) ?? 0,
        },
      ]),
  )
}

function rackOf(
  racks: readonly Chain<ValueOf<'rack'>>[],
  cuts: readonly CutFacts[],
  flags: Flag[],
): RackPiece[] {
  const taken = new Map<string, number>()
  for (const {
    cut: { from, bars },
  } of cuts)
    if ('rack' in from) taken.set(from.rack, (taken.get(from.rack) ?? 0) + bars)
  const put: RackPiece[] = [
    ...racks.map(({ root, value }) => ({
      entry: root.id,
      diameter: value.diameter,
      grade: value.grade,
      length: value.length,
      count: value.count,
      bundle: value.bundle ?? null,
    })),
    ...cuts.flatMap(({ cut: { kept, offcut, bars, diameter, grade }, entry, bundle }) =>
      kept && offcut > 0 ? [{ entry, diameter, grade, length: offcut, count: bars, bundle }] : [],
    ),
  ]
  const there = new Set(put.map(({ entry }) => entry))
  for (const {
    cut: { from },
    entry,
  } of cuts) {
    if ('rack' in from && !there.has(from.rack))
      flags.push(astray(entry, 'A bar was cut that nobody put into the rack.'))
  }
  return put.flatMap((piece) => {
    const left = piece.count - (taken.get(piece.entry) ?? 0)
    if (left < 0) flags.push(astray(piece.entry, 'More bars were cut from the rack than lay there.'))
    return left > 0 ? [{ ...piece, count: left }] : []
  })
}

function plansOf(
  plans: readonly Chain<ValueOf<'cut-plan'>>[],
  cuts: readonly CutFacts[],
  flags: Flag[],
): CutPlanFacts[] {
  const replaced = new Map(
    plans.flatMap(({ root }) => (root.about === undefined ? [] : [[root.about, root.id]])),
  )
  const byPlan = groupBy(cuts, ({ cut: { plan } }) => plan ?? '')
  return plans.map(({ root, value }) => {
    const own = byPlan.get(root.id) ?? []
    const cut = value.lines.map(() => 0)
    for (const {
      cut: { line, bars },
      entry,
    } of own) {
      const at = (line ?? 0) - 1
      if (cut[at] === undefined) flags.push(astray(entry, 'A cut names a line that its plan does not have.'))
      else cut[at] += bars
    }
    return {
      entry: root.id,
      plan: value,
      by: root.person,
      seen: root.seen,
      replacedBy: replaced.get(root.id) ?? null,
      cut,
      cuts: own,
    }
  })
}

type Piece = PanelSteel['pieces'][number]

function byPanel(
  cuts: readonly CutFacts[],
  used: readonly Chain<ValueOf<'used'>>[],
  bundles: ReadonlyMap<string, BundleFacts>,
): Map<string, PanelSteel[]> {
  const found = new Map<string, Map<string | null, { pieces: Piece[]; entries: Set<string> }>>()
  const put = (panel: string, bundle: string | null, piece: Piece, saying: readonly string[]): void => {
    const here = found.get(panel) ?? new Map<string | null, { pieces: Piece[]; entries: Set<string> }>()
    found.set(panel, here)
    const one = here.get(bundle) ?? { pieces: [], entries: new Set<string>() }
    here.set(bundle, one)
    one.pieces.push(piece)
    for (const entry of saying) one.entries.add(entry)
  }
  for (const {
    cut: { bars, pieces },
    entry,
    tip,
    through,
    bundle,
  } of cuts) {
    const saying = through.length === 0 && entry === tip ? [entry] : [...through, entry, tip]
    for (const { panel, mark, length, count } of pieces) {
      if (panel !== undefined) put(panel, bundle, { mark: mark ?? null, length, count: count * bars }, saying)
    }
  }
  for (const { root, tip, value } of used) {
    put(value.panel, root.subject.id, { mark: value.mark ?? null, length: null, count: null }, [
      root.id,
      tip.id,
    ])
  }
  return new Map(
    [...found].map(([panel, here]) => [
      panel,
      [...here]
        .sort(([a], [b]) => ((a ?? '') < (b ?? '') ? -1 : 1))
        .map(([bundle, { pieces, entries }]) => {
          const facts = bundle === null ? undefined : bundles.get(bundle)
          const told = facts === undefined ? [] : [facts.entry, ...facts.decisions.map(({ entry }) => entry)]
          return {
            bundle,
            came: facts?.came ?? null,
            decisions: facts?.decisions ?? [],
            pieces,
            entries: [...entries, ...told],
          }
        }),
    ]),
  )
}

function byHeat(bundles: ReadonlyMap<string, BundleFacts>): Map<string, string[]> {
  const heats = new Map<string, Set<string>>()
  for (const { id, came } of bundles.values()) {
    for (const { heat } of heatsOf(came)) {
      const key = heatKey(heat)
      const here = heats.get(key) ?? new Set<string>()
      heats.set(key, here)
      here.add(id)
    }
  }
  return new Map([...heats].map(([heat, ids]) => [heat, [...ids]]))
}

/** Panels that hold steel of a heat, with the bundles that brought it there. */
export function panelsOfHeat(
  { byHeat: heats, byPanel: panels }: SteelState,
  heat: string,
): { readonly panel: string; readonly steel: readonly PanelSteel[] }[] {
  const bundles = new Set(heats.get(heatKey(heat)) ?? [])
  return [...panels].flatMap(([panel, steel]) => {
    const own = steel.filter(({ bundle }) => bundle !== null && bundles.has(bundle))
    return own.length > 0 ? [{ panel, steel: own }] : []
  })
}

function astray(entry: string, text: string): Flag {
  return { kind: 'astray', panel: null, device: null, entries: [entry], text }
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const item of items) {
    const key = keyOf(item)
    const group = groups.get(key)
    if (group) group.push(item)
    else groups.set(key, [item])
  }
  return groups
}

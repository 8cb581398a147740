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
import { barsThere, isSameSteel } from './shear.ts'
import type { ValueOf } from './values.ts'

/** A bundle as it came, and what was decided about it. */
export interface BundleFacts {
  readonly id: string
  readonly entry: string
  readonly came: Bundle
  readonly by: Signer
  readonly seen: string
  /** In order of time; none while another bundle has the same name, since nobody can tell which was meant. */
  readonly decisions: readonly BundleDecision[]
  /** Bars cut from it. */
  readonly cutBars: number
  /** Entries in force of other bundles that were recorded under this name. */
  readonly others: readonly string[]
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
  /** When it was first recorded. */
  readonly made: string
  /** The correction in force, or the entry itself. */
  readonly tip: string
  /** The bundle, also of a bar from the rack; null where nobody knows. */
  readonly bundle: string | null
  /** Entries that put the offcuts on the way there into the rack, with their corrections in force. */
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
  const bundles = bundlesOf(of('bundle'), of('release'), cuts, flags)
  flagCuts(cuts, { plans: of('cut-plan'), bundles, flags })
  return {
    state: {
      bundles,
      rack: rackOf(of('rack'), cuts, flags),
      plans: plansOf(of('cut-plan'), cuts, flags),
      cuts,
      byPanel: byPanel(cuts, of('used'), bundles),
      byHeat: byHeat(of('bundle')),
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
      const last = cut ?? rackById.get(from.rack)
      if (last !== undefined && last.tip !== last.root) through.push(last.tip.id)
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
    made: chain.root.seen,
    ...originOf(chain),
  }))
}

function bundlesOf(
  came: readonly Chain<ValueOf<'bundle'>>[],
  releases: readonly Chain<ValueOf<'release'>>[],
  cuts: readonly CutFacts[],
  flags: Flag[],
): Map<string, BundleFacts> {
  const cutBars = new Map<string, number>()
  for (const {
    cut: { from, bars },
  } of cuts) {
    if ('bundle' in from) cutBars.set(from.bundle, (cutBars.get(from.bundle) ?? 0) + bars)
  }
  const decided = groupBy(releases, ({ root }) => root.subject.id)
  const bundles = new Map<string, BundleFacts>()
  const named = groupBy(came, ({ root }) => root.subject.id)
  for (const [id, chains] of [...named].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const last = chains.at(-1)
    if (last === undefined) continue
    const { root, tip, value } = last
    const others = chains.slice(0, -1).map((chain) => chain.tip.id)
    if (others.length > 0) {
      const entries = chains.map((chain) => chain.root.id).sort()
      flags.push({
        ...astray('', `Two bundles were recorded as ${id}: one is taken back and named anew.`),
        entries,
      })
    }
    bundles.set(id, {
      id,
      entry: tip.id,
      came: value,
      by: root.person,
      seen: root.seen,
      decisions: others.length > 0 ? [] : (decided.get(id) ?? []).map((chain) => decisionOf(chain, tip)),
      cutBars: cutBars.get(id) ?? 0,
      others,
    })
  }
  return bundles
}

/** A decision names what it was made on; one that names nothing was made on what was there at its time. */
function decisionOf({ root, tip, value }: Chain<ValueOf<'release'>>, on: AnyEntry): BundleDecision {
  return {
    entry: tip.id,
    decision: value.decision,
    by: tip.person,
    seen: tip.seen,
    reason: tip.reason ?? null,
    stale: root.about === undefined ? compareEntries(tip, on) < 0 : root.about !== on.id,
  }
}

/** What cuts say that cannot be: it is told, and what they made stays where they say. */
function flagCuts(
  cuts: readonly CutFacts[],
  {
    plans,
    bundles,
    flags,
  }: {
    readonly plans: readonly Chain<ValueOf<'cut-plan'>>[]
    readonly bundles: ReadonlyMap<string, BundleFacts>
    readonly flags: Flag[]
  },
): void {
  const planById = new Map(plans.map(({ root, value }) => [root.id, value]))
  for (const { cut, entry, bundle } of cuts) {
    const plan = cut.plan === null ? undefined : planById.get(cut.plan)
    if (cut.plan !== null && plan === undefined)
      flags.push(astray(entry, 'A cut names a plan that is not here.'))
    if (plan !== undefined && !isSameSteel(cut, plan))
      flags.push(astray(entry, 'A cut is of other steel than its plan.'))
    const came = bundle === null ? undefined : bundles.get(bundle)?.came
    if (came !== undefined && !isSameSteel(cut, came.ordered))
      flags.push(astray(entry, `A cut is of other steel than bundle ${bundle}.`))
  }
  for (const facts of bundles.values()) {
    const there = barsThere(facts)
    if (there !== null && facts.cutBars > there)
      flags.push(astray(facts.entry, `More bars were cut from bundle ${facts.id} than it held.`))
  }
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
  const there = new Map(put.map((piece) => [piece.entry, piece]))
  for (const { cut, entry } of cuts) {
    if (!('rack' in cut.from)) continue
    const piece = there.get(cut.from.rack)
    if (piece === undefined) flags.push(astray(entry, 'A bar was cut that nobody put into the rack.'))
    else if (!isSameSteel(cut, piece) || cut.stock > piece.length + 0.5)
      flags.push(astray(entry, 'The bar that was cut is not the one that lay in the rack.'))
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
  const replaced = new Map<string, AnyEntry>()
  for (const { root } of plans) {
    if (root.about === undefined) continue
    if (replaced.has(root.about))
      flags.push(astray(root.id, 'Two plans took the place of one: their pieces would be cut twice.'))
    // The first one stands: what is cut after it was cut from a plan that had gone.
    else replaced.set(root.about, root)
  }
  const byPlan = groupBy(cuts, ({ cut: { plan } }) => plan ?? '')
  return plans.map(({ root, value }) => {
    const own = byPlan.get(root.id) ?? []
    const cut = value.lines.map(() => 0)
    const after = replaced.get(root.id)
    for (const {
      cut: { line, bars },
      entry,
      made,
    } of own) {
      if (after !== undefined && made > after.seen)
        flags.push(astray(entry, 'Cut from a plan after another took its place: count its pieces.'))
      const at = (line ?? 0) - 1
      if (cut[at] === undefined) flags.push(astray(entry, 'A cut names a line that its plan does not have.'))
      else cut[at] += bars
    }
    value.lines.forEach(({ count }, at) => {
      if ((cut[at] ?? 0) > count)
        flags.push(astray(root.id, `More bars were cut of line ${at + 1} than were planned.`))
    })
    return {
      entry: root.id,
      plan: value,
      by: root.person,
      seen: root.seen,
      replacedBy: after?.id ?? null,
      cut,
      cuts: own,
    }
  })
}

type Piece = PanelSteel['pieces'][number]

interface HereSteel {
  readonly pieces: Piece[]
  readonly entries: Set<string>
  /** Sizes and grades that the cuts name. */
  readonly cutAs: { readonly diameter: number; readonly grade: string }[]
}

function byPanel(
  cuts: readonly CutFacts[],
  used: readonly Chain<ValueOf<'used'>>[],
  bundles: ReadonlyMap<string, BundleFacts>,
): Map<string, PanelSteel[]> {
  const found = new Map<string, Map<string | null, HereSteel>>()
  const put = (panel: string, bundle: string | null, piece: Piece, saying: readonly string[]): HereSteel => {
    const here = found.get(panel) ?? new Map<string | null, HereSteel>()
    found.set(panel, here)
    const one = here.get(bundle) ?? { pieces: [], entries: new Set<string>(), cutAs: [] }
    here.set(bundle, one)
    one.pieces.push(piece)
    for (const entry of saying) one.entries.add(entry)
    return one
  }
  for (const {
    cut: { bars, pieces, diameter, grade },
    entry,
    tip,
    through,
    bundle,
  } of cuts) {
    const saying = through.length === 0 && entry === tip ? [entry] : [...through, entry, tip]
    for (const { panel, mark, length, count } of pieces) {
      if (panel === undefined) continue
      const here = put(panel, bundle, { mark: mark ?? null, length, count: count * bars }, saying)
      here.cutAs.push({ diameter, grade })
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
        .map(([bundle, { pieces, entries, cutAs }]) => {
          const facts = bundle === null ? undefined : bundles.get(bundle)
          const told =
            facts === undefined
              ? []
              : [facts.entry, ...facts.others, ...facts.decisions.map(({ entry }) => entry)]
          const doubt = facts === undefined ? null : doubtOf(facts, cutAs)
          return {
            bundle,
            came: facts?.came ?? null,
            decisions: facts?.decisions ?? [],
            pieces,
            entries: [...entries, ...told],
            ...(doubt === null ? {} : { doubt }),
          }
        }),
    ]),
  )
}

/** Why an acceptance of the bundle says nothing of the steel in the panel; null where it does. */
function doubtOf({ id, came, others }: BundleFacts, cutAs: HereSteel['cutAs']): string | null {
  if (others.length > 0) return `Two bundles were recorded as ${id}.`
  const other = cutAs.find((cut) => !isSameSteel(cut, came.ordered))
  return other === undefined
    ? null
    : `Cut as ${other.diameter} mm ${other.grade}, but bundle ${id} is ${came.ordered.diameter} mm ${came.ordered.grade}.`
}

/** Also of several bundles with one name: a recall must find each. */
function byHeat(came: readonly Chain<ValueOf<'bundle'>>[]): Map<string, string[]> {
  const heats = new Map<string, Set<string>>()
  for (const { root, value } of came) {
    for (const { heat } of heatsOf(value)) {
      const key = heatKey(heat)
      const here = heats.get(key) ?? new Set<string>()
      heats.set(key, here)
      here.add(root.subject.id)
    }
  }
  return new Map([...heats].map(([heat, ids]) => [heat, [...ids].sort()]))
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

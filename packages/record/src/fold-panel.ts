import type { Drawing } from '@castwright/engine/panel'
import {
  type Defect,
  emptyStepFacts,
  type PanelFacts,
  type Recorded,
  type Signed,
  STEP_IDS,
  type StepFacts,
  type StepId,
} from '@castwright/engine/steps'
import { type Chain, type Chains, chainsOf } from './chains.ts'
import type { EntryKind } from './entry.ts'
import type { Flag } from './flags.ts'
import { loadsOf } from './fold-loads.ts'
import { lateEntries, type OutsideCorrection } from './late.ts'
import { type AnyEntry, compareEntries, isStored, storedAt } from './order.ts'
import { sameJson } from './same-json.ts'
import { signed } from './signed.ts'
import { temperatureLogs } from './temperature-logs.ts'
import { panelOfSubject, type ValueOf } from './values.ts'

/** A delivery docket of a panel's pour, as typed in. */
export interface Docket extends ValueOf<'docket'> {
  readonly entry: string
  readonly by: Signed['by']
  readonly seen: string
}

/** Pictures with an entry of their own. */
export interface Photo extends Signed {
  readonly text: string | null
  readonly step: StepId | null
  readonly attachments: Recorded['attachments']
}

export interface FoldedPanel {
  readonly facts: PanelFacts
  readonly dockets: readonly Docket[]
  readonly photos: readonly Photo[]
  /** Passports handed over, oldest first. */
  readonly passports: readonly (Signed & { readonly sha256: string })[]
  readonly flags: readonly Flag[]
}

/**
 * All entries of one panel to its facts. `id` is `<job>/<mark>`; entries in any order, each once. `outside`: corrections of gear and
 * limits, which an opening may have rested on.
 */
export function foldPanel(
  id: string,
  unordered: readonly AnyEntry[],
  outside: readonly OutsideCorrection[] = [],
): FoldedPanel {
  const panel = panelOfSubject(id) ?? { job: '', mark: id }
  const entries = [...unordered].sort(compareEntries)
  const chains = chainsOf(entries, id)
  const flags: Flag[] = [...chains.flags]
  const drawn = drawingInForce(of(chains, 'drawing'), id, flags)
  const late = lateEntries({
    id,
    entries,
    chains,
    openings: firstOpenings(chains),
    drawing: drawn?.drawing ?? null,
    outside,
  })
  flags.push(...late.map(({ flag }) => flag))
  const cast = last(of<ValueOf<'cast'>>(chains, 'cast'))
  const temperatures = temperatureLogs(id, of(chains, 'temperature'), cast?.value.at ?? null)
  flags.push(...temperatures.flags)
  const loads = loadsOf(id, chains)
  flags.push(...loads.flags)
  const sets = of<ValueOf<'specimen-set'>>(chains, 'specimen-set').map(({ tip, value }) => ({
    entry: tip.id,
    ...value,
    by: tip.person,
    seen: tip.seen,
  }))
  const place = last(of<ValueOf<'place'>>(chains, 'place'))
  const design = last(of(chains, 'design').filter(({ root }) => root.revision === drawn?.revision))
  return {
    facts: {
      ...panel,
      revision: drawn?.revision ?? null,
      drawing: drawn?.drawing ?? null,
      steps: stepsOf(chains, id, flags),
      design: design === null ? null : signed(design.tip),
      cast: cast && {
        entry: cast.tip.id,
        at: cast.value.at,
        bed: cast.value.bed ?? null,
        mix: cast.value.mix ?? null,
      },
      dockets: loads.loads,
      specimens: of<ValueOf<'specimen'>>(chains, 'specimen').map(({ tip, value }) => ({
        entry: tip.id,
        ...value,
        by: tip.person,
        seen: tip.seen,
      })),
      ...(sets.length === 0 ? {} : { sets }),
      temperatures: temperatures.logs,
      defects: defectsOf(chains, late),
      place: place?.value.place ?? null,
    },
    dockets: of<ValueOf<'docket'>>(chains, 'docket').map(({ tip, value }) => ({
      ...value,
      entry: tip.id,
      by: tip.person,
      seen: tip.seen,
    })),
    photos: of<ValueOf<'photo'>>(chains, 'photo').map(({ tip, root, value }) => ({
      ...signed(tip),
      text: value?.text ?? null,
      step: root.step ?? null,
      attachments: attachmentsOf(root),
    })),
    passports: of<ValueOf<'passport'>>(chains, 'passport').map(({ tip, value }) => ({
      ...signed(tip),
      sha256: value.sha256,
    })),
    flags,
  }
}

function of<V = unknown>(chains: Chains, kind: EntryKind): readonly Chain<V>[] {
  return (chains.live.get(kind) ?? []) as readonly Chain<V>[]
}

function last<T>(items: readonly T[]): T | null {
  return items[items.length - 1] ?? null
}

function attachmentsOf(entry: AnyEntry): Recorded['attachments'] {
  return (entry.attachments ?? []).map(({ sha256, name, type }) => ({ sha256, name, type }))
}

function drawingInForce(
  drawings: readonly Chain[],
  panel: string,
  flags: Flag[],
): { readonly drawing: Drawing; readonly revision: string | null } | null {
  const byRevision = new Map<string, Chain>()
  for (const chain of drawings) {
    const revision = chain.root.revision ?? ''
    const before = byRevision.get(revision)
    if (before !== undefined && !sameJson(before.value, chain.value)) {
      flags.push({
        kind: 'revision',
        panel,
        device: null,
        entries: [before.root.id, chain.root.id].sort(),
        text: `Revision ${revision} came with two different drawings; the one seen last is in force.`,
      })
    }
    byRevision.set(revision, chain)
  }
  const latest = last(drawings)
  return latest && { drawing: latest.value as Drawing, revision: latest.root.revision ?? null }
}

/** The opening of a hold that stands: the first in the record. */
function firstOpenings(chains: Chains): ReadonlyMap<StepId, AnyEntry> {
  const first = new Map<StepId, AnyEntry>()
  for (const { root } of of(chains, 'opening')) {
    const { step } = root
    if (step === undefined) continue
    const before = first.get(step)
    if (before === undefined || (isStored(root) && (!isStored(before) || root.index < before.index))) {
      first.set(step, root)
    }
  }
  return first
}

type Group = {
  -readonly [K in keyof StepFacts]: StepFacts[K] extends Readonly<Record<string, infer T>>
    ? Record<string, T>
    : StepFacts[K]
}

function stepsOf(chains: Chains, panel: string, flags: Flag[]): PanelFacts['steps'] {
  const steps = Object.fromEntries(
    STEP_IDS.map((id) => [id, { ...emptyStepFacts() } as unknown as Group]),
  ) as Record<StepId, Group>
  const said = new Map<string, Chain[]>()
  for (const chain of of(chains, 'value')) {
    const { step, check } = chain.root
    if (step === undefined || check === undefined) continue
    const key = `${step}\u0000${check}`
    const list = said.get(key)
    if (list) list.push(chain)
    else said.set(key, [chain])
  }
  for (const list of said.values()) {
    const chain = list[list.length - 1] as Chain
    const { step, check } = chain.root as { step: StepId; check: string }
    steps[step].values[check] = recorded(chain)
    if (list.length > 1) flags.push(...conflictOf(list, panel, step, check))
  }
  for (const { tip, root } of of(chains, 'decision')) {
    const { step, check } = root
    if (step === undefined || check === undefined) continue
    // A decision covers what was on record when it was made, not a reading that came after it.
    const value = last(said.get(`${step}\u0000${check}`) ?? [])
    if (value === null || compareEntries(value.tip, tip) < 0) steps[step].decisions[check] = signed(tip)
  }
  for (const { tip, root, value } of of<ValueOf<'difference'>>(chains, 'difference')) {
    const { step, check } = root
    if (step !== undefined && check !== undefined)
      steps[step].differences[check] = { ...signed(tip), ...value }
  }
  for (const { tip, root } of of(chains, 'request')) {
    if (root.step) steps[root.step].requests = [...steps[root.step].requests, signed(tip)]
  }
  for (const { tip, root } of of(chains, 'close')) if (root.step) steps[root.step].closed = signed(tip)
  for (const [step, opening] of firstOpenings(chains)) {
    steps[step].opening = { ...signed(opening), rests: opening.rests ?? [] }
  }
  return steps
}

function recorded({ root, tip, value, corrects }: Chain): Recorded {
  return {
    entry: tip.id,
    value,
    verdict: tip.verdict ?? 'unknown',
    by: tip.person,
    seen: tip.seen,
    stored: storedAt(tip),
    revision: tip.revision ?? root.revision ?? null,
    reason: tip.reason ?? null,
    corrects,
    attachments: attachmentsOf(tip.attachments ? tip : root),
  }
}

/** Two devices that say different things of one check, with nobody having corrected either since. */
function conflictOf(list: readonly Chain[], panel: string, step: StepId, check: string): Flag[] {
  const inForce = last(list) as Chain
  if (inForce.corrects.length > 0) return []
  const others = list.filter(
    (chain) => chain.tip.device.id !== inForce.tip.device.id && !sameJson(chain.value, inForce.value),
  )
  if (others.length === 0) return []
  return [
    {
      kind: 'conflict',
      panel,
      device: null,
      entries: [...others, inForce].map(({ tip }) => tip.id).sort(),
      text: `${step}: ${check} was recorded differently on two devices; the one seen last is in force.`,
    },
  ]
}

function defectsOf(chains: Chains, late: ReturnType<typeof lateEntries>): Defect[] {
  const found = [
    ...of<ValueOf<'defect'>>(chains, 'defect').map(({ root, value }) => ({
      entry: root,
      text: value.text,
      place: value.place ?? null,
      step: root.step ?? null,
    })),
    ...late.map(({ entry, text, step }) => ({ entry, text, place: null, step })),
  ].sort((a, b) => compareEntries(a.entry, b.entry))
  return found.map(({ entry, text, place, step }) => {
    const disposition = last(
      of<ValueOf<'disposition'>>(chains, 'disposition').filter(({ root }) => root.about === entry.id),
    )
    const inspection = last(
      of<ValueOf<'inspection'>>(chains, 'inspection').filter(
        ({ root }) => root.about === entry.id && disposition && compareEntries(root, disposition.root) > 0,
      ),
    )
    const decision = disposition?.value.decision
    return {
      ...signed(entry),
      text,
      place,
      step,
      attachments: attachmentsOf(entry),
      disposition: disposition && { ...signed(disposition.root), decision: disposition.value.decision },
      inspection: inspection && { ...signed(inspection.root), verdict: inspection.value.verdict },
      open: !(decision === 'accept' || (decision === 'repair' && inspection?.value.verdict === 'pass')),
    }
  })
}

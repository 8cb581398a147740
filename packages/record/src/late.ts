import type { Drawing } from '@castwright/engine/panel'
import type { StepId } from '@castwright/engine/steps'
import type { Chains } from './chains.ts'
import type { Flag } from './flags.ts'
import { type AnyEntry, arrivedAfter } from './order.ts'
import { mayMake } from './roles.ts'
import type { ValueOf } from './values.ts'

export interface LateEntry {
  readonly entry: AnyEntry
  readonly step: StepId
  /** What the defect says. */
  readonly text: string
  readonly flag: Flag
}

/** A correction of an entry that is no panel's own (gear, a limit, the yard), with what it corrects. */
export interface OutsideCorrection {
  readonly entry: AnyEntry
  readonly root: AnyEntry
}

export interface LateInput {
  readonly id: string
  /** All entries of the panel. */
  readonly entries: readonly AnyEntry[]
  readonly chains: Chains
  readonly openings: ReadonlyMap<StepId, AnyEntry>
  readonly drawing: Drawing | null
  readonly outside: readonly OutsideCorrection[]
}

/**
 * Entries that came into the record after a hold opened and would have kept it shut. The opening stands; each raises a
 * defect, so that the panel is not loaded before somebody entitled has decided.
 */
export function lateEntries({ id, entries, chains, openings, drawing, outside }: LateInput): LateEntry[] {
  const late: LateEntry[] = []
  for (const [step, opening] of openings) {
    const rested = new Set(opening.rests ?? [])
    const signedAt = strengthOfDifferences(entries, rested)
    const add = (entry: AnyEntry, why: string) => {
      const text = `In the record after ${step} was opened: ${why}`
      const flag: Flag = { kind: 'late', panel: id, device: entry.device.id, entries: [entry.id], text }
      late.push({ entry, step, text, flag })
    }
    for (const entry of entries) {
      if (entry === opening || rested.has(entry.id) || !arrivedAfter(entry, opening)) continue
      if (!entitled(entry, chains)) continue
      const why = keptShut(entry, { step, opening, rested, chains, drawing, signedAt })
      if (why !== null) add(entry, why)
    }
    for (const { entry, root } of outside) {
      if (!(rested.has(root.id) || rested.has(entry.about ?? '')) || !arrivedAfter(entry, opening)) continue
      const why = rested.has(entry.id) ? null : outsideWhy(entry, root, opening)
      if (why !== null) add(entry, why)
    }
  }
  // One defect an entry, also where it speaks to both holds.
  return late.filter((item, index) => late.findIndex(({ entry }) => entry === item.entry) === index)
}

interface Hold {
  readonly step: StepId
  readonly opening: AnyEntry
  readonly rested: ReadonlySet<string>
  readonly chains: Chains
  readonly drawing: Drawing | null
  /** Least result that the hold opened on, MPa, where it rested on a signed difference too; else null. */
  readonly signedAt: number | null
}

/** A difference is signed for the numbers of its hour: what was the least result then is the least that it covers. */
function strengthOfDifferences(entries: readonly AnyEntry[], rested: ReadonlySet<string>): number | null {
  const on = entries.filter(({ id }) => rested.has(id))
  if (!on.some(({ kind }) => kind === 'difference')) return null
  const strengths = on.flatMap(({ value }) => {
    const strength = (value as { readonly strength?: unknown } | null)?.strength
    return typeof strength === 'number' ? [strength] : []
  })
  return strengths.length === 0 ? null : Math.min(...strengths)
}

function keptShut(entry: AnyEntry, hold: Hold): string | null {
  switch (entry.kind) {
    case 'value':
      return entry.step === hold.step && entry.verdict !== 'pass' ? `${entry.check} ${wordOf(entry)}.` : null
    case 'correction':
      return correctionWhy(entry, hold)
    case 'specimen':
      return hold.step === 'strip' ? specimenWhy(entry, entry.value as ValueOf<'specimen'>, hold) : null
    case 'drawing':
      return entry.revision !== hold.opening.revision && entry.seen <= hold.opening.seen
        ? `revision ${entry.revision} was there before it opened.`
        : null
    default:
      return null
  }
}

function correctionWhy(entry: AnyEntry, hold: Hold): string | null {
  const { step, rested, chains } = hold
  const root = chains.rootOf.get(entry.id)
  if (root === undefined) return null
  const restedOn = rested.has(root.id) || (entry.about !== undefined && rested.has(entry.about))
  if (entry.value === null) return restedOn ? `a ${root.kind} that it rested on was taken back.` : null
  if (root.kind === 'specimen' && step === 'strip') {
    return specimenWhy(entry, entry.value as ValueOf<'specimen'>, hold)
  }
  if (root.kind !== 'value' || (root.step !== step && !restedOn)) return null
  return entry.verdict === 'pass' ? null : `${root.check}, corrected, ${wordOf(entry)}.`
}

/**
 * Cylinder over cube for a cube that comes late: the least of the strength classes of EN 206 (C20/25), from memory. The ratio that an
 * engineer entered is not read here; taken low, a cube rather raises a defect than keeps silent.
 */
const CUBE_SHARE = 0.8

function specimenWhy(
  entry: AnyEntry,
  { kind, specimen, strength }: ValueOf<'specimen'>,
  { drawing, signedAt }: Hold,
): string | null {
  const wanted = drawing?.lifting?.strength
  const counted = kind === 'cube' ? CUBE_SHARE * strength : strength
  const short = [
    ...(wanted !== undefined && counted < wanted ? [`the ${wanted} MPa of the lifting design`] : []),
    ...(signedAt !== null && counted < signedAt
      ? [`the ${signedAt} MPa at which a difference was signed`]
      : []),
  ]
  if (entry.verdict !== 'fail' && entry.verdict !== 'unknown' && short.length === 0) return null
  return `${kind} ${specimen} gave ${strength} MPa${kind === 'cube' && short.length > 0 ? ', as a cylinder perhaps no more than four fifths of it' : ''}${short.length === 0 ? '' : `, below ${short.join(' and ')}`}.`
}

function outsideWhy(entry: AnyEntry, root: AnyEntry, opening: AnyEntry): string | null {
  if (entry.value === null) return `a ${root.kind} that it rested on was taken back.`
  if (root.kind === 'limit') return `the limit of ${root.check} that it rested on was corrected.`
  if (root.kind !== 'gear') return null
  const { due } = entry.value as ValueOf<'gear'>
  return due < opening.seen.slice(0, 10) ? `${root.subject.id} was in date only up to ${due}.` : null
}

function wordOf(entry: AnyEntry): string {
  return entry.verdict === 'fail' ? 'fails' : 'is not known'
}

function entitled(entry: AnyEntry, chains: Chains): boolean {
  const root = chains.rootOf.get(entry.id)
  return entry.kind === 'correction' ? root !== undefined : mayMake(entry.person.role, entry.kind)
}

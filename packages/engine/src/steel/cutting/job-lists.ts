import type { YardStock } from '../../yard/yard.ts'
import type { ScheduledBar } from '../steel-plan.ts'
import type { CutList } from './list.ts'

/** The bars of one panel of the job or the day. */
export interface PanelBars {
  readonly panel: string
  /** Lower is wanted earlier. */
  readonly order?: number
  readonly bars: readonly ScheduledBar[]
}

/** What lies in the rack. */
export interface RackOffcut {
  readonly diameter: number
  readonly grade: string
  readonly length: number
  readonly count: number
}

/** Bars of one diameter and grade: they are cut from the same stock. */
export interface SteelCutList {
  readonly diameter: number
  readonly grade: string
  readonly list: CutList
}

/** A bar that no list holds, and why. */
export interface NotCut {
  readonly panel: string
  readonly mark: string
  readonly reason: 'length not known' | 'no stock of this diameter and grade' | 'longer than every bar'
  /** Longest bar of stock and rack, mm; null where there is none. */
  readonly longest: number | null
}

export interface JobLists {
  readonly lists: readonly SteelCutList[]
  readonly notCut: readonly NotCut[]
}

export interface JobListsInput {
  readonly panels: readonly PanelBars[]
  readonly stock: readonly YardStock[]
  readonly offcuts?: readonly RackOffcut[]
  /** Bars that are there, of accepted bundles: steel that is named here is cut from them alone, and no more than there are. */
  readonly counted?: readonly RackOffcut[]
  /** Lost at each cut, mm. */
  readonly kerf?: number
  /** Smallest offcut worth keeping, mm. */
  readonly keep?: number
  /** Equal bars that the shear takes at once. */
  readonly together?: number
  /** Different ways of cutting that the shear wants at most. */
  readonly patterns?: number
  /** Bending machine that a bent bar goes to; straight bars go to none. */
  readonly machineOf?: (bar: ScheduledBar) => string | undefined
}

/**
 * Cutting lists of a whole job or a day, one for each diameter and grade: cut lengths to the whole mm, as the schedule prints them. A bar
 * that cannot be cut from what there is comes back in `notCut`; it is never shortened.
 */
export function jobCutLists(input: JobListsInput): JobLists {
  const notCut: NotCut[] = []
  const pieces = new Map<string, { diameter: number; grade: string; pieces: CutList['pieces'] }>()
  for (const { panel, order, bars } of input.panels) {
    for (const bar of bars) {
      const length = Math.round(bar.cutLength)
      const sources = sourcesOf(input, bar)
      const longest = sources.length === 0 ? null : Math.max(...sources)
      const reason = refusal(bar, length, longest)
      if (reason !== null) {
        notCut.push({ panel, mark: bar.mark, reason, longest })
        continue
      }
      const key = `${bar.diameter}/${bar.grade}`
      const group = pieces.get(key) ?? { diameter: bar.diameter, grade: bar.grade, pieces: [] }
      pieces.set(key, group)
      const machine = bar.turns.length === 0 ? undefined : input.machineOf?.(bar)
      group.pieces.push({
        length,
        count: bar.count,
        mark: bar.mark,
        panel,
        ...(machine === undefined ? {} : { machine }),
        ...(order === undefined ? {} : { order }),
      })
    }
  }
  const groups = [...pieces.values()].sort(
    (a, b) => b.diameter - a.diameter || a.grade.localeCompare(b.grade, 'en'),
  )
  return { lists: groups.map((group) => listOf(input, group)), notCut }
}

function listOf(
  input: JobListsInput,
  { diameter, grade, pieces }: { diameter: number; grade: string; pieces: CutList['pieces'] },
): SteelCutList {
  const here = sameSteel(diameter, grade)
  const counted = (input.counted ?? []).filter(here)
  const lengths = new Set(input.stock.filter(here).flatMap((each) => each.lengths))
  const offcuts = (input.offcuts ?? []).filter(here).map(({ length, count }) => ({ length, count }))
  const { kerf, keep, together, patterns } = input
  return {
    diameter,
    grade,
    list: {
      stock:
        counted.length > 0
          ? counted.map(({ length, count }) => ({ length, count })).sort((a, b) => a.length - b.length)
          : [...lengths].sort((a, b) => a - b).map((length) => ({ length })),
      ...(offcuts.length === 0 ? {} : { offcuts }),
      ...(kerf === undefined ? {} : { kerf }),
      ...(keep === undefined ? {} : { keep }),
      ...(together === undefined ? {} : { together }),
      ...(patterns === undefined ? {} : { patterns }),
      pieces,
    },
  }
}

function sourcesOf(
  { stock, offcuts = [], counted = [] }: JobListsInput,
  { diameter, grade }: ScheduledBar,
): number[] {
  const here = sameSteel(diameter, grade)
  const there = counted.filter(here)
  return [
    ...(there.length > 0
      ? there.map((each) => each.length)
      : stock.filter(here).flatMap((each) => each.lengths)),
    ...offcuts.filter(here).map((each) => each.length),
  ]
}

function sameSteel(diameter: number, grade: string) {
  return (each: { readonly diameter: number; readonly grade: string }): boolean =>
    each.diameter === diameter && each.grade === grade
}

function refusal({ count }: ScheduledBar, length: number, longest: number | null): NotCut['reason'] | null {
  if (!(length > 0 && Number.isFinite(length) && Number.isInteger(count) && count > 0))
    return 'length not known'
  if (longest === null) return 'no stock of this diameter and grade'
  return length > longest ? 'longer than every bar' : null
}

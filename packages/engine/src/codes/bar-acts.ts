import type { Source } from '../working/source.ts'

/** What may come up to be done with a bar in a yard. */
export const ACTS = [
  'bend once',
  'straighten',
  're-bend cold',
  're-bend hot',
  'bend out and back',
  'weld',
  'tack weld',
  'thread',
  'galvanise',
  'heat',
] as const

/** How the strength came into the bar. */
export const MADE_BY = ['micro-alloyed', 'quenched and tempered', 'cold worked', 'hot rolled'] as const

/** `engineer`: only where the engineer allows this one; `unknown`: no confirmed rule. */
export type Answer = 'yes' | 'no' | 'engineer' | 'unknown'
export type Act = (typeof ACTS)[number]
export type MadeBy = (typeof MADE_BY)[number]

/** One row of a family's permissions. What a row leaves out it does not ask. */
export interface ActRule {
  readonly acts: readonly Act[]
  readonly grades?: readonly string[]
  readonly madeBy?: readonly MadeBy[]
  readonly galvanised?: boolean
  /** Product standard that the bar shows. Example: `A706`. */
  readonly standard?: string
  /** Diameters from the first to the second, both included, mm. */
  readonly sizes?: { readonly from: number; readonly to: number }
  readonly answer: Answer
  /** Plain sentences; for `unknown` what is missing. */
  readonly conditions: readonly string[]
  readonly source: Source
}

/** What a place lets be done with a bar. */
export interface ActRules {
  /** Processes that bars of a grade come from; a grade that is not listed has none that is confirmed. */
  readonly processes: Readonly<Record<string, readonly MadeBy[]>>
  /** Product standards that a bar may show, each with its grades; empty where the grade says it. */
  readonly standards: Readonly<Record<string, readonly string[]>>
  /** The first row that fits a bar is taken. Bending once is by `leastBend` where a row says yes. */
  readonly rules: readonly ActRule[]
}

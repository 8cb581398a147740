import { OPEN_TESTS } from './aged-strength.ts'
import { LEARNED, SLIPS, WIDEN } from './learned.ts'
import { type MixProportions, openMixes, PROPORTIONS } from './open-mixes.ts'
import { curveLaw, type OpenProcess, openProcess } from './open-process.ts'
import type { StrengthPrior } from './strength-prior.ts'

let kept: OpenProcess | null = null

/** The process over all open tests, made at the first call: 0.1 to 0.3 s; a prediction after that some milliseconds. */
export function wholeProcess(): OpenProcess {
  kept ??= openProcess({ mixes: openMixes(), by: LEARNED, slips: SLIPS })
  return kept
}

/** What the open tests say of a mix of known proportions before it is tested. */
export function openPrior(mix: MixProportions, process: OpenProcess = wholeProcess()): StrengthPrior {
  return {
    law: (days) => curveLaw(process, mix, days),
    scatter: process.by.test,
    widen: WIDEN.withMix,
    from: 1,
    to: 365,
    restsOn: 'open tests of 339 mixes, nearest in proportions first',
    source: OPEN_TESTS,
  }
}

/** How far a proportion may lie outside the open mixes, as a share of their range, before nothing is said. */
const FAR = 0.5

export interface OutOfRange {
  readonly field: keyof MixProportions | 'water / binder'
  readonly value: number
  readonly from: number
  readonly to: number
  /** So far that the open tests say nothing of it. */
  readonly far: boolean
}

/** Proportions, and water over binder, that lie outside the open mixes. */
export function outOfRange(mix: MixProportions): OutOfRange[] {
  const open = openMixes().map(({ proportions }) => proportions)
  const binder = ({ cement, slag, flyAsh }: MixProportions) => cement + slag + flyAsh
  const rows: [OutOfRange['field'], (each: MixProportions) => number][] = [
    ...PROPORTIONS.map((name): [OutOfRange['field'], (each: MixProportions) => number] => [
      name,
      (each) => each[name],
    ]),
    ['water / binder', (each) => each.water / binder(each)],
  ]
  return rows.flatMap(([field, of]) => {
    const all = open.map(of)
    const [from, to, value] = [Math.min(...all), Math.max(...all), of(mix)]
    const beyond = Math.max(from - value, value - to) / (to - from)
    return beyond > 1e-9 ? [{ field, value, from, to, far: beyond > FAR }] : []
  })
}

/** Says that a proportion lies outside the open mixes. */
export function outOfRangeText({ field, value, from, to, far }: OutOfRange): string {
  const name = field === 'water / binder' ? field : `mix.${field}`
  return `${name}: ${shown(value)} is ${far ? 'far ' : ''}outside the open mixes, ${shown(from)} to ${shown(to)}`
}

/** Four figures. */
export function shown(value: number): string {
  return String(Number(value.toPrecision(4)))
}

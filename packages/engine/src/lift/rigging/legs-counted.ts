import { LEGS_COUNTED, LEGS_COUNTED_SOURCE } from '../../codes/eu/cen-tr15728-2016/legs-counted.ts'
import type { Point } from '../../panel/point.ts'
import { enteredBy, type Source, STATICS } from '../../working/source.ts'
import type { Assumed, Step } from '../../working/worked.ts'
import type { Holding, LegRun } from './balanced-shares.ts'
import { holdingStep } from './holding-step.ts'
import type { RiggedInput } from './rigging-types.ts'

export interface LegsCounted {
  readonly value: number
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

/**
 * Legs that count for inserts: all where statics gives their loads, else two. An entered count is taken where it is stricter, or where an
 * entered length error says what uneven legs do.
 */
export function legsCounted({ rigging }: RiggedInput, determinate: boolean): LegsCounted {
  const { legs, counted, mark, error } = rigging
  const rule = determinate ? legs : Math.min(LEGS_COUNTED, legs)
  const entered = counted === undefined ? null : Math.min(counted, legs)
  const taken = entered !== null && (entered < rule || (!determinate && error !== undefined))
  const value = taken ? entered : rule
  const ruleSource: Source = determinate ? STATICS : LEGS_COUNTED_SOURCE
  const by = taken ? enteredBy(`the yard: rigging ${mark}`) : ruleSource
  const assumed: Assumed[] =
    entered !== null && entered > value
      ? [
          {
            field: `rigging ${mark}: counted`,
            value,
            unit: '',
            why: `${entered} entered, but its legs are not equalised and no length error between them is entered`,
          },
        ]
      : []
  const note = determinate
    ? 'statically determined: all legs carry their share'
    : 'statically undetermined: the lengths of the legs decide the loads'
  const working: Step[] = [
    {
      symbol: 'n',
      formula: 'legs that count for inserts',
      given: { legs },
      result: value,
      unit: '',
      source: by,
      by: 'table',
      note,
    },
  ]
  return { value, working, assumed }
}

export interface CountedShare {
  readonly value: number
  readonly from: string
  readonly working: readonly Step[]
}

export interface Counting {
  readonly input: RiggedInput
  readonly runs: readonly LegRun[]
  readonly ways: readonly Holding[]
  readonly centre: Point
  readonly count: number
  /** By statics alone, kN a leg; null where that is not enough. */
  readonly statics: readonly number[] | null
  /** The share to go from where statics is not enough, kN a leg. */
  readonly shares: readonly number[] | null
}

/** Greatest share of one leg by the legs that count. */
export function countedShare(counting: Counting, i: number): CountedShare {
  const { input, runs, ways, centre, count, statics, shares } = counting
  const { load, picks } = input
  const n = picks.length
  const mark = picks[i]!.mark
  if (statics !== null || count > LEGS_COUNTED) {
    const own = statics?.[i] ?? shares?.[i] ?? load / n
    const value = (own * n) / count
    const step: Step = {
      symbol: `R counted ${mark}`,
      formula: 'R n / c',
      given: { R: own, n, c: count },
      result: value,
      unit: 'kN',
      source: STATICS,
      note: `${count} of ${n} legs count`,
    }
    return { value, from: countedWords(count, n, statics !== null), working: [step] }
  }
  const run = runs.findIndex(({ legs }) => legs.includes(i))
  const way = ways.reduce((best, one) => (one[run]! > best[run]! ? one : best))
  const others = runs.filter((_, g) => g !== run && way[g]! > 1e-9)
  const carrying = [runs[run]!, ...others]
  const names = carrying.flatMap(({ legs }) => legs.map((leg) => picks[leg]!.mark)).sort()
  const alone =
    way[run]! > 0
      ? holdingStep({
          symbol: `R alone ${mark}`,
          load,
          centre,
          carrying,
          note: `only ${names.join(', ')} carry`,
        })
      : null
  const most = alone === null ? 0 : (alone.result as number)
  const value = Math.max(most, load / count)
  return {
    value,
    from: `${words(count)} of ${n} legs count`,
    working: [
      ...(alone === null ? [] : [alone]),
      {
        symbol: `R counted ${mark}`,
        formula: 'max(Ra, W / c)',
        given: { Ra: most, W: load, c: count },
        result: value,
        unit: 'kN',
        source: LEGS_COUNTED_SOURCE,
        note: `${words(count)} of ${n} legs carry all; Ra the most that keeps the balance with any legs slack`,
      },
    ],
  }
}

function countedWords(count: number, n: number, determinate: boolean): string {
  if (count < n) return `${words(count)} of ${n} legs count`
  return determinate ? 'statics' : `all ${n} legs count, as entered`
}

const WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six']

function words(count: number): string {
  return WORDS[count] ?? `${count}`
}

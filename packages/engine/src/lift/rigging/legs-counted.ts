import { LEGS_COUNTED, LEGS_COUNTED_SOURCE } from '../../codes/eu/cen-tr15728-2016/legs-counted.ts'
import { enteredBy, type Source, STATICS } from '../../working/source.ts'
import type { Assumed, Step } from '../../working/worked.ts'
import type { Holding, LegRun } from './balanced-shares.ts'
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

/** Greatest share of one leg by the legs that count. */
export function countedShare({
  input,
  i,
  mark,
  runs,
  ways,
  only,
  count,
  share,
}: {
  readonly input: RiggedInput
  readonly i: number
  readonly mark: string
  readonly runs: readonly LegRun[]
  readonly ways: readonly Holding[]
  readonly only: Holding | null
  readonly count: number
  readonly share: number | null
}): CountedShare {
  const { load, picks } = input
  const n = picks.length
  const own = share ?? load / n
  if (only !== null || count > LEGS_COUNTED) {
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
    const from =
      count < n
        ? `${words(count)} of ${n} legs count`
        : only === null
          ? `all ${n} legs count, as entered`
          : 'statics'
    return { value, from, working: [step] }
  }
  const run = runs.findIndex(({ legs }) => legs.includes(i))
  const alone = Math.max(...ways.map((way) => way[run]! / runs[run]!.legs.length)) * load
  const way = ways.reduce((best, one) => (one[run]! > best[run]! ? one : best))
  const carrying = runs.flatMap(({ legs }, g) => (way[g]! > 1e-9 ? legs.map((leg) => picks[leg]!.mark) : []))
  const value = Math.max(alone, load / count)
  return {
    value,
    from: `${words(count)} of ${n} legs count`,
    working: [
      {
        symbol: `R alone ${mark}`,
        formula: 'greatest share that keeps the balance with any legs slack',
        given: { W: load },
        result: alone,
        unit: 'kN',
        source: STATICS,
        by: 'search',
        note: `only ${carrying.join(', ')} carry`,
      },
      {
        symbol: `R counted ${mark}`,
        formula: 'max(Ra, W / c)',
        given: { Ra: alone, W: load, c: count },
        result: value,
        unit: 'kN',
        source: LEGS_COUNTED_SOURCE,
        note: `${words(count)} of ${n} legs carry all`,
      },
    ],
  }
}

const WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six']

function words(count: number): string {
  return WORDS[count] ?? `${count}`
}

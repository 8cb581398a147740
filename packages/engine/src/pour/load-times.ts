import { belowZero, notAboveZero } from '../working/guard.ts'
import { commonPractice, GEOMETRY } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'

export interface LoadTimesInput {
  /** Ordered, m³. */
  readonly ordered: number
  /** Body of one truck, m³. */
  readonly body: number
  /** What the gang and its vibrators keep up with, m³/h. */
  readonly rate: number
  /** From batching to the yard, minutes. */
  readonly haul: number
  /** Re-mixing, slump and docket before discharge, minutes. */
  readonly checking: number
  /** Longest from batching to the end of discharge, minutes; null where no limit is known. */
  readonly limit: number | null
  /** Minutes that a surface may wait before the next concrete joins it. */
  readonly joint: number
}

/** One load, minutes from the batching of the first. */
export interface LoadTime {
  readonly load: number
  readonly volume: number
  readonly batched: number
  readonly arrives: number
  readonly begins: number
  readonly ends: number
  /** From batching to the end of discharge. */
  readonly age: number
  /** From the end of the load before to the begin of this; 0 for the first. */
  readonly gap: number
}

export interface LoadTimes {
  readonly loads: readonly LoadTime[]
  /** From the first batching to the end of the last discharge. */
  readonly minutes: number
  readonly oldest: number
  readonly longestGap: number
}

/** Minutes that a surface may wait by air temperature. Common practice, no source; half of it for thin visible work. */
export function jointMinutes({ air, visible }: { readonly air: number; readonly visible: boolean }): number {
  const plain = air > 25 ? 30 : air >= 15 ? 45 : 60
  return visible ? plain / 2 : plain
}

/**
 * When each truck is batched, so that every load is ready as the one before ends: nothing waits in the drum longer than it must, and no surface
 * waits at all where the trucks come as planned.
 *
 * Unknown where a volume, rate or limit is not above 0, or a time below 0. A load that cannot be discharged within the age limit at this rate is unknown too: smaller
 * loads or a quicker gang. Example: 9 m³ in bodies of 6 at 12 m³/h, 25 min of haul, 10 of checking: 6 and 3 m³, the second batched 30 min after the first.
 */
export function loadTimes(input: LoadTimesInput): Worked<LoadTimes> {
  const { ordered, body, rate, haul, checking, limit, joint } = input
  const gaps = [...notAboveZero({ ordered, body, rate, joint }), ...belowZero({ haul, checking })]
  if (limit !== null) gaps.push(...notAboveZero({ limit }))
  if (gaps.length > 0) return unknown(...gaps)
  const volumes = volumesOf(ordered, body)
  const minutesOf = (volume: number): number => (volume / rate) * 60
  const loads: LoadTime[] = []
  for (const [at, volume] of volumes.entries()) {
    const before = loads.at(-1)
    const begins = before === undefined ? haul + checking : before.ends
    const ends = begins + minutesOf(volume)
    const batched = begins - haul - checking
    loads.push({
      load: at + 1,
      volume,
      batched,
      arrives: batched + haul,
      begins,
      ends,
      age: ends - batched,
      gap: before === undefined ? 0 : begins - before.ends,
    })
  }
  const oldest = Math.max(...loads.map(({ age }) => age))
  if (limit !== null && oldest > limit * (1 + 1e-9)) {
    return unknown(
      `loads: the oldest is ${Math.ceil(oldest)} min at the end of its discharge, at most ${limit}: smaller loads, or a rate above ${rate} m³/h`,
    )
  }
  const last = loads.at(-1)
  return known(
    {
      loads,
      minutes: last?.ends ?? 0,
      oldest,
      longestGap: Math.max(...loads.map(({ gap }) => gap)),
    },
    working(input, loads),
  )
}

/** Even loads, so that no truck comes with a rest that is hardly worth its way; whole litres. */
function volumesOf(ordered: number, body: number): number[] {
  const count = Math.max(1, Math.ceil(ordered / body - 1e-9))
  if (count === 1) return [ordered]
  // Full ones first, the rest last, but no last load under half a cubic metre.
  const rest = ordered - (count - 1) * body
  const last = Math.max(rest, Math.min(0.5, ordered / count))
  const others = (ordered - last) / (count - 1)
  return [...Array.from({ length: count - 1 }, () => others), last]
}

/** How late a load may begin before the surface of the one before has waited too long, minutes after that one ended. */
export function latestBegin(
  { joint }: Pick<LoadTimesInput, 'joint'>,
  before: Pick<LoadTime, 'ends'>,
): number {
  return before.ends + joint
}

function working({ rate, haul, checking }: LoadTimesInput, loads: readonly LoadTime[]): Step[] {
  const [first] = loads
  if (first === undefined) return []
  return [
    {
      symbol: 't_d',
      formula: '60 V / q',
      given: { V: first.volume, q: rate },
      result: first.ends - first.begins,
      unit: 'min',
      source: GEOMETRY,
      note: 'discharge of the first load at the rate of gang and vibrators',
    },
    {
      symbol: 'age',
      formula: 'h + c + t_d',
      given: { h: haul, c: checking, t_d: first.ends - first.begins },
      result: first.age,
      unit: 'min',
      source: commonPractice('the clock starts at the batching time on the ticket'),
    },
  ]
}

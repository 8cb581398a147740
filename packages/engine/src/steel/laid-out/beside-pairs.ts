import type { BesidePair, PlacedBar, PlacedLap } from '../steel-plan.ts'
import { besideSpace } from './beside-space.ts'
import { type Beside, besideOf } from './side-by-side.ts'
import { straightsOf } from './straights.ts'

export interface BesidePairsInput {
  readonly placed: readonly PlacedBar[]
  /** Bars of a planned lap may touch along it. */
  readonly laps: readonly Pick<PlacedLap, 'bars'>[]
  /** Clear distance asked beside a bar of that diameter, mm; null where not known. */
  readonly asked: (diameter: number) => number | null
  /** Marks of listed bars that the drawing says are tied to what they lie against. */
  readonly tied: ReadonlySet<string>
}

export interface BesidePairs {
  /** Neither in contact and tied nor clear, the worst first. */
  readonly crowded: readonly BesidePair[]
  /** In contact, to be tied. */
  readonly contacts: readonly BesidePair[]
}

/**
 * Pairs of placed bars that run side by side nearer than asked. Left out: rows of one mat, which have a check of their own; the two bars of a
 * planned lap; bars in the same place; bends. Where it is not known what is asked, only pairs in contact are found.
 */
export function besidePairs({ placed, laps, asked, tied }: BesidePairsInput): BesidePairs {
  const lapped = new Set(laps.flatMap(({ bars: [one, other] }) => [`${one} ${other}`, `${other} ${one}`]))
  const bars = new Map(placed.map((bar) => [bar.id, bar]))
  const limits = new Map(placed.map(({ diameter }) => [diameter, asked(diameter) ?? 0]))
  const thickest = Math.max(0, ...limits.keys())
  const widest = Math.max(0, ...limits.values())
  const space = besideSpace()
  const found = new Map<string, BesidePair & Pick<Beside, 'kind'>>()
  for (const bar of placed) {
    const straights = straightsOf(bar)
    for (const one of straights) {
      for (const straight of space.near(one, widest + thickest)) {
        const other = bars.get(straight.id) as PlacedBar
        if (sameMat(bar, other)) continue
        const limit = limits.get(Math.max(bar.diameter, other.diameter)) ?? 0
        const beside = besideOf({ one: straight, other: one, asked: limit })
        const key = `${other.id} ${bar.id}`
        if (beside === null || lapped.has(key)) continue
        const pair = pairOf(other, bar, beside, limit, tied)
        const before = found.get(key)
        if (before === undefined || isWorse(pair, before)) found.set(key, pair)
      }
    }
    space.add(straights)
  }
  const bare = ({ kind: _kind, ...pair }: BesidePair & Pick<Beside, 'kind'>): BesidePair => pair
  const pairs = [...found.values()]
  return {
    crowded: pairs
      .filter(({ kind }) => kind === 'crowded')
      .sort((a, b) => a.clear / a.asked - b.clear / b.asked)
      .map(bare),
    contacts: pairs.filter(({ kind }) => kind === 'contact').map(bare),
  }
}

/** Rows of one mat lie at one height. */
function sameMat(one: PlacedBar, other: PlacedBar): boolean {
  return one.use === 'mat' && other.use === 'mat' && one.height === other.height
}

function pairOf(
  one: PlacedBar,
  other: PlacedBar,
  { kind, clear, length, at }: Beside,
  asked: number,
  tied: ReadonlySet<string>,
): BesidePair & Pick<Beside, 'kind'> {
  const drawn = [one, other].filter(({ use }) => use === 'listed')
  const isUntied = kind === 'contact' && drawn.length > 0 && !drawn.some(({ mark }) => tied.has(mark))
  return {
    bars: [one.id, other.id],
    marks: [one.mark, other.mark],
    clear,
    asked,
    length,
    at,
    inContact: kind === 'contact',
    kind: isUntied ? 'crowded' : kind,
  }
}

function isWorse(
  pair: BesidePair & Pick<Beside, 'kind'>,
  before: BesidePair & Pick<Beside, 'kind'>,
): boolean {
  if (pair.kind !== before.kind) return pair.kind === 'crowded'
  return pair.clear < before.clear
}

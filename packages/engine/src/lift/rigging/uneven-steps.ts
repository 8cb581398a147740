import { enteredBy, type Source, STATICS } from '../../working/source.ts'
import type { Step } from '../../working/worked.ts'
import type { LegPlaces } from './leg-places.ts'
import type { RiggedInput } from './rigging-types.ts'
import { nullMode } from './twist-mode.ts'
import type { UnevenInput, UnevenShares } from './uneven-legs.ts'

const FORCES: Source = { standard: 'method of forces', clause: '', status: 'computed' }

interface Shown {
  readonly input: RiggedInput
  readonly places: LegPlaces
  readonly parts: UnevenInput
  readonly found: UnevenShares
}

/** Working of uneven legs: for four single legs by hand, else what was searched. */
export function unevenSteps(shown: Shown): Step[] {
  const { input, parts, found } = shown
  const entered: Step = {
    symbol: 'e',
    formula: 'greatest difference of length between two legs',
    given: { rigging: input.rigging.mark },
    result: input.rigging.error ?? 0,
    unit: 'mm',
    source: enteredBy(`the yard: rigging ${input.rigging.mark}`),
    by: 'table',
  }
  const byHand =
    parts.runs.length === 4 && parts.runs.every(({ legs }) => legs.length === 1) && parts.hang === 'flat'
  if (byHand && !found.slack) return [entered, ...fourLegs(shown)]
  return [
    entered,
    ...input.picks.map(
      ({ mark }, i): Step => ({
        symbol: `R uneven ${mark}`,
        formula: 'greatest of all patterns of long and short legs, none of them pushing',
        given: { R: found.even[i]! },
        result: found.most[i]!,
        unit: 'kN',
        source: FORCES,
        by: 'search',
        note: `R with legs of the right length; least ${found.least[i]!.toFixed(3)} kN${found.slack ? ', a leg goes slack' : ''}`,
      }),
    ),
  ]
}

/** Four legs have one way to be uneven: v₁ … v₄ in balance among themselves, times P. */
function fourLegs({ input, places, parts, found }: Shown): Step[] {
  const mode = nullMode(parts.points)
  if (mode === null) return []
  const { compliance, give, off, shares } = parts
  const vs = Object.fromEntries(mode.map((v, i) => [`v${i + 1}`, v]))
  const gs = Object.fromEntries(give.map((g, i) => [`g${i + 1}`, g]))
  const c =
    compliance === null
      ? 0
      : mode.reduce((all, v, i) => all + mode.reduce((sum, w, j) => sum + v * w * compliance[i]![j]!, 0), 0)
  const f = mode.reduce((sum, v, i) => sum + v ** 2 * give[i]!, 0)
  const d = mode.reduce((sum, v, i) => sum + Math.abs(v) * off[i]!, 0)
  const p = d / (f + c)
  const start = shares ?? input.shares ?? null
  const k = input.rigging.stiffness
  const stretch =
    k === undefined
      ? []
      : give.map(
          (g, i): Step => ({
            symbol: `g ${input.picks[i]!.mark}`,
            formula: '1 / (k cos(β°)²)',
            given: { k, β: places.legs[i]!.angle },
            result: g,
            unit: 'mm/kN',
            source: STATICS,
            note: 'give of the leg, up and down at its pick',
          }),
        )
  return [
    ...stretch,
    ...mode.map(
      (v, i): Step => ({
        symbol: `v ${input.picks[i]!.mark}`,
        formula: 'loads of the four picks that are in balance without a weight, the greatest 1',
        given: { x: parts.points[i]![0], y: parts.points[i]![1] },
        result: v,
        unit: '',
        source: STATICS,
        by: 'search',
      }),
    ),
    {
      symbol: 'c',
      formula: 'Σ Σ vᵢ vⱼ cᵢⱼ',
      given: {},
      result: c,
      unit: 'mm/kN',
      source: FORCES,
      by: 'search',
      note: compliance === null ? 'a panel that does not bend' : 'twist of the panel under v, by its bending',
    },
    {
      symbol: 'f',
      formula: mode.map((_, i) => `v${i + 1}² g${i + 1}`).join(' + '),
      given: { ...vs, ...gs },
      result: f,
      unit: 'mm/kN',
      source: STATICS,
    },
    {
      symbol: 'δ',
      formula: mode.map((_, i) => `abs(v${i + 1}) e / (2 cos(β${i + 1}°))`).join(' + '),
      given: {
        e: input.rigging.error ?? 0,
        ...vs,
        ...Object.fromEntries(places.legs.map(({ angle }, i) => [`β${i + 1}`, angle])),
      },
      result: d,
      unit: 'mm',
      source: STATICS,
      note: 'two legs on a diagonal long by half of e, two short',
    },
    { symbol: 'P', formula: 'δ / (f + c)', given: { δ: d, f, c }, result: p, unit: 'kN', source: FORCES },
    ...input.picks.flatMap(({ mark }, i): Step[] => [
      {
        symbol: `R even ${mark}`,
        formula: 'legs that stretch, all of the right length',
        given: start === null ? {} : { R: start[i]! },
        result: found.even[i]!,
        unit: 'kN',
        source: FORCES,
        by: 'search',
      },
      {
        symbol: `R uneven ${mark}`,
        formula: 'R0 + abs(v) P',
        given: { R0: found.even[i]!, v: mode[i]!, P: p },
        result: found.most[i]!,
        unit: 'kN',
        source: FORCES,
        note: `least ${found.least[i]!.toFixed(3)} kN`,
      },
    ]),
  ]
}

import type { Panel } from '../../panel/panel.ts'
import type { Source } from '../../working/source.ts'
import type { Step } from '../../working/worked.ts'
import { CLASSICAL_SOURCE } from './classical.ts'
import { LEAST_SHARE } from './exchange.ts'
import type { LiftedPeak } from './lifted-peak.ts'
import type { Pick, Picks } from './picks.ts'
import type { PicksAsked } from './picks-input.ts'
import type { SearchFound, SearchInput } from './search.ts'

const PLATE: Source = {
  standard: 'thin plate on points, finite elements',
  clause: '',
  status: 'computed',
}

/** What was searched, what was found, and the stress by hand from the moments there. */
export function picksWorking({
  asked,
  panel,
  search,
  found,
  answer,
  before,
  rule,
  inserts,
}: {
  readonly asked: PicksAsked
  readonly panel: Panel
  readonly search: SearchInput
  readonly found: SearchFound
  readonly answer: LiftedPeak
  readonly before: number | null
  readonly rule: Picks['classical']
  readonly inserts: readonly Pick[]
}): Step[] {
  const { peak } = answer
  const t = panel.drawing.thickness
  const [mx, my, mxy] = [peak.mx / 1000, peak.my / 1000, peak.mxy / 1000]
  const middle = (mx + my) / 2
  const radius = Math.hypot((mx - my) / 2, mxy)
  return [
    {
      symbol: 'F',
      formula: 'W f',
      given: { W: panel.weight, f: asked.factor },
      result: panel.weight * asked.factor,
      unit: 'kN',
      source: { standard: 'statics', clause: '', status: 'computed' },
      note: 'load that the inserts share, the factor in it',
    },
    {
      symbol: 'places',
      formula: 'least peak over all places within the limits',
      given: {
        inserts: search.count,
        edge: asked.edge,
        spacing: asked.spacing,
        'places tried': found.table,
        'random starts': search.effort.random,
        seed: asked.seed,
        'rounds of moves': found.rounds,
        mirrors: search.mirrors.length,
      },
      result: inserts
        .map(({ mark, at }) => `${mark} ${at.map((value) => Math.round(value)).join(', ')}`)
        .join('; '),
      unit: 'mm',
      source: PLATE,
      by: 'search',
      note: `by exchange over a table of places, then by small moves; every load at least ${LEAST_SHARE * 100} % of an equal share; no proof that none are better`,
    },
    ...inserts.map(
      ({ mark, load }): Step => ({
        symbol: `R ${mark}`,
        formula: search.count === 2 ? 'W shared by balance' : 'W shared by the bending of the panel',
        given: { F: panel.weight * asked.factor },
        result: load,
        unit: 'kN',
        source: PLATE,
        by: 'search',
      }),
    ),
    {
      symbol: 'mx, my, mxy',
      formula: peakWords[peak.of],
      given: { x: peak.at[0], y: peak.at[1], nodes: answer.nodes },
      result: `${mx}, ${my}, ${mxy}`,
      unit: 'kN·m/m',
      source: PLATE,
      by: 'search',
      note: 'sagging positive; on a mesh made fine around the places found',
    },
    {
      symbol: 'm',
      formula: 'abs((mx + my) / 2) + √(((mx − my) / 2)² + mxy²)',
      given: { mx, my, mxy },
      result: Math.abs(middle) + radius,
      unit: 'kN·m/m',
      source: { standard: 'statics', clause: 'principal moments', status: 'computed' },
    },
    {
      symbol: 'σ',
      formula: '6000 m / t²',
      given: { m: Math.abs(middle) + radius, t },
      result: (6000 * (Math.abs(middle) + radius)) / (t * t),
      unit: 'MPa',
      source: { standard: 'statics', clause: 'section modulus', status: 'computed' },
      note: 'peak of the places found',
    },
    ...besides('before', 'drawn inserts', before, peak.stress, PLATE),
    ...besides(
      'classical',
      'the classical rule on the rectangle around the panel',
      rule?.peak ?? null,
      peak.stress,
      CLASSICAL_SOURCE,
    ),
  ]
}

const peakWords = {
  support: 'moments averaged over a disc of one thickness at an insert',
  corner: 'moments averaged over the concrete of a disc of one thickness at a re-entrant corner',
  plate: 'moments of the plate there',
} as const

function besides(symbol: string, what: string, peak: number | null, now: number, source: Source): Step[] {
  if (peak === null) return []
  return [
    {
      symbol: `gain, ${symbol}`,
      formula: '1 − σ / σ0',
      given: { σ: now, σ0: peak },
      result: 1 - now / peak,
      unit: '',
      source,
      note: `σ0: peak with ${what}`,
    },
  ]
}

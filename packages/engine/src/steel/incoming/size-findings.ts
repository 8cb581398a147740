import type { SteelRules } from '../../codes/steel-rules.ts'
import { commonPractice, GEOMETRY } from '../../working/source.ts'
import { joinVerdicts, type Verdict } from '../../working/verdict.ts'
import type { Step } from '../../working/worked.ts'
import type { Bundle } from './bundle.ts'
import type { Finding } from './finding.ts'

/** A piece shorter than this is not weighed: the saw cut and the scale count too much, mm. Common practice, no source. */
export const SHORTEST_SAMPLE = 500

interface Input {
  readonly bundle: Bundle
  readonly rules: SteelRules
}

/** Diameter of the round bar that weighs so much, mm. Example: 0.888 kg/m is 12 mm. */
export function weighedDiameter({
  length,
  mass,
}: {
  readonly length: number
  readonly mass: number
}): number {
  return Math.sqrt((4e9 * mass) / (Math.PI * 7850 * length))
}

/** Size by mass of weighed pieces against the size ordered. */
export function sizeFinding({ bundle: { weighed = [], ordered }, rules }: Input): Finding {
  const nominal = rules.barSize({ diameter: ordered.diameter })
  const tolerance = rules.massTolerance({ diameter: ordered.diameter })
  const base = {
    id: 'size',
    what: 'Size by mass',
    onFail: 'quarantine',
    onUnknown: 'ask',
    source: tolerance.source,
  } as const
  if (!nominal.known) {
    return {
      ...base,
      found: null,
      wanted: 'not known',
      verdict: 'unknown',
      unknown: nominal.gaps,
      working: [],
    }
  }
  const { massPerMetre } = nominal.value
  const low = tolerance.minus === null ? null : massPerMetre * (1 - tolerance.minus)
  const high = tolerance.plus === null ? null : massPerMetre * (1 + tolerance.plus)
  const wanted =
    high === null
      ? `${kg(low)} kg/m or more`
      : low === null
        ? `${kg(high)} kg/m at most`
        : `${kg(low)} to ${kg(high)} kg/m`
  if (weighed.length === 0) {
    return {
      ...base,
      found: null,
      wanted,
      verdict: 'unknown',
      unknown: [`weighed: mass and length of a straight piece of at least ${SHORTEST_SAMPLE} mm`],
      working: nominal.working,
    }
  }
  const short = weighed.filter(({ length }) => length < SHORTEST_SAMPLE)
  const pieces = weighed.map((piece) => ({ ...piece, perMetre: (1000 * piece.mass) / piece.length }))
  const verdicts = pieces.map(({ length, perMetre }): Verdict => {
    if (length < SHORTEST_SAMPLE) return 'unknown'
    if ((low !== null && perMetre < low) || (high !== null && perMetre > high)) return 'fail'
    return likeAnother(rules, ordered.diameter, perMetre) ? 'fail' : 'pass'
  })
  const verdict = joinVerdicts(verdicts)
  const worst = pieces[verdicts.indexOf(verdict)] ?? pieces[0]
  const diameter = worst === undefined ? Number.NaN : weighedDiameter(worst)
  return {
    ...base,
    found: pieces.map(({ perMetre }) => `${kg(perMetre)} kg/m`).join(', '),
    wanted,
    verdict,
    unknown:
      verdict === 'unknown'
        ? short.map(({ length }) => `weighed: a piece of ${length} mm is shorter than ${SHORTEST_SAMPLE} mm`)
        : [],
    ...(verdict === 'fail' ? { note: `It weighs like a bar of ${diameter.toFixed(1)} mm.` } : {}),
    working: [...nominal.working, ...(worst === undefined ? [] : sizeWorking(worst, diameter))],
  }
}

/** Where no upper limit is set, a bar that weighs nearer to the next size is that size. */
function likeAnother(rules: SteelRules, diameter: number, perMetre: number): boolean {
  const masses = rules.delivered.sizes.flatMap((size) => {
    const bar = rules.barSize({ diameter: size })
    return bar.known ? [{ size, mass: bar.value.massPerMetre }] : []
  })
  const [nearest] = masses.sort((a, b) => Math.abs(a.mass - perMetre) - Math.abs(b.mass - perMetre))
  return nearest !== undefined && Math.abs(nearest.size - diameter) > 0.5
}

function sizeWorking(
  { length, mass }: { readonly length: number; readonly mass: number },
  diameter: number,
): Step[] {
  return [
    {
      symbol: 'm',
      formula: '1000 M / L',
      given: { M: mass, L: length },
      result: (1000 * mass) / length,
      unit: 'kg/m',
      source: GEOMETRY,
    },
    {
      symbol: 'd',
      formula: 'sqrt(4 · 10⁹ M / (π ρ L))',
      given: { M: mass, ρ: 7850, L: length },
      result: diameter,
      unit: 'mm',
      source: GEOMETRY,
    },
  ]
}

/** Measured lengths against the length ordered. A short bar is still steel: it is a question, since the cutting plan counts on its length. */
export function lengthFinding({ bundle: { lengths = [], ordered }, rules }: Input): Finding {
  const base = { id: 'length', what: 'Length of the bars', onFail: 'ask', onUnknown: 'told' } as const
  const wantedLength = ordered.length
  const tolerance =
    wantedLength === undefined ? null : rules.delivered.lengthTolerance({ length: wantedLength })
  const source = tolerance?.source ?? commonPractice('the length counts as measured')
  const unknown = [
    ...(wantedLength === undefined ? ['ordered.length: mm'] : []),
    ...(lengths.length === 0 ? ['lengths: measured on bars of the bundle, mm'] : []),
    ...(wantedLength !== undefined && tolerance === null
      ? ['length: no confirmed tolerance of this code family']
      : []),
  ]
  const found = lengths.length === 0 ? null : `${Math.min(...lengths)} to ${Math.max(...lengths)} mm`
  if (wantedLength === undefined || tolerance === null || lengths.length === 0) {
    return {
      ...base,
      found,
      wanted: wantedLength === undefined ? 'not ordered' : `${wantedLength} mm`,
      verdict: 'unknown',
      unknown,
      source,
      working: [],
    }
  }
  const [low, high] = [wantedLength - tolerance.minus, wantedLength + tolerance.plus]
  return {
    ...base,
    found,
    wanted: `${low} to ${high} mm`,
    verdict: lengths.every((length) => length >= low - 1e-9 && length <= high + 1e-9) ? 'pass' : 'fail',
    unknown: [],
    source,
    working: [],
  }
}

function kg(value: number | null): string {
  return value === null ? '' : value.toFixed(3)
}

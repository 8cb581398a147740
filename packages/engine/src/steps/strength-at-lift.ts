import { commonPractice, enteredBy, type Source } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'
import type { CurveLow } from './curve-low.ts'
import type { EnteredLimit, SpecimenResult } from './facts.ts'
import { asCylinder } from './pour-results.ts'

export interface StrengthAtLiftInput {
  readonly specimens: readonly SpecimenResult[]
  /** Hours from mixing to now. */
  readonly hour: number
  /** Coefficient of variation of one later test of the mix; null where the yard does not know it. */
  readonly scatter: number | null
  /** Low edge of the mix's curve at this pour's equivalent age, MPa; null where there is no log, curve or scatter. */
  readonly curveLow: CurveLow | null
  /** Cylinder over cube as an engineer entered it for the yard; without it cubes are not counted. */
  readonly cubeRatio?: EnteredLimit | null
}

export interface StrengthAtLift {
  /** Low edge at this hour, MPa. */
  readonly low: number
  /** Entries that it rests on. */
  readonly rests: readonly string[]
}

/** Results within this of the latest test are read as one set, h. */
export const SAME_TEST = 2

/** 5 % point of the normal distribution. */
export const LOW_EDGE = 1.645

/** Student's t, 95 % one-sided, by number of results from 3. */
const STUDENT = [2.92, 2.353, 2.132, 2.015, 1.943, 1.895, 1.86, 1.833] as const

const PREDICTION: Source = commonPractice('low edge of the next test, one in twenty below')
const STRICT: Source = commonPractice('the least of everything that is known of this pour')

/**
 * Low edge of the strength of this pour at this hour, MPa: the least of
 * - the results of the latest test themselves;
 * - the low edge for one more test like them: by the mix's scatter, `mean · exp(−1.645 v √(1 + 1/n))`; where the mix has
 *   none, by the spread of at least three results, `mean − t s √(1 + 1/n)`;
 * - the low edge of the mix's curve at the equivalent age of the logged temperatures, where that is known.
 *
 * Results count up to this hour; concrete kept wet and warm does not lose strength after its test. A cube counts by the ratio that an
 * engineer entered and not without one. A specimen cured by the standard tells nothing of the panel at this hour and is not counted.
 * Unknown with no result, and with one or two where the mix has no scatter.
 *
 * Source: common practice, no source.
 * Example: one cylinder of 24 MPa, scatter 0.08: 24 · exp(−1.645 · 0.08 · √2) = 19.92 MPa.
 */
export function strengthAtLift({
  specimens,
  hour,
  scatter,
  curveLow,
  cubeRatio = null,
}: StrengthAtLiftInput): Worked<StrengthAtLift> {
  if (!(hour > 0) || !Number.isFinite(hour)) return unknown('hours from mixing to now')
  const usable = countedAtLift({ specimens, hour, cubeRatio })
  if (usable.length === 0) return unknown(noResult(specimens))
  const latest = Math.max(...usable.map(({ age }) => age))
  const set = usable.filter(({ age }) => latest - age <= SAME_TEST)
  const values = set.map(({ strength }) => strength)
  const next = lowOfNext(values, scatter)
  if (!next.known) return next
  const least = Math.min(...values)
  const parts: Record<string, number> = { x: least, n: next.value }
  if (curveLow !== null) {
    if (!Number.isFinite(curveLow.low)) return unknown('low edge of the curve')
    parts.k = curveLow.low
  }
  const low = Math.min(...Object.values(parts))
  const ratio = set.some(({ kind }) => kind === 'cube') ? cubeRatio : null
  const rests = [
    ...set.map(({ entry }) => entry),
    ...(ratio === null ? [] : [ratio.entry]),
    ...(curveLow?.rests ?? []),
  ]
  return known({ low, rests }, [
    ...(ratio === null ? [] : cubeSteps(set, ratio)),
    ...next.working,
    ...(curveLow?.working ?? []),
    {
      symbol: 'f low',
      formula: `min(${Object.keys(parts).join(', ')})`,
      given: parts,
      result: low,
      unit: 'MPa',
      source: STRICT,
      note: `x least of ${values.length} result${values.length === 1 ? '' : 's'}, n low edge of the next test${curveLow === null ? '; curve at the equivalent age not known, not used' : ', k low edge of the curve at the equivalent age'}`,
    },
  ])
}

/** Results that count at an hour, as cylinders: `strength` is that of a cylinder, `measured` what the press read. */
export function countedAtLift({
  specimens,
  hour,
  cubeRatio = null,
}: Pick<StrengthAtLiftInput, 'specimens' | 'hour' | 'cubeRatio'>): (SpecimenResult & {
  readonly measured: number
})[] {
  return specimens.flatMap((result) => {
    const { age, kind, cured } = result
    const strength = asCylinder(result, cubeRatio)
    const standard = cured === 'standard' && kind !== 'probe'
    const sound = Number.isFinite(age) && age > 0 && age <= hour
    return strength !== null && !standard && sound && Number.isFinite(strength) && strength > 0
      ? [{ ...result, strength, measured: result.strength }]
      : []
  })
}

function noResult(specimens: readonly SpecimenResult[]): string {
  const wanted = 'a cylinder or probe result of this pour'
  if (specimens.some(({ kind, cured }) => kind === 'cube' && cured !== 'standard'))
    return `${wanted}: cubes are not counted without a ratio that an engineer entered`
  return specimens.some(({ cured }) => cured === 'standard')
    ? `${wanted}: what was cured by the standard is not counted`
    : wanted
}

function cubeSteps(
  set: readonly (SpecimenResult & { readonly measured: number })[],
  ratio: EnteredLimit,
): Step[] {
  return set
    .filter(({ kind }) => kind === 'cube')
    .map(({ specimen, strength, measured }) => ({
      symbol: `x ${specimen}`,
      formula: 'r c',
      given: { r: ratio.value, c: measured },
      result: strength,
      unit: 'MPa',
      source: enteredBy(`${ratio.by.name}: ${ratio.standard}, ${ratio.edition}`),
      note: 'cylinder over cube',
    }))
}

function lowOfNext(values: readonly number[], scatter: number | null): Worked<number> {
  const n = values.length
  const mean = values.reduce((sum, value) => sum + value, 0) / n
  const meanStep: Step = {
    symbol: 'mean',
    formula: 'mean of the latest results',
    given: Object.fromEntries(values.map((value, index) => [`x${index + 1}`, value])),
    result: mean,
    unit: 'MPa',
    source: PREDICTION,
    by: 'search',
  }
  if (scatter !== null && Number.isFinite(scatter) && scatter > 0) {
    const low = mean * Math.exp(-LOW_EDGE * scatter * Math.sqrt(1 + 1 / n))
    return known(low, [
      meanStep,
      {
        symbol: 'n',
        formula: 'm exp(−z v √(1 + 1 / c))',
        given: { m: mean, z: LOW_EDGE, v: scatter, c: n },
        result: low,
        unit: 'MPa',
        source: PREDICTION,
        note: 'v scatter of the mix, c number of results',
      },
    ])
  }
  if (n < 3) {
    return unknown('low edge of the strength: a scatter of the mix, or three results of the same test')
  }
  const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1))
  const t = STUDENT[Math.min(n, STUDENT.length + 2) - 3] ?? STUDENT[0]
  const low = mean - t * spread * Math.sqrt(1 + 1 / n)
  return known(low, [
    meanStep,
    {
      symbol: 's',
      formula: 'standard deviation of the latest results',
      given: { c: n },
      result: spread,
      unit: 'MPa',
      source: PREDICTION,
      by: 'search',
    },
    {
      symbol: 'n',
      formula: 'm − t s √(1 + 1 / c)',
      given: { m: mean, t, s: spread, c: n },
      result: low,
      unit: 'MPa',
      source: PREDICTION,
      note: 't Student, 95 % one-sided; the mix has no scatter of its own',
    },
  ])
}

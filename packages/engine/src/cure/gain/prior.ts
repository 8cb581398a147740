import { enteredBy } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import type { StrengthCurve } from '../../yard/yard.ts'
import { type AgeMethod, ageRate } from '../age-method.ts'
import { ageAtStrength, curveFrom, strengthOf } from '../strength-curve.ts'
import type { StrengthSource } from '../strength-model.ts'
import type { AgedStrength } from './aged-strength.ts'
import { readAge } from './covariance.ts'
import { POPULATION } from './learned.ts'
import type { Gaussian } from './open-process.ts'
import { POPULATION_PRIOR, shapeCovariance } from './population.ts'
import { curveLawAfter, takeIn } from './posterior.ts'
import type { StrengthPrior } from './strength-prior.ts'

export interface StrengthPriorInput {
  /** The mix of the yard: its tests go before its curve. */
  readonly source: StrengthSource
  readonly method: AgeMethod
  /**
   * What the open tests say of the mix, by its proportions (`openPrior`); of any concrete where not given. It carries the
   * shape of the curve where the yard has tests, and stands in where it has neither tests nor curve.
   */
  readonly open?: StrengthPrior
}

/**
 * What is thought of a pour before its own readings and cylinders: from the yard's tests of the mix, else from its curve,
 * else from open tests of other mixes.
 *
 * The scatter of the mix (coefficient of variation of one later test) holds what differs from pour to pour. Unknown where
 * tests or curve come without it: how far another pour may lie from them is then not known.
 */
export function strengthPrior({ source, method, open }: StrengthPriorInput): Worked<StrengthPrior> {
  const { tests, curve, scatter } = source
  const base = open ?? POPULATION_PRIOR
  if ((tests === undefined || tests.length === 0) && curve === undefined) return known(base, [])
  if (scatter === undefined || !(scatter > 0 && scatter <= 1))
    return unknown('scatter: a coefficient of variation of the mix, above 0 and at most 1')
  if (tests === undefined || tests.length === 0)
    return curve === undefined ? known(base, []) : fromCurve(curve, scatter)
  const aged = tests.map(
    ({ age, strength, temperature }): AgedStrength => ({
      days: (age * (temperature === undefined ? 1 : ageRate(method, temperature))) / 24,
      strength,
    }),
  )
  const bad = aged.findIndex(({ days, strength }) => !(days > 0 && strength > 0))
  if (bad >= 0) return unknown(`tests[${bad}]: age, strength and counted age above 0`)
  return known(fromTests(aged, scatter, base), [])
}

/** How a pour differs from its mix: a variance that fades over ln age, so that an early cylinder tells less of a late hour. */
function pourCovariance(a: number, b: number, scatter: number): number {
  const own = Math.max(0, scatter ** 2 - testScatter(scatter) ** 2)
  return own * Math.exp(-(((readAge(a).ln - readAge(b).ln) / POPULATION.bendReach) ** 2) / 2)
}

/** One test about its pour: as in the open tests, and not above what the mix scatters in all. */
function testScatter(scatter: number): number {
  return Math.min(POPULATION.test, scatter)
}

function fromTests(aged: readonly AgedStrength[], scatter: number, base: StrengthPrior): StrengthPrior {
  const ages = aged.map(({ days }) => days)
  // Tests of the mix come from different pours: each scatters as a pour does.
  const mixPrior: StrengthPrior = { ...base, scatter: Math.max(base.scatter, scatter) }
  const taken = takeIn(mixPrior, aged)
  return {
    law: (days) => {
      const { mean, covariance } = curveLawAfter(mixPrior, taken, days)
      return { mean, covariance: withPour(covariance, days, scatter) }
    },
    scatter: testScatter(scatter),
    widen: base.widen,
    from: Math.min(base.from, ...ages),
    to: Math.max(base.to, ...ages),
    restsOn: `${aged.length} tests of the mix; ${base.restsOn}`,
    source: enteredBy('the mix: its tests'),
  }
}

/** Strength below which the logarithm of a curve is not read, MPa: it has only just set. */
const LEAST_STRENGTH = 1

function fromCurve(curve: StrengthCurve, scatter: number): Worked<StrengthPrior> {
  const least = ageAtStrength(curve, LEAST_STRENGTH)
  if (least === null) return unknown(`curve: does not reach ${LEAST_STRENGTH} MPa`)
  const code = curve.form === 'ec2'
  const law = (days: readonly number[]): Gaussian => {
    const mean = Float64Array.from(days, (each) => Math.log(strengthOf(curve, each * 24) ?? Number.NaN))
    // A code's curve has the shape of no one mix; a curve of the yard has that of its own.
    const shape = days.flatMap((a) => days.map((b) => (code ? shapeCovariance(readAge(a), readAge(b)) : 0)))
    return { mean, covariance: withPour(Float64Array.from(shape), days, scatter) }
  }
  return known(
    {
      law,
      scatter: testScatter(scatter),
      widen: 1,
      from: Math.max(least, curveFrom(curve)) / 24,
      to: POPULATION_PRIOR.to,
      restsOn: code
        ? 'the code’s curve for the mix, its shape as uncertain as among open tests'
        : 'the curve of the mix',
      source: enteredBy('the mix: its curve'),
    },
    [],
  )
}

function withPour(covariance: Float64Array, days: readonly number[], scatter: number): Float64Array {
  return covariance.map(
    (each, at) =>
      each +
      pourCovariance(days[Math.floor(at / days.length)] as number, days[at % days.length] as number, scatter),
  )
}

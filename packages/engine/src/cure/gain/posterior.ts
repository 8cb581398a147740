import { type AgedStrength, withoutRepeats } from './aged-strength.ts'
import { backward, factorOf, forward, inverseOf } from './factor.ts'
import type { Gaussian } from './open-process.ts'
import type { StrengthPrior } from './strength-prior.ts'

/** Law of ln strength of one later test at an age. */
export interface Posterior {
  readonly mean: number
  readonly deviation: number
}

/** Tests taken in: those that do not fit the others count for less, and are named. */
export interface TakenIn {
  /** Tests without exact repeats, in the order given. */
  readonly tests: readonly AgedStrength[]
  /** How many repeat another to the last digit, and are not counted twice. */
  readonly repeats: number
  /** Added scatter of each test, ln strength; 0 for one that fits. */
  readonly added: readonly number[]
  /** Places in `tests` of those that do not fit and count for less. */
  readonly slipped: readonly number[]
  /** Places of those that do not fit and count all the same: a lone one, or one too low where such are kept. */
  readonly kept: readonly number[]
  /** Factor on the deviation: above 1 where the tests as a whole do not fit what was thought of the mix. */
  readonly stretch: number
}

/** Departure from what the other tests say, in standard deviations, above which a test counts for less. */
const FITS = 3

/**
 * Weighs tests against one another. A test farther than three standard deviations from what prior and other tests say of
 * it is given more scatter, by the fourth power of the excess, so that the farther off the less it draws. At most half of
 * them, the worst first. A lone test keeps its weight, and the band is stretched in its place; so does one too low with
 * `keepLow`, where a person's life hangs on the strength and no result may be argued away.
 */
export function takeIn(
  prior: StrengthPrior,
  given: readonly AgedStrength[],
  { keepLow = false }: { readonly keepLow?: boolean } = {},
): TakenIn {
  const tests = withoutRepeats(given)
  const size = tests.length
  const added = new Array<number>(size).fill(0)
  const repeats = given.length - size
  if (size === 0) return { tests, repeats, added, slipped: [], kept: [], stretch: 1 }
  const law = prior.law(tests.map(({ days }) => days))
  const departures = () => departuresOf(law, tests, prior.scatter, added)
  const doubted: { at: number; z: number }[] = []
  // Worst first: what is left is judged as if those before it were not there.
  for (let found = departures(); doubted.length < Math.floor(size / 2); found = departures()) {
    const worst = found
      .map(({ z, s }, at) => ({ at, z, s }))
      .filter(({ at, z }) => Math.abs(z) > FITS && !doubted.some((each) => each.at === at))
      .sort((one, other) => Math.abs(other.z) - Math.abs(one.z))[0]
    if (worst === undefined) break
    doubted.push(worst)
    added[worst.at] = worst.s * Math.sqrt((worst.z / FITS) ** 4 - 1)
  }
  const low = doubted.filter(({ z }) => keepLow && z < 0).map(({ at }) => at)
  for (const at of low) added[at] = 0
  const slipped = doubted.map(({ at }) => at).filter((at) => !low.includes(at))
  const rest = departures().map(({ z }, at) => (slipped.includes(at) ? 0 : Math.abs(z)))
  const misfits = rest.flatMap((z, at) => (z > FITS && !doubted.some((each) => each.at === at) ? [at] : []))
  // Sound tests look odd beside a low one that is kept: then the low one is named, not they.
  const kept = (low.length > 0 ? low : misfits).sort((a, b) => a - b)
  const stretch = Math.max(1, ...rest.map((z) => z / FITS))
  return { tests, repeats, added, slipped: slipped.sort((a, b) => a - b), kept, stretch }
}

/** Each test against prior and other tests: departure in standard deviations `z`, below 0 where it is too low, and that deviation `s`. */
function departuresOf(
  { mean, covariance }: Gaussian,
  tests: readonly AgedStrength[],
  scatter: number,
  added: readonly number[],
): { z: number; s: number }[] {
  const size = tests.length
  const matrix = withScatter(covariance, size, (at) => scatter ** 2 + (added[at] ?? 0) ** 2)
  const factor = factorOf(matrix, size)
  if (factor === null) throw new Error('posterior: covariance of the tests found not positive definite')
  const inverse = inverseOf(factor, size)
  const residual = tests.map(({ strength }, at) => Math.log(strength) - (mean[at] as number))
  return tests.map((_, at) => {
    const precision = inverse[at * size + at] as number
    let drawn = 0
    for (let k = 0; k < size; k += 1) drawn += (inverse[at * size + k] as number) * (residual[k] as number)
    return { z: drawn / Math.sqrt(precision), s: 1 / Math.sqrt(precision) }
  })
}

function withScatter(covariance: Float64Array, size: number, variance: (at: number) => number): Float64Array {
  const matrix = Float64Array.from(covariance)
  for (let at = 0; at < size; at += 1)
    matrix[at * size + at] = (matrix[at * size + at] as number) + variance(at)
  return matrix
}

/** Law of one later test at each age, days, given the tests. Deviations are stretched as `takeIn` and the prior say. */
export function laterTests(prior: StrengthPrior, taken: TakenIn, days: readonly number[]): Posterior[] {
  const { mean, covariance } = curveLawAfter(prior, taken, days)
  return days.map((_, at) => {
    const curve = Math.max(0, covariance[at * days.length + at] as number)
    return {
      mean: mean[at] as number,
      deviation: prior.widen * Math.sqrt(curve + (taken.stretch * prior.scatter) ** 2),
    }
  })
}

/** Joint law of the curve at some ages, days, given the tests; without the scatter of a test. */
export function curveLawAfter(prior: StrengthPrior, taken: TakenIn, days: readonly number[]): Gaussian {
  const { tests, added, stretch } = taken
  const [told, asked] = [tests.length, days.length]
  const { mean, covariance } = prior.law([...tests.map((test) => test.days), ...days])
  const all = told + asked
  const block = Float64Array.from({ length: told * told }, (_, at) => {
    return covariance[Math.floor(at / told) * all + (at % told)] as number
  })
  const factor = factorOf(
    withScatter(block, told, (at) => prior.scatter ** 2 + (added[at] ?? 0) ** 2),
    told,
  )
  if (factor === null) throw new Error('posterior: covariance of the tests found not positive definite')
  const residual = tests.map(({ strength }, at) => Math.log(strength) - (mean[at] as number))
  const weights = backward(factor, told, forward(factor, told, residual))
  const drawn = days.map((_, at) => {
    const toTests = covariance.subarray((told + at) * all, (told + at) * all + told)
    return { toTests, reduced: forward(factor, told, toTests) }
  })
  return {
    mean: Float64Array.from(drawn, ({ toTests }, at) =>
      toTests.reduce((sum, each, k) => sum + each * (weights[k] as number), mean[told + at] as number),
    ),
    covariance: Float64Array.from(
      drawn.flatMap((a, i) =>
        drawn.map((b, j) => {
          const known = a.reduced.reduce((sum, each, k) => sum + each * (b.reduced[k] as number), 0)
          return stretch ** 2 * ((covariance[(told + i) * all + told + j] as number) - known)
        }),
      ),
    ),
  }
}

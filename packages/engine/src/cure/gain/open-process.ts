import { type AgedStrength, withoutRepeats } from './aged-strength.ts'
import { mixCovariance, ownAt, type ReadAge, readAge, sharedAt } from './covariance.ts'
import { backward, factorOf, forward } from './factor.ts'
import { type FeatureScale, featuresOf, scaled, scaleOf } from './features.ts'
import type { Covariance } from './learned.ts'
import type { MixProportions, OpenMix } from './open-mixes.ts'

/** Joint normal law of ln strength at some ages; `covariance` row by row. */
export interface Gaussian {
  readonly mean: Float64Array
  readonly covariance: Float64Array
}

/** One row of the data: its mix, age, ln strength. */
export interface OpenRow {
  readonly mix: number
  readonly days: number
  readonly age: ReadAge
  readonly value: number
}

/** The Gaussian process over mixes and ages, conditioned on a set of mixes. */
export interface OpenProcess {
  readonly by: Covariance
  readonly scale: FeatureScale
  readonly features: readonly (readonly number[])[]
  readonly rows: readonly OpenRow[]
  /** Mean of ln strength that everything is counted from. */
  readonly centre: number
  readonly factor: Float64Array
  readonly weights: Float64Array
}

/** A result of the data that does not fit its own mix: it is given more scatter, ln strength. */
export interface Slip extends AgedStrength {
  readonly mark: string
  readonly scatter: number
}

export interface OpenProcessInput {
  readonly mixes: readonly OpenMix[]
  readonly by: Covariance
  readonly slips?: readonly Slip[]
  /** Scale of the features; that of the mixes where not given. */
  readonly scale?: FeatureScale
}

/** Conditions the process on mixes: some 0.2 s for all of the open data. @throws Error where the numbers are not positive definite. */
export function openProcess({ mixes, by, slips = [], scale }: OpenProcessInput): OpenProcess {
  const raw = mixes.map(({ proportions }) => featuresOf(proportions))
  const fixed = scale ?? scaleOf(raw)
  const features = raw.map((each) => scaled(each, fixed))
  const rows = mixes.flatMap(({ tests }, mix) =>
    withoutRepeats(tests).map(
      ({ days, strength }): OpenRow => ({ mix, days, age: readAge(days), value: Math.log(strength) }),
    ),
  )
  const centre = rows.reduce((sum, { value }) => sum + value, 0) / rows.length
  const matrix = dataCovariance(features, rows, by)
  for (const [at, row] of rows.entries()) {
    const { mark } = mixes[row.mix] as OpenMix
    const slip = slips.find(
      (each) =>
        each.mark === mark && each.days === row.days && Math.abs(Math.log(each.strength) - row.value) < 1e-6,
    )
    const place = at * rows.length + at
    matrix[place] = (matrix[place] as number) + (slip?.scatter ?? 0) ** 2
  }
  const factor = factorOf(matrix, rows.length)
  if (factor === null) throw new Error('open data: covariance found not positive definite')
  const values = rows.map(({ value }) => value - centre)
  const weights = backward(factor, rows.length, forward(factor, rows.length, values))
  return { by, scale: fixed, features, rows, centre, factor, weights }
}

/** Covariance of the rows, the scatter of a test included. */
function dataCovariance(
  features: readonly (readonly number[])[],
  rows: readonly OpenRow[],
  by: Covariance,
): Float64Array {
  const matrix = new Float64Array(rows.length ** 2)
  for (const [i, a] of rows.entries()) {
    let shared = mixCovariance(features[a.mix] ?? [], features[a.mix] ?? [], by)
    let mix = a.mix
    for (let j = 0; j <= i; j += 1) {
      const b = rows[j] as OpenRow
      if (b.mix !== mix || j === 0) {
        shared = mixCovariance(features[a.mix] ?? [], features[b.mix] ?? [], by)
        mix = b.mix
      }
      let sum = sharedAt(shared, a.age, b.age, by)
      if (a.mix === b.mix) sum += ownAt(a.age, b.age, by)
      if (i === j) sum += by.test ** 2
      matrix[i * rows.length + j] = sum
      matrix[j * rows.length + i] = sum
    }
  }
  return matrix
}

/** Law of the curve of a mix that is not in the data, at some ages, days; without the scatter of a test. */
export function curveLaw(process: OpenProcess, mix: MixProportions, days: readonly number[]): Gaussian {
  const { by, rows, factor } = process
  const own = scaled(featuresOf(mix), process.scale)
  const ages = days.map(readAge)
  const shared = process.features.map((features) => mixCovariance(own, features, by))
  const self = mixCovariance(own, own, by)
  const mean = new Float64Array(ages.length)
  const solved = ages.map((age, at) => {
    const toRows = Float64Array.from(rows, (row) =>
      sharedAt(shared[row.mix] as typeof self, age, row.age, by),
    )
    mean[at] = process.centre + toRows.reduce((sum, value, k) => sum + value * (process.weights[k] ?? 0), 0)
    return forward(factor, rows.length, toRows)
  })
  const covariance = new Float64Array(ages.length ** 2)
  for (const [i, a] of ages.entries()) {
    for (const [j, b] of ages.entries()) {
      if (j > i) continue
      const left = solved[i] as Float64Array
      const right = solved[j] as Float64Array
      let sum = sharedAt(self, a, b, by) + ownAt(a, b, by)
      for (let k = 0; k < rows.length; k += 1) sum -= (left[k] as number) * (right[k] as number)
      covariance[i * ages.length + j] = sum
      covariance[j * ages.length + i] = sum
    }
  }
  return { mean, covariance }
}

import { factorOf, inverseOf, type OpenProcess } from '@castwright/engine/cure/gain'
import { covarianceSlope } from './gain-slope.ts'

/** Ages up to which tests are early, days. */
const EARLY = [3, 7, 14]
/** Degrees of freedom of the Student law by which a miss at 28 days counts: one slipped result must not decide. */
const DEGREES = 4

/** Loss, and its slope over the logarithms of the numbers in the order of `toVector`. */
export interface Loss {
  readonly value: number
  readonly slope: readonly number[]
}

/** What a group of mixes adds to the loss, with its slope by covariance (row by row) and by residual. */
interface BlockLoss {
  value: number
  readonly byCovariance: Float64Array
  readonly byResidual: Float64Array
}

/**
 * Hold-out loss in ln strength. Each group of like mixes is held out in turn: mean over all tests of the negative log
 * density of a group's tests together, and mean over mixes and sets of early tests of that at 28 days.
 *
 * One inverse gives all groups: the inverse of a block of the inverse is that block's covariance given the rest.
 */
export function holdOutLoss(process: OpenProcess, groups: readonly number[]): Loss {
  const size = process.rows.length
  const inverse = inverseOf(process.factor, size)
  const places = new Map<number, number[]>()
  for (const [at, { mix }] of process.rows.entries()) {
    const group = groups[mix] ?? mix
    places.set(group, [...(places.get(group) ?? []), at])
  }
  const blocks = [...places.values()]
  const lates = blocks.reduce((sum, rows) => sum + lateSets(process, rows).length, 0)
  // Slope by the inverse, which has blocks only, and by the weights `inverse · values`.
  const byInverse = new Float64Array(size * size)
  const byWeights = new Float64Array(size)
  let value = 0
  for (const rows of blocks) {
    const n = rows.length
    const precision = Float64Array.from(rows.flatMap((i) => rows.map((j) => inverse[i * size + j] as number)))
    const covariance = inverseOf(required(factorOf(precision, n)), n)
    const weights = rows.map((row) => process.weights[row] as number)
    const residual = product(covariance, weights, n)
    const block: BlockLoss = {
      value: 0,
      byCovariance: new Float64Array(n * n),
      byResidual: new Float64Array(n),
    }
    addJoint(block, precision, covariance, residual, 1 / size)
    for (const set of lateSets(process, rows)) addLate(block, set, covariance, residual, 1 / lates)
    value += block.value
    // residual = covariance · weights, covariance = precision⁻¹
    const all = Float64Array.from(block.byCovariance)
    for (let i = 0; i < n; i += 1)
      for (let j = 0; j < n; j += 1)
        all[i * n + j] =
          (all[i * n + j] as number) +
          ((block.byResidual[i] as number) * (weights[j] as number) +
            (block.byResidual[j] as number) * (weights[i] as number)) /
            2
    const turned = sandwich(covariance, all, n)
    const drawn = product(covariance, Array.from(block.byResidual), n)
    for (const [i, row] of rows.entries()) {
      byWeights[row] = drawn[i] as number
      for (const [j, column] of rows.entries())
        byInverse[row * size + column] = -(turned[i * n + j] as number)
    }
  }
  const byCovariance = throughInverse({
    inverse,
    byInverse,
    byWeights,
    weights: process.weights,
    blocks,
    size,
  })
  return { value, slope: covarianceSlope(process, byCovariance) }
}

function required(factor: Float64Array | null): Float64Array {
  if (factor === null) throw new Error('hold-out loss: block found not positive definite')
  return factor
}

function product(matrix: Float64Array, vector: readonly number[], n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) =>
    vector.reduce((sum, each, j) => sum + (matrix[i * n + j] as number) * each, 0),
  )
}

/** `C A C` of symmetric matrices. */
function sandwich(c: Float64Array, a: Float64Array, n: number): Float64Array {
  return times(times(c, a, n), c, n)
}

function times(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n)
  for (let i = 0; i < n; i += 1)
    for (let k = 0; k < n; k += 1) {
      const share = a[i * n + k] as number
      if (share === 0) continue
      for (let j = 0; j < n; j += 1)
        out[i * n + j] = (out[i * n + j] as number) + share * (b[k * n + j] as number)
    }
  return out
}

function addJoint(
  block: BlockLoss,
  precision: Float64Array,
  covariance: Float64Array,
  residual: Float64Array,
  share: number,
): void {
  const n = residual.length
  const drawn = product(precision, Array.from(residual), n)
  const factor = required(factorOf(covariance, n))
  for (let i = 0; i < n; i += 1) {
    block.value +=
      share * (((residual[i] as number) * (drawn[i] as number)) / 2 + Math.log(factor[i * n + i] as number))
    block.byResidual[i] = (block.byResidual[i] as number) + share * (drawn[i] as number)
    for (let j = 0; j < n; j += 1)
      block.byCovariance[i * n + j] =
        (block.byCovariance[i * n + j] as number) +
        (share * ((precision[i * n + j] as number) - (drawn[i] as number) * (drawn[j] as number))) / 2
  }
}

interface LateSet {
  readonly early: readonly number[]
  readonly late: number
}

/** Places in the block: early tests of a mix, and each of its tests at 28 days. Each set once. */
function lateSets(process: OpenProcess, rows: readonly number[]): LateSet[] {
  const at = rows.map((row) => process.rows[row] as OpenProcess['rows'][number])
  const sets = new Map<string, LateSet>()
  for (const [late, { mix, days }] of at.entries()) {
    if (days !== 28) continue
    for (const last of EARLY) {
      const early = at.flatMap((row, i) => (row.mix === mix && row.days <= last ? [i] : []))
      if (early.length > 0) sets.set(`${late}: ${early.join()}`, { early, late })
    }
  }
  return [...sets.values()]
}

/** Student loss of the late test given the early ones. */
function addLate(
  block: BlockLoss,
  { early, late }: LateSet,
  covariance: Float64Array,
  residual: Float64Array,
  share: number,
): void {
  const n = residual.length
  const m = early.length
  const inner = Float64Array.from(early.flatMap((i) => early.map((j) => covariance[i * n + j] as number)))
  const inverse = inverseOf(required(factorOf(inner, m)), m)
  const lean = product(
    inverse,
    early.map((i) => covariance[i * n + late] as number),
    m,
  )
  const drawn = product(
    inverse,
    early.map((i) => residual[i] as number),
    m,
  )
  const places = [...early, late]
  const q = [...Array.from(lean, (each) => -each), 1]
  const b = [...drawn, 0]
  const miss = places.reduce((sum, place, i) => sum + (q[i] as number) * (residual[place] as number), 0)
  const variance = places.reduce(
    (sum, i, a) =>
      sum +
      places.reduce(
        (row, j, c) => row + (q[a] as number) * (q[c] as number) * (covariance[i * n + j] as number),
        0,
      ),
    0,
  )
  const deviation = Math.sqrt(variance)
  const z = miss / deviation
  const pull = ((DEGREES + 1) * z) / (DEGREES + z ** 2)
  block.value += share * (((DEGREES + 1) / 2) * Math.log1p(z ** 2 / DEGREES) + Math.log(deviation))
  const [byMiss, byVariance] = [(share * pull) / deviation, (share * (1 - pull * z)) / (2 * variance)]
  for (const [a, i] of places.entries()) {
    block.byResidual[i] = (block.byResidual[i] as number) + byMiss * (q[a] as number)
    for (const [c, j] of places.entries()) {
      const [qa, qc, ba, bc] = [q[a] as number, q[c] as number, b[a] as number, b[c] as number]
      block.byCovariance[i * n + j] =
        (block.byCovariance[i * n + j] as number) - (byMiss * (ba * qc + bc * qa)) / 2 + byVariance * qa * qc
    }
  }
}

interface ThroughInverseInput {
  readonly inverse: Float64Array
  readonly byInverse: Float64Array
  readonly byWeights: Float64Array
  readonly weights: Float64Array
  readonly blocks: readonly (readonly number[])[]
  readonly size: number
}

/** Slope by the covariance of the rows: `−K⁻¹ B K⁻¹ − K⁻¹ v wᵀ`, the second part made symmetric. */
function throughInverse(input: ThroughInverseInput): Float64Array {
  const { inverse, byInverse, byWeights, weights, blocks, size } = input
  const half = new Float64Array(size * size)
  for (let i = 0; i < size; i += 1)
    for (const rows of blocks)
      for (const k of rows) {
        const share = inverse[i * size + k] as number
        for (const j of rows)
          half[i * size + j] = (half[i * size + j] as number) + share * (byInverse[k * size + j] as number)
      }
  const out = times(half, inverse, size)
  const drawn = product(inverse, Array.from(byWeights), size)
  for (let i = 0; i < size; i += 1)
    for (let j = 0; j < size; j += 1)
      out[i * size + j] =
        -(out[i * size + j] as number) -
        ((drawn[i] as number) * (weights[j] as number) + (drawn[j] as number) * (weights[i] as number)) / 2
  return out
}

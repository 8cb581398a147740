import type { Covariance, OpenProcess } from '@castwright/engine/cure/gain'

const NAMES = [
  'level',
  'levelStraight',
  'levelOwn',
  'slopeCommon',
  'slope',
  'slopeStraight',
  'slopeOwn',
  'bend',
  'bendReach',
  'bendOwn',
  'bendOwnReach',
  'test',
] as const satisfies readonly Exclude<keyof Covariance, 'reach'>[]
const TURNS = ['turn', 'turnOwn'] as const

/** Logarithms of the numbers: reaches first, then the rest in the order of `NAMES`; correlations by atanh at the end. */
export function toVector(by: Covariance): number[] {
  const logarithms = [...by.reach, ...NAMES.map((name) => by[name])].map(Math.log)
  return [...logarithms, ...TURNS.map((name) => Math.atanh(by[name]))]
}

/** Back from logarithms, kept between e⁻⁷ and e^3.5, correlations within ±0.995. */
export function fromVector(vector: readonly number[]): Covariance {
  const numbers = vector.map((value) => Math.exp(Math.max(-7, Math.min(3.5, value))))
  const features = vector.length - NAMES.length - TURNS.length
  const rest = Object.fromEntries(NAMES.map((name, at) => [name, numbers[features + at]]))
  const turns = TURNS.map((name, at) => [
    name,
    Math.tanh(Math.max(-3, Math.min(3, vector[features + NAMES.length + at] ?? 0))),
  ])
  const named = { ...rest, ...Object.fromEntries(turns) }
  return { ...(named as unknown as Covariance), reach: numbers.slice(0, features) }
}

/** Slope of a number by the logarithms of `by`, from its slope by the covariance of the rows. */
export function covarianceSlope(process: OpenProcess, byCovariance: Float64Array): number[] {
  const { by, rows, features } = process
  const size = rows.length
  let [turn, turnOwn] = [0, 0]
  const slope = Object.fromEntries(NAMES.map((name) => [name, 0])) as Record<(typeof NAMES)[number], number>
  const reach = by.reach.map(() => 0)
  for (let i = 0; i < size; i += 1) {
    const a = rows[i] as OpenProcess['rows'][number]
    const x = features[a.mix] as readonly number[]
    for (let j = 0; j <= i; j += 1) {
      const b = rows[j] as OpenProcess['rows'][number]
      const y = features[b.mix] as readonly number[]
      const weight = (i === j ? 1 : 2) * (byCovariance[i * size + j] as number)
      let [apart, together] = [0, 0]
      for (let k = 0; k < reach.length; k += 1) {
        const r = by.reach[k] as number
        apart += (((x[k] as number) - (y[k] as number)) / r) ** 2
        together += ((x[k] as number) * (y[k] as number)) / r ** 2
      }
      const like = weight * Math.exp(-apart / 2)
      const straight = weight * together
      const growth = a.age.growth * b.age.growth
      const sum = a.age.growth + b.age.growth
      const [crossLike, crossStraight] = [
        by.level * by.slope * sum,
        by.levelStraight * by.slopeStraight * sum,
      ]
      turn += crossLike * like + crossStraight * straight
      slope.level += by.turn * crossLike * like
      slope.slope += by.turn * crossLike * like
      slope.levelStraight += by.turn * crossStraight * straight
      slope.slopeStraight += by.turn * crossStraight * straight
      const far = (a.age.ln - b.age.ln) ** 2
      const near = Math.exp(-far / by.bendReach ** 2 / 2)
      slope.level += 2 * by.level ** 2 * like
      slope.levelStraight += 2 * by.levelStraight ** 2 * straight
      slope.slopeCommon += 2 * by.slopeCommon ** 2 * growth * weight
      slope.slope += 2 * by.slope ** 2 * growth * like
      slope.slopeStraight += 2 * by.slopeStraight ** 2 * growth * straight
      slope.bend += 2 * by.bend ** 2 * near * like
      slope.bendReach += (by.bend ** 2 * near * like * far) / by.bendReach ** 2
      const byLike =
        like * (by.level ** 2 + by.slope ** 2 * growth + by.bend ** 2 * near + by.turn * crossLike)
      const byStraight =
        weight * (by.levelStraight ** 2 + by.slopeStraight ** 2 * growth + by.turn * crossStraight)
      for (let k = 0; k < reach.length; k += 1) {
        const r = by.reach[k] as number
        const [xk, yk] = [x[k] as number, y[k] as number]
        reach[k] = (reach[k] as number) + byLike * ((xk - yk) / r) ** 2 - (2 * byStraight * xk * yk) / r ** 2
      }
      if (a.mix !== b.mix) continue
      const own = Math.exp(-far / by.bendOwnReach ** 2 / 2)
      const crossOwn = by.levelOwn * by.slopeOwn * sum * weight
      turnOwn += crossOwn
      slope.levelOwn += by.turnOwn * crossOwn
      slope.slopeOwn += by.turnOwn * crossOwn
      slope.levelOwn += 2 * by.levelOwn ** 2 * weight
      slope.slopeOwn += 2 * by.slopeOwn ** 2 * growth * weight
      slope.bendOwn += 2 * by.bendOwn ** 2 * own * weight
      slope.bendOwnReach += (by.bendOwn ** 2 * own * far * weight) / by.bendOwnReach ** 2
      if (i === j) slope.test += 2 * by.test ** 2 * weight
    }
  }
  return [
    ...reach,
    ...NAMES.map((name) => slope[name]),
    turn * (1 - by.turn ** 2),
    turnOwn * (1 - by.turnOwn ** 2),
  ]
}

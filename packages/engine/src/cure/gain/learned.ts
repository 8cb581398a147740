/** Numbers of the covariance of ln strength: standard deviations, and the reach of each feature. Pure numbers. */
export interface Covariance {
  /** Reach of each feature of the mix, in standard deviations of that feature among the open mixes. */
  readonly reach: readonly number[]
  /** Level: smooth part, straight part, and that of one mix alone. */
  readonly level: number
  readonly levelStraight: number
  readonly levelOwn: number
  /** Slope over `1 − √(28 / days)`: common to all, smooth part, straight part, that of one mix alone. */
  readonly slopeCommon: number
  readonly slope: number
  readonly slopeStraight: number
  readonly slopeOwn: number
  /** Bend of the curve over age: shared by like mixes, and that of one mix alone; each with its reach in ln age. */
  readonly bend: number
  readonly bendReach: number
  readonly bendOwn: number
  readonly bendOwnReach: number
  /** One test about its mix's curve. */
  readonly test: number
}

import type { Slip } from './open-process.ts'
import type { Population } from './population.ts'
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
  /** Correlation of level and slope, −1 to 1: of what mixes share, and of what one mix has alone. */
  readonly turn: number
  readonly turnOwn: number
  /** Bend of the curve over age: shared by like mixes, and that of one mix alone; each with its reach in ln age. */
  readonly bend: number
  readonly bendReach: number
  readonly bendOwn: number
  readonly bendOwnReach: number
  /** One test about its mix's curve. */
  readonly test: number
}

export const LEARNED: Covariance = {
  level: 0.3091,
  levelStraight: 0.5845,
  levelOwn: 0.1119,
  slopeCommon: 0.3296,
  slope: 0.0293,
  slopeStraight: 0.09106,
  slopeOwn: 0.06687,
  bend: 0.09946,
  bendReach: 1.038,
  bendOwn: 0.03156,
  bendOwnReach: 1.36,
  test: 0.06166,
  turn: -0.5035,
  turnOwn: -0.2492,
  reach: [2.864, 3.525, 2.773, 0.543, 2.809, 3.523, 9.43, 5.877, 3.641],
}

export const SLIPS: readonly Slip[] = [
  { mark: 'M019', days: 28, strength: 36.44, scatter: 0.03564 },
  { mark: 'M116', days: 14, strength: 16.88, scatter: 0.03868 },
  { mark: 'M121', days: 14, strength: 25.48, scatter: 0.04992 },
  { mark: 'M183', days: 7, strength: 26.26, scatter: 0.2013 },
  { mark: 'M264', days: 7, strength: 30.96, scatter: 0.1938 },
  { mark: 'M348', days: 3, strength: 15.87, scatter: 0.4768 },
  { mark: 'M348', days: 7, strength: 9.01, scatter: 0.8084 },
  { mark: 'M357', days: 7, strength: 22.9, scatter: 0.7189 },
  { mark: 'M357', days: 7, strength: 55.9, scatter: 0.1117 },
  { mark: 'M372', days: 7, strength: 11.47, scatter: 0.3132 },
  { mark: 'M396', days: 28, strength: 23.85, scatter: 0.111 },
  { mark: 'M399', days: 7, strength: 52.01, scatter: 0.03208 },
  { mark: 'M401', days: 28, strength: 78.8, scatter: 0.06518 },
]

export const POPULATION: Population = {
  mean: 3.525,
  level: 0.359,
  slopeMean: 0.4507,
  slope: 0.1241,
  turn: -0.7461,
  bend: 0.1138,
  bendReach: 0.8345,
  test: 0.05139,
}

/** Factor on the deviation of a later test: the 90 % point of what was held out, over that of a normal law. */
export const WIDEN = { withMix: 1.15, withoutMix: 1 }

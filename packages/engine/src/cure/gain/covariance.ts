import type { Covariance } from './learned.ts'

/** How two mixes vary together: of level, of slope over ln age, and of bend. Variances in ln strength. */
export interface MixCovariance {
  readonly level: number
  readonly slope: number
  /** Of the level of the one and the slope of the other. */
  readonly cross: number
  readonly bend: number
}

/** An age as the model reads it, both 0 at 28 days. */
export interface ReadAge {
  /** `1 − √(28 / days)`: ln strength is near to straight over it, as EN 1992-1-1:2004, 3.1.2(6) has it. */
  readonly growth: number
  /** `ln(days / 28)` */
  readonly ln: number
}

export function readAge(days: number): ReadAge {
  return { growth: 1 - Math.sqrt(28 / days), ln: Math.log(days / 28) }
}

/** Covariance of two mixes by their scaled features. */
export function mixCovariance(a: readonly number[], b: readonly number[], by: Covariance): MixCovariance {
  let [apart, together] = [0, 0]
  for (let at = 0; at < by.reach.length; at += 1) {
    const reach = by.reach[at] as number
    const [x, y] = [(a[at] as number) / reach, (b[at] as number) / reach]
    apart += (x - y) ** 2
    together += x * y
  }
  const like = Math.exp(-apart / 2)
  return {
    level: COMMON_LEVEL ** 2 + by.level ** 2 * like + by.levelStraight ** 2 * together,
    slope: by.slopeCommon ** 2 + by.slope ** 2 * like + by.slopeStraight ** 2 * together,
    cross: by.turn * (by.level * by.slope * like + by.levelStraight * by.slopeStraight * together),
    bend: by.bend ** 2 * like,
  }
}

/** The mean level of all mixes is left free: ± 1 in ln strength. */
const COMMON_LEVEL = 1

/** What two mixes share at two ages. */
export function sharedAt(
  { level, slope, cross, bend }: MixCovariance,
  a: ReadAge,
  b: ReadAge,
  by: Covariance,
): number {
  const straight = level + slope * a.growth * b.growth + cross * (a.growth + b.growth)
  return straight + bend * near(a, b, by.bendReach)
}

/** What one mix has of its own at two ages: on top of what it shares with others, without the scatter of a test. */
export function ownAt(a: ReadAge, b: ReadAge, by: Covariance): number {
  return (
    by.levelOwn ** 2 +
    by.turnOwn * by.levelOwn * by.slopeOwn * (a.growth + b.growth) +
    by.slopeOwn ** 2 * a.growth * b.growth +
    by.bendOwn ** 2 * near(a, b, by.bendOwnReach)
  )
}

function near(a: ReadAge, b: ReadAge, reach: number): number {
  return Math.exp(-(((a.ln - b.ln) / reach) ** 2) / 2)
}

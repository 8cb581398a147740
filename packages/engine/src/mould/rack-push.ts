import { distance, type Point, type Ring } from '../panel/point.ts'

export interface RackPush {
  /** Number of the side that is pushed along itself, from 1: one of the longer ones. */
  readonly side: number
  /** Corner that it is pushed towards, from 1. */
  readonly towards: number
  /** mm */
  readonly by: number
  /** Diagonal 1 to 3 less diagonal 2 to 4, mm. */
  readonly difference: number
}

/** Diagonals that differ by less as drawn belong to a rectangle, mm. */
const RECTANGLE = 0.5

/**
 * How a rectangle that stands racked is pushed square: one of its longer sides along itself, `e = D d / (2 L)` with D the difference of the diagonals, d
 * their mean and L the side. Null for any other outline. Geometry. Example: 6000 × 3000 with D 9: 5.031 mm.
 */
export function rackPush(drawn: Ring, at: Ring): RackPush | null {
  const [a, b, c, d] = drawn
  const [p, q, r, s] = at
  if (drawn.length !== 4 || !a || !b || !c || !d || !p || !q || !r || !s) return null
  if (Math.abs(distance(a, c) - distance(b, d)) >= RECTANGLE || !isParallel(a, b, d, c)) return null
  const [first, second] = [distance(p, r), distance(q, s)]
  const difference = first - second
  const [one, two] = [distance(a, b), distance(b, c)]
  const long = Math.max(one, two)
  const by = (Math.abs(difference) * (first + second)) / 2 / (2 * long)
  // Where corner 3 stands too far out, the side that ends in it is pushed back from it, and the other way round.
  return one >= two
    ? { side: 3, towards: difference > 0 ? 4 : 3, by, difference }
    : { side: 2, towards: difference > 0 ? 2 : 3, by, difference }
}

function isParallel(a: Point, b: Point, d: Point, c: Point): boolean {
  return (
    Math.abs(b[0] - a[0] - (c[0] - d[0])) < RECTANGLE && Math.abs(b[1] - a[1] - (c[1] - d[1])) < RECTANGLE
  )
}

/** As the card says it. Example: `Corner 1 to 3 is 17 mm longer than 2 to 4: push side 3 along itself by 9 mm towards corner 4.` */
export function rackText({ side, towards, by, difference }: RackPush): string {
  const [longer, shorter] = difference > 0 ? ['1 to 3', '2 to 4'] : ['2 to 4', '1 to 3']
  return `Corner ${longer} is ${Math.round(Math.abs(difference))} mm longer than ${shorter}: push side ${side} along itself by ${Math.round(by)} mm towards corner ${towards}.`
}

import type { Corner } from '../steel-plan.ts'
import { SAME_WAY_DEGREES } from './side-by-side.ts'
import type { Straight } from './straights.ts'

/** Straights of bars, to be asked which run the same way as another near it. */
export interface BesideSpace {
  add(straights: readonly Straight[]): void
  /** Every straight of another bar that runs the same way within so much of this one, mm between middles, and some that do not quite. */
  near(straight: Straight, reach: number): readonly Straight[]
}

/** Straights of one direction, filed by how far aside of it they lie. */
interface Direction {
  readonly along: Corner
  readonly aside: Corner
  readonly strips: Map<number, Straight[]>
}

/** Width of the strips that straights of one direction are filed by, mm. */
const STRIP = 50

const COSINE = Math.cos((SAME_WAY_DEGREES * Math.PI) / 180)

export function besideSpace(): BesideSpace {
  const directions = new Map<string, Direction>()
  return {
    add(straights) {
      for (const straight of straights) {
        const { aside, strips } = directionOf(straight.along, directions)
        const strip = Math.floor(dot(straight.from, aside) / STRIP)
        const there = strips.get(strip)
        if (there === undefined) strips.set(strip, [straight])
        else there.push(straight)
      }
    },
    near(straight, reach) {
      const { from, to, id } = straight
      const [low, high] = [Math.min(from[2], to[2]) - reach, Math.max(from[2], to[2]) + reach]
      const found: Straight[] = []
      for (const { along, aside, strips } of directions.values()) {
        if (Math.abs(dot(along, straight.along)) < COSINE) continue
        const [a, b] = [dot(from, aside), dot(to, aside)]
        const last = Math.floor((Math.max(a, b) + reach) / STRIP)
        for (let strip = Math.floor((Math.min(a, b) - reach) / STRIP); strip <= last; strip += 1) {
          for (const other of strips.get(strip) ?? []) {
            if (other.id === id) continue
            if (Math.min(other.from[2], other.to[2]) > high || Math.max(other.from[2], other.to[2]) < low)
              continue
            found.push(other)
          }
        }
      }
      return found
    },
  }
}

/** The direction of a straight either way, made where it is new. */
function directionOf(along: Corner, directions: Map<string, Direction>): Direction {
  const [x, y, z] = along
  const sense = x < -1e-6 || (Math.abs(x) <= 1e-6 && (y < -1e-6 || (Math.abs(y) <= 1e-6 && z < 0))) ? -1 : 1
  const name = along.map((part) => Math.round(part * sense * 1e5)).join(' ')
  const known = directions.get(name)
  if (known !== undefined) return known
  const flat = Math.hypot(x, y)
  const made: Direction = {
    along,
    aside: flat > 0.5 ? [-y / flat, x / flat, 0] : [1, 0, 0],
    strips: new Map(),
  }
  directions.set(name, made)
  return made
}

function dot(a: Corner, b: Corner): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

import type { Corner } from '../steel-plan.ts'
import type { Straight } from './straights.ts'

/** Bars run side by side where their directions differ by no more than this, degrees. Common practice, no source. */
export const SAME_WAY_DEGREES = 5

/** Bars are in contact where less than this lies between them, mm: what tying wire draws together. Common practice, no source. */
export const CONTACT = 2

/** Overlap by which bars are in the same place and no longer beside each other, mm, as in `space.ts`. */
const OVERLAP = 0.5

/** Stretches shorter than this many diameters of the thinner bar count as a crossing. Common practice, no source. */
export const SHORTEST = 10

/** Rounding of places and clipping, mm. */
const SLACK = 1e-3

const COSINE = Math.cos((SAME_WAY_DEGREES * Math.PI) / 180)

/** Two straights that run side by side, nearer than asked or in contact. */
export interface Beside {
  /** Neither in contact nor clear; or in contact, to be tied. */
  readonly kind: 'crowded' | 'contact'
  /** Least clear where they are `kind`, mm. */
  readonly clear: number
  /** Length in which they are `kind`, mm. */
  readonly length: number
  /** Middle of that length, between the two bars. */
  readonly at: Corner
}

export interface BesideInput {
  readonly one: Straight
  readonly other: Straight
  /** Clear distance that is asked between them, mm. */
  readonly asked: number
}

/**
 * How two straights lie beside each other; null where they do not run the same way, are clear, only cross, or are in the same place.
 *
 * Both are measured square to the direction half-way between theirs. Where they are not quite parallel the length between contact and clear counts.
 */
export function besideOf({ one, other, asked }: BesideInput): Beside | null {
  const [u, v] = [one.along, other.along]
  const turn = dot(u, v)
  if (Math.abs(turn) < COSINE) return null
  const sense = turn < 0 ? -1 : 1
  const size = Math.sqrt(2 + 2 * Math.abs(turn))
  const way: Corner = [(u[0] + sense * v[0]) / size, (u[1] + sense * v[1]) / size, (u[2] + sense * v[2]) / size]
  const [a, b] = [placesAlong(one, way), placesAlong(other, way)]
  const [low, high] = [Math.max(a.low, b.low), Math.min(a.high, b.high)]
  const shortest = SHORTEST * Math.min(one.diameter, other.diameter)
  if (!(high - low > shortest)) return null
  // From one bar to the other at both ends of the common length; straight in between.
  const [start, end] = [less(pointAt(other, b, low), pointAt(one, a, low)), less(pointAt(other, b, high), pointAt(one, a, high))]
  const bars = (one.diameter + other.diameter) / 2
  const near = stretchWithin(start, end, bars + asked - SLACK)
  if (near === null) return null
  const touching = stretchWithin(start, end, bars + CONTACT)
  const overlap = bars - OVERLAP > 0 ? stretchWithin(start, end, bars - OVERLAP) : null
  if (overlap !== null) return null
  const whole = high - low
  const inContact = touching === null ? 0 : (touching.to - touching.from) * whole
  const crowded = (near.to - near.from) * whole - inContact
  const middle = (part: number): Corner => {
    const place = low + part * whole
    const [p, q] = [pointAt(one, a, place), pointAt(other, b, place)]
    return [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2]
  }
  if (crowded > shortest) {
    // Beside a contact the longer side of it is where they are crowded.
    const [from, to] =
      touching === null
        ? [near.from, near.to]
        : touching.from - near.from > near.to - touching.to
          ? [near.from, touching.from]
          : [touching.to, near.to]
    const clear = touching === null ? near.least - bars : CONTACT
    return { kind: 'crowded', clear, length: crowded, at: middle((from + to) / 2) }
  }
  if (touching === null || !(inContact > shortest)) return null
  const at = middle((touching.from + touching.to) / 2)
  return { kind: 'contact', clear: touching.least - bars, length: inContact, at }
}

interface Places {
  /** Ends of the straight along the common direction, mm. */
  readonly low: number
  readonly high: number
  /** Place of its first end, and how far it runs along itself for a millimetre along the direction. */
  readonly start: number
  readonly rate: number
}

function placesAlong({ from, along, length }: Straight, way: Corner): Places {
  const start = dot(from, way)
  const slope = dot(along, way)
  const end = start + slope * length
  return { low: Math.min(start, end), high: Math.max(start, end), start, rate: 1 / slope }
}

function pointAt({ from, along }: Straight, { start, rate }: Places, place: number): Corner {
  const by = (place - start) * rate
  return [from[0] + by * along[0], from[1] + by * along[1], from[2] + by * along[2]]
}

/**
 * The part of a length, 0 to 1, in which a vector that changes evenly from `start` to `end` is no longer than `reach`, and the least that it
 * is there, mm; null where it is longer throughout.
 */
function stretchWithin(
  start: Corner,
  end: Corner,
  reach: number,
): { readonly from: number; readonly to: number; readonly least: number } | null {
  const change = less(end, start)
  const [a, b, c] = [dot(change, change), dot(start, change), dot(start, start)]
  const at = (part: number) => Math.sqrt(Math.max(0, c + 2 * part * b + part * part * a))
  // Parallel to the rounding of places.
  if (a < SLACK * SLACK) return at(0.5) <= reach ? { from: 0, to: 1, least: at(0.5) } : null
  const root = b * b - a * (c - reach * reach)
  if (root < 0) return null
  const half = Math.sqrt(root) / a
  const [from, to] = [Math.max(0, -b / a - half), Math.min(1, -b / a + half)]
  if (from > to) return null
  return { from, to, least: at(Math.min(1, Math.max(0, -b / a))) }
}

function less(a: Corner, b: Corner): Corner {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

function dot(a: Corner, b: Corner): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

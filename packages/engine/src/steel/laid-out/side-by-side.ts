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
  const common = commonLength(one, other)
  if (common === null) return null
  const { start, end, whole, shortest } = common
  const bars = (one.diameter + other.diameter) / 2
  const near = stretchWithin(start, end, bars + asked - SLACK)
  if (near === null) return null
  if (bars > OVERLAP && stretchWithin(start, end, bars - OVERLAP) !== null) return null
  const touching = stretchWithin(start, end, bars + CONTACT)
  const inContact = touching === null ? 0 : (touching.to - touching.from) * whole
  const crowded = (near.to - near.from) * whole - inContact
  if (crowded > shortest) {
    const { from, to } = touching === null ? near : longerSide(near, touching)
    const clear = touching === null ? near.least - bars : CONTACT
    return { kind: 'crowded', clear, length: crowded, at: between(common, (from + to) / 2) }
  }
  if (touching === null || !(inContact > shortest)) return null
  const at = between(common, (touching.from + touching.to) / 2)
  return { kind: 'contact', clear: touching.least - bars, length: inContact, at }
}

/** The stretch in which two straights run side by side. */
interface CommonLength {
  /** From the one to the other where it begins and where it ends; straight in between. */
  readonly start: Corner
  readonly end: Corner
  /** On the one where it begins and where it ends. */
  readonly from: Corner
  readonly to: Corner
  /** mm */
  readonly whole: number
  /** Length up to which it is only a crossing, mm. */
  readonly shortest: number
}

function commonLength(one: Straight, other: Straight): CommonLength | null {
  const [u, v] = [one.along, other.along]
  const turn = dot(u, v)
  if (Math.abs(turn) < COSINE) return null
  const sense = turn < 0 ? -1 : 1
  const size = Math.sqrt(2 + 2 * Math.abs(turn))
  const way: Corner = [
    (u[0] + sense * v[0]) / size,
    (u[1] + sense * v[1]) / size,
    (u[2] + sense * v[2]) / size,
  ]
  const [a, b] = [placesAlong(one, way), placesAlong(other, way)]
  const [low, high] = [Math.max(a.low, b.low), Math.min(a.high, b.high)]
  const shortest = SHORTEST * Math.min(one.diameter, other.diameter)
  if (!(high - low > shortest)) return null
  const [from, to] = [pointAt(one, a, low), pointAt(one, a, high)]
  const start = less(pointAt(other, b, low), from)
  const end = less(pointAt(other, b, high), to)
  return { start, end, from, to, whole: high - low, shortest }
}

/** Half-way from the one to the other at a part of their common length. */
function between({ start, end, from, to }: CommonLength, part: number): Corner {
  const at = (axis: 0 | 1 | 2) =>
    from[axis] + part * (to[axis] - from[axis]) + (start[axis] + part * (end[axis] - start[axis])) / 2
  return [at(0), at(1), at(2)]
}

/** Beside a contact, the longer side of it in which bars are near. */
function longerSide(near: Stretch, touching: Stretch): Pick<Stretch, 'from' | 'to'> {
  return touching.from - near.from > near.to - touching.to
    ? { from: near.from, to: touching.from }
    : { from: touching.to, to: near.to }
}

/**
 * Moves of a straight along `way`, a unit vector, by which it would be crowded by another: stretches from and to, mm. Null where the two are not
 * parallel or the move is not square to them: then each place has to be tried.
 */
export function crowdedMoves(
  { one, other, asked }: BesideInput,
  way: Corner,
): readonly (readonly [from: number, to: number])[] | null {
  const turn = Math.abs(dot(one.along, other.along))
  if (turn < COSINE) return []
  if (turn < 1 - 1e-12 || Math.abs(dot(one.along, way)) > 1e-9) return null
  const common = commonLength(one, other)
  if (common === null) return []
  const bars = (one.diameter + other.diameter) / 2
  // The move at which they are nearest, and how near that is.
  const nearest = dot(common.start, way)
  const least = dot(common.start, common.start) - nearest * nearest
  const [outer, inner] = [bars + asked - SLACK, bars + CONTACT].map((reach) => reach * reach - least) as [
    number,
    number,
  ]
  if (!(outer > 0)) return []
  const [far, close] = [Math.sqrt(outer), inner > 0 ? Math.sqrt(inner) : 0]
  return [
    [nearest - far, nearest - close],
    [nearest + close, nearest + far],
  ]
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

/** Part of a length, from 0 to 1. */
interface Stretch {
  readonly from: number
  readonly to: number
  /** Least distance in it, mm. */
  readonly least: number
}

/**
 * The part of a length, 0 to 1, in which a vector that changes evenly from `start` to `end` is no longer than `reach`, and the least that it
 * is there, mm; null where it is longer throughout.
 */
function stretchWithin(start: Corner, end: Corner, reach: number): Stretch | null {
  const change = less(end, start)
  const [a, b, c] = [dot(change, change), dot(start, change), dot(start, start)]
  // Parallel to the rounding of places.
  if (a < SLACK * SLACK) return c <= reach * reach ? { from: 0, to: 1, least: Math.sqrt(c) } : null
  const root = b * b - a * (c - reach * reach)
  if (root < 0) return null
  const half = Math.sqrt(root) / a
  const [from, to] = [Math.max(0, -b / a - half), Math.min(1, -b / a + half)]
  if (from > to) return null
  const part = Math.min(1, Math.max(0, -b / a))
  return { from, to, least: Math.sqrt(Math.max(0, c + 2 * part * b + part * part * a)) }
}

function less(a: Corner, b: Corner): Corner {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

function dot(a: Corner, b: Corner): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

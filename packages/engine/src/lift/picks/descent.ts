import { distance, type Point } from '../../panel/point.ts'
import { LEAST_SHARE, OUT, scoreOf } from './exchange.ts'
import { forcesOf, type Sharing } from './forces.ts'
import type { Influence } from './influence.ts'
import type { Layout } from './layout.ts'
import type { Limits } from './limits.ts'
import { maximise } from './linear-program.ts'
import { Table } from './table.ts'

export interface DescentInput {
  readonly influence: Influence
  readonly layout: Layout
  readonly limits: Limits
  readonly sharing: Sharing
  readonly centre: Point
  /** Longest first move, mm. */
  readonly reach: number
}

export interface Descended {
  readonly places: readonly Point[]
  /** Peak as searched, MPa. */
  readonly peak: number
  readonly rounds: number
}

/** A descent under way. */
interface State extends Descended {
  readonly params: readonly number[]
  readonly table: Table | null
  /** mm */
  readonly reach: number
  /** Rounds in a row that gained next to nothing. */
  readonly still: number
  readonly ended: boolean
}

/** Move by which a change of stress is read, mm. */
const PROBE = 2
/** Moves shorter than this end the descent, mm. */
const SHORTEST_MOVE = 1.5
/** Readings above this share of the peak are looked at. */
const LOOKED_AT = 0.55
const MOST_LOOKED_AT = 90
/** Share of the peak below which a round gained next to nothing, and how many of them end the descent. */
const SMALL_GAIN = 5e-4
const MOST_STILL = 3

/**
 * Moves a layout to a least peak: stresses and limits made linear for small moves, the best move found by a linear program inside a
 * reach that grows where the promise is kept and shrinks where it is not. Goes on from where `run` was left when called again.
 */
export class Descent {
  readonly #input: DescentInput
  #state: State

  constructor(input: DescentInput) {
    this.#input = input
    const { influence, layout, reach } = input
    const params = [...layout.params]
    const places = layout.place(params)
    const table = new Table(influence, influence.responses(places))
    const peak = scoreOf(table, everyOne(places), input, Number.POSITIVE_INFINITY)
    const ended = peak >= OUT || params.length === 0
    this.#state = { params, places, table, peak, reach, rounds: 0, still: 0, ended }
  }

  get found(): Descended {
    const { places, peak, rounds } = this.#state
    return { places, peak, rounds }
  }

  /** Goes on until nothing is gained any more or so many rounds are done in all. */
  run(rounds: number): Descended {
    while (!this.#state.ended && this.#state.rounds < rounds) this.#state = round(this.#input, this.#state)
    return this.found
  }
}

function everyOne(places: readonly Point[]): number[] {
  return places.map((_, i) => i)
}

function round(input: DescentInput, state: State): State {
  const { influence, layout, limits } = input
  const { params, places, table, peak } = state
  const slopes = slopesOf(input, params, places, table as Table)
  const rounds = state.rounds + 1
  let { reach } = state
  for (;;) {
    const move = bestMove(input, { slopes, places, peak, reach })
    if (move === null) break
    const next = params.map((value, k) => value + move.by[k]!)
    const there = layout.place(next)
    if (within(limits, layout, there)) {
      const onwards = new Table(influence, influence.responses(there))
      const found = scoreOf(onwards, everyOne(there), input, Number.POSITIVE_INFINITY)
      if (found < peak) {
        const kept = (peak - found) / Math.max(1e-12, move.promise)
        const still = peak - found < SMALL_GAIN * peak ? state.still + 1 : 0
        reach *= kept > 0.7 ? 1.6 : kept < 0.25 ? 0.5 : 1
        const ended = still >= MOST_STILL || reach <= SHORTEST_MOVE
        return { params: next, places: there, table: onwards, peak: found, reach, rounds, still, ended }
      }
    }
    reach *= 0.35
    if (reach <= SHORTEST_MOVE) break
  }
  return { ...state, rounds, ended: true }
}

function within(limits: Limits, { sides }: Layout, places: readonly Point[]): boolean {
  return (
    places.every((at, i) => {
      const side = sides?.[i]
      if (side === undefined) return limits.fits(at)
      const s = (at[0] - side.from[0]) * side.along[0] + (at[1] - side.from[1]) * side.along[1]
      return s >= 0 && s <= side.length && limits.fitsOn(side, at)
    }) && limits.apart(places)
  )
}

interface Slopes {
  /** Stresses that are looked at, largest first, and forces now. */
  readonly stresses: Float64Array
  readonly forces: Float64Array
  /** Change of each by a millimetre of each number. */
  readonly ofStress: readonly Float64Array[]
  readonly ofForce: readonly Float64Array[]
  /** Move of each place by a millimetre of each number. */
  readonly ofPlace: readonly (readonly Point[])[]
}

function slopesOf(
  { influence, layout, sharing }: DescentInput,
  params: readonly number[],
  places: readonly Point[],
  table: Table,
): Slopes {
  const all = everyOne(places)
  const probes = params.map((_, k) => layout.place(params.map((value, j) => value + (j === k ? PROBE : 0))))
  const moved: { readonly at: Point; readonly k: number; readonly i: number }[] = probes.flatMap((there, k) =>
    there.flatMap((at, i) => (distance(at, places[i]!) > 1e-9 ? [{ at, k, i }] : [])),
  )
  // A probe may stand a hair outside the concrete; then the slope is read on the other side.
  const inside = moved.map(({ at, i }): Point => {
    if (influence.model.locator.find(at) >= 0) return at
    const [x, y] = places[i]!
    return [2 * x - at[0], 2 * y - at[1]]
  })
  const forces = forcesOf(table, all, sharing) ?? new Float64Array(places.length)
  const looked = lookedAt(table.stresses(all, forces))
  const readings = looked.filter((i) => i < influence.readings.length)
  const whole = new Table(influence, [...table.responses, ...influence.responses(inside, readings)])
  const stresses = whole.stressesAt(looked, all, forces)
  const ofStress: Float64Array[] = []
  const ofForce: Float64Array[] = []
  for (let k = 0; k < params.length; k += 1) {
    const set = [...all]
    let turned = 1
    for (const [m, one] of moved.entries()) {
      if (one.k !== k) continue
      set[one.i] = places.length + m
      if (inside[m] !== one.at) turned = -1
    }
    const changed = forcesOf(whole, set, sharing) ?? forces
    const there = whole.stressesAt(looked, set, changed)
    ofStress.push(there.map((value, i) => (turned * (value - stresses[i]!)) / PROBE))
    ofForce.push(changed.map((value, i) => (turned * (value - forces[i]!)) / PROBE))
  }
  const ofPlace = probes.map((there) =>
    there.map((at, i): Point => [(at[0] - places[i]![0]) / PROBE, (at[1] - places[i]![1]) / PROBE]),
  )
  return { stresses, forces, ofStress, ofForce, ofPlace }
}

/** Readings and discs whose stress may come to be the peak, the largest first. */
function lookedAt(stresses: Float64Array): number[] {
  const peak = stresses.reduce((most, value) => Math.max(most, value), 0)
  return Array.from(stresses.keys())
    .filter((i) => stresses[i]! > LOOKED_AT * peak)
    .sort((p, q) => stresses[q]! - stresses[p]!)
    .slice(0, MOST_LOOKED_AT)
}

/** The move that takes the peak down most, if all were linear; null where none does. */
function bestMove(
  { limits, layout, sharing, influence }: DescentInput,
  {
    slopes,
    places,
    peak,
    reach,
  }: {
    readonly slopes: Slopes
    readonly places: readonly Point[]
    readonly peak: number
    readonly reach: number
  },
): { readonly by: number[]; readonly promise: number } | null {
  const { stresses, forces, ofStress, ofForce, ofPlace } = slopes
  const n = ofStress.length
  const rows: number[][] = []
  const right: number[] = []
  // Numbers may go down: two for each, both from 0 up; the last is by how much the peak sinks.
  const add = (row: readonly number[], sink: number, limit: number): void => {
    rows.push([...row, ...row.map((value) => -value), sink])
    right.push(limit)
  }
  for (let k = 0; k < n; k += 1) {
    const row = new Array<number>(2 * n + 1).fill(0)
    row[k] = 1
    row[n + k] = 1
    rows.push(row)
    right.push(reach)
  }
  for (const [i, stress] of stresses.entries()) {
    add(
      ofStress.map((slope) => slope[i]! / peak),
      1 / peak,
      Math.max(0, peak - stress) / peak,
    )
  }
  const equal = influence.work[0] / forces.length
  for (const [i, force] of forces.entries()) {
    add(
      ofForce.map((slope) => -slope[i]! / equal),
      0,
      Math.max(0, force / equal - LEAST_SHARE),
    )
  }
  for (const [i, at] of places.entries()) {
    for (const { normal, slack } of limits.bounds(at, reach, layout.sides?.[i])) {
      const row = ofPlace.map((moves) => -(moves[i]![0] * normal[0] + moves[i]![1] * normal[1]))
      if (row.some((value) => value !== 0)) add(row, 0, slack)
    }
    for (let j = 0; j < i; j += 1) {
      const apart = distance(at, places[j]!)
      if (apart - limits.spacing > 3 * reach) continue
      const [ux, uy] = [(at[0] - places[j]![0]) / apart, (at[1] - places[j]![1]) / apart]
      add(
        ofPlace.map((moves) => -((moves[i]![0] - moves[j]![0]) * ux + (moves[i]![1] - moves[j]![1]) * uy)),
        0,
        Math.max(0, apart - limits.spacing),
      )
    }
  }
  if (sharing === 'equalised') {
    for (const axis of [0, 1] as const) {
      const row = ofPlace.map((moves) => moves.reduce((sum, move) => sum + move[axis], 0))
      if (row.every((value) => Math.abs(value) < 1e-9)) continue
      add(row, 0, 0)
      add(
        row.map((value) => -value),
        0,
        0,
      )
    }
  }
  const found = maximise([...new Array<number>(2 * n).fill(0), 1], rows, right)
  const promise = found?.[2 * n] ?? 0
  if (found === null || !(promise > 1e-4 * peak)) return null
  return { by: Array.from({ length: n }, (_, k) => found[k]! - found[n + k]!), promise }
}

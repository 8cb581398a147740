import { GRAVITY } from '../../panel/panel.ts'
import type { Point } from '../../panel/point.ts'
import { STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import { BAR_MODULUS } from '../chairs/mat-grid.ts'
import type { MatRowLine } from '../tie-plan/mat-rows.ts'
import { type HungBeam, leastSag } from './hung-beam.ts'
import { type Section, weakestSection } from './mat-stiffness.ts'

/** Hooks in a grid under a spreader: so many along x, so many along y, at least two each way. */
export interface Picks {
  readonly x: number
  readonly y: number
}

export interface CraningInput {
  /** Rows of the layer that carries. */
  readonly alongX: readonly MatRowLine[]
  readonly alongY: readonly MatRowLine[]
  /** Of the whole cage, kg. */
  readonly mass: number
  readonly picks: Picks
  /** Times the weight while the hoist starts and stops. */
  readonly hoist: number
}

export interface Craning {
  readonly picks: Picks
  /** Where to hook, mm: the hooks of the bottom row first, left to right. */
  readonly at: readonly Point[]
  /** mm: bars along x between hooks, bars along y between hooks, and both together. */
  readonly sagX: number
  readonly sagY: number
  readonly sag: number
  /** Largest bending stress of a bar with the hoist's factor, MPa. */
  readonly stress: number
  /** Largest pull on one hook with the hoist's factor, kN. */
  readonly pull: number
}

const BEAMS = new Map<number, HungBeam>()

/** The hung beam of so many hooks, worked out once. */
function beamOf(hooks: number): HungBeam {
  const found = BEAMS.get(hooks) ?? leastSag(hooks)
  BEAMS.set(hooks, found)
  return found
}

/**
 * A cage hung level on hooks: bars along x span between the rows of hooks, bars along y along the rows, each direction carrying the
 * whole weight, spread evenly; the two sags add. Hooks lie where each direction sags least.
 *
 * Unknown where a direction has no bars, or none across some section between the outer hooks. Left out: stiffness of ties, of
 * bars that are no mat, and of a second layer; that ties slip. @throws nothing.
 */
export function craning(input: CraningInput): Worked<Craning> {
  const { mass, picks, hoist } = input
  const x = hung(input.alongX, 'x', picks.x, mass, hoist)
  if (!x.known) return x
  const y = hung(input.alongY, 'y', picks.y, mass, hoist)
  if (!y.known) return y
  const share = Math.max(...x.value.beam.shares) * Math.max(...y.value.beam.shares)
  const pull = (mass * GRAVITY * hoist * share) / 1000
  const sag = x.value.sag + y.value.sag
  const at = y.value.places.flatMap((py) => x.value.places.map((px): Point => [px, py]))
  return known(
    {
      picks,
      at,
      sagX: x.value.sag,
      sagY: y.value.sag,
      sag,
      stress: Math.max(x.value.stress, y.value.stress),
      pull,
    },
    [
      ...x.working,
      ...y.working,
      {
        symbol: 'w_cage',
        formula: 'w_x + w_y',
        given: { w_x: x.value.sag, w_y: y.value.sag },
        result: sag,
        unit: 'mm',
        source: STATICS,
      },
      {
        symbol: 'P_hook',
        formula: 'M g f k / 1000',
        given: { M: mass, g: GRAVITY, f: hoist, k: share },
        result: pull,
        unit: 'kN',
        source: STATICS,
        note: 'k: largest share of one hook',
      },
    ],
  )
}

interface Hung {
  readonly beam: HungBeam
  readonly places: readonly number[]
  readonly sag: number
  readonly stress: number
}

function hung(
  rows: readonly MatRowLine[],
  direction: 'x' | 'y',
  hooks: number,
  mass: number,
  hoist: number,
): Worked<Hung> {
  if (rows.length === 0) return unknown(`cage: no bars along ${direction}, so its sag that way is not known`)
  if (!Number.isInteger(hooks) || hooks < 2) return unknown(`picks.${direction}: a whole number, 2 or more`)
  const from = Math.min(...rows.map((row) => row.from))
  const to = Math.max(...rows.map((row) => row.to))
  const length = to - from
  const beam = beamOf(hooks)
  const inset = beam.overhang * length
  const section = weakestSection(rows, from + inset, to - inset)
  if (section === null) return unknown(`cage: a section along ${direction} that no bar crosses`)
  const load = (mass * GRAVITY) / length
  const sag = (beam.sag * load * length ** 4) / (BAR_MODULUS * section.inertia)
  const stress = (hoist * beam.moment * load * length ** 2 * section.diameter) / (2 * section.inertia)
  const gap = (length - 2 * inset) / (hooks - 1)
  const places = Array.from({ length: hooks }, (_, i) => from + inset + i * gap)
  return known(
    { beam, places, sag, stress },
    steps({ direction, beam, section, load, length, hoist, sag, stress }),
  )
}

function steps({
  direction,
  beam,
  section,
  load,
  length,
  hoist,
  sag,
  stress,
}: {
  readonly direction: 'x' | 'y'
  readonly beam: HungBeam
  readonly section: Section
  readonly load: number
  readonly length: number
  readonly hoist: number
  readonly sag: number
  readonly stress: number
}): Step[] {
  const { inertia, diameter } = section
  const across = direction === 'x' ? 'bars along x' : 'bars along y'
  return [
    {
      symbol: `w_${direction}`,
      formula: 'c q L⁴ / (E I)',
      given: { c: beam.sag, q: load, L: length, E: BAR_MODULUS, I: inertia },
      result: sag,
      unit: 'mm',
      source: STATICS,
      note: `${across}: q the whole weight in N/mm, c of a beam on ${beam.shares.length} hooks, I of all bars at the weakest section`,
    },
    {
      symbol: `σ_${direction}`,
      formula: 'f m q L² d / (2 I)',
      given: { f: hoist, m: beam.moment, q: load, L: length, d: diameter, I: inertia },
      result: stress,
      unit: 'MPa',
      source: STATICS,
      note: across,
    },
  ]
}

import { distance, type Point } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'
import { InputError } from '../../working/issue.ts'
import { unknown, type Worked } from '../../working/worked.ts'
import type { OwnWeight } from '../body-forces.ts'
import type { PlateField } from '../plate/field.ts'
import { inConcrete, plateOf } from '../plate/lifted-plate.ts'
import type { PlateModel } from '../plate/model.ts'
import { platePeak, reentrantCorners } from '../plate/peak.ts'
import {
  type Candidate,
  candidate,
  type LoadCase,
  loadCase,
  type PlateSupport,
  supported,
} from '../plate/supports.ts'
import type { Arrangement } from './arrangement.ts'
import { panelAxis, pointsAlong } from './lines.ts'
import { type LinePoints, type PickForce, stagePeaks } from './peaks.ts'
import type { StagePeak, StageSupport } from './stage.ts'

/** Modulus that deflections of stages are shown for where nobody gives one, MPa; loads and moments on rigid supports do not depend on it. */
export const ASSUMED_MODULUS = 30_000
export const ASSUMED_POISSON = 0.2

/** The plate of a panel, factored once, and what its supports do to it: shared by all stages. */
export interface Bench {
  readonly piece: Piece
  readonly model: PlateModel
  readonly load: LoadCase
  readonly corners: readonly Point[]
  readonly axis: Point
  readonly candidates: Map<string, Candidate>
}

/** @throws InputError where the shape cannot be meshed. */
export function benchOf({
  piece,
  thickness,
  pressure,
  forces = [],
  picks,
  along = [],
}: {
  readonly piece: Piece
  /** mm */
  readonly thickness: number
  /** Own weight, N/mm². */
  readonly pressure: number
  /** What is not even in it, N downward. */
  readonly forces?: OwnWeight['forces']
  readonly picks: readonly Point[]
  /** Points of all lines that carry the panel at some stage: the moment over a line has a kink, which a mesh through it follows. */
  readonly along?: readonly Point[]
}): Bench {
  const supports = picks.map((at) => inConcrete(piece, at)).filter((at) => at !== null)
  const model = plateOf({
    piece,
    thickness,
    modulus: ASSUMED_MODULUS,
    poisson: ASSUMED_POISSON,
    supports,
    along: apart(along, supports, thickness / 4),
  })
  return {
    piece,
    model,
    load: loadCase(model, { pressure, forces }),
    corners: reentrantCorners(piece),
    axis: panelAxis(piece),
    candidates: new Map(),
  }
}

/** Points that stand at least `least` from each other and from those given, mm: two mesh points at nearly one place make needles. */
function apart(points: readonly Point[], given: readonly Point[], least: number): Point[] {
  const kept: Point[] = []
  for (const point of points) {
    if ([...given, ...kept].every((other) => distance(other, point) >= least)) kept.push(point)
  }
  return kept
}

/** Points of every line that carries a panel at some stage. */
export function pointsOfLines(all: readonly Arrangement[], thickness: number): Point[] {
  return all.flatMap(({ lines }) => lines.flatMap((line) => pointsAlong(line, thickness)))
}

/** A stage under own weight square to the panel, factor 1. */
export interface Bent {
  readonly supports: readonly StageSupport[]
  /** Vertical share of each pick, kN, in their order. */
  readonly shares: readonly number[]
  /** Greatest first. */
  readonly peaks: readonly StagePeak[]
  readonly disc: { readonly at: Point; readonly stress: number }
  readonly sag: { readonly most: number; readonly least: number }
  readonly nodes: number
  readonly field: PlateField
}

/**
 * Bending of the panel at a stage under its own weight, factor 1. Inserts are rigid points, or equal shares where the rigging
 * equalises; timbers and edges carry upward only: where the panel lifts off them they carry nothing.
 */
export function bent(bench: Bench, arrangement: Arrangement, equalised: boolean): Worked<Bent> {
  const { picks, lines } = arrangement
  const points = lines.map((line) => pointsAlong(line, bench.model.thickness))
  const supports: (PlateSupport & { readonly line: number })[] = [
    ...picks.map(({ at }) => ({
      at: inConcrete(bench.piece, at) ?? at,
      line: -1,
      ...(equalised && lines.length === 0 ? { equalised: 'all' } : {}),
    })),
    ...points.flatMap((along, line) => along.map((at) => ({ at, line }))),
    ...swung(bench, arrangement).map((at) => ({ at, line: -1 })),
  ]
  try {
    const { reactions, field } = oneSided(bench, supports)
    const own = picks.map(({ mark }, i): PickForce => ({ mark, at: supports[i]!.at, force: reactions[i]! }))
    const peaks = stagePeaks({
      field,
      picks: own,
      lines: lines.map((line, index) => linePoints(line, supports, index, reactions)),
      corners: bench.corners,
      axis: bench.axis,
    })
    const { peak } = platePeak({ field, supports: own.map(({ at }) => at), corners: bench.corners })
    const ofLine = (line: number): number =>
      supports.reduce((sum, support, i) => (support.line === line ? sum + reactions[i]! : sum), 0) / 1000
    const known = {
      supports: [
        ...own.map(
          ({ mark, at, force }): StageSupport => ({ mark, kind: 'insert', at: [at], load: force / 1000 }),
        ),
        ...lines.map((at, line): StageSupport => lineSupport(arrangement, line, at, ofLine(line))),
      ],
      shares: own.map(({ force }) => force / 1000),
      peaks,
      disc: { at: peak.at, stress: peak.stress },
      sag: sagOf(field),
      nodes: bench.model.mesh.x.length,
      field,
    }
    return { known: true, value: known, working: [] }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    if (arrangement.on === 'lines') return unknown(`${arrangement.how}: the panel would tip off them`)
    return unknown(
      ...error.issues.map(({ path, found, expected }) => `${path}: ${found}; expected ${expected}`),
    )
  }
}

/**
 * A panel on two picks is free to swing about their line: a point off it keeps it still. With the centre of gravity on the line it carries nothing but
 * the millimetre that counts as on it.
 */
function swung({ piece }: Bench, { on, picks }: Arrangement): Point[] {
  const [a, b] = picks.map(({ at }) => at)
  if (on !== 'points' || picks.length !== 2 || a === undefined || b === undefined) return []
  const off = ([x, y]: Point): number => Math.abs((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]))
  return [piece.outline.reduce((far, corner) => (off(corner) > off(far) ? corner : far))]
}

function linePoints(
  [a, b]: readonly [Point, Point],
  supports: readonly (PlateSupport & { readonly line: number })[],
  line: number,
  reactions: readonly number[],
): LinePoints {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const points = supports.flatMap((support, i): PickForce[] =>
    support.line === line && reactions[i]! > 0 ? [{ mark: '', at: support.at, force: reactions[i]! }] : [],
  )
  const all = supports.filter((support) => support.line === line).length
  return {
    points,
    direction: [(b[0] - a[0]) / length, (b[1] - a[1]) / length],
    spacing: length / Math.max(1, all - 1),
  }
}

function lineSupport(
  { on, lean }: Arrangement,
  line: number,
  at: readonly [Point, Point],
  load: number,
): StageSupport {
  const timber = on === 'lines' && lean === null
  return {
    mark: timber ? `timber ${line + 1}` : `edge ${line + 1}`,
    kind: timber ? 'timber' : 'edge',
    at,
    load,
  }
}

function sagOf(field: PlateField): { most: number; least: number } {
  let [most, least] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (let i = 0; i < field.model.mesh.x.length; i += 1) {
    const { deflection } = field.atNode(i)
    most = Math.max(most, deflection)
    least = Math.min(least, deflection)
  }
  return { most, least }
}

/** A line support that pulls by less than this share of the load counts as carrying nothing. */
const SLACK = 1e-9

/**
 * Reactions with supports on lines that cannot pull: those that would are taken out, those that the panel sinks onto come back.
 *
 * @throws InputError where what is left does not hold the panel.
 */
function oneSided(
  bench: Bench,
  supports: readonly (PlateSupport & { readonly line: number })[],
): { reactions: number[]; field: PlateField } {
  const { model, load } = bench
  const all = supports.map(({ at }) => candidateOf(bench, at))
  const weight = Math.abs(load.loads.reduce((sum, value, i) => (i % 6 === 0 ? sum + value : sum), 0))
  const active = new Set(supports.keys())
  for (let round = 0; round < 4 * supports.length + 4; round += 1) {
    const used = [...active].sort((a, b) => a - b)
    const { reactions, field } = supported({
      model,
      load,
      supports: used.map((i) => supports[i]!),
      candidates: used.map((i) => all[i]!),
    })
    // One at a time, the one that pulls most: letting go of it takes the pull from others.
    let [worst, most] = [-1, SLACK * weight]
    for (const [k, i] of used.entries()) {
      if (supports[i]!.line >= 0 && -reactions[k]! > most) [worst, most] = [i, -reactions[k]!]
    }
    if (worst >= 0) {
      active.delete(worst)
      continue
    }
    // Round-off of a deflection, beside the largest that the load makes.
    const slack = 1e-9 * Math.max(...field.model.mesh.x.map((_, i) => Math.abs(field.atNode(i).deflection)))
    const sunk = supports.flatMap((support, i) =>
      active.has(i) || (field.at(support.at)?.deflection ?? 0) <= slack ? [] : [i],
    )
    if (sunk.length === 0) {
      return { reactions: supports.map((_, i) => (active.has(i) ? reactions[used.indexOf(i)]! : 0)), field }
    }
    for (const i of sunk) active.add(i)
  }
  throw new InputError([
    { path: 'supports', found: 'a panel that rocks on its timbers', expected: 'lines that it lies on' },
  ])
}

function candidateOf({ model, candidates }: Bench, at: Point): Candidate {
  const key = `${at[0]} ${at[1]}`
  const known = candidates.get(key)
  if (known !== undefined) return known
  const made = candidate(model, at)
  candidates.set(key, made)
  return made
}

import { misplacedInserts } from '../../panel/panel.ts'
import type { Point } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'
import { InputError } from '../../working/issue.ts'
import type { Assumed, Step } from '../../working/worked.ts'
import { inOneLine } from '../supports.ts'
import { classicalPlaces } from './classical.ts'
import { ductsClear, fullConcrete, notSearched } from './full-concrete.ts'
import { Influence } from './influence.ts'
import { type LiftedPeak, liftedPeak } from './lifted-peak.ts'
import { Limits } from './limits.ts'
import { askedOf, type PicksAsked, type PicksInput } from './picks-input.ts'
import { picksWorking } from './picks-working.ts'
import { beginSearch, NO_MIRROR, type SearchFound, type SearchInput, USUAL } from './search.ts'
import { longestSide, type Mirror, mirrorsOf } from './symmetry.ts'

export interface Pick {
  readonly mark: string
  /** mm */
  readonly at: Point
  readonly kind: 'face' | 'edge'
  /** kN, the factor in it. */
  readonly load: number
}

/** The peak of a set of picks: averaged at supports and re-entrant corners, else the plate's own value. */
export interface PicksPeak {
  readonly at: Point
  readonly of: 'support' | 'corner' | 'plate'
  /** MPa */
  readonly stress: number
}

export interface Picks {
  readonly inserts: readonly Pick[]
  readonly peak: PicksPeak
  /** Peak of the drawing's own inserts, MPa; null where it has none that hold it. */
  readonly before: number | null
  /** The classical rule on the rectangle around the panel, MPa; null where its places are not on concrete or would push down. */
  readonly classical: {
    readonly inserts: readonly Point[]
    readonly peak: number
    readonly within: boolean
  } | null
  /** Share by which the peak is below that of the drawn inserts and of the classical rule. */
  readonly gain: { readonly before: number | null; readonly classical: number | null }
  /** How many ways the answer maps on itself; 1: not mirrored. */
  readonly mirrors: number
  readonly unknown: readonly string[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

/** Mirrored places are taken when they come within this share of the best. */
export const MIRRORED_WITHIN = 0.02
/** After a few rounds a search this many times above the other is not gone on with. */
const HOPELESS = 1.15

/**
 * Places of 2, 4, 6 or 8 inserts with the least peak tension of the panel lifted flat, within limits of edge, opening and spacing, every load
 * downward. Two hang on a line through the centre of gravity and are free to turn about it. Equalised: the middle of the picks under the hook.
 *
 * The search runs over unit-force answers of the free plate (docs/methods/picks.md); the peak and the loads that come back are those of a mesh made
 * fine around the places found. Same input and seed, same answer.
 *
 * @throws InputError for values that cannot be, a count that is not 2, 4, 6 or 8, and where no places fit.
 */
export function picks(input: PicksInput): Picks {
  const { asked, assumed } = askedOf(input)
  const { panel, from } = input
  const piece = panel.region[0] as Piece
  // Even weight is in balance about the middle of the face.
  const centre = panel.faceCentre
  const { thickness } = panel.drawing
  const plate = {
    piece,
    thickness,
    modulus: asked.modulus,
    poisson: asked.poisson,
    pressure: (panel.weight * 1000 * asked.factor) / (panel.faceArea * 1e6),
  }
  const limits = new Limits({
    piece: fullConcrete(panel),
    ...asked,
    clear: [...(input.clear ?? []), ...ductsClear(panel, asked.edge)],
  })
  const influence = new Influence({ ...plate, split: asked.kind === 'face' && asked.edge >= thickness / 2 })
  const mirrors = mirrorsAsked(input, piece)
  const classical = classicalPlaces({ piece, centre, count: input.count, sharing: asked.sharing })
  const drawn =
    misplacedInserts(panel).length > 0 ? [] : (panel.drawing.inserts ?? []).map(({ at }) => at as Point)
  const search: SearchInput = {
    influence,
    piece,
    limits,
    centre,
    count: input.count,
    sharing: asked.sharing,
    along: longestSide(piece),
    mirrors,
    grid: input.grid ?? null,
    starts: [classical, ...(drawn.length === input.count ? [drawn] : [])],
    seed: asked.seed,
    effort: input.effort ?? USUAL,
  }
  const found = best(search, input.symmetric)
  if (found === null) throw noPlaces(input, asked)
  const lifted = (places: readonly Point[]): LiftedPeak =>
    liftedPeak({ ...plate, places, sharing: asked.sharing, centre })
  const answer = chosen({ found: found.found, lifted, search, drawn, classical })
  const before = answer.drawn
  const rule = answer.classical
  const { peak, loads } = answer.lifted
  const order = inOrder(answer.places, centre)
  const inserts = order.map((k, i) => ({
    mark: 'ABCDEFGH'[i]!,
    at: answer.places[k]!,
    kind: asked.kind,
    load: loads[k]! / 1000,
  }))
  return {
    inserts,
    peak: { at: peak.at, of: peak.of, stress: peak.stress },
    before,
    classical: rule,
    gain: {
      before: before === null ? null : 1 - peak.stress / before,
      classical: rule === null ? null : 1 - peak.stress / rule.peak,
    },
    mirrors: found.mirrors,
    unknown: [
      ...(before === null && drawn.length > 0
        ? ['before: the drawn inserts do not hold the panel level']
        : []),
      ...notSearched(panel),
    ],
    working: [
      ...panel.working,
      ...picksWorking({
        asked,
        panel,
        search,
        found: found.found[0]!,
        answer: answer.lifted,
        before,
        rule,
        inserts,
      }),
    ],
    assumed: [...panel.assumed, ...assumed],
  }

  function best(
    whole: SearchInput,
    symmetric: boolean | undefined,
  ): { readonly found: readonly SearchFound[]; readonly mirrors: number } | null {
    const mirrored = beginSearch(whole)
    if (whole.mirrors.length === 1 || symmetric === true) {
      const found = mirrored.finish()
      return found.length === 0 ? null : { found, mirrors: whole.mirrors.length }
    }
    const free = beginSearch({ ...whole, mirrors: NO_MIRROR })
    const m = mirrored.best <= free.best * HOPELESS ? mirrored.finish() : []
    const f = free.best <= mirrored.best * HOPELESS ? free.finish() : []
    if (m[0] !== undefined && (f[0] === undefined || m[0].peak <= f[0].peak * (1 + MIRRORED_WITHIN)))
      return { found: m, mirrors: whole.mirrors.length }
    return f.length === 0 ? null : { found: f, mirrors: 1 }
  }

  function noPlaces(given: PicksInput, { edge, spacing }: PicksAsked): InputError {
    const path = given.grid === undefined ? 'edge' : 'grid'
    const found = given.grid === undefined ? `${edge} mm, ${spacing} mm apart` : given.grid.join(' × ')
    const expected = `limits that leave ${given.count} places which hold the panel, every load downward`
    return new InputError([{ path, found, expected }], from)
  }
}

interface Chosen {
  readonly places: readonly Point[]
  readonly lifted: LiftedPeak
  readonly drawn: number | null
  readonly classical: Picks['classical']
}

/** The best of what was found, with what stands beside it; the drawn or classical places where they keep the limits and are better still. */
function chosen({
  found,
  lifted,
  search,
  drawn,
  classical,
}: {
  readonly found: readonly SearchFound[]
  readonly lifted: (places: readonly Point[]) => LiftedPeak
  readonly search: SearchInput
  readonly drawn: readonly Point[]
  readonly classical: readonly Point[]
}): Chosen {
  const first = found[0]!
  const rounded = wholePlaces(first.places, search)
  let [places, answer] = [rounded, lifted(rounded)]
  for (const other of found.slice(1)) {
    // A second answer is worth a mesh of its own only where the search cannot tell the two apart.
    if (other.peak > first.peak * 1.01) break
    if (answer.peak.stress <= first.peak * 1.01) break
    const there = wholePlaces(other.places, search)
    const tried = lifted(there)
    if (tried.peak.stress < answer.peak.stress) [places, answer] = [there, tried]
  }
  const before = drawn.length === 0 ? null : holding(drawn, lifted)
  const rule = search.limits.kind === 'edge' ? null : holding(classical, lifted)
  for (const [set, other] of [
    [drawn, before],
    [classical, rule],
  ] as const) {
    if (other === null || other.peak.stress >= answer.peak.stress || !keeps(set, search)) continue
    places = set
    answer = other
  }
  return {
    places,
    lifted: answer,
    drawn: before?.peak.stress ?? null,
    classical:
      rule === null ? null : { inserts: classical, peak: rule.peak.stress, within: keeps(classical, search) },
  }
}

/** Peak of given places; null where they are off the concrete, do not hold the panel or one would push down. */
function holding(
  places: readonly Point[],
  lifted: (places: readonly Point[]) => LiftedPeak,
): LiftedPeak | null {
  if (places.length < 2 || (places.length > 2 && inOneLine(places))) return null
  try {
    const found = lifted(places)
    return found.loads.every((load) => load > 0) ? found : null
  } catch (error) {
    if (error instanceof InputError) return null
    throw error
  }
}

/** Whether given places keep all the limits of the search. */
function keeps(
  places: readonly Point[],
  { limits, count, grid, mirrors, sharing, centre, influence }: SearchInput,
): boolean {
  if (places.length !== count || grid !== null || limits.kind !== 'face' || mirrors.length > 1) return false
  const equal = influence.work[0] / count
  return (
    places.every((at) => limits.fits(at)) &&
    limits.apart(places) &&
    equal > 0 &&
    (count > 2 || onLine(places as readonly [Point, Point], centre)) &&
    (sharing === 'rigid' || Math.hypot(...offMiddle(places, centre)) < 1)
  )
}

function offMiddle(places: readonly Point[], [cx, cy]: Point): [number, number] {
  const n = places.length
  return [
    places.reduce((sum, [x]) => sum + x, 0) / n - cx,
    places.reduce((sum, [, y]) => sum + y, 0) / n - cy,
  ]
}

function onLine([p, q]: readonly [Point, Point], [cx, cy]: Point): boolean {
  const cross = (p[0] - cx) * (q[1] - cy) - (p[1] - cy) * (q[0] - cx)
  return Math.abs(cross) / Math.hypot(p[0] - q[0], p[1] - q[1]) < 1e-6
}

/** Whole millimetres where every limit is still kept, as a drawing gives them. */
function wholePlaces(
  places: readonly Point[],
  { limits, count, sharing, grid }: SearchInput,
): readonly Point[] {
  if (grid !== null || count === 2 || sharing === 'equalised' || limits.kind === 'edge') return places
  const whole = places.map(([x, y]): Point => [Math.round(x), Math.round(y)])
  return whole.every((at) => limits.fits(at)) && limits.apart(whole) ? whole : places
}

/** Counter-clockwise from the lower left. */
function inOrder(places: readonly Point[], [cx, cy]: Point): number[] {
  const turn = (k: number): number => Math.atan2(places[k]![1] - cy, places[k]![0] - cx)
  return [...places.keys()].sort((p, q) => turn(p) - turn(q))
}

function mirrorsAsked({ symmetric, panel, from }: PicksInput, piece: Piece): readonly Mirror[] {
  if (symmetric === false) return NO_MIRROR
  const mirrors = mirrorsOf(piece, panel.centre)
  if (symmetric === true && mirrors.length === 1) {
    const expected = 'a panel that maps on itself by a mirror or half a turn'
    throw new InputError([{ path: 'symmetric', found: 'a panel without symmetry', expected }], from)
  }
  return mirrors
}

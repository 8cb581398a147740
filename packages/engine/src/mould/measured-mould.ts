import type { CodeFamily } from '../codes/family.ts'
import type { ToleranceWhat } from '../codes/quality-rules.ts'
import type { Drawing } from '../panel/drawing.ts'
import { distance, type Ring } from '../panel/point.ts'
import { edges } from '../panel/polygon.ts'
import { asBuilt } from '../quality/as-built.ts'
import type { Deviation } from '../quality/deviation.ts'
import { familyLimit } from '../quality/family-limit.ts'
import { diagonalCorners, type Point3 } from '../quality/frame.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import { type Check, compare } from '../working/check.ts'
import { commonPractice, GEOMETRY, type Source } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import { pushText } from './corner-push.ts'
import { MISREAD_FACTOR, TAPE_SCATTER } from './misread.ts'
import { diagonalTolerance, LEAST_HEIGHTS, lengthTolerance, NO_LIMIT_BEYOND, SIZE } from './mould-asked.ts'
import { type MouldShape, mouldShape, type ShapeCorner } from './mould-shape.ts'
import { rackPush, rackText } from './rack-push.ts'

/** Baarda’s test of single observations; two-sided, one in a thousand of good readings. */
const MISREAD_TEST: Source = {
  standard: 'Baarda, A testing procedure for use in geodetic networks, 1968',
  clause: 'test of one observation',
  status: 'from memory',
}

export interface MeasuredMouldInput {
  readonly drawing: Drawing
  /** Taped lengths, mm, by the ids of `mouldSurvey`. */
  readonly taped: Readonly<Record<string, number | undefined>>
  /** Height of the side forms above the bed at several places, mm. */
  readonly heights: readonly number[]
  /** The worst height alone, mm, where places were not told apart. */
  readonly worstHeight?: number | undefined
  readonly family: CodeFamily
  readonly limits?: Readonly<Record<string, EnteredLimit>>
}

export interface MeasuredMould {
  /** Null until every length is taped. */
  readonly shape: MouldShape | null
  /** Whether the taped lengths fit each other. */
  readonly readings: Check
  /** Whether the corners are where they are drawn, within the set-up tolerance. */
  readonly corners: Check
  /** Its diagonals beside the set-up tolerance; null where the outline has no four corners to run them between. */
  readonly square: Check | null
  /** What a panel cast in it would be beside the as-built tolerances that family or engineer give. */
  readonly cast: readonly Check[]
  /** As-built tolerances that nobody has given, in one; null where there is none. */
  readonly unlimited: Check | null
}

/**
 * The mould judged as a whole before concrete makes it permanent: do the taped lengths fit each other, are the corners where they are drawn, and
 * would the panel cast in it keep its as-built tolerances.
 *
 * Unknown while a length is missing, and corners and panel also while the lengths do not fit each other. A panel is taken to be as the mould is:
 * what the forms give under the concrete comes on top.
 */
export function measuredMould(input: MeasuredMouldInput): MeasuredMould {
  const outline = input.drawing.outline as unknown as Ring
  const { shape, missing } = mouldShape({ outline, taped: input.taped })
  const readings = readingsCheck(shape, missing)
  const gaps =
    shape === null ? missing : readings.verdict === 'pass' ? [] : ['taped lengths that fit each other']
  const cast = castChecks(input, shape, gaps)
  return {
    shape,
    readings,
    corners: cornersCheck(shape, gaps),
    square: squareCheck(outline, shape, cast, gaps),
    cast: cast.filter(({ limited }) => limited).map(({ check }) => check),
    unlimited: unlimitedCheck(cast.filter(({ limited }) => !limited).map(({ deviation }) => deviation)),
  }
}

/** Every row that `measuredMould` can make, by id. */
export const MOULD_ROWS: Readonly<Record<string, string>> = {
  'mould-readings': 'Taped lengths fit each other',
  'mould-corners': 'Corners of the mould where they are drawn',
  'mould-square': 'Difference of the diagonals of the mould',
  'mould-cast': 'As-built tolerances of a panel cast in this mould',
  'mould-cast:length': 'Length of a panel cast in this mould',
  'mould-cast:width': 'Width of a panel cast in this mould',
  'mould-cast:thickness': 'Thickness of a panel cast in this mould',
  'mould-cast:squareness': 'Squareness of a panel cast in this mould',
}

function titled(id: string): {
  readonly id: string
  readonly step: 'mould'
  readonly what: string
  readonly unit: 'mm'
} {
  return { id, step: 'mould', what: MOULD_ROWS[id] ?? id, unit: 'mm' }
}

const TAPED: Assumed = {
  field: 'scatter of a taped length',
  value: TAPE_SCATTER,
  unit: 'mm',
  why: 'two people, a steel tape read to the millimetre; common practice',
}

function readingsCheck(shape: MouldShape | null, missing: readonly string[]): Check {
  return compare({
    ...titled('mould-readings'),
    demand: shape?.misfit ?? null,
    limit: MISREAD_FACTOR * TAPE_SCATTER,
    sense: 'at most',
    source: MISREAD_TEST,
    missing,
    assumed: [TAPED],
    ...(shape === null ? {} : { working: readingSteps(shape), note: readingsNote(shape) }),
  })
}

function readingSteps({ lengths, misfit, misfitLimit }: MouldShape): Step[] {
  return [
    ...lengths.map(
      ({ what, taped, fitted }): Step => ({
        symbol: what,
        formula: 'taped − fitted',
        given: { taped, fitted },
        result: taped - fitted,
        unit: 'mm',
        source: GEOMETRY,
        note: 'fitted: corners by least squares of all lengths',
      }),
    ),
    {
      symbol: 'e',
      formula: 'largest (taped − fitted) / √(part of a misreading that shows)',
      given: { lengths: lengths.length },
      result: misfit,
      unit: 'mm',
      source: MISREAD_TEST,
      by: 'search',
    },
    {
      symbol: 'e_lim',
      formula: 'k s',
      given: { k: MISREAD_FACTOR, s: TAPE_SCATTER },
      result: misfitLimit,
      unit: 'mm',
      source: MISREAD_TEST,
      note: 's: scatter of a taped length',
    },
  ]
}

/** Suspects named at once; more than these are all taped again. */
const MOST_NAMED = 4

function readingsNote({ misfit, misfitLimit, misread, lengths }: MouldShape): string {
  if (misfit > misfitLimit) {
    if (misread.length === 0 || misread.length > MOST_NAMED)
      return 'No single length stands out. Tape all of them again.'
    const named = misread.map(
      ({ length, over }) =>
        `${length.what} reads ${Math.round(Math.abs(over))} mm ${over > 0 ? 'longer' : 'shorter'} than the others give`,
    )
    return `${named.join(', or ')}. Tape ${named.length === 1 ? 'it' : 'them'} again.`
  }
  const alone = lengths.filter(({ even }) => even === 0).length
  if (alone === lengths.length) return 'No length to spare: a misread tape does not show.'
  return alone === 0 ? '' : `${alone} of ${lengths.length} lengths are checked by no other.`
}

function cornersCheck(shape: MouldShape | null, gaps: readonly string[]): Check {
  const judged = (shape?.corners ?? []).map((corner) => ({ corner, limit: lengthTolerance(corner.longer) }))
  const use = ({ corner, limit }: (typeof judged)[number]): number =>
    corner.out / (limit ?? corner.longer / 1000)
  const worst = judged.reduce<(typeof judged)[number] | null>(
    (most, next) => (most === null || use(next) > use(most) ? next : most),
    null,
  )
  const unlimited = judged.some(({ limit }) => limit === null)
  return compare({
    ...titled('mould-corners'),
    demand: worst?.corner.out ?? null,
    limit: worst?.limit ?? null,
    sense: 'at most',
    source: SIZE,
    missing: [...gaps, ...(unlimited ? [`corners: ${NO_LIMIT_BEYOND}`] : [])],
    ...(shape === null || gaps.length > 0
      ? {}
      : { working: shape.corners.map(cornerStep), note: cornersNote(judged, shape) }),
  })
}

function cornersNote(
  judged: readonly { readonly corner: ShapeCorner; readonly limit: number | null }[],
  { skewDegrees, whole }: MouldShape,
): string {
  const over = judged
    .filter(({ corner, limit }) => limit !== null && corner.out > limit)
    .sort((a, b) => b.corner.out - a.corner.out)
  const angles = `Angles within ${skewDegrees.toFixed(2)}° of the drawing.`
  const some = whole ? '' : ' The other corners are not in it.'
  return over.length === 0
    ? `${angles}${some}`
    : `${over.map(({ corner }) => pushText(corner)).join(' ')} ${angles}${some}`
}

function cornerStep({ corner, drawn, at, out, angleDegrees, drawnDegrees }: ShapeCorner): Step {
  const [dx, dy] = [at[0] - drawn[0], at[1] - drawn[1]]
  return {
    symbol: `corner ${corner}`,
    formula: 'sqrt(dx² + dy²)',
    given: { dx, dy },
    result: out,
    unit: 'mm',
    source: GEOMETRY,
    note: `angle ${angleDegrees.toFixed(2)}°, drawn ${drawnDegrees.toFixed(2)}°; laid on the drawing with the least sum of distances`,
  }
}

interface Cast {
  readonly check: Check
  readonly deviation: Deviation
  readonly limited: boolean
}

const CAST: readonly ToleranceWhat[] = ['length', 'width', 'thickness', 'squareness']

function castChecks(
  { drawing, heights, worstHeight, family, limits = {} }: MeasuredMouldInput,
  shape: MouldShape | null,
  gaps: readonly string[],
): Cast[] {
  const found = shape !== null && gaps.length === 0 ? shape.corners : []
  const ring: Ring =
    shape === null ? (drawing.outline as unknown as Ring) : shape.corners.map((corner) => corner.drawn)
  const thickness = heights.length > 0 ? heights : worstHeight === undefined ? [] : [worstHeight]
  const few = heights.length > 0 && heights.length < LEAST_HEIGHTS
  const { deviations } = asBuilt({
    family,
    limits,
    measured: {
      drawing: { ...drawing, outline: ring as unknown as Drawing['outline'] },
      corners: found.map(({ at }): Point3 => [at[0], at[1], 0]),
      points: [],
      sides: [],
      diagonals: null,
      thickness,
      edges: [],
      gaps: [],
    },
  })
  const thicknessGaps =
    thickness.length === 0 || few ? [`height of the side forms at ${LEAST_HEIGHTS} places or more`] : []
  return deviations.flatMap((deviation): Cast[] => {
    const { what } = deviation
    if (!CAST.includes(what) || (what === 'squareness' && diagonalCorners(ring) === null)) return []
    const limit = familyLimit({ what, size: what === 'thickness' ? drawing.thickness : 1000, family, limits })
    const check = castCheck(deviation, what === 'thickness' ? thicknessGaps : gaps)
    return [{ check, deviation, limited: limit.known }]
  })
}

function castCheck(
  { what, value, limit, source, working, unknown = [], note }: Deviation,
  gaps: readonly string[],
): Check {
  return compare({
    ...titled(`mould-cast:${what}`),
    demand: value,
    limit,
    sense: (value ?? 0) < 0 ? 'at least' : 'at most',
    source: limit === null ? AS_BUILT : source,
    missing: gaps.length > 0 ? gaps : unknown,
    working,
    ...(note === undefined || gaps.length > 0 ? {} : { note }),
  })
}

const AS_BUILT: Source = commonPractice('as-built tolerance of the family')

function unlimitedCheck(open: readonly Deviation[]): Check | null {
  if (open.length === 0) return null
  const found = open.flatMap(({ what, value }) =>
    value === null ? [] : [`${what} ${value < 0 ? '−' : ''}${Math.abs(value).toFixed(1)} mm`],
  )
  return compare({
    ...titled('mould-cast'),
    demand: null,
    limit: null,
    sense: 'at most',
    source: AS_BUILT,
    missing: open.map(({ what }) => `${what}: no confirmed as-built tolerance`),
    ...(found.length === 0 ? {} : { note: `It would be off by: ${found.join(', ')}.` }),
  })
}

function squareCheck(
  outline: Ring,
  shape: MouldShape | null,
  cast: readonly Cast[],
  gaps: readonly string[],
): Check | null {
  const found = cast.find(({ deviation }) => deviation.what === 'squareness')
  if (found === undefined) return null
  const limit = diagonalTolerance(longestSide(outline))
  const demand = found.deviation.value
  const push =
    shape === null || demand === null || demand < WORTH_A_PUSH
      ? null
      : rackPush(
          outline,
          shape.corners.map(({ at }) => at),
        )
  return compare({
    ...titled('mould-square'),
    demand,
    limit,
    sense: 'at most',
    source: SIZE,
    missing: [...gaps, ...(limit === null ? [`diagonals: ${NO_LIMIT_BEYOND}`] : [])],
    working: found.deviation.working,
    ...(push === null ? {} : { note: rackText(push) }),
  })
}

/** A difference of diagonals under this is no more than a tape's reading, mm. */
const WORTH_A_PUSH = 3

function longestSide(outline: Ring): number {
  return Math.max(...edges(outline).map(([a, b]) => distance(a, b)))
}

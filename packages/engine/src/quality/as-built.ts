import type { CodeFamily } from '../codes/family.ts'
import { distance, type Point, type Ring } from '../panel/point.ts'
import { bounds, edges } from '../panel/polygon.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import { GEOMETRY } from '../working/source.ts'
import { joinVerdicts, type Verdict } from '../working/verdict.ts'
import type { Assumed, Step } from '../working/worked.ts'
import { type Deviation, type DeviationReading, deviationOf } from './deviation.ts'
import { boxCorners, diagonalCorners, type Point3, span } from './frame.ts'
import type { Measured } from './measured.ts'
import { bowOf, cornerHeights, twistOf, warpOf } from './out-of-plane.ts'

export interface AsBuiltInput {
  readonly measured: Measured
  readonly family: CodeFamily
  readonly limits?: Readonly<Record<string, EnteredLimit>>
}

export interface AsBuilt {
  /** Length, width, thickness, squareness, bow, warp, flatness, in this order. */
  readonly deviations: readonly Deviation[]
  readonly verdict: Verdict
  readonly assumed: readonly Assumed[]
}

const STRAIGHTEDGE = 3000
/** Readings of thickness that a panel should have. */
const THICKNESS_READINGS = 4

/**
 * Deviations of a measured panel from its drawing, mm, against the family's limits.
 *
 * Length and width are the sides along and across; squareness the difference of the diagonals, less what the drawing
 * gives them; bow the offset of a point from the chord of its edge, or from the surface that the corners span; warp the
 * distance of the fourth corner from the plane of the other three. None depends on how the panel stood.
 */
export function asBuilt({ measured, family, limits }: AsBuiltInput): AsBuilt {
  const rest = { family, limits }
  const { thickness } = measured
  const few =
    thickness.length > 0 && thickness.length < THICKNESS_READINGS
      ? { note: `${thickness.length} readings; four, 100 mm in, are usual` }
      : {}
  const unsided =
    measured.sides.length + measured.corners.length === 0
      ? { note: 'equal diagonals alone do not prove square: measure the sides too' }
      : {}
  const deviations = [
    deviationOf({
      ...rest,
      what: 'length',
      readings: sideReadings(measured, 'length'),
      missing: 'corners or sides',
    }),
    deviationOf({
      ...rest,
      what: 'width',
      readings: sideReadings(measured, 'width'),
      missing: 'corners or sides',
    }),
    deviationOf({
      ...rest,
      what: 'thickness',
      readings: thickness.map((found) => thicknessReading(found, measured.drawing.thickness)),
      missing: 'thickness',
      ...few,
    }),
    deviationOf({
      ...rest,
      what: 'squareness',
      readings: squarenessReadings(measured),
      missing: squarenessGap(measured),
      ...unsided,
    }),
    deviationOf({
      ...rest,
      what: 'bow',
      readings: bowReadings(measured),
      missing: 'edges, or points between the corners',
    }),
    deviationOf({ ...rest, what: 'warp', readings: warpReadings(measured), missing: 'corners' }),
    deviationOf({
      ...rest,
      what: 'flatness',
      readings: measured.gaps.map(gapReading),
      missing: 'gaps under a straightedge of 3 m',
    }),
  ]
  return {
    deviations,
    verdict: joinVerdicts(deviations.map(({ verdict }) => verdict)),
    assumed: edgeAssumed(measured),
  }
}

function outlineOf({ drawing }: Measured): Ring {
  return drawing.outline as unknown as Ring
}

/** Sides that run along (length) or across (width), as taped and as the corners give them. */
function sideReadings(measured: Measured, what: 'length' | 'width'): DeviationReading[] {
  const { corners, sides } = measured
  return edges(outlineOf(measured)).flatMap(([a, b], index) => {
    const along = Math.abs(b[0] - a[0]) >= Math.abs(b[1] - a[1])
    if (along !== (what === 'length')) return []
    const drawn = distance(a, b)
    const [from, to] = [corners[index], corners[(index + 1) % corners.length]]
    const found = [sides[index], from && to ? span(from, to) : undefined]
    return found.flatMap((size) => (size === undefined ? [] : [sizeReading('Δ', size, drawn)]))
  })
}

function thicknessReading(found: number, drawn: number): DeviationReading {
  return sizeReading('Δt', found, drawn)
}

function sizeReading(symbol: string, found: number, drawn: number): DeviationReading {
  const value = found - drawn
  return {
    value,
    size: drawn,
    steps: [
      {
        symbol,
        formula: 'found − drawn',
        given: { found, drawn },
        result: value,
        unit: 'mm',
        source: GEOMETRY,
      },
    ],
  }
}

function squarenessReadings(measured: Measured): DeviationReading[] {
  const outline = outlineOf(measured)
  const four = diagonalCorners(outline)
  if (four === null) return []
  const [i, j, k, l] = four
  const drawn: [number, number] = [
    distance(outline[i] as Point, outline[k] as Point),
    distance(outline[j] as Point, outline[l] as Point),
  ]
  const { corners, diagonals } = measured
  const byCorners: [number, number] | null =
    corners.length > 0
      ? [span(corners[i] as Point3, corners[k] as Point3), span(corners[j] as Point3, corners[l] as Point3)]
      : null
  return [diagonals, byCorners].flatMap((found) => {
    if (found === null) return []
    const value = Math.abs(found[0] - found[1] - (drawn[0] - drawn[1]))
    const step: Step = {
      symbol: 'D',
      formula: 'abs(d1 − d2 − (n1 − n2))',
      given: { d1: found[0], d2: found[1], n1: drawn[0], n2: drawn[1] },
      result: value,
      unit: 'mm',
      source: GEOMETRY,
      note: 'd measured, n drawn',
    }
    return [{ value, size: Math.max(...drawn), steps: [step] }]
  })
}

function squarenessGap(measured: Measured): string {
  return diagonalCorners(outlineOf(measured)) === null
    ? 'squareness: the outline has no four corners to run diagonals between'
    : 'diagonals or corners'
}

function warpReadings(measured: Measured): DeviationReading[] {
  const { corners } = measured
  if (corners.length === 0) return []
  const outline = outlineOf(measured)
  const box = bounds(outline)
  const size = Math.min(box.right - box.left, box.top - box.bottom)
  const quad = boxCorners(measured.corners, outlineOf(measured))
  if (quad !== null) {
    const heights = cornerHeights(quad)
    if (heights === null) return []
    const [z1, z2, z3, z4] = heights
    const value = warpOf(heights)
    return [{ value, size, steps: [warpStep('abs(z1 − z2 + z3 − z4)', { z1, z2, z3, z4 }, value)] }]
  }
  const value = twistOf(corners, outline)
  if (value === null) return []
  const step = warpStep('twist of a + b x + c y + d x y over the box', { corners: corners.length }, value)
  return [{ value, size, steps: [{ ...step, by: 'search' }] }]
}

function warpStep(formula: string, given: Step['given'], result: number): Step {
  return {
    symbol: 'w',
    formula,
    given,
    result,
    unit: 'mm',
    source: GEOMETRY,
    note: 'heights above the mean plane of the corners',
  }
}

function bowReadings(measured: Measured): DeviationReading[] {
  const quad = boxCorners(measured.corners, outlineOf(measured))
  const read = measured.edges.map(([z1 = 0, zm = 0, z2 = 0, length]) => {
    const value = zm - (z1 + z2) / 2
    return {
      value,
      size: length ?? longestSide(measured),
      steps: [bowStep('zm − (z1 + z2) / 2', { zm, z1, z2 }, value)],
    }
  })
  if (quad === null) return read
  const points = measured.points.flatMap((point, index) => {
    const bow = bowOf(quad, point)
    if (bow === null) return []
    const step = bowStep('height out of the surface of the corners', { point: index + 1 }, bow.offset)
    return [{ value: bow.offset, size: bow.over, steps: [{ ...step, by: 'search' as const }] }]
  })
  return [...read, ...points]
}

function bowStep(formula: string, given: Step['given'], result: number): Step {
  return { symbol: 'b', formula, given, result, unit: 'mm', source: GEOMETRY }
}

function gapReading(gap: number): DeviationReading {
  return {
    value: gap,
    size: STRAIGHTEDGE,
    steps: [
      {
        symbol: 'gap',
        formula: 'largest reading under the straightedge',
        given: { straightedge: STRAIGHTEDGE },
        result: gap,
        unit: 'mm',
        source: GEOMETRY,
        by: 'search',
      },
    ],
  }
}

function longestSide(measured: Measured): number {
  return Math.max(...edges(outlineOf(measured)).map(([a, b]) => distance(a, b)))
}

function edgeAssumed(measured: Measured): Assumed[] {
  const without = measured.edges.filter((edge) => edge.length < 4).length
  if (without === 0) return []
  return [
    {
      field: 'edges',
      value: longestSide(measured),
      unit: 'mm',
      why: `${without} readings do not say the length of their edge: taken as the longest`,
    },
  ]
}

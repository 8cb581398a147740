import * as z from 'zod'
import { type Drawing, parseDrawing } from '../panel/drawing.ts'
import { distance, type Point, type Ring } from '../panel/point.ts'
import { area, edges } from '../panel/polygon.ts'
import { InputError, type InputIssue } from '../working/issue.ts'
import { parseInput } from '../working/parse.ts'
import { areaOf, boxCorners, type Point3, span } from './frame.ts'
import { bowOf } from './out-of-plane.ts'

const positive = z.number().positive()
const point = z.tuple([z.number(), z.number(), z.number()])

/**
 * What was measured on a finished panel. `corners`: the corners of the outline in its order, mm, in any frame; any further
 * points lie on the face. `sides`: along the outline's edges in order. `diagonals`: first to third and second to
 * fourth corner. `edges`: heights along an edge at one end, the middle, the other end, and the length of that
 * edge where it is not the longest. `gaps`: under a straightedge of 3 m.
 */
export const measuredSchema = z.strictObject({
  drawing: z.unknown(),
  corners: z.array(point).min(4).max(10_000).optional(),
  sides: z.array(positive).min(3).max(2000).optional(),
  diagonals: z.tuple([positive, positive]).optional(),
  thickness: z.array(positive).min(1).max(10_000).optional(),
  edges: z
    .array(z.union([point, z.tuple([z.number(), z.number(), z.number(), positive])]))
    .min(1)
    .max(2000)
    .optional(),
  gaps: z.array(z.number().min(0)).min(1).max(10_000).optional(),
})

export interface Measured {
  readonly drawing: Drawing
  /** Corners of the outline, in order; empty where they were not measured. */
  readonly corners: readonly Point3[]
  /** Further points on the face. */
  readonly points: readonly Point3[]
  readonly sides: readonly number[]
  readonly diagonals: readonly [number, number] | null
  readonly thickness: readonly number[]
  readonly edges: readonly (readonly number[])[]
  readonly gaps: readonly number[]
}

/** A side measured so far from the drawn one belongs to another corner: share of the side, and at least so many mm. */
const STRANGE_SHARE = 0.25
const STRANGE_LEAST = 200

/**
 * Reads the measured panel with its drawing.
 *
 * @throws InputError naming each field, also for corners that are fewer than the outline's or out of its order.
 */
export function parseMeasured(value: unknown, from = ''): Measured {
  const read = parseInput(measuredSchema, value, from)
  const drawing = parseMeasuredDrawing(read.drawing, from)
  const outline = drawing.outline as unknown as Ring
  const count = outline.length
  const corners = (read.corners ?? []) as readonly Point3[]
  const sides = read.sides ?? []
  const issues: InputIssue[] = [
    ...(corners.length > 0 && corners.length < count
      ? [
          {
            path: 'corners',
            found: `${corners.length} points`,
            expected: `the ${count} corners of the outline in order`,
          },
        ]
      : cornerIssues(corners.slice(0, count), outline)),
    ...(sides.length > 0 && sides.length !== count
      ? [
          {
            path: 'sides',
            found: `${sides.length} sides`,
            expected: `the ${count} sides of the outline in order`,
          },
        ]
      : sideIssues(sides, outline)),
  ]
  const points = corners.slice(count)
  issues.push(...pointIssues(corners.slice(0, count), points, outline))
  if (issues.length > 0) throw new InputError(issues, from)
  return {
    drawing,
    corners: corners.slice(0, count),
    points,
    sides,
    diagonals: read.diagonals ?? null,
    thickness: read.thickness ?? [],
    edges: read.edges ?? [],
    gaps: read.gaps ?? [],
  }
}

function parseMeasuredDrawing(value: unknown, from: string): Drawing {
  try {
    return parseDrawing(value, from)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    throw new InputError(
      error.issues.map((issue) => ({
        ...issue,
        path: issue.path === '' ? 'drawing' : `drawing.${issue.path}`,
      })),
      from,
    )
  }
}

function cornerIssues(corners: readonly Point3[], outline: Ring): InputIssue[] {
  if (corners.length === 0) return []
  const far = farIssues(corners, outline)
  if (far.length > 0) return far
  // Two corners exchanged may leave sides of likely length, but then the outline crosses itself and loses its area.
  const drawn = area(outline)
  const found = areaOf(corners)
  return Math.abs(found - drawn) > STRANGE_SHARE * drawn
    ? [
        {
          path: 'corners',
          found: `corners that enclose ${(found / 1e6).toFixed(2)} m²`,
          expected: `about ${(drawn / 1e6).toFixed(2)} m²: corners in the order of the outline`,
        },
      ]
    : []
}

function farIssues(corners: readonly Point3[], outline: Ring): InputIssue[] {
  return edges(outline).flatMap(([a, b], index) => {
    const next = (index + 1) % corners.length
    const found = span(corners[index] as Point3, corners[next] as Point3)
    return strange(found, a, b)
      ? [
          {
            path: `corners[${next}]`,
            found: `${Math.round(found)} mm from the corner before it`,
            expected: `about ${Math.round(distance(a, b))} mm: corners in the order of the outline`,
          },
        ]
      : []
  })
}

/** Further points are read against the surface that the four corners of the box span: they must lie on it. */
function pointIssues(corners: readonly Point3[], points: readonly Point3[], outline: Ring): InputIssue[] {
  if (points.length === 0) return []
  const quad = boxCorners(corners, outline)
  if (quad === null) {
    return [
      {
        path: `corners[${corners.length}]`,
        found: `${points.length} further points`,
        expected: 'the corners alone: this outline has no four corners of its box',
      },
    ]
  }
  return points.flatMap((point, index) =>
    bowOf(quad, point) === null
      ? [
          {
            path: `corners[${corners.length + index}]`,
            found: `[${point.join(', ')}]`,
            expected: 'a point on the panel, between its corners',
          },
        ]
      : [],
  )
}

function sideIssues(sides: readonly number[], outline: Ring): InputIssue[] {
  if (sides.length === 0) return []
  return edges(outline).flatMap(([a, b], index) => {
    const found = sides[index] ?? 0
    return strange(found, a, b)
      ? [
          {
            path: `sides[${index}]`,
            found: `${found}`,
            expected: `about ${Math.round(distance(a, b))} mm: sides in the order of the outline`,
          },
        ]
      : []
  })
}

function strange(found: number, a: Point, b: Point): boolean {
  const drawn = distance(a, b)
  return Math.abs(found - drawn) > Math.max(STRANGE_LEAST, STRANGE_SHARE * drawn)
}

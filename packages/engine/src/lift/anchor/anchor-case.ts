import * as z from 'zod'
import type { Point, Ring } from '../../panel/point.ts'
import { counterClockwise, placeInRing, ringFault } from '../../panel/polygon.ts'
import { subtract } from '../../panel/region.ts'
import { InputError, type InputIssue } from '../../working/issue.ts'
import { parseInput } from '../../working/parse.ts'

/** Farthest coordinate, mm. */
const FARTHEST = 1_000_000
const MOST_CORNERS = 20_000
/** Two inserts nearer than this stand at one point, mm. */
const ONE_POINT = 1

const positive = z.number().positive()
const size = positive.max(FARTHEST)
const coordinate = z.number().min(-FARTHEST).max(FARTHEST)
const point = z.tuple([coordinate, coordinate])
const ring = z.array(point).min(3).max(2000)
const force = z.number().min(0).max(1_000_000)

const anchorCaseSchema = z.strictObject({
  at: z.array(point).min(1).max(200),
  outline: ring,
  openings: z.array(ring).max(1000).optional(),
  thickness: size,
  depth: size,
  head: positive,
  shaft: size.optional(),
  steel: positive.optional(),
  concrete: z.strictObject({ strength: positive.max(500), cracked: z.boolean() }),
  tension: force,
  shear: z.union([force, z.strictObject({ force, direction: z.number().min(-360).max(360) })]).optional(),
  eccentricity: point.optional(),
  splitting: z.strictObject({ edge: size, spacing: size }).optional(),
  ductile: z.boolean().optional(),
  yieldRatio: positive.max(1).optional(),
})

/** One insert or a group as a file gives it: mm, mm², kN, MPa, degrees. */
export type AnchorCase = z.output<typeof anchorCaseSchema>

/**
 * Reads a case and refuses what cannot be: wrong fields, crossing outlines, inserts off the face, in an opening, at one point, or as deep
 * as the concrete.
 *
 * @throws InputError naming each field.
 */
export function parseAnchorCase(value: unknown, from = ''): AnchorCase {
  const read = parseInput(anchorCaseSchema, value, from)
  const issues = [...shapeIssues(read), ...sizeIssues(read)]
  if (issues.length > 0) throw new InputError(issues, from)
  const places = placeIssues(read)
  if (places.length > 0) throw new InputError(places, from)
  return read
}

/** Outline less openings of a case, in one piece. */
export function faceOf({ outline, openings = [] }: Pick<AnchorCase, 'outline' | 'openings'>) {
  return subtract(counterClockwise(outline as unknown as Ring), openings as unknown as Ring[])
}

function shapeIssues({ outline, openings = [] }: AnchorCase): InputIssue[] {
  const corners = outline.length + openings.reduce((sum, opening) => sum + opening.length, 0)
  if (corners > MOST_CORNERS) {
    return [
      { path: 'openings', found: `${corners} corners in all`, expected: `at most ${MOST_CORNERS} corners` },
    ]
  }
  return [
    ...ringIssues(outline as unknown as Ring, 'outline'),
    ...openings.flatMap((opening, index) => ringIssues(opening as unknown as Ring, `openings[${index}]`)),
  ]
}

function ringIssues(corners: Ring, path: string): InputIssue[] {
  const fault = ringFault(corners)
  if (fault === null) return []
  const [x, y] = corners[fault.corner] as Point
  return [
    { path: `${path}[${fault.corner}]`, found: `[${x}, ${y}]: ${fault.fault}`, expected: 'a simple polygon' },
  ]
}

function sizeIssues({ depth, thickness, tension, shear }: AnchorCase): InputIssue[] {
  const issues: InputIssue[] = []
  if (depth >= thickness) {
    issues.push({ path: 'depth', found: String(depth), expected: `below the thickness, ${thickness}` })
  }
  const across = typeof shear === 'number' ? shear : (shear?.force ?? 0)
  if (tension === 0 && across === 0) {
    issues.push({ path: 'tension', found: '0, and no shear', expected: 'a tension or a shear above 0' })
  }
  return issues
}

function placeIssues(read: AnchorCase): InputIssue[] {
  const { at, outline, openings = [] } = read
  const region = faceOf(read)
  if (region.length !== 1) {
    const found = region.length === 0 ? 'no concrete left' : `${region.length} separate pieces`
    return [{ path: 'openings', found, expected: 'outline less openings in one piece' }]
  }
  return at.flatMap((place, index): InputIssue[] => {
    const path = `at[${index}]`
    const found = `[${place[0]}, ${place[1]}]`
    if (placeInRing(place, outline as unknown as Ring) !== 'inside') {
      return [{ path, found: `${found}, off the outline or on it`, expected: 'a point inside the outline' }]
    }
    const hole = openings.findIndex((opening) => placeInRing(place, opening as unknown as Ring) !== 'outside')
    if (hole >= 0)
      return [{ path, found: `${found}, in openings[${hole}]`, expected: 'a point in the concrete' }]
    const twin = at.findIndex(
      (other, k) => k < index && Math.hypot(other[0] - place[0], other[1] - place[1]) < ONE_POINT,
    )
    return twin >= 0
      ? [{ path, found: `${found}, where at[${twin}] is`, expected: 'inserts at least 1 mm apart' }]
      : []
  })
}

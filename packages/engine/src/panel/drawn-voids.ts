import * as z from 'zod'
import type { InputIssue } from '../working/issue.ts'
import { FARTHEST } from './drawn-steel.ts'
import { netSection } from './net-section.ts'
import type { Point } from './point.ts'
import { distance } from './point.ts'
import { parts, partsApart } from './way.ts'

const positive = z.number().positive()
const coordinate = z.number().min(-FARTHEST).max(FARTHEST)
const point = z.tuple([coordinate, coordinate])
const mark = z.string().min(1).max(40)

/** Something in the concrete that displaces it: foam, a box, a recess former on the bed. */
export const voidSchema = z.strictObject({
  mark,
  outline: z.array(point).min(3).max(2000),
  /** Thickness of the former, mm. */
  depth: positive.max(10_000),
  /** Concrete between mould face and its underside, mm; 0: it sits on the bed, sealed to it. */
  above: z.number().min(0).max(10_000),
  /** Of the former itself, kg. */
  mass: z.number().min(0).max(1_000_000).optional(),
  /** Of the former itself where its mass is not given, kg/m³. */
  density: z.number().min(0).max(20_000).optional(),
  /** Section modulus of the panel across the void over that of the full section, by the designer. */
  section: positive.max(1).optional(),
})

/** A duct or pipe that stays in the concrete. */
export const ductSchema = z.strictObject({
  mark,
  /** Its axis seen from above. */
  line: z.array(point).min(2).max(500),
  /** Outside, mm. */
  diameter: positive.max(10_000),
  /** Of its axis above the mould face, mm. */
  height: positive.max(10_000),
  /** Empty, kg a metre. */
  mass: z.number().min(0).max(10_000).optional(),
})

export type DrawnVoid = z.output<typeof voidSchema>
export type DrawnDuct = z.output<typeof ductSchema>

interface Voided {
  readonly thickness: number
  readonly voids?: readonly DrawnVoid[] | undefined
  readonly ducts?: readonly DrawnDuct[] | undefined
}

/** What cannot be about voids and ducts by themselves and the thickness; where they lie in the concrete is `bodyIssues`. */
export function voidIssues({ thickness, voids = [], ducts = [] }: Voided): InputIssue[] {
  return [
    ...voids.flatMap((one, i) => ofVoid(one, `voids[${i}]`, thickness)),
    ...ducts.flatMap((one, i) => ofDuct(one, `ducts[${i}]`, thickness)),
    ...sharedMarks(voids, ducts),
  ]
}

function ofVoid(
  { depth, above, mass, density, section }: DrawnVoid,
  path: string,
  thickness: number,
): InputIssue[] {
  const issues: InputIssue[] = []
  if (!(above + depth < thickness)) {
    issues.push({
      path: `${path}.depth`,
      found: `${depth} on ${above} in ${thickness} mm`,
      expected: `concrete above the former: ${above} + depth below ${thickness} mm`,
    })
  }
  if (mass !== undefined && density !== undefined) {
    issues.push({ path: `${path}.density`, found: `${density} beside a mass`, expected: 'one of the two' })
  }
  const net = netSection({ thickness, from: above, to: above + depth })
  if (section !== undefined && net !== null && section > net.share + 1e-6) {
    issues.push({
      path: `${path}.section`,
      found: String(section),
      expected: `at most ${(Math.floor(net.share * 1e4) / 1e4).toFixed(4)}, both leaves acting as one`,
    })
  }
  return issues
}

function ofDuct({ line, diameter, height }: DrawnDuct, path: string, thickness: number): InputIssue[] {
  const issues: InputIssue[] = []
  const radius = diameter / 2
  if (!(height - radius > 0 && height + radius < thickness)) {
    issues.push({
      path: `${path}.height`,
      found: `${height} of a duct of ${diameter} mm in ${thickness} mm`,
      expected:
        diameter < thickness
          ? `the duct in the thickness: above ${radius} and below ${thickness - radius} mm`
          : `a duct thinner than the panel, ${thickness} mm`,
    })
  }
  const fault = lineFault(line as unknown as readonly Point[], diameter)
  if (fault !== null) {
    issues.push({
      path: `${path}.line[${fault.point}]`,
      found: fault.found,
      expected: 'a line that does not meet itself',
    })
  }
  return issues
}

/** Two points at one place, a line that folds back, or parts nearer to each other than the duct is wide. */
function lineFault(
  line: readonly Point[],
  diameter: number,
): { readonly point: number; readonly found: string } | null {
  const all = parts(line)
  for (const [i, [a, b]] of all.entries()) {
    if (!(distance(a, b) > 0)) return { point: i + 1, found: 'the point before it again' }
    const next = all[i + 1]
    if (next !== undefined && foldsBack([a, b], next))
      return { point: i + 2, found: 'a line that folds back' }
    for (let j = i + 2; j < all.length; j += 1) {
      if (partsApart([a, b], all[j] as [Point, Point]) < diameter && !shortBetween(all, i, j, diameter))
        return { point: j, found: `a line nearer than ${diameter} mm to its part ${i + 1}` }
    }
  }
  return null
}

/** Parts near each other along the way of a bend, where the way between them is itself no longer than the bend. */
function shortBetween(
  all: readonly (readonly [Point, Point])[],
  i: number,
  j: number,
  diameter: number,
): boolean {
  const between = all.slice(i + 1, j).reduce((sum, [a, b]) => sum + distance(a, b), 0)
  return between <= 2 * diameter && !(partsApart(all[i]!, all[j]!) === 0)
}

function foldsBack([a, b]: readonly [Point, Point], [, c]: readonly [Point, Point]): boolean {
  const [ux, uy, vx, vy] = [a[0] - b[0], a[1] - b[1], c[0] - b[0], c[1] - b[1]]
  return ux * vx + uy * vy > 0 && Math.abs(ux * vy - uy * vx) < 1e-6 * Math.hypot(ux, uy) * Math.hypot(vx, vy)
}

/** Cards and checks name voids and ducts by mark alone. */
function sharedMarks(voids: readonly DrawnVoid[], ducts: readonly DrawnDuct[]): InputIssue[] {
  const seen = new Set<string>()
  const all = [
    ...voids.map(({ mark }, i) => ({ mark, path: `voids[${i}].mark` })),
    ...ducts.map(({ mark }, i) => ({ mark, path: `ducts[${i}].mark` })),
  ]
  return all.flatMap(({ mark, path }) => {
    const repeated = seen.has(mark)
    seen.add(mark)
    return repeated ? [{ path, found: JSON.stringify(mark), expected: 'a mark used once' }] : []
  })
}

import type { InputIssue } from '../working/issue.ts'
import { GEOMETRY } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Drawing } from './drawing.ts'
import type { DrawnDuct, DrawnVoid } from './drawn-voids.ts'
import { distance, type Point, type Ring } from './point.ts'
import { area, centroid, distanceToRing } from './polygon.ts'
import { clipRegions, type Region, regionArea, ringsOf, unite } from './region.ts'
import { lengthOf, linesApart, parts } from './way.ts'

/** What a void former or duct displaces. */
export interface VoidBody {
  readonly kind: 'void' | 'duct'
  readonly mark: string
  /** m³ */
  readonly volume: number
  /** Middle seen from above, mm. */
  readonly at: Point
  /** Middle above the mould face, mm. */
  readonly height: number
  /** What it weighs itself and goes with the panel, kg; a former sealed to the bed stays there: 0. */
  readonly mass: number
}

/** Clipping on whole micrometres leaves no more than this along a shared edge, mm². */
const ROUNDING = 1

/** Plan of the body of a duct: its line as wide as the duct, square at the ends; corners filled. */
export function ductStrip({ line, diameter }: Pick<DrawnDuct, 'line' | 'diameter'>): Region {
  const half = diameter / 2
  const all = parts(line as unknown as readonly Point[])
  return unite(
    all.flatMap(([a, b], i): Ring[] => {
      const length = distance(a, b)
      const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
      const side = (p: Point, s: number): Point => [p[0] - s * half * uy, p[1] + s * half * ux]
      const strip: Ring = [side(a, -1), side(b, -1), side(b, 1), side(a, 1)]
      return i === 0 ? [strip] : [strip, around(a, half)]
    }),
  )
}

/** A regular polygon about a circle. */
function around([x, y]: Point, radius: number): Ring {
  const sides = 24
  const out = radius / Math.cos(Math.PI / sides)
  return Array.from({ length: sides }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / sides
    return [x + out * Math.cos(turn), y + out * Math.sin(turn)]
  })
}

/** Voids and ducts that do not lie in the concrete: outside it, across an opening, or in each other. */
export function bodyIssues(drawing: Drawing, region: Region): InputIssue[] {
  const { voids = [], ducts = [] } = drawing
  return [
    ...voids.flatMap((one, i) => voidOut(one, `voids[${i}].outline`, drawing, region)),
    ...voids.flatMap((one, i) =>
      voids
        .slice(0, i)
        .flatMap((other) =>
          together(rangeOf(one), rangeOf(other)) && shared(unite([ringOf(one)]), ringOf(other))
            ? [
                issue(
                  `voids[${i}].outline`,
                  `void former ${one.mark} in ${other.mark}`,
                  'void formers beside each other',
                ),
              ]
            : [],
        ),
    ),
    ...ducts.flatMap((one, i) => ductOut(one, `ducts[${i}].line`, drawing, region)),
    ...ducts.flatMap((one, i) =>
      ducts
        .slice(0, i)
        .flatMap((other) =>
          ductsMeet(one, other)
            ? [issue(`ducts[${i}].line`, `duct ${one.mark} in ${other.mark}`, 'ducts clear of each other')]
            : [],
        ),
    ),
  ]
}

function issue(path: string, found: string, expected: string): InputIssue {
  return { path, found, expected }
}

function ringOf({ outline }: { readonly outline: readonly (readonly number[])[] }): Ring {
  return outline as unknown as Ring
}

function rangeOf({ above, depth }: DrawnVoid): readonly [number, number] {
  return [above, above + depth]
}

function together([a, b]: readonly [number, number], [c, d]: readonly [number, number]): boolean {
  return a < d - 1e-9 && c < b - 1e-9
}

function crossed(body: Region, { openings = [] }: Drawing): string | null {
  return openings.find((opening) => shared(body, ringOf(opening)))?.mark ?? null
}

/** Holes of the body stay open: a duct may run round an opening. */
function shared(body: Region, ring: Ring): boolean {
  return regionArea(clipRegions('both', body, unite([ring]))) > ROUNDING
}

function voidOut(one: DrawnVoid, path: string, drawing: Drawing, region: Region): InputIssue[] {
  const body: Region = unite([ringOf(one)])
  if (!(regionArea(clipRegions('less', body, region)) > ROUNDING)) return []
  const opening = crossed(body, drawing)
  const found =
    opening === null
      ? `void former ${one.mark} outside the concrete`
      : `void former ${one.mark} across opening ${opening}`
  return [issue(path, found, 'a void former inside the concrete')]
}

/** How far past an edge the square end of a duct that comes out askew may reach, in diameters. */
const ASKEW = 2

function ductOut(one: DrawnDuct, path: string, drawing: Drawing, region: Region): InputIssue[] {
  const line = one.line as unknown as readonly Point[]
  const body = ductStrip(one)
  const ends = [line[0], line.at(-1)].filter(
    (end): end is Point =>
      end !== undefined && ringsOf(region).some((ring) => distanceToRing(end, ring) < one.diameter / 2),
  )
  const past = ends.map((end) => around(end, ASKEW * one.diameter))
  const outside = clipRegions('less', body, region)
  const counted = past.length === 0 ? outside : clipRegions('less', outside, unite(past))
  const axis = onlyInside(line, region)
  const opening = crossed(clipRegions('less', body, past.length === 0 ? [] : unite(past)), drawing)
  if (opening !== null)
    return [issue(path, `duct ${one.mark} across opening ${opening}`, 'a duct clear of openings')]
  if (regionArea(counted) > ROUNDING || !axis)
    return [
      issue(
        path,
        `duct ${one.mark} outside the concrete`,
        'a duct inside the concrete, at most ending at an edge',
      ),
    ]
  const [low, high] = [one.height - one.diameter / 2, one.height + one.diameter / 2]
  const former = (drawing.voids ?? []).find(
    (each) => together([low, high], rangeOf(each)) && shared(body, ringOf(each)),
  )
  return former === undefined
    ? []
    : [issue(path, `duct ${one.mark} through void former ${former.mark}`, 'a duct in concrete')]
}

/** The axis itself, a hair wide, lies in the concrete. */
function onlyInside(line: readonly Point[], region: Region): boolean {
  const hair = 0.2
  const thin = ductStrip({ line: line as unknown as DrawnDuct['line'], diameter: hair })
  return regionArea(clipRegions('less', thin, region)) <= hair * ROUNDING
}

function ductsMeet(one: DrawnDuct, other: DrawnDuct): boolean {
  const reach = (one.diameter + other.diameter) / 2
  const apart = Math.abs(one.height - other.height)
  if (apart >= reach) return false
  const plan = linesApart(one.line as unknown as readonly Point[], other.line as unknown as readonly Point[])
  return Math.hypot(plan, apart) < reach - 1e-9
}

/** Everything that displaces concrete, voids first, in the order of the drawing. */
export function bodiesOf({ voids = [], ducts = [] }: Pick<Drawing, 'voids' | 'ducts'>): VoidBody[] {
  return [
    ...voids.map((one): VoidBody => {
      const ring = ringOf(one)
      const volume = (area(ring) * one.depth) / 1e9
      return {
        kind: 'void',
        mark: one.mark,
        volume,
        at: centroid(ring) ?? (ring[0] as Point),
        height: one.above + one.depth / 2,
        mass: one.above > 0 ? formerMass(one) : 0,
      }
    }),
    ...ducts.map((one): VoidBody => {
      const line = one.line as unknown as readonly Point[]
      const length = lengthOf(line)
      return {
        kind: 'duct',
        mark: one.mark,
        volume: ((Math.PI * one.diameter ** 2) / 4) * (length / 1e9),
        at: middleOf(line, length),
        height: one.height,
        mass: ((one.mass ?? 0) * length) / 1000,
      }
    }),
  ]
}

/** Of the former itself, kg; 0 where the drawing gives neither mass nor density, which `bodyAssumed` lists. */
export function formerMass(one: DrawnVoid): number {
  return one.mass ?? ((one.density ?? 0) * area(ringOf(one)) * one.depth) / 1e9
}

function middleOf(line: readonly Point[], length: number): Point {
  let [x, y] = [0, 0]
  for (const [a, b] of parts(line)) {
    const part = distance(a, b)
    x += (part * (a[0] + b[0])) / 2
    y += (part * (a[1] + b[1])) / 2
  }
  return [x / length, y / length]
}

/** The volume of each as an engineer writes it. */
export function bodySteps({ voids = [], ducts = [] }: Pick<Drawing, 'voids' | 'ducts'>): Step[] {
  return [
    ...voids.map((one): Step => {
      const size = area(ringOf(one))
      return {
        symbol: `V ${one.mark}`,
        formula: 'A d / 10⁹',
        given: { A: size, d: one.depth },
        result: (size * one.depth) / 1e9,
        unit: 'm³',
        source: GEOMETRY,
        note: `void former ${one.mark}`,
      }
    }),
    ...ducts.map((one): Step => {
      const length = lengthOf(one.line as unknown as readonly Point[])
      return {
        symbol: `V ${one.mark}`,
        formula: 'π d² / 4 L / 10⁹',
        given: { d: one.diameter, L: length },
        result: ((Math.PI * one.diameter ** 2) / 4) * (length / 1e9),
        unit: 'm³',
        source: GEOMETRY,
        note: `duct ${one.mark}, along its axis`,
      }
    }),
  ]
}

/** Own masses that nobody gave. */
export function bodyAssumed({ voids = [], ducts = [] }: Pick<Drawing, 'voids' | 'ducts'>): Assumed[] {
  const why = 'the drawing gives no mass: nothing is taken off the uplift and nothing added to the panel'
  return [
    ...voids
      .filter(({ mass, density }) => mass === undefined && density === undefined)
      .map(({ mark }): Assumed => ({ field: `mass of void former ${mark}`, value: 0, unit: 'kg', why })),
    ...ducts
      .filter(({ mass }) => mass === undefined)
      .map(({ mark }): Assumed => ({ field: `mass of duct ${mark}`, value: 0, unit: 'kg/m', why })),
  ]
}

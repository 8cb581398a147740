import { solveDense } from '../../numeric/dense.ts'
import { distance, type Point } from '../../panel/point.ts'
import { STATICS } from '../../working/source.ts'
import type { Step } from '../../working/worked.ts'
import { type LegPlaces, mainDirection, meanOf } from './leg-places.ts'
import type { Rigged, RiggedInput } from './rigging-types.ts'

interface FreeHang {
  readonly tilt: Rigged['tilt']
  readonly plumb: number
  readonly working: readonly Step[]
  readonly gaps: readonly string[]
}

const DEGREES = 180 / Math.PI

/** Centre of gravity off the hook within this hangs level, mm. */
const LEVEL = 0.5

/**
 * How a panel hangs whose legs are all as long as the rigging says: the hook comes over the point that is equally far from all picks, the panel
 * tilts until its centre of gravity is below it: `atan(e / (h + d))`. A running sling gives no moment against tilting: its panel tilts until
 * something stops it, so that no angle is given.
 *
 * From face inserts an upright panel hangs out of plumb by `atan((t / 2) / a)`, a the centre of gravity below the inserts.
 *
 * Source: statics.
 * Example: 50 mm off, hook 3 m above, centre 75 mm below: 0.9316°. 150 mm thick, 600 mm below its face inserts: 7.125°.
 */
export function freeHang(input: RiggedInput, places: LegPlaces): FreeHang {
  const { picks, centre, hang, thickness, rigging, angle } = input
  const points = picks.map(({ at }) => at)
  const below = hang === 'row' ? awayFromRow(points, centre) : thickness / 2
  const working: Step[] = []
  const gaps: string[] = []
  let plumb = 0
  if (hang === 'row' && angle === 90 && picks.some(({ kind }) => kind === 'face')) {
    if (below > 0) {
      plumb = Math.atan(thickness / 2 / below) * DEGREES
      working.push({
        symbol: 'θ plumb',
        formula: 'atan(t / (2 a)) · 180 / π',
        given: { t: thickness, a: below },
        result: plumb,
        unit: '°',
        source: STATICS,
        note: 'out of plumb, hanging from its face; a second line to its edge makes it plumb',
      })
    } else gaps.push('upright from its face: the centre of gravity is level with the inserts')
  }
  const under = equalLegs(points, places)
  const foot = hang === 'row' || picks.length === 2 ? places.hook : centre
  const off = under === null ? Number.NaN : distance(under, foot)
  if (!Number.isFinite(off)) {
    const note = 'no point is equally far from all picks: legs of equal length do not hang it level'
    return {
      tilt: { off: 0, angle: null, note },
      plumb,
      working,
      gaps: [...gaps, 'tilt: picks that no hook is equally far from'],
    }
  }
  if (off <= LEVEL)
    return { tilt: { off, angle: 0, note: 'hook over the centre of gravity' }, plumb, working, gaps }
  const runs = rigging.equalised === true || rigging.pairs !== undefined
  if (runs && picks.length > 2) {
    const note =
      'level only by chance: a running sling does not hold it against tilting, and hides that the hook is off'
    return { tilt: { off, angle: null, note }, plumb, working, gaps }
  }
  if (hang === 'row' && angle !== 90) {
    return { tilt: { off, angle: null, note: 'held by the edge that it turns about' }, plumb, working, gaps }
  }
  const height = places.hookHeight ?? places.height
  const tilt = Math.atan(off / (height + below)) * DEGREES
  working.push({
    symbol: 'θ tilt',
    formula: 'atan(e / (h + d)) · 180 / π',
    given: { e: off, h: height, d: below },
    result: tilt,
    unit: '°',
    source: STATICS,
    note: 'legs all as long as the rigging says, none taken up',
  })
  return {
    tilt: { off, angle: tilt, note: 'hangs out of level unless a leg is taken up' },
    plumb,
    working,
    gaps,
  }
}

/** The point that equal legs bring the hook over: equally far from all picks, by least squares where there are more than three. */
function equalLegs(points: readonly Point[], { spread, along, hook }: LegPlaces): Point | null {
  const middle = meanOf(points)
  if (spread > 0 || points.length === 2) return middle
  const [ux, uy] = along
  const local = points.map(
    ([x, y]): Point => [
      (x - middle[0]) * ux + (y - middle[1]) * uy,
      (y - middle[1]) * ux - (x - middle[0]) * uy,
    ],
  )
  const wide = Math.max(...local.map(([, t]) => Math.abs(t)))
  const long = Math.max(...local.map(([s]) => Math.abs(s)))
  if (wide <= 1e-6 * long) {
    // A row: level from equal legs only where two of them carry; the ends.
    const ends = local.map(([s]) => s)
    const s = (Math.max(...ends) + Math.min(...ends)) / 2
    return onRow(hook, middle, along, s)
  }
  // |p|² − 2 p · c is the same for all picks.
  const rows = local.map(([s, t]) => [(2 * s) / long, (2 * t) / long, 1])
  const right = local.map(([s, t]) => (s * s + t * t) / long ** 2)
  const normal = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => rows.reduce((sum, row) => sum + row[i]! * row[j]!, 0)),
  )
  const solved = solveDense(
    normal,
    [0, 1, 2].map((i) => rows.reduce((sum, row, k) => sum + row[i]! * right[k]!, 0)),
  )
  if (solved === null) return null
  const [s, t] = [solved[0]! * long, solved[1]! * long]
  return [middle[0] + s * ux - t * uy, middle[1] + s * uy + t * ux]
}

function onRow(hook: Point, middle: Point, [ux, uy]: Point, s: number): Point {
  const across = (hook[1] - middle[1]) * ux - (hook[0] - middle[0]) * uy
  return [middle[0] + s * ux - across * uy, middle[1] + s * uy + across * ux]
}

function awayFromRow(points: readonly Point[], at: Point): number {
  const [ux, uy] = mainDirection(points)
  const mean = meanOf(points)
  return Math.abs((at[1] - mean[1]) * ux - (at[0] - mean[0]) * uy)
}

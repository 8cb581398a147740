import type { SteelRules } from '../codes/steel-rules.ts'
import { type DrawnBar, isListed } from '../panel/drawing.ts'
import type { Panel } from '../panel/panel.ts'
import { distance, type Point } from '../panel/point.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { pathShape } from './bar-path.ts'
import { cutLength } from './cut-length.ts'
import { lapPlaces } from './laid-out/lap-places.ts'
import { longestStock } from './mats.ts'

/** One listed bar of the drawing, with its shape and cut length. */
export interface ListedBar {
  /** Name on the drawing, made unique in the panel. */
  readonly mark: string
  readonly drawn: DrawnBar
  /** Where the bars of this line lie: one path a placement; empty where the drawing gives legs only. */
  readonly paths: readonly (readonly Point[])[]
  readonly role: 'main' | 'stirrup'
  readonly count: number
  readonly bent: boolean
  /** Least inside diameter by the code, for bent bars. */
  readonly least: Worked<number> | null
  /** Inside diameter as made, mm: the drawing's, else the code's least; null for straight bars or where not known. */
  readonly inside: number | null
  readonly shape: Worked<BarShape>
  /** Lengths that a straight bar is cut in where it is longer than the stock; one value otherwise. */
  readonly pieces: readonly { readonly from: number; readonly to: number }[]
  readonly stock: number | null
}

export interface BarShape {
  readonly word: string
  readonly legs: readonly number[]
  readonly turns: readonly number[]
  readonly length: number
  readonly working: readonly Step[]
}

export interface ListedInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly rules: SteelRules
}

/** Every listed bar; bars of one name and one make are one line, other makes of that name get `-2`, `-3`. */
export function listedBars({ panel, yard, rules }: ListedInput): ListedBar[] {
  const makes = new Map<string, string[]>()
  const lines = new Map<string, ListedBar>()
  for (const drawn of panel.drawing.steel ?? []) {
    if (!isListed(drawn)) continue
    const { count: _count, path, ...make } = drawn
    const relative = path?.map(([x, y]) => [x - (path[0]?.[0] ?? 0), y - (path[0]?.[1] ?? 0)])
    const kind = JSON.stringify({ ...make, relative })
    const known = makes.get(drawn.bar) ?? []
    const place = known.indexOf(kind)
    if (place < 0) makes.set(drawn.bar, [...known, kind])
    const number = place < 0 ? known.length + 1 : place + 1
    const mark = number === 1 ? drawn.bar : `${drawn.bar}-${number}`
    const earlier = lines.get(mark)
    const bar = listedBar({ drawn, mark, panel, yard, rules })
    lines.set(
      mark,
      earlier === undefined
        ? bar
        : { ...earlier, count: earlier.count + bar.count, paths: [...earlier.paths, ...bar.paths] },
    )
  }
  return [...lines.values()]
}

function listedBar({
  drawn,
  mark,
  panel,
  yard,
  rules,
}: ListedInput & { readonly drawn: DrawnBar; readonly mark: string }): ListedBar {
  const { diameter, grade } = drawn
  const role = drawn.role ?? 'main'
  const straightPath =
    drawn.path === undefined ? null : pathShape({ diameter, inside: 1, path: points(drawn) })
  const bent =
    drawn.legs === undefined
      ? straightPath?.known === true && straightPath.value.turns.length > 0
      : drawn.legs.length > 1
  const least = bent ? rules.leastBend({ diameter, grade, role, plain: false, galvanised: false }) : null
  const inside = bent ? (drawn.inside ?? (least?.known ? least.value : null)) : null
  const shape = shapeOf({ drawn, bent, inside })
  const stock = longestStock({ yard, diameter, grade })
  const lap = panel.drawing.lap?.length
  const length = shape.known ? shape.value.length : 0
  const cut =
    !bent && stock !== null && lap !== undefined && length > stock
      ? lapPlaces({ from: 0, to: length, stock, lap, avoid: [], beside: [], before: [] })
      : null
  return {
    mark,
    drawn,
    paths: drawn.path === undefined ? [] : [points(drawn)],
    role,
    count: drawn.count ?? 1,
    bent,
    least,
    inside,
    shape,
    pieces: cut?.pieces ?? [{ from: 0, to: length }],
    stock,
  }
}

function shapeOf({
  drawn,
  bent,
  inside,
}: {
  readonly drawn: DrawnBar
  readonly bent: boolean
  readonly inside: number | null
}): Worked<BarShape> {
  if (bent && inside === null) return unknown('inside: inside diameter of the bends, mm')
  const outline =
    drawn.legs === undefined
      ? pathShape({ diameter: drawn.diameter, inside, path: points(drawn) })
      : known({ legs: drawn.legs, turns: eachTurn(drawn), oneWay: true }, [])
  if (!outline.known) return outline
  const { legs, turns, oneWay } = outline.value
  const cut = cutLength({ diameter: drawn.diameter, inside, legs, turns })
  if (!cut.known) return cut
  return known(
    { word: shapeWord(turns, oneWay), legs, turns, length: cut.value.length, working: cut.working },
    cut.working,
  )
}

/** A turn that the drawing leaves out is a right angle. */
function eachTurn(drawn: DrawnBar): number[] {
  const bends = (drawn.legs?.length ?? 1) - 1
  const turns = drawn.turns ?? [90]
  return Array.from({ length: bends }, (_, index) => (turns.length === 1 ? turns[0] : turns[index]) ?? 90)
}

/** Shape in plain words, by the turns of its bends in degrees. */
export function shapeWord(turns: readonly number[], oneWay: boolean): string {
  const right = turns.every((turn) => Math.abs(turn - 90) < 1e-6)
  if (turns.length === 0) return 'straight'
  if (turns.length === 1 && right) return 'L'
  if (turns.length === 2 && right) return oneWay ? 'U' : 'Z'
  if (oneWay && turns.reduce((sum, turn) => sum + turn, 0) >= 360) return 'closed'
  return 'bent'
}

function points(drawn: DrawnBar): readonly Point[] {
  return (drawn.path ?? []) as unknown as readonly Point[]
}

/**
 * Paths of the pieces of a listed bar at one of its placements: the whole path, or where it is lapped every other piece one bar beside it, to the
 * left where `side` is 1.
 */
export function partsOnPath(
  { pieces, drawn }: Pick<ListedBar, 'pieces' | 'drawn'>,
  path: readonly Point[],
  side: 1 | -1,
): (readonly Point[])[] {
  if (pieces.length < 2) return [path]
  return pieces.map(({ from, to }, i) => partOfPath(path, from, to, i % 2 === 1 ? side * drawn.diameter : 0))
}

/** The part of a straight path from one length along it to another, so far to its left, mm. */
export function partOfPath(path: readonly Point[], from: number, to: number, aside = 0): readonly Point[] {
  const [a, b] = [path[0] as Point, path.at(-1) as Point]
  const whole = distance(a, b)
  const [ux, uy] = [(b[0] - a[0]) / whole, (b[1] - a[1]) / whole]
  const along = (at: number): Point => [a[0] + ux * at - uy * aside, a[1] + uy * at + ux * aside]
  return [along(from), along(to)]
}

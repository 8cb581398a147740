import type { Panel } from '../../panel/panel.ts'
import { distance, type Point } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import { CLASSICAL_SOURCE, classicalPlaces } from './classical.ts'
import { ductsClear, fullConcrete } from './full-concrete.ts'
import { Limits } from './limits.ts'
import { facePlaces, type Place } from './places.ts'
import { ITSELF, longestSide } from './symmetry.ts'

export interface ProposedInserts {
  readonly inserts: readonly { readonly mark: string; readonly at: Point; readonly kind: 'face' }[]
  /** Whether they stand where the classical rule puts them. */
  readonly classical: boolean
}

/** Edge distances tried in turn, in thicknesses and at least in mm. */
const EDGES = [300, 200, 150, 100] as const

/**
 * Places for a drawing without inserts, quick and not the best: the classical rule where its places are in concrete, else each part of the panel's
 * surface near an insert and the centre of gravity within them. Unknown where none are found.
 */
export function proposedInserts({
  panel,
  count = 4,
}: {
  readonly panel: Panel
  readonly count?: 4 | 6 | 8
}): Worked<ProposedInserts> {
  const piece = panel.region[0] as Piece
  const { centre } = panel
  const rule = classicalPlaces({ piece, centre, count, sharing: 'rigid' })
  for (const edge of EDGES) {
    const limits = new Limits({
      piece: fullConcrete(panel),
      kind: 'face',
      edge,
      spacing: 2 * edge,
      clear: ductsClear(panel, edge),
    })
    const holds = (places: readonly Point[]): boolean =>
      places.every((at) => limits.fits(at)) && limits.apart(places) && holdsLevel(places, centre)
    const spread = holds(rule) ? rule : spreadPlaces(panel, piece, limits, count)
    if (spread === null || !holds(spread)) continue
    const order = [...spread].sort((p, q) => turn(p, centre) - turn(q, centre))
    const inserts = order.map((at, i) => ({ mark: 'ABCDEFGH'[i]!, at, kind: 'face' as const }))
    const classical = spread === rule
    return known({ inserts, classical }, [
      {
        symbol: 'inserts',
        formula: classical ? 'classical places' : 'places near to every part of the surface',
        given: { count, edge },
        result: inserts.map(({ mark, at }) => `${mark} ${at.map(Math.round).join(', ')}`).join('; '),
        unit: 'mm',
        source: CLASSICAL_SOURCE,
        by: 'search',
        note: 'proposed: the drawing has none',
      },
    ])
  }
  return unknown(`inserts: no ${count} places in the concrete hold the panel level`)
}

/** Loads that fall off evenly in a straight line over the plan are all above nothing. */
function holdsLevel(places: readonly Point[], [cx, cy]: Point): boolean {
  const n = places.length
  const mx = places.reduce((sum, [x]) => sum + x, 0) / n
  const my = places.reduce((sum, [, y]) => sum + y, 0) / n
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of places) {
    xx += (x - mx) ** 2
    xy += (x - mx) * (y - my)
    yy += (y - my) ** 2
  }
  const det = xx * yy - xy * xy
  if (!(det > 1e-6 * (xx + yy) ** 2)) return false
  const [ex, ey] = [cx - mx, cy - my]
  const [a, b] = [(yy * ex - xy * ey) / det, (xx * ey - xy * ex) / det]
  return places.every(([x, y]) => 1 / n + a * (x - mx) + b * (y - my) > 0.1 / n)
}

/** Places that move to the middle of the surface nearest to each, and then to the nearest place within the limits. */
function spreadPlaces(panel: Panel, piece: Piece, limits: Limits, count: number): Point[] | null {
  const { centre } = panel
  const all = { piece, centre, along: longestSide(piece), mirrors: [ITSELF] }
  const surface = facePlaces({
    ...all,
    limits: new Limits({ piece, kind: 'face', edge: 1, spacing: 1, clear: [] }),
    wanted: 300,
  })
  const room = facePlaces({ ...all, limits, wanted: 200 })
  if (room.length < count || surface.length === 0) return null
  let places = farApart(room, count, centre)
  for (let round = 0; round < 30; round += 1) {
    const sums = places.map(() => [0, 0, 0] as [number, number, number])
    for (const { at } of surface) {
      const sum = sums[nearest(places, at)]!
      sum[0] += at[0]
      sum[1] += at[1]
      sum[2] += 1
    }
    const taken = new Set<number>()
    const next = sums.map(([x, y, n], k): Point => {
      const wanted: Point = n === 0 ? places[k]! : [x / n, y / n]
      let [best, least] = [-1, Number.POSITIVE_INFINITY]
      for (const [i, { at }] of room.entries()) {
        const off = distance(at, wanted)
        if (off < least && !taken.has(i)) [best, least] = [i, off]
      }
      taken.add(best)
      return room[best]!.at
    })
    if (next.every((at, k) => at === places[k])) break
    places = next
  }
  return places
}

function nearest(places: readonly Point[], at: Point): number {
  let [best, least] = [0, Number.POSITIVE_INFINITY]
  for (const [k, place] of places.entries()) {
    const off = distance(place, at)
    if (off < least) [best, least] = [k, off]
  }
  return best
}

/** Each as far as can be from those before, the first from the centre of gravity. */
function farApart(room: readonly Place[], count: number, centre: Point): Point[] {
  const chosen: Point[] = []
  while (chosen.length < count) {
    let [best, most] = [room[0]!.at, Number.NEGATIVE_INFINITY]
    for (const { at } of room) {
      const off = [...(chosen.length === 0 ? [centre] : chosen)].reduce(
        (least, other) => Math.min(least, distance(at, other)),
        Number.POSITIVE_INFINITY,
      )
      if (off > most) [best, most] = [at, off]
    }
    chosen.push(best)
  }
  return chosen
}

function turn([x, y]: Point, [cx, cy]: Point): number {
  return Math.atan2(y - cy, x - cx)
}

import type { Point } from '../../panel/point.ts'
import type { Cover, Visit } from './cover.ts'

/** Takes out insertions whose reach others hold, those by the edges first. Cover stays proven. */
export function removeSpare(cover: Cover): void {
  const ids = cover.ids()
  const order = [...ids.filter((id) => cover.nearEdge(id)), ...ids.filter((id) => !cover.nearEdge(id))]
  for (const id of order) {
    const [x, y] = cover.at(id)
    const taken = cover.remove(id)
    if (missedNear(cover, x, y)) cover.putBack(taken)
  }
}

/** Whether something within one radius of a place is not reached. */
function missedNear(cover: Cover, x: number, y: number): boolean {
  return cover.verticesNear(x, y, (vx, vy, lies, edge) => cover.fails(vx, vy, lies, edge))
}

/**
 * Puts one insertion in the place of two where all that the two alone reached can be reached from one spot. Looks at pairs by the edges:
 * inside the rows there is nothing to gain.
 */
export function mergePairs(cover: Cover, margin: number): void {
  for (let round = 0; round < 2; round += 1) {
    let merged = false
    for (const id of cover.ids()) {
      if (!cover.has(id) || !cover.nearEdge(id)) continue
      const [x, y] = cover.at(id)
      for (const other of cover.around(x, y, 1.5 * cover.radius)) {
        if (other === id || !cover.has(other) || (cover.nearEdge(other) && other < id)) continue
        if (mergeTwo(cover, id, other, margin)) {
          merged = true
          break
        }
      }
    }
    if (!merged) return
  }
}

function mergeTwo(cover: Cover, one: number, two: number, margin: number): boolean {
  const [a, b] = [cover.at(one), cover.at(two)]
  const [first, second] = [cover.remove(one), cover.remove(two)]
  const missed = missedOf(cover, a, b)
  const spot = missed === null ? null : middleOf(missed)
  if (spot !== null && keepsMargin(cover, spot, a, b, margin) && cover.ground.holds(spot[0], spot[1])) {
    const id = cover.add(spot[0], spot[1])
    const fails: Visit = (x, y, lies, edge) => cover.fails(x, y, lies, edge)
    const open =
      (missed ?? []).some(({ x, y, lies, edge }) => cover.fails(x, y, lies, edge)) ||
      cover.vertices(id, () => true, fails) ||
      missedNear(cover, a[0], a[1]) ||
      missedNear(cover, b[0], b[1])
    if (!open) return true
    cover.remove(id)
  }
  cover.putBack(first)
  cover.putBack(second)
  return false
}

interface Missed {
  readonly x: number
  readonly y: number
  readonly lies: Parameters<Visit>[2]
  readonly edge: number
}

/** Missed places around two removed insertions; null once they lie too far apart for one. */
function missedOf(cover: Cover, a: Point, b: Point): Missed[] | null {
  const missed: Missed[] = []
  const collect: Visit = (x, y, lies, edge) => {
    if (!cover.fails(x, y, lies, edge)) return false
    missed.push({ x, y, lies, edge })
    return missed.some((one) => Math.hypot(one.x - x, one.y - y) > 2 * cover.radius)
  }
  if (cover.verticesNear(a[0], a[1], collect) || cover.verticesNear(b[0], b[1], collect)) return null
  return missed
}

/** The new spot is no nearer to a face than the margin, or than the nearer of the two it stands for. */
function keepsMargin(cover: Cover, spot: Point, a: Point, b: Point, margin: number): boolean {
  const free = (p: Point): number => cover.ground.clearance(p[0], p[1], Math.max(margin, 1))
  return free(spot) > 1e-3 && free(spot) >= Math.min(margin, free(a), free(b)) - 1e-3
}

/** Centre of the smallest circle around the places: by halving steps toward the farthest one. */
function middleOf(places: readonly Missed[]): Point | null {
  if (places.length === 0) return null
  let x = places.reduce((sum, one) => sum + one.x, 0) / places.length
  let y = places.reduce((sum, one) => sum + one.y, 0) / places.length
  for (let round = 1; round <= 60; round += 1) {
    let far = places[0] as Missed
    let most = -1
    for (const one of places) {
      const away = Math.hypot(one.x - x, one.y - y)
      if (away > most) {
        most = away
        far = one
      }
    }
    x += (far.x - x) / (round + 1)
    y += (far.y - y) / (round + 1)
  }
  return [x, y]
}

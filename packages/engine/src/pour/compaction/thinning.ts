import type { Cover } from './cover.ts'

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

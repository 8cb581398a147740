import { span } from './ground.ts'
import type { Site } from './spread.ts'
import type { Terrain } from './terrain.ts'

/** Places around an insertion at which its part is asked for, radii. */
const ROSETTE: readonly (readonly [number, number])[] = [
  [0, 0],
  ...ring(6, 0.36),
  ...ring(12, 0.68),
  ...ring(18, 0.97),
]

function ring(count: number, radius: number): [number, number][] {
  return Array.from({ length: count }, (_, i): [number, number] => {
    const angle = (2 * Math.PI * (i + 0.5)) / count
    return [radius * Math.cos(angle), radius * Math.sin(angle)]
  })
}

/** About how much each insertion reaches alone: places of its rosette, in concrete, that no other reaches; 37 at most. */
export function loads(terrain: Terrain, sites: readonly Site[]): number[] {
  const x = Float64Array.from(sites, (site) => site.x)
  const y = Float64Array.from(sites, (site) => site.y)
  terrain.settle(x, y)
  return sites.map((site, own) => {
    let load = 0
    for (const [dx, dy] of ROSETTE) {
      const px = site.x + dx * terrain.radius
      const py = site.y + dy * terrain.radius
      if (terrain.holds(px, py) && !terrain.reachedByOther(own, px, py, x, y)) load += 1
    }
    return load
  })
}

/** Places by which chance may change the order: for many at once, and for one. */
const CHANCE_AT_ONCE = 3
const CHANCE = 8

/** The insertion that reaches least alone, by and large. */
export function lightest(load: readonly number[], random: () => number): number {
  let least = Number.POSITIVE_INFINITY
  let found = 0
  for (let i = 0; i < load.length; i += 1) {
    const key = (load[i] as number) + CHANCE * random()
    if (key < least) {
      least = key
      found = i
    }
  }
  return found
}

/** The insertions without the ones that reach least alone, taken well apart where that can be. */
export function withoutLightest(
  terrain: Terrain,
  sites: readonly Site[],
  count: number,
  random: () => number,
): Site[] {
  const key = loads(terrain, sites).map((load) => load + CHANCE_AT_ONCE * random())
  const order = sites.map((_, i) => i).sort((a, b) => (key[a] as number) - (key[b] as number))
  const out = new Set<number>()
  for (const apart of [3 * terrain.radius, 0])
    for (const i of order) {
      if (out.size >= count) break
      const { x, y } = sites[i] as Site
      const clear = [...out].every((o) => {
        const other = sites[o] as Site
        return o !== i && span(other.x - x, other.y - y) >= apart
      })
      if (clear) out.add(i)
    }
  return sites.filter((_, i) => !out.has(i))
}

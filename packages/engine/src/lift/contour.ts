import { CUT, type FineMesh } from './stress-points.ts'

export interface ContourInput {
  readonly mesh: FineMesh
  /** One of each point of the mesh. */
  readonly values: Float64Array
  readonly levels: readonly number[]
  /** Points that stand off the ring by less than this are left out, mm. */
  readonly tolerance: number
}

/**
 * Where the values reach each level, as closed rings for the even-odd rule: along the contour where it runs through the concrete, along
 * the edge of the concrete where it ends there. Each ring is x, y, x, y …, mm.
 */
export function reachedRings({ mesh, values, levels, tolerance }: ContourInput): Float32Array[][] {
  const { least, most } = ranges(mesh, values)
  const links = new Links(values.length + mesh.edgeEnds.length / 2)
  return levels.map((level) => {
    for (let e = 0; e < least.length; e += 1) {
      if (least[e]! < level && most[e]! >= level) linkTriangle(links, mesh, values, level, e)
    }
    linkBorder(links, mesh, values, level)
    return links.rings().flatMap((keys) => {
      const ring = simpleRing(placesOf(keys, mesh, values, level), tolerance)
      return ring === null ? [] : [ring]
    })
  })
}

/** Least and greatest value of each triangle of the plate. */
function ranges({ local }: FineMesh, values: Float64Array): { least: Float64Array; most: Float64Array } {
  const count = local.length / 15
  const [least, most] = [new Float64Array(count), new Float64Array(count)]
  for (let e = 0; e < count; e += 1) {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (let k = 15 * e; k < 15 * e + 15; k += 1) {
      const value = values[local[k]!]!
      if (value < low) low = value
      if (value > high) high = value
    }
    least[e] = low
    most[e] = high
  }
  return { least, most }
}

/** The contour through the sixteen triangles of a triangle, from edge to edge, what reaches the level on its left. */
function linkTriangle(links: Links, mesh: FineMesh, values: Float64Array, level: number, e: number): void {
  const { local, edges } = mesh
  const points = values.length
  for (let t = 0; t < CUT.length; t += 1) {
    const [i, j, k] = CUT[t]!
    const inA = values[local[15 * e + i]!]! >= level
    const inB = values[local[15 * e + j]!]! >= level
    const inC = values[local[15 * e + k]!]! >= level
    if (inA === inB && inB === inC) continue
    // The corner that is alone on its side of the level, then the edges that leave it and come to it on the way round.
    const alone = inB === inC ? 0 : inA === inC ? 1 : 2
    const first = (CUT.length * e + t) * 3
    const leaves = points + edges[first + alone]!
    const comes = points + edges[first + ((alone + 2) % 3)]!
    if (alone === 0 ? inA : alone === 1 ? inB : inC) links.add(leaves, comes)
    else links.add(comes, leaves)
  }
}

function linkBorder(links: Links, { border }: FineMesh, values: Float64Array, level: number): void {
  const points = values.length
  for (let i = 0; i < border.length; i += 3) {
    const [p, q, edge] = [border[i]!, border[i + 1]!, border[i + 2]!]
    const [inP, inQ] = [values[p]! >= level, values[q]! >= level]
    if (inP || inQ) links.add(inP ? p : points + edge, inQ ? q : points + edge)
  }
}

function placesOf(
  keys: readonly number[],
  { x, y, edgeEnds }: FineMesh,
  values: Float64Array,
  level: number,
): Float64Array {
  const points = values.length
  const out = new Float64Array(2 * keys.length)
  for (let i = 0; i < keys.length; i += 1) {
    const key = keys[i]!
    if (key < points) {
      out[2 * i] = x[key]!
      out[2 * i + 1] = y[key]!
      continue
    }
    const [p, q] = [edgeEnds[2 * (key - points)]!, edgeEnds[2 * (key - points) + 1]!]
    const t = (level - values[p]!) / (values[q]! - values[p]!)
    out[2 * i] = x[p]! + t * (x[q]! - x[p]!)
    out[2 * i + 1] = y[p]! + t * (y[q]! - y[p]!)
  }
  return out
}

/** Steps from key to key; as many leave a key as come to it, so that every walk ends where it began. */
class Links {
  readonly #next: Int32Array
  readonly #starts: number[] = []
  /** Further steps from points where two edges of the concrete touch. */
  readonly #more = new Map<number, number[]>()

  constructor(keys: number) {
    this.#next = new Int32Array(keys).fill(-1)
  }

  add(from: number, to: number): void {
    this.#starts.push(from)
    if (this.#next[from]! < 0) this.#next[from] = to
    else this.#more.set(from, [...(this.#more.get(from) ?? []), to])
  }

  /** All rings; nothing is left after it. */
  rings(): number[][] {
    const rings: number[][] = []
    for (const start of this.#starts) {
      const ring: number[] = []
      for (let at = this.#take(start); at >= 0; at = this.#take(at)) {
        ring.push(at)
        if (at === start) break
      }
      if (ring.length >= 3) rings.push(ring)
    }
    this.#starts.length = 0
    return rings
  }

  #take(from: number): number {
    const next = this.#next[from]!
    if (next < 0) return this.#more.get(from)?.pop() ?? -1
    this.#next[from] = -1
    return next
  }
}

/**
 * A ring without the points that stand off the line between those kept by less than the tolerance; null where nothing is left.
 *
 * Source: D. Douglas, T. Peucker, Algorithms for the reduction of the number of points required to represent a digitized
 * line, The Canadian Cartographer 10 (1973) (from memory).
 */
function simpleRing(ring: Float64Array, tolerance: number): Float32Array | null {
  const n = ring.length / 2
  let [far, most] = [0, 0]
  for (let i = 1; i < n; i += 1) {
    const off = (ring[2 * i]! - ring[0]!) ** 2 + (ring[2 * i + 1]! - ring[1]!) ** 2
    if (off > most) [far, most] = [i, off]
  }
  if (!(most > tolerance * tolerance)) return null
  const kept = new Uint8Array(n)
  kept[0] = 1
  kept[far] = 1
  let count = 2
  const open = [far, n, 0, far]
  while (open.length > 0) {
    const [to, from] = [open.pop()!, open.pop()!]
    const [ax, ay] = [ring[2 * from]!, ring[2 * from + 1]!]
    const [dx, dy] = [ring[2 * (to % n)]! - ax, ring[2 * (to % n) + 1]! - ay]
    const length = Math.sqrt(dx * dx + dy * dy)
    let [worst, off] = [-1, tolerance * length]
    for (let i = from + 1; i < to; i += 1) {
      const away = Math.abs(dx * (ring[2 * i + 1]! - ay) - dy * (ring[2 * i]! - ax))
      if (away > off) {
        worst = i
        off = away
      }
    }
    if (worst < 0) continue
    kept[worst] = 1
    count += 1
    open.push(from, worst, worst, to)
  }
  if (count < 3) return null
  const out = new Float32Array(2 * count)
  let at = 0
  for (let i = 0; i < n; i += 1) {
    if (kept[i] === 0) continue
    out[at] = ring[2 * i]!
    out[at + 1] = ring[2 * i + 1]!
    at += 2
  }
  return out
}

import type { Corner, PlacedBar } from '@castwright/engine/steel'

/** How the cage is looked at. */
export interface Look {
  /** About the vertical, degrees. */
  readonly turn: number
  /** From level (0) to straight down (90), degrees. */
  readonly tilt: number
  /** Times the size that fits. */
  readonly zoom: number
  /** Heights drawn so many times larger. */
  readonly stretch: number
  /** The middle moved so far right and down, parts of the picture's width and height. */
  readonly aside: readonly [number, number]
}

export interface SpaceInput {
  readonly bars: readonly Pick<PlacedBar, 'id' | 'diameter' | 'centreline'>[]
  /** Outline of the concrete and its openings, mm, for the slab under and over the cage. */
  readonly rings: readonly (readonly (readonly [number, number])[])[]
  readonly thickness: number
  readonly look: Look
  /** px */
  readonly width: number
  readonly height: number
}

export interface Stroke {
  readonly id: string
  /** px */
  readonly points: readonly (readonly [number, number])[]
  readonly width: number
}

export interface SpaceView {
  /** Bars, the farthest first. */
  readonly strokes: readonly Stroke[]
  /** Edges of the slab at the mould face, then at the top. */
  readonly slab: readonly (readonly (readonly [number, number])[])[]
}

const EDGE = 14
const THINNEST = 1.2

/** Bars and slab seen at a slant without perspective, fitted into the picture, then zoomed about its middle and moved aside. */
export function cageInSpace({ bars, rings, thickness, look, width, height }: SpaceInput): SpaceView {
  const turned = turnedBy(look)
  const slab = [0, thickness].flatMap((z) => rings.map((ring) => ring.map(([x, y]) => turned([x, y, z]))))
  const lines = bars.flatMap(({ id, diameter, centreline }) =>
    centreline === null ? [] : [{ id, diameter, high: meanHeight(centreline), line: centreline.map(turned) }],
  )
  const all = [...slab.flat(), ...lines.flatMap(({ line }) => line)]
  const [left, right] = extent(all.map(([u]) => u))
  const [top, bottom] = extent(all.map(([, v]) => v))
  const fit = Math.min(
    (width - 2 * EDGE) / Math.max(right - left, 1),
    (height - 2 * EDGE) / Math.max(bottom - top, 1),
  )
  const scale = fit * look.zoom
  const place = ([u, v]: readonly [number, number]): [number, number] => [
    width * (0.5 + look.aside[0]) + (u - (left + right) / 2) * scale,
    height * (0.5 + look.aside[1]) + (v - (top + bottom) / 2) * scale,
  ]
  // Seen from above, what lies higher covers what lies lower.
  lines.sort((a, b) => a.high - b.high)
  return {
    strokes: lines.map(({ id, diameter, line }) => ({
      id,
      points: line.map(place),
      width: Math.max(THINNEST, diameter * scale),
    })),
    slab: slab.map((ring) => ring.map(place)),
  }
}

/** Moved, but never so far that the whole cage leaves the picture. */
export function movedBy(look: Look, right: number, down: number): Look {
  const most = look.zoom / 2
  const within = (value: number): number => Math.min(most, Math.max(-most, value))
  return { ...look, aside: [within(look.aside[0] + right), within(look.aside[1] + down)] }
}

/** Brought nearer or farther; at the size that fits it stands in the middle again. */
export function nearerBy(look: Look, times: number, most: number): Look {
  const zoom = Math.min(most, Math.max(1, look.zoom * times))
  const by = zoom / look.zoom
  return zoom === 1
    ? { ...look, zoom, aside: [0, 0] }
    : { ...look, zoom, aside: [look.aside[0] * by, look.aside[1] * by] }
}

function turnedBy({ turn, tilt, stretch }: Look): (corner: Corner) => [number, number] {
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)]
  const [up, down] = [Math.cos((tilt * Math.PI) / 180), Math.sin((tilt * Math.PI) / 180)]
  return ([x, y, z]) => [x * c - y * s, -(x * s + y * c) * down - z * stretch * up]
}

function meanHeight(line: readonly Corner[]): number {
  return line.reduce((sum, [, , z]) => sum + z, 0) / Math.max(1, line.length)
}

function extent(values: readonly number[]): [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of values) {
    least = Math.min(least, value)
    most = Math.max(most, value)
  }
  return most >= least ? [least, most] : [0, 0]
}

/** The bar drawn nearest to a place, within `reach` px; the upper one of two. */
export function barAt(strokes: readonly Stroke[], x: number, y: number, reach: number): string | null {
  let [best, least]: [string | null, number] = [null, reach]
  for (const { id, points, width } of strokes) {
    for (let i = 1; i < points.length; i += 1) {
      const away = Math.max(0, distanceTo(points[i - 1], points[i], x, y) - width / 2)
      if (away <= least) [best, least] = [id, away]
    }
  }
  return best
}

function distanceTo(
  a: readonly [number, number] | undefined,
  b: readonly [number, number] | undefined,
  x: number,
  y: number,
): number {
  if (a === undefined || b === undefined) return Number.POSITIVE_INFINITY
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const length = dx * dx + dy * dy
  const share = length > 0 ? Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / length)) : 0
  return Math.hypot(x - a[0] - share * dx, y - a[1] - share * dy)
}

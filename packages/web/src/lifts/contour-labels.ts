import type { StressBand } from '@castwright/engine/lift'
import { type Box, meet } from './load-labels.ts'

type Spot = readonly [number, number]

export interface ContourLabel {
  readonly level: number
  readonly middle: Spot
}

export interface ContourLabelsInput {
  readonly bands: readonly StressBand[]
  /** mm of the panel to px. */
  readonly toPicture: (at: Spot) => Spot
  /** Half width and half height of a label, px. */
  readonly half: Spot
  readonly taken: readonly Box[]
  /** Whether a place, px, is well inside the concrete: rings run along its edges too, and there is nothing to name. */
  readonly clear: (at: Spot) => boolean
}

/** Points of a band that are looked at. */
const LOOKED = 80

/** One label on each contour, at the point that stands farthest from everything else; none where there is no room. */
export function contourLabels({ bands, toPicture, half, taken, clear }: ContourLabelsInput): ContourLabel[] {
  const used = [...taken]
  return bands.flatMap(({ level, rings }) => {
    let best: { readonly at: Spot; readonly room: number } | null = null
    const ring = longest(rings)
    const step = Math.max(2, 2 * Math.ceil(ring.length / 2 / LOOKED))
    for (let i = 0; i + 1 < ring.length; i += step) {
      const at = toPicture([ring[i] ?? 0, ring[i + 1] ?? 0])
      if (!clear(at)) continue
      const box = {
        left: at[0] - half[0],
        right: at[0] + half[0],
        top: at[1] - half[1],
        bottom: at[1] + half[1],
      }
      if (used.some((other) => meet(box, other))) continue
      const room = used.reduce((least, other) => Math.min(least, apart(at, other)), Number.POSITIVE_INFINITY)
      if (best === null || room > best.room) best = { at, room }
    }
    if (best === null) return []
    const [x, y] = best.at
    used.push({ left: x - half[0], right: x + half[0], top: y - half[1], bottom: y + half[1] })
    return [{ level, middle: best.at }]
  })
}

function longest(rings: readonly Float32Array[]): Float32Array {
  return rings.reduce((most, ring) => (ring.length > most.length ? ring : most), new Float32Array())
}

function apart([x, y]: Spot, { left, right, top, bottom }: Box): number {
  return Math.hypot((left + right) / 2 - x, (top + bottom) / 2 - y)
}

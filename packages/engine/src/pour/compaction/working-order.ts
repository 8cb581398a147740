import { distance, type Point, type Ring } from '../../panel/point.ts'
import { type Region, regionArea, ringsOf } from '../../panel/region.ts'
import { cutOut } from './parts.ts'
import { type Frame, frameOf, fromFrame, intoFrame } from './rows.ts'

export interface Band {
  /** Where it lies along the long side, mm from its end: the same concrete has the same id wherever the chute stands. */
  readonly id: string
  readonly outlines: readonly Ring[]
  /** m² */
  readonly area: number
  readonly points: readonly Point[]
}

/**
 * Bands across the long side from the far end back to the chute; inside a band row by row, back and forth, the first row on the far side.
 */
export function workingOrder({
  region,
  points,
  chute,
  rowPitch,
  count,
}: {
  readonly region: Region
  readonly points: readonly Point[]
  readonly chute: Point
  /** Bands, all of one width. */
  readonly count: number
  /** Usual distance between rows, mm. */
  readonly rowPitch: number
}): Band[] {
  const frame = longFrame(region)
  const width = (frame.u1 - frame.u0) / count
  const [chuteU, chuteV] = intoFrame(frame, chute)
  const fromHigh = chuteU < (frame.u0 + frame.u1) / 2
  const highFirst = chuteV < (frame.v0 + frame.v1) / 2

  const inBand: { u: number; v: number; point: Point }[][] = Array.from({ length: count }, () => [])
  for (const point of points) {
    const [u, v] = intoFrame(frame, point)
    const index = Math.max(0, Math.min(count - 1, Math.floor((u - frame.u0) / width)))
    inBand[index]?.push({ u, v, point })
  }
  const bands: Band[] = []
  for (let step = 0; step < count; step += 1) {
    const index = fromHigh ? count - 1 - step : step
    const [from, to] = [frame.u0 + index * width, frame.u0 + (index + 1) * width]
    // A hair wider than the bounds, so that no strip of concrete falls between bands.
    const strip: Ring = [
      fromFrame(frame, [index === 0 ? from - 1 : from, frame.v0 - 1]),
      fromFrame(frame, [index === count - 1 ? to + 1 : to, frame.v0 - 1]),
      fromFrame(frame, [index === count - 1 ? to + 1 : to, frame.v1 + 1]),
      fromFrame(frame, [index === 0 ? from - 1 : from, frame.v1 + 1]),
    ]
    const part = cutOut(region, strip)
    bands.push({
      id: `${Math.round(index * width)}-${Math.round((index + 1) * width)}`,
      outlines: ringsOf(part),
      area: regionArea(part) / 1e6,
      points: backAndForth(inBand[index] ?? [], rowPitch, highFirst, fromHigh),
    })
  }
  return bands.filter((band) => band.area > 0 || band.points.length > 0)
}

/** Length over which bands follow each other, mm. */
export function bandsLength(region: Region): number {
  const frame = longFrame(region)
  return frame.u1 - frame.u0
}

function longFrame(region: Region): Frame {
  const upright = frameOf(region, false)
  const turned = frameOf(region, true)
  return upright.u1 - upright.u0 >= turned.u1 - turned.u0 ? upright : turned
}

function backAndForth(
  places: readonly { readonly u: number; readonly v: number; readonly point: Point }[],
  rowPitch: number,
  highFirst: boolean,
  fromHigh: boolean,
): Point[] {
  const heights = places.map(({ v }) => v)
  const [low, high] = [Math.min(...heights), Math.max(...heights)]
  // Evenly pitched rows over the band: an insertion that mends an edge goes with the row nearest to it.
  const gaps = Math.max(1, Math.round((high - low) / rowPitch))
  const rows: (typeof places)[number][][] = Array.from({ length: gaps + 1 }, () => [])
  for (const place of places)
    rows[high > low ? Math.round(((place.v - low) / (high - low)) * gaps) : 0]?.push(place)
  if (highFirst) rows.reverse()
  const order: Point[] = []
  let last: number | null = null
  for (const items of rows) {
    const byU = [...items].sort((a, b) => a.u - b.u)
    const [first, end] = [byU[0], byU.at(-1)]
    if (first === undefined || end === undefined) continue
    // Each row starts at the end where the one before stopped: back and forth, whatever its length.
    const down: boolean = last === null ? fromHigh : Math.abs(end.u - last) < Math.abs(first.u - last)
    if (down) byU.reverse()
    order.push(...byU.map(({ point }) => point))
    last = (down ? first : end).u
  }
  return order
}

/** Length of a way through points in order, mm. */
export function pathLength(points: readonly Point[]): number {
  let sum = 0
  for (let i = 1; i < points.length; i += 1) sum += distance(points[i - 1] as Point, points[i] as Point)
  return sum
}

/**
 * A band's insertions dealt to several vibrators: runs of the order, alike in number to one insertion, so that each has rows of its own and
 * nobody crosses another's.
 */
export function dealt(insertions: readonly number[], vibrators: number): number[][] {
  return Array.from({ length: vibrators }, (_, i) =>
    insertions.slice(
      Math.round((i * insertions.length) / vibrators),
      Math.round(((i + 1) * insertions.length) / vibrators),
    ),
  )
}

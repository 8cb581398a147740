import { bounds, type Drawing, type Point, type Ring, ringsOf } from '@castwright/engine/panel'
import type { PlacedBar } from '@castwright/engine/steel'
import { concreteOf } from './panel-picture.ts'

/** Bars that lie in the section are those within so much of it, mm. */
const BESIDE = 400

/** Where a section goes through a panel, mm along it. */
export interface Cut {
  /** Place of the section on the other axis, mm. */
  readonly at: number
  readonly from: number
  readonly to: number
  /** The panel goes on beyond `to`, and begins before `from`. */
  readonly goesOn: boolean
  readonly beganBefore: boolean
}

/** A place where the concrete runs on from its edge, nearest the middle of the panel. */
export function cutAt(drawing: Drawing, along: 'x' | 'y', wanted: number): Cut {
  const box = bounds(drawing.outline as unknown as Ring)
  const [low, high] = along === 'x' ? [box.bottom, box.top] : [box.left, box.right]
  const rings = ringsOf(concreteOf(drawing))
  let best: Cut | null = null
  for (const part of [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9]) {
    const at = low + part * (high - low)
    const span = firstSpan(rings, along, at)
    if (span === null) continue
    const cut = {
      at,
      from: span[0],
      to: Math.min(span[1], span[0] + wanted),
      goesOn: span[1] > span[0] + wanted,
      beganBefore: false,
    }
    if (cut.goesOn) return cut
    if (best === null || cut.to - cut.from > best.to - best.from) best = cut
  }
  const from = along === 'x' ? box.left : box.bottom
  return best ?? { at: (low + high) / 2, from, to: from + wanted, goesOn: true, beganBefore: false }
}

/** A cut through a place inside the panel, which is its middle as far as the concrete goes. */
export function cutThrough(drawing: Drawing, along: 'x' | 'y', [x, y]: Point, wanted: number): Cut {
  const [place, at] = along === 'x' ? [x, y] : [y, x]
  const meets = crossings(ringsOf(concreteOf(drawing)), along, at)
  const low = meets.findLast((meet) => meet <= place) ?? place - wanted / 2
  const high = meets.find((meet) => meet > place) ?? place + wanted / 2
  const [from, to] = [Math.max(low, place - wanted / 2), Math.min(high, place + wanted / 2)]
  return { at, from, to, goesOn: to < high, beganBefore: from > low }
}

function firstSpan(rings: readonly Ring[], along: 'x' | 'y', at: number): [number, number] | null {
  const [from, to] = crossings(rings, along, at)
  return from === undefined || to === undefined ? null : [from, to]
}

/** Where the edges of the concrete cross a section, in order, mm. */
function crossings(rings: readonly Ring[], along: 'x' | 'y', at: number): number[] {
  const [main, other] = along === 'x' ? ([0, 1] as const) : ([1, 0] as const)
  const meets: number[] = []
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length] as Point
      if (a[other] > at === b[other] > at) return
      meets.push(a[main] + ((at - a[other]) / (b[other] - a[other])) * (b[main] - a[main]))
    })
  }
  return meets.sort((a, b) => a - b)
}

/** A bar in the section: its middle along it and above the mould face, mm. */
export interface Disc {
  /** Of the bar. */
  readonly id: string
  readonly s: number
  readonly z: number
  readonly diameter: number
  readonly layer: PlacedBar['layer']
}

/** Where a bar goes through the section. */
export function onEnd(
  { id, centreline, diameter, layer }: PlacedBar,
  along: 'x' | 'y',
  { at, from, to }: Cut,
): Disc[] {
  const [main, other] = along === 'x' ? ([0, 1] as const) : ([1, 0] as const)
  const discs: Disc[] = []
  for (let i = 1; i < (centreline?.length ?? 0); i += 1) {
    const [a, b] = [centreline?.[i - 1], centreline?.[i]]
    if (a === undefined || b === undefined || a[other] > at === b[other] > at) continue
    const share = (at - a[other]) / (b[other] - a[other])
    const s = a[main] + share * (b[main] - a[main])
    if (s >= from && s <= to) discs.push({ id, s, z: a[2] + share * (b[2] - a[2]), diameter, layer })
  }
  return discs
}

/** A bar along the section, between two places of it. */
export interface Lying {
  readonly from: number
  readonly to: number
  readonly z: number
  readonly diameter: number
}

/** The nearest bar along the section at each height. */
export function nearestLying(placed: readonly PlacedBar[], along: 'x' | 'y', { at, from, to }: Cut): Lying[] {
  const [main, other] = along === 'x' ? ([0, 1] as const) : ([1, 0] as const)
  const nearest = new Map<string, Lying & { readonly away: number }>()
  for (const { path, height, diameter } of placed) {
    const [a, b] = path
    if (a === undefined || b === undefined || path.length !== 2 || height === null) continue
    if (Math.abs(a[other] - b[other]) > 1) continue
    const away = Math.abs(a[other] - at)
    const [start, end] = [
      Math.max(from, Math.min(a[main], b[main])),
      Math.min(to, Math.max(a[main], b[main])),
    ]
    const key = `${height} ${diameter}`
    if (away > BESIDE || end <= start || away >= (nearest.get(key)?.away ?? Number.POSITIVE_INFINITY))
      continue
    nearest.set(key, { from: start, to: end, z: height, diameter, away })
  }
  return [...nearest.values()]
}

/** A bar that is bent up or down in the section: its corners along it and above the mould face, mm. */
export interface Standing {
  readonly mark: string
  readonly diameter: number
  readonly corners: readonly Point[]
}

/** The nearest bar of each mark that stands in the section, such as a U round the edge. */
export function nearestStanding(
  placed: readonly PlacedBar[],
  along: 'x' | 'y',
  { at, from, to }: Cut,
): Standing[] {
  const [main, other] = along === 'x' ? ([0, 1] as const) : ([1, 0] as const)
  const nearest = new Map<string, Standing & { readonly away: number }>()
  for (const { mark, centreline, diameter, height } of placed) {
    const [first] = centreline ?? []
    if (centreline === null || first === undefined || height !== null) continue
    const away = Math.abs(first[other] - at)
    const inPlane = centreline.every((corner) => Math.abs(corner[other] - first[other]) < 1)
    const seen = centreline.some((corner) => corner[main] >= from && corner[main] <= to)
    if (!inPlane || !seen || away > BESIDE || away >= (nearest.get(mark)?.away ?? Number.POSITIVE_INFINITY))
      continue
    const corners = centreline.map(
      (corner): Point => [Math.min(to - diameter / 2, Math.max(from, corner[main])), corner[2]],
    )
    nearest.set(mark, { mark, diameter, corners, away })
  }
  return [...nearest.values()]
}

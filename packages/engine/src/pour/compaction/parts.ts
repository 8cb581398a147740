import type { Ring } from '../../panel/point.ts'
import { intersect, type Region, subtract } from '../../panel/region.ts'

/** Where close steel or an insert cuts the reach. */
export interface Congested {
  readonly outline: Ring
  /** What it is called in what comes out. */
  readonly mark?: string | undefined
  /** Share of the reach that is left there, above 0, at most 1; two thirds if not given. */
  readonly share?: number | undefined
}

/** Share of the reach in congested steel where none is given; always listed as assumed. */
export const CONGESTED_SHARE = 2 / 3

/** Concrete that is covered on its own, with its own radius. */
export interface Part {
  readonly region: Region
  /** Share of the covering radius that holds here. */
  readonly share: number
  /** Of the congested zone; absent elsewhere. */
  readonly mark?: string | undefined
}

/**
 * The concrete cut into congested zones and the rest. Each part is covered from insertions that stand in it and see across it alone, so what
 * holds for the parts holds for the whole. Where zones overlap the first has the concrete.
 */
export function partsOf(region: Region, zones: readonly Congested[]): Part[] {
  let rest = region
  const parts: Part[] = []
  for (const { outline, mark, share = CONGESTED_SHARE } of zones) {
    const inside = cutOut(rest, outline)
    rest = rest.flatMap((piece) => subtract(piece.outline, [...piece.holes, outline]))
    for (const piece of inside) parts.push({ region: [piece], share, mark })
  }
  const whole =
    parts.length === 0 ? [{ region, share: 1 }] : rest.map((piece): Part => ({ region: [piece], share: 1 }))
  return [...whole, ...parts]
}

/** The part of the region inside a ring: outlines cut to it, then the holes cut out of each piece. */
export function cutOut(region: Region, ring: Ring): Region {
  return region.flatMap((piece) =>
    intersect([piece.outline], [ring]).flatMap((part) =>
      piece.holes.length === 0 ? [part] : subtract(part.outline, piece.holes),
    ),
  )
}

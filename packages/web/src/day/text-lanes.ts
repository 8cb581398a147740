/** A label that wants to stand at `x` in a row of text, px. */
export interface LaneLabel {
  readonly key: string
  readonly text: string
  /** Said instead where the whole text finds no place. */
  readonly short?: string
  /** Where it would like to begin. */
  readonly x: number
  /** Where it would end if it stood on the other side of its mark. */
  readonly endsAt?: number
  /** px of the type. */
  readonly size: number
  readonly bold?: boolean
  /** Smaller comes first when places are given. */
  readonly rank: number
}

export interface PlacedLabel extends LaneLabel {
  readonly lane: number
  readonly width: number
}

/** Width of a text, px, on the wide side: letters of the face are at most about 0.6 of its size in the mean. */
export function textWidth(text: string, size: number, bold = false): number {
  return Math.ceil([...text].length * size * (bold ? 0.6 : 0.565)) + 2
}

const GAP = 8
/** Farther from its mark than this a label belongs to nothing. */
const FARTHEST = 48

/**
 * Gives each label a lane and a place so that none touches another and none leaves the picture. What finds no place is left
 * out: the list under the picture says it.
 */
export function placeLabels(
  labels: readonly LaneLabel[],
  {
    lanes,
    left,
    right,
    taken = [],
  }: {
    readonly lanes: number
    readonly left: number
    readonly right: number
    /** Already occupied: lane and x from, to. */
    readonly taken?: readonly { readonly lane: number; readonly from: number; readonly to: number }[]
  },
): readonly PlacedLabel[] {
  const used = taken.map((span) => ({ ...span }))
  const placed: PlacedLabel[] = []
  for (const label of [...labels].sort((a, b) => a.rank - b.rank || a.x - b.x)) {
    for (const text of label.short === undefined ? [label.text] : [label.text, label.short]) {
      const width = textWidth(text, label.size, label.bold)
      const space = { lanes, left, right, used }
      const found =
        firstPlace(label.x, width, space) ??
        (label.endsAt === undefined ? null : firstPlace(label.endsAt - width, width, space))
      if (found === null) continue
      used.push({ lane: found.lane, from: found.x, to: found.x + width })
      placed.push({ ...label, text, x: found.x, lane: found.lane, width })
      break
    }
  }
  return placed
}

function firstPlace(
  wanted: number,
  width: number,
  {
    lanes,
    left,
    right,
    used,
  }: {
    readonly lanes: number
    readonly left: number
    readonly right: number
    readonly used: readonly { readonly lane: number; readonly from: number; readonly to: number }[]
  },
): { readonly lane: number; readonly x: number } | null {
  if (width > right - left) return null
  const home = Math.min(Math.max(wanted, left), right - width)
  let best: { lane: number; x: number; far: number } | null = null
  for (let lane = 0; lane < lanes; lane += 1) {
    const spans = used.filter((span) => span.lane === lane)
    const tries = [home, ...spans.flatMap(({ from, to }) => [to + GAP, from - GAP - width])]
    for (const x of tries) {
      if (x < left || x + width > right) continue
      if (spans.some(({ from, to }) => x < to + GAP && x + width + GAP > from)) continue
      const far = Math.abs(x - home) + lane * 0.5
      if (far <= FARTHEST && (best === null || far < best.far)) best = { lane, x, far }
    }
  }
  return best
}

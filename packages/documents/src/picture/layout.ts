import { bounds, type Point, type Ring } from '@castwright/engine/panel'
import { type ChainLabel, chainLabels, lengthText, rowsUsed } from './chain.ts'
import { type Labels, newLabels, take } from './labels.ts'
import type { Frame } from './picture.ts'

/** Text on a screen is never smaller than this, px. */
export const LEAST_SCREEN_TEXT = 12

/** Scales of a shop drawing, 1:n. */
export const ROUND_RATIOS = [5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200, 250, 500] as const

export const SIDES = ['bottom', 'left', 'top', 'right'] as const
export type Side = (typeof SIDES)[number]

/** Dimension chains by side, nearest the panel first. Each lists places along the side, mm of the panel. */
export type Chains = Readonly<Partial<Record<Side, readonly (readonly number[])[]>>>

export interface LaidChain {
  readonly side: Side
  /** Ticks along the side, units of the picture: x for bottom and top, y for left and right. */
  readonly ticks: readonly number[]
  readonly labels: readonly ChainLabel[]
  /** Distance of the chain's line from the panel's box, units. */
  readonly distance: number
}

export interface Layout {
  readonly width: number
  readonly height: number
  readonly scale: number
  readonly ratio: number | null
  readonly origin: Point
  /** Size of the text, units. */
  readonly text: number
  readonly chains: readonly LaidChain[]
  /** The panel's box, units. */
  readonly panel: {
    readonly left: number
    readonly right: number
    readonly top: number
    readonly bottom: number
  }
  /** Space under everything that is kept for a legend, units. */
  readonly below: number
  readonly labels: Labels
  readonly at: (point: Point) => Point
}

export interface LayoutInput {
  readonly outline: Ring
  readonly frame: Frame
  readonly chains: Chains
  /** Space kept free around the panel for what stands outside it, units. */
  readonly halo?: number
  /** Space over and under everything for words and a legend, units. */
  readonly above?: number
  readonly below?: number
}

/** A screen narrower than this has room for one row of labels moved outward, a wider one and paper for two. */
export const NARROW = 480

/** Height of one row of a dimension chain, in sizes of its text. */
const ROW = 1.6
/** From the panel to the first chain, in sizes of the text. */
const FIRST = 1.3
/** Edge of the picture, in sizes of the text. */
const PAD = 0.7

/**
 * Fits a panel and its dimension chains into a frame: the largest scale at which all rows of dimensions have room
 * outside the panel; on paper the next round scale below it.
 */
export function layOut({ outline, frame, chains, halo = 0, above = 0, below = 0 }: LayoutInput): Layout {
  const text = frame.paper === undefined ? Math.max(LEAST_SCREEN_TEXT, frame.text) : frame.text
  const box = bounds(outline)
  const [length, width] = [box.right - box.left, box.top - box.bottom]
  const mostRows = frame.paper === undefined && frame.width < NARROW ? 1 : 2
  let extra = new Map<string, number>()
  for (let round = 0; ; round += 1) {
    const margin = (side: Side): number =>
      sideMargin(side, chains, extra, text, halo) + (side === 'top' ? above : side === 'bottom' ? below : 0)
    const [across, up] = [margin('left') + margin('right'), margin('top') + margin('bottom')]
    const fit = Math.min(
      Math.max(frame.width - across, text) / length,
      Math.max(frame.height - up, text) / width,
    )
    const { scale, ratio } = roundScale(fit, frame)
    const height = width * scale + up
    const left = margin('left') + Math.max(0, (frame.width - across - length * scale) / 2)
    const origin: Point = [left - box.left * scale, margin('top') + box.top * scale]
    const panel = {
      left,
      right: left + length * scale,
      top: margin('top'),
      bottom: margin('top') + width * scale,
    }
    const size = { width: frame.width, height }
    const laid = SIDES.flatMap((side) => {
      let distance = FIRST * text + halo
      return (chains[side] ?? []).map((places, index): LaidChain => {
        const ticks = alongSide(side, places, origin, scale)
        const outer = index < (chains[side]?.length ?? 0) - 1
        const chain = layChain({ side, ticks, places, text, outer, frame: size, mostRows })
        const here = distance
        distance += ROW * text * (1 + (extra.get(`${side}${index}`) ?? 0))
        return { side, ticks, labels: chain, distance: here }
      })
    })
    const needed = extraRows(laid)
    const grows = [...needed].some(([key, rows]) => rows > (extra.get(key) ?? 0))
    if (!grows || round >= 3) {
      return {
        ...size,
        scale,
        ratio,
        origin,
        text,
        chains: laid,
        panel,
        below,
        labels: labelsBetween(frame.width, height, above, below),
        at: ([x, y]) => [origin[0] + x * scale, origin[1] - y * scale],
      }
    }
    extra = new Map([...needed].map(([key, rows]) => [key, Math.max(rows, extra.get(key) ?? 0)]))
  }
}

/** Space for letters, without what is kept over and under everything. */
function labelsBetween(right: number, bottom: number, above: number, below: number): Labels {
  const labels = newLabels({ left: 0, top: 0, right, bottom })
  if (above > 0) take(labels, { left: 0, top: 0, right, bottom: above })
  if (below > 0) take(labels, { left: 0, top: bottom - below, right, bottom })
  return labels
}

function sideMargin(
  side: Side,
  chains: Chains,
  extra: ReadonlyMap<string, number>,
  text: number,
  halo: number,
): number {
  const list = chains[side] ?? []
  if (list.length === 0) return PAD * text + halo
  const rows = list.reduce((sum, _, index) => sum + 1 + (extra.get(`${side}${index}`) ?? 0), 0)
  return FIRST * text + halo + (rows - 1) * ROW * text + PAD * text + text * 0.4
}

function alongSide(side: Side, places: readonly number[], origin: Point, scale: number): number[] {
  const horizontal = side === 'bottom' || side === 'top'
  const along = places.map((place) => (horizontal ? origin[0] + place * scale : origin[1] - place * scale))
  return horizontal ? along : along.reverse() // y runs down the picture: the top tick comes first
}

interface LayChainInput {
  readonly side: Side
  readonly ticks: readonly number[]
  readonly places: readonly number[]
  readonly text: number
  /** Another chain lies outside this one. */
  readonly outer: boolean
  readonly frame: { readonly width: number; readonly height: number }
  readonly mostRows: number
}

function layChain({ side, ticks, places, text, outer, frame, mostRows }: LayChainInput): ChainLabel[] {
  const horizontal = side === 'bottom' || side === 'top'
  const texts = places.slice(1).map((place, index) => lengthText(place - (places[index] ?? 0)))
  if (!horizontal) texts.reverse()
  const edge = horizontal ? frame.width : frame.height
  // Where another chain lies outside, its extension lines run down from the ends: keep labels between them.
  return chainLabels({
    ticks,
    texts,
    size: text,
    mostRows,
    start: outer ? (ticks[0] ?? 0) + 2 : 1,
    end: outer ? (ticks.at(-1) ?? edge) - 2 : edge - 1,
  })
}

function extraRows(chains: readonly LaidChain[]): Map<string, number> {
  const needed = new Map<string, number>()
  const seen = new Map<Side, number>()
  for (const chain of chains) {
    const index = seen.get(chain.side) ?? 0
    seen.set(chain.side, index + 1)
    needed.set(`${chain.side}${index}`, rowsUsed(chain.labels))
  }
  return needed
}

export function roundScale(fit: number, frame: Frame): { scale: number; ratio: number | null } {
  if (frame.paper === undefined) return { scale: fit, ratio: null }
  const { paper } = frame
  const ratio =
    ROUND_RATIOS.find((candidate) => paper / candidate <= fit) ?? Math.ceil(paper / fit / 100) * 100
  return { scale: paper / ratio, ratio }
}

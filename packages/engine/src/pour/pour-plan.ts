import type { Point, Ring } from '../panel/index.ts'
import type { Asked, Assumed, Check, Step } from '../working/index.ts'
import type { Tight } from './close-steel/tight.ts'

export interface PlacingZone {
  /** Where it lies, mm along the long side: `0-1500`. The same concrete keeps its id wherever the chute stands. */
  readonly id: string
  /** 1 is poured first: farthest from the chute. */
  readonly order: number
  readonly outlines: readonly Ring[]
  /** Concrete in the zone, m³. */
  readonly volume: number
  /** Indices into `insertions`, in working order. */
  readonly insertions: readonly number[]
  /** Vibrating time, minutes, all layers and all vibrators at work. */
  readonly minutes: number
  /** The insertions of each vibrator at work, rows of its own; one list where one is at work. */
  readonly shares: readonly (readonly number[])[]
}

/** Concrete in which the reach is cut. */
export interface ReducedZone {
  /** Of the drawing's zone, or `close steel 1` where the engine found it from the laid bars. */
  readonly mark?: string
  readonly outlines: readonly Ring[]
  /** Covering radius there, mm. */
  readonly radius: number
  /** Indices into `insertions`. */
  readonly insertions: readonly number[]
}

export interface CompactionPlan {
  /** Insertion points in working order, mm. */
  readonly insertions: readonly Point[]
  /** Radius the pattern is built on, mm. */
  readonly radius: number
  /** Radius of action of the head, mm; null where the radius was given. */
  readonly action: number | null
  /** Concrete that no insertion reaches, m²; 0 is proven by geometry. */
  readonly uncovered: number
  /** Length of the way along the order, mm. */
  readonly path: number
  readonly minutes: number
  /** Insertions nearer to a face than the margin, by index. */
  readonly close: readonly number[]
  readonly zones: readonly PlacingZone[]
  /** Congested zones, each with its own radius. */
  readonly reduced: readonly ReducedZone[]
  /** Layers, and the depth of each, mm; every layer has all insertions. */
  readonly layers: { readonly count: number; readonly depth: number }
  /** Seconds in the concrete at one insertion and layer, and on the way to the next. */
  readonly seconds: { readonly in: number; readonly moving: number }
  /** Concrete that the vibrators keep up with at this pattern, m³/h. */
  readonly pace: number
  /** Minutes that the slowest zone takes: its concrete placed and vibrated. */
  readonly zoneMinutes: number
  /** What the table gives for one such head, m³/h, lowest to highest; null where no head in it is given. */
  readonly headRate: readonly [low: number, high: number] | null
}

export interface PourPlan {
  /** Concrete in the panel, m³. */
  readonly netVolume: number
  /** To order, allowance included, rounded up, m³. */
  readonly orderVolume: number
  /** Truck loads at the assumed body. */
  readonly loads: number
  readonly mix: string | null
  readonly chute: Point
  /** Where the chute really stands, as recorded; null: `chute` is assumed. */
  readonly stand: Point | null
  /** Mark of the yard's vibrator that the pattern is for: the least of those at work. */
  readonly vibrator: string | null
  /** Mark of each head at work, in the order of the zones' shares. */
  readonly heads: readonly string[]
  readonly compaction: CompactionPlan | null
  /** Insertions with little room, by index: near a face or over a bar, with how far the head stands off. */
  readonly tight: readonly Tight[]
  /** Hours from mixing: initial set and the power-float window; null where the mix says nothing of setting. */
  readonly initialSet: number | null
  readonly finish: { readonly opens: number; readonly closes: number } | null
  /** Planned minutes of set-up, pour, strip, for the day's blocks; assumed rates are listed in `assumed`. */
  readonly minutes: { readonly setUp: number; readonly pour: number; readonly strip: number }
  readonly checks: readonly Check[]
  readonly toRecord: readonly Asked[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

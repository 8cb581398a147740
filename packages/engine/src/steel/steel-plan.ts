import type { Layer, Point } from '../panel/index.ts'
import type { Asked, Assumed, Check, Step } from '../working/index.ts'

/** One line of the bar schedule. */
export interface ScheduledBar {
  readonly mark: string
  /** Shape in plain words: `straight`, `L`, `U`, `Z`, `closed`, `bent`. */
  readonly shape: string
  readonly diameter: number
  readonly grade: string
  readonly role: 'main' | 'stirrup'
  readonly count: number
  /** Centreline length of one bar, mm. */
  readonly cutLength: number
  /** Outside dimensions of the legs, mm; one value for a straight bar. */
  readonly legs: readonly number[]
  /** Turns between the legs, degrees. */
  readonly turns: readonly number[]
  /** Inside diameter of bends, mm; null for straight bars or where not known. */
  readonly inside: number | null
  /** All bars of the line together, kg. */
  readonly mass: number
}

/** A bar where it lies in the mould, for pictures and clash checks. */
export interface PlacedBar {
  readonly mark: string
  readonly layer: Layer
  readonly diameter: number
  /** Corners of the centreline, mm. */
  readonly path: readonly Point[]
  /** Height of the centreline above the mould face, mm; null where cover is not given. */
  readonly height: number | null
}

export interface PlacedLap {
  readonly mark: string
  /** Middle of the lap, mm. */
  readonly at: Point
  /** Lap length, mm. */
  readonly length: number
  readonly diameter: number
  readonly direction: 'x' | 'y'
}

export interface SteelPlan {
  readonly bars: readonly ScheduledBar[]
  readonly placed: readonly PlacedBar[]
  readonly laps: readonly PlacedLap[]
  /** Crossings to tie; null where there is nothing to tie or not known. */
  readonly ties: number | null
  /** Tying wire, kg; null where not known. */
  readonly wire: number | null
  /** All bars, kg. */
  readonly mass: number | null
  readonly checks: readonly Check[]
  readonly toRecord: readonly Asked[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

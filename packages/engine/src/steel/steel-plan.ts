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

/** What a placed bar is there for. */
export type BarUse = 'mat' | 'edge' | 'trimmer' | 'diagonal' | 'starter' | 'tie' | 'listed'

/** A corner of a centreline, mm: x and y of the drawing, z above the mould face. */
export type Corner = readonly [x: number, y: number, z: number]

/** A bar where it lies in the mould, for pictures and clash checks. */
export interface PlacedBar {
  /** Unique in the plan and the same as long as the drawing is: mark and place in its line, `MX1#3`. */
  readonly id: string
  readonly mark: string
  readonly use: BarUse
  /** `both`: it reaches from one layer into the other. */
  readonly layer: Layer | 'both'
  readonly diameter: number
  /** Corners of the centreline seen from above, mm; two for a straight bar, repeated points left out. */
  readonly path: readonly Point[]
  /** Height of the centreline above the mould face, mm; null where cover is not given or the bar does not lie flat. */
  readonly height: number | null
  /** Corners of the centreline, where its straights would meet, mm; null where cover is not known. A closed tie ends where it began. */
  readonly centreline: readonly Corner[] | null
  /** Inside diameter of its bends, mm; null for a straight bar. */
  readonly inside: number | null
}

export interface PlacedLap {
  /** Unique in the plan: of the mat or bar and its place, `mould-x~4`. */
  readonly id: string
  /** Key of the mat (`mould-x`) or mark of the listed bar. */
  readonly mark: string
  /** Null where the drawing gives a listed bar no layer: it is lapped but not placed. */
  readonly layer: Layer | null
  /** Ids of the two bars as in `placed`. */
  readonly bars: readonly [string, string]
  /** Middle of the lap, mm. */
  readonly at: Point
  /** Lap length, mm. */
  readonly length: number
  readonly diameter: number
  readonly direction: 'x' | 'y'
  /** Where the length is from: the drawing, or the code rounded up. */
  readonly by: 'drawing' | 'code'
  /** Bars lapped at this section (within 0.65 laps of its middle), percent of the bars there; null where not counted. */
  readonly share: number | null
}

/** Two placed bars that run side by side nearer than the clear distance. */
export interface BesidePair {
  /** Ids of the two bars as in `placed`. */
  readonly bars: readonly [string, string]
  readonly marks: readonly [string, string]
  /** Least clear between them, mm; below 0 by rounding where they touch. */
  readonly clear: number
  /** Clear distance that is asked, mm; 0 where not known. */
  readonly asked: number
  /** Length in which they are so near, mm. */
  readonly length: number
  /** Middle of that length, between the two bars, mm. */
  readonly at: Corner
  /** They touch along this length. */
  readonly inContact: boolean
}

export interface SteelPlan {
  readonly bars: readonly ScheduledBar[]
  readonly placed: readonly PlacedBar[]
  readonly laps: readonly PlacedLap[]
  /** Bars side by side that are neither clear nor in contact and tied, the worst first. */
  readonly crowded: readonly BesidePair[]
  /** Bars that lie in contact along each other and are to be tied, planned laps left out. */
  readonly contacts: readonly BesidePair[]
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

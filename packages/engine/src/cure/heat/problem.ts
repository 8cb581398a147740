import type { Face } from './face.ts'
import type { Layer } from './grid.ts'
import type { Hydration } from './hydration.ts'
import type { Tolerance } from './march.ts'

/** A layer of mould or cover that stores heat, outward from the concrete; `initial` °C; taken off at the hour `until`, with all outside it. */
export interface OuterLayer extends Layer {
  readonly initial: number
  readonly until: number | null
}

/** A panel that cures: known to be good, see `parseHeatCase`. */
export interface HeatProblem {
  readonly concrete: Layer
  readonly hydration: Hydration
  /** Temperature as cast, °C. */
  readonly initial: number
  readonly under: readonly OuterLayer[]
  readonly over: readonly OuterLayer[]
  readonly below: Face
  readonly above: Face
  /** Length of the run and spacing of what is written down, h. */
  readonly hours: number
  readonly every: number
}

/** How finely it is computed. */
export interface Fineness {
  /** Cells through the concrete, odd. */
  readonly cells: number
  readonly tolerance: Tolerance
}

/**
 * For many nights at once: 41 cells through a panel, more through thick concrete, where the heat of a quick mix runs as a front. Within
 * a few hundredths of a kelvin (`bench/heat.ts`).
 */
export function usualFineness(thickness: number): Fineness {
  return { cells: cellsOf(thickness, 41, 8), tolerance: { kelvin: 0.001, age: 0.0005 } }
}

/** For one case that somebody waits for: three to five times the work, about a quarter of the error. */
export function fineFineness(thickness: number): Fineness {
  return { cells: cellsOf(thickness, 61, 6), tolerance: { kelvin: 0.0002, age: 0.0001 } }
}

const MOST_CELLS = 401

/** Odd, at least so many, and no cell much over `widest` mm. */
function cellsOf(thickness: number, least: number, widest: number): number {
  const cells = Math.min(Math.max(least, Math.ceil((1.5 * thickness) / widest)), MOST_CELLS)
  return cells + ((cells + 1) % 2)
}

/** Heat over the whole run, kJ/m² of panel: `stored + takenOff − hydration − inBelow − inAbove = residual`. */
export interface EnergyBalance {
  readonly stored: number
  /** Went with layers that were taken off, above what they began with. */
  readonly takenOff: number
  readonly hydration: number
  readonly inBelow: number
  readonly inAbove: number
  readonly residual: number
  /** Residual over the largest of the amounts. */
  readonly share: number
}

export interface Peak {
  readonly celsius: number
  readonly hour: number
}

export interface CoreFace {
  readonly kelvin: number
  readonly core: number
  readonly face: number
  readonly side: 'top' | 'bottom'
  readonly hour: number
}

/** One value a time; hours from mixing, °C, h at the reference temperature, share. Faces are those of the concrete. */
export interface HeatRun {
  readonly times: readonly number[]
  /** Mid-depth. */
  readonly core: readonly number[]
  readonly top: readonly number[]
  readonly bottom: readonly number[]
  readonly mean: readonly number[]
  /** Highest and lowest anywhere in the concrete at that time. */
  readonly hottest: readonly number[]
  readonly coldest: readonly number[]
  /** Of the mean temperature. */
  readonly equivalentAge: readonly number[]
  /** Mean over the thickness. */
  readonly degree: readonly number[]
  /** Highest of the whole run, found at every step and not only at the times written down. */
  readonly peak: Peak
  readonly corePeak: Peak
  /** Lowest of the whole run. */
  readonly least: Peak
  /**
   * Largest difference of mid-depth and a face, K, positive where the core is the warmer. The first hour is left out: a mould of another
   * temperature meets the skin of concrete that still flows. Null in a run that ends within it.
   */
  readonly difference: CoreFace | null
  /** First hour at which any concrete is below 0 °C; null where none is. */
  readonly frost: number | null
  readonly energy: EnergyBalance
  readonly steps: number
  readonly rejected: number
}

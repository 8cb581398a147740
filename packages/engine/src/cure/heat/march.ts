import type { FaceLines } from './face.ts'
import type { Grid } from './grid.ts'
import type { Hydration } from './hydration.ts'
import { Stage } from './stage.ts'

// TR-BDF2: a trapezoidal stage to t + γh, then BDF2 over both; with this γ both stages have the same matrix.
// Bank et al., IEEE Transactions on Electron Devices 32 (1985); Hosea and Shampine, Applied Numerical Mathematics 20 (1996).
const GAMMA = 2 - Math.SQRT2
const WEIGHT = GAMMA / 2
const NEAR = 1 / (GAMMA * (2 - GAMMA))
const FAR = ((1 - GAMMA) * (1 - GAMMA)) / (GAMMA * (2 - GAMMA))
/** Of the third derivative that the scheme leaves out, by the slopes at the start, between and at the end. */
const LEFT_OUT = (-3 * GAMMA * GAMMA + 4 * GAMMA - 2) / (6 * (2 - GAMMA))
const AT_START = LEFT_OUT / GAMMA
const BETWEEN = -LEFT_OUT / (GAMMA * (1 - GAMMA))
const AT_END = LEFT_OUT / (1 - GAMMA)

/** From this age, h, on its error is held against itself: what an hour does to old concrete is little. */
const OLD = 10

/** Largest error of one step: K, and h of equivalent age. */
export interface Tolerance {
  readonly kelvin: number
  readonly age: number
}

/** Temperature, age, degree, and the rates of change, of every cell at one instant. */
class Instant {
  readonly celsius: Float64Array
  readonly age: Float64Array
  readonly degree: Float64Array
  /** Heat that conduction brings, kJ/(m² h). */
  readonly inflow: Float64Array
  /** Hours of age gained in an hour. */
  readonly rate: Float64Array
  /** Of the mean temperature of the concrete. */
  meanAge = 0
  meanRate = 0
  /** Through the outer sides, inward, kJ/(m² h). */
  below = 0
  above = 0

  constructor(cells: number) {
    this.celsius = new Float64Array(cells)
    this.age = new Float64Array(cells)
    this.degree = new Float64Array(cells)
    this.inflow = new Float64Array(cells)
    this.rate = new Float64Array(cells)
  }
}

/**
 * Temperatures and equivalent ages of the cells of a grid, carried on in time by TR-BDF2.
 *
 * What is carried is the heat of a cell less what its binder has given off, so that heat changes only by what crosses the
 * sides of cells: conservative whatever the step. Units: h, °C, kJ/m².
 */
export class HeatMarch {
  /** Heat that came in from below and from above so far, kJ/m². */
  inBelow = 0
  inAbove = 0
  now: Instant
  private readonly middle: Instant
  private next: Instant
  private readonly stage: Stage
  private readonly slope: Float64Array
  private readonly wanted: Float64Array
  private readonly ageBase: Float64Array
  private readonly kept: Float64Array
  private readonly errorHeat: Float64Array
  private readonly errorAge: Float64Array
  private tried = 0

  constructor(
    private readonly grid: Grid,
    hydration: Hydration,
    initial: Float64Array,
    private readonly tolerance: Tolerance,
  ) {
    const { cells } = grid
    this.now = new Instant(cells)
    this.middle = new Instant(cells)
    this.next = new Instant(cells)
    this.now.celsius.set(initial)
    this.stage = new Stage(grid, hydration)
    this.slope = new Float64Array(cells)
    this.wanted = new Float64Array(cells)
    this.ageBase = new Float64Array(cells)
    this.kept = new Float64Array(cells)
    this.errorHeat = new Float64Array(cells)
    this.errorAge = new Float64Array(cells)
  }

  /** The same march through a grid that lacks cells at its ends; `first` of the cells here is the first of those that stay. */
  without(grid: Grid, hydration: Hydration, first: number): HeatMarch {
    const { now } = this
    const beyond = first + grid.cells
    const on = new HeatMarch(grid, hydration, now.celsius.subarray(first, beyond), this.tolerance)
    on.now.age.set(now.age.subarray(first, beyond))
    on.now.degree.set(now.degree.subarray(first, beyond))
    on.now.meanAge = now.meanAge
    on.inBelow = this.inBelow
    on.inAbove = this.inAbove
    return on
  }

  /** Begins at an hour from which the faces behave otherwise than before it; they must stand at that hour. */
  restart(below: FaceLines, above: FaceLines): void {
    const { now, grid, stage } = this
    for (let i = grid.from; i < grid.to; i += 1) now.rate[i] = stage.rateAt(now.celsius[i]!)
    this.flows(now, below, above)
    this.slope.fill(0)
  }

  /**
   * Tries one step from hour `t`: its error over the tolerance, infinite where Newton did not settle. Nothing is kept until
   * `keep`.
   */
  attempt(t: number, h: number, below: FaceLines, above: FaceLines): number {
    const { now, middle, next, stage, wanted, ageBase, kept, slope } = this
    const { cells, capacity } = this.grid
    const { gives } = stage
    const w = WEIGHT * h
    this.tried = h
    for (let i = 0; i < cells; i += 1) {
      kept[i] = capacity[i]! * now.celsius[i]! - gives[i]! * now.degree[i]!
      wanted[i] = kept[i]! + w * now.inflow[i]!
      ageBase[i] = now.age[i]! + w * now.rate[i]!
      middle.celsius[i] = now.celsius[i]! + GAMMA * h * slope[i]!
    }
    below.at(t + GAMMA * h)
    above.at(t + GAMMA * h)
    if (
      !stage.solve(middle.celsius, middle.age, middle.degree, middle.rate, wanted, ageBase, w, below, above)
    )
      return Number.POSITIVE_INFINITY
    this.flows(middle, below, above)
    for (let i = 0; i < cells; i += 1) {
      wanted[i] = NEAR * (wanted[i]! + w * middle.inflow[i]!) - FAR * kept[i]!
      ageBase[i] = NEAR * middle.age[i]! - FAR * now.age[i]!
      next.celsius[i] = now.celsius[i]! + (middle.celsius[i]! - now.celsius[i]!) / GAMMA
    }
    below.at(t + h)
    above.at(t + h)
    if (!stage.solve(next.celsius, next.age, next.degree, next.rate, wanted, ageBase, w, below, above))
      return Number.POSITIVE_INFINITY
    this.flows(next, below, above)
    return this.error(h)
  }

  /** Takes the step last tried. */
  keep(): void {
    const { now, middle, next, slope, tried: h } = this
    const w = WEIGHT * h
    this.inBelow += NEAR * w * (now.below + middle.below) + w * next.below
    this.inAbove += NEAR * w * (now.above + middle.above) + w * next.above
    next.meanAge = now.meanAge + NEAR * w * (now.meanRate + middle.meanRate) + w * next.meanRate
    for (let i = 0; i < slope.length; i += 1) slope[i] = (next.celsius[i]! - now.celsius[i]!) / h
    this.now = next
    this.next = now
  }

  private error(h: number): number {
    const { now, middle, next, errorHeat, errorAge, stage, tolerance } = this
    const { cells } = this.grid
    let oldest = 0
    for (let i = 0; i < cells; i += 1) {
      errorHeat[i] = h * (AT_START * now.inflow[i]! + BETWEEN * middle.inflow[i]! + AT_END * next.inflow[i]!)
      errorAge[i] = h * (AT_START * now.rate[i]! + BETWEEN * middle.rate[i]! + AT_END * next.rate[i]!)
      const late = Math.abs(errorAge[i]!) / Math.max(1, next.age[i]! / OLD)
      if (late > oldest) oldest = late
    }
    return Math.max(stage.spread(errorHeat, errorAge) / tolerance.kelvin, oldest / tolerance.age)
  }

  /** Heat that conduction brings to each cell; the rate of the mean comes along. */
  private flows(at: Instant, below: FaceLines, above: FaceLines): void {
    const { celsius, inflow } = at
    const { cells, conductance, from, to, width } = this.grid
    let comes = below.drive - below.pull * celsius[0]!
    at.below = comes
    let sum = 0
    let depth = 0
    for (let i = 0; i < cells - 1; i += 1) {
      const goes = conductance[i]! * (celsius[i]! - celsius[i + 1]!)
      inflow[i] = comes - goes
      comes = goes
    }
    const out = above.pull * celsius[cells - 1]! - above.drive
    inflow[cells - 1] = comes - out
    at.above = -out
    for (let i = from; i < to; i += 1) {
      sum += celsius[i]! * width[i]!
      depth += width[i]!
    }
    at.meanRate = this.stage.rateAt(sum / depth)
  }
}

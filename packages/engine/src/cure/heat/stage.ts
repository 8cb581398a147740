import { GAS_CONSTANT, ICE_POINT } from '../age-method.ts'
import type { FaceLines } from './face.ts'
import type { Grid } from './grid.ts'
import type { Hydration } from './hydration.ts'

/** Newton stops below this change, K: what it then leaves is of the order of its square. */
const SETTLED = 0.01
const MOST_ROUNDS = 8
/** Beyond this power of e the degree is 0 to the last digit of a double. */
const NOTHING_YET = 700

/** One implicit stage of a step, solved by Newton with a tridiagonal matrix. Owns its room, so that solving allocates nothing. */
export class Stage {
  /** kJ/m² that a cell gives off for a degree of hydration of 1; 0 outside the concrete. */
  readonly gives: Float64Array
  private readonly upper: Float64Array
  private readonly pivot: Float64Array
  private readonly change: Float64Array
  private readonly degreeSlope: Float64Array
  private readonly warmth: number
  private readonly atReference: number
  private weight = 0

  constructor(
    private readonly grid: Grid,
    private readonly hydration: Hydration,
  ) {
    const { cells, from, to, width } = grid
    this.upper = new Float64Array(cells)
    this.pivot = new Float64Array(cells)
    this.change = new Float64Array(cells)
    this.degreeSlope = new Float64Array(cells)
    this.gives = new Float64Array(cells)
    for (let i = from; i < to; i += 1) this.gives[i] = hydration.binder * hydration.heat * width[i]!
    this.warmth = hydration.activation / GAS_CONSTANT
    this.atReference = 1 / (hydration.reference + ICE_POINT)
  }

  /** Hours of age gained in an hour, by the activation energy. */
  rateAt(celsius: number): number {
    return Math.exp(this.warmth * (this.atReference - 1 / (celsius + ICE_POINT)))
  }

  /**
   * Finds temperatures T with `capacity·T − gives·α(age) = wanted + weight·inflow(T)` and `age = ageBase + weight·rate(T)`.
   * The faces must stand at the hour of the stage. `celsius` comes in as a guess; `degree` and `rate` go out with the rest.
   *
   * @returns false where Newton does not settle: the step is too long.
   */
  solve(
    celsius: Float64Array,
    age: Float64Array,
    degree: Float64Array,
    rate: Float64Array,
    wanted: Float64Array,
    ageBase: Float64Array,
    weight: number,
    below: FaceLines,
    above: FaceLines,
  ): boolean {
    this.weight = weight
    for (let round = 0; round < MOST_ROUNDS; round += 1) {
      this.eliminate(celsius, age, degree, rate, wanted, ageBase, below, above)
      const largest = this.substitute(celsius, age, degree, rate)
      if (largest < SETTLED) return true
      if (!(largest < 1e4)) return false
    }
    return false
  }

  /** Residual and matrix at the guess, the matrix eliminated downward as it is formed. */
  private eliminate(
    celsius: Float64Array,
    age: Float64Array,
    degree: Float64Array,
    rate: Float64Array,
    wanted: Float64Array,
    ageBase: Float64Array,
    below: FaceLines,
    above: FaceLines,
  ): void {
    const { upper, pivot, change, degreeSlope, gives, warmth, atReference, weight } = this
    const { cells, from, to, capacity, conductance } = this.grid
    const { ultimate, beta } = this.hydration
    const lnTau = Math.log(this.hydration.tau)
    let inflow = below.drive - below.pull * celsius[0]!
    let link = below.pull
    let lower = 0
    for (let i = 0; i < cells; i += 1) {
      const t = celsius[i]!
      const last = i === cells - 1
      const linkUp = last ? above.pull : conductance[i]!
      const outflow = last ? above.pull * t - above.drive : linkUp * (t - celsius[i + 1]!)
      let residual = wanted[i]! + weight * (inflow - outflow) - capacity[i]! * t
      let diagonal = capacity[i]! + weight * (link + linkUp)
      if (i >= from && i < to) {
        const kelvin = 1 / (t + ICE_POINT)
        const aging = Math.exp(warmth * (atReference - kelvin))
        const its = ageBase[i]! + weight * aging
        rate[i] = aging
        age[i] = its
        const power = its > 0 ? Math.exp(beta * (lnTau - Math.log(its))) : NOTHING_YET
        const reached = power < NOTHING_YET ? ultimate * Math.exp(-power) : 0
        degree[i] = reached
        const steep = reached > 0 ? (reached * beta * power) / its : 0
        degreeSlope[i] = steep
        residual += gives[i]! * reached
        diagonal -= gives[i]! * steep * weight * aging * warmth * kelvin * kelvin
      }
      const free = diagonal - lower * (i > 0 ? upper[i - 1]! : 0)
      const by = 1 / free
      pivot[i] = by
      upper[i] = last ? 0 : -weight * linkUp * by
      change[i] = (residual - lower * (i > 0 ? change[i - 1]! : 0)) * by
      lower = -weight * linkUp
      link = linkUp
      inflow = outflow
    }
  }

  /** Solves upward and carries ages, rates and degrees along the same straight line. @returns the largest change, K */
  private substitute(
    celsius: Float64Array,
    age: Float64Array,
    degree: Float64Array,
    rate: Float64Array,
  ): number {
    const { upper, change, degreeSlope, warmth, weight } = this
    const { cells, from, to } = this.grid
    let largest = 0
    for (let i = cells - 1; i >= 0; i -= 1) {
      if (i < cells - 1) change[i] = change[i]! - upper[i]! * change[i + 1]!
      const by = change[i]!
      if (i >= from && i < to) {
        const kelvin = 1 / (celsius[i]! + ICE_POINT)
        const faster = rate[i]! * warmth * kelvin * kelvin * by
        rate[i] = rate[i]! + faster
        age[i] = age[i]! + weight * faster
        degree[i] = degree[i]! + degreeSlope[i]! * weight * faster
      }
      celsius[i] = celsius[i]! + by
      // Not `Math.max`: a NaN must come out.
      if (!(Math.abs(by) <= largest)) largest = Math.abs(by)
    }
    return largest
  }

  /**
   * What an error in heat, kJ/m², and in age, h, of each cell comes to in temperature through the matrix of the last solution:
   * the largest, K. `heat` is used up.
   */
  spread(heat: Float64Array, age: Float64Array): number {
    const { upper, pivot, gives, degreeSlope, weight } = this
    const { cells, conductance } = this.grid
    let largest = 0
    for (let i = 0; i < cells; i += 1) {
      const carried = i > 0 ? weight * conductance[i - 1]! * heat[i - 1]! : 0
      heat[i] = (heat[i]! + gives[i]! * degreeSlope[i]! * age[i]! + carried) * pivot[i]!
    }
    for (let i = cells - 1; i >= 0; i -= 1) {
      if (i < cells - 1) heat[i] = heat[i]! - upper[i]! * heat[i + 1]!
      if (!(Math.abs(heat[i]!) <= largest)) largest = Math.abs(heat[i]!)
    }
    return largest
  }
}

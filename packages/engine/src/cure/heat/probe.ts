import type { Grid } from './grid.ts'
import type { HeatMarch } from './march.ts'

/** Temperatures that a foreman asks for at one instant, °C. */
export class Probe {
  core = 0
  top = 0
  bottom = 0
  mean = 0
  hottest = 0
  coldest = 0
  private readonly middle: number

  constructor(private readonly grid: Grid) {
    this.middle = (grid.from + grid.to - 1) / 2
  }

  /** Concrete before anything acted on it: the surfaces too are as cast. */
  asCast(celsius: number): void {
    this.core = celsius
    this.top = celsius
    this.bottom = celsius
    this.mean = celsius
    this.hottest = celsius
    this.coldest = celsius
  }

  read({ now: { celsius, above, below } }: HeatMarch): void {
    const { from, to, cells, half, conductance, width } = this.grid
    const last = to - 1
    // Heat that comes through the face of the concrete, over the way from there to the middle of its cell.
    const inTop = to === cells ? above : conductance[last]! * (celsius[to]! - celsius[last]!)
    const inBottom = from === 0 ? below : conductance[from - 1]! * (celsius[from - 1]! - celsius[from]!)
    this.top = celsius[last]! + inTop / half[last]!
    this.bottom = celsius[from]! + inBottom / half[from]!
    this.core = celsius[this.middle]!
    let hottest = Math.max(this.top, this.bottom)
    let coldest = Math.min(this.top, this.bottom)
    let sum = 0
    let depth = 0
    let at = from
    for (let i = from; i < to; i += 1) {
      const its = celsius[i]!
      sum += its * width[i]!
      depth += width[i]!
      if (its > hottest) {
        hottest = its
        at = i
      }
      if (its < coldest) coldest = its
    }
    this.mean = sum / depth
    this.hottest = at > from && at < last ? Math.max(hottest, this.crest(celsius, at)) : hottest
    this.coldest = coldest
  }

  /** Top of the parabola through three neighbouring cells, the middle one the hottest. */
  private crest(celsius: Float64Array, at: number): number {
    const { width } = this.grid
    const left = -(width[at - 1]! + width[at]!) / 2
    const right = (width[at + 1]! + width[at]!) / 2
    const [fallLeft, fallRight] = [celsius[at - 1]! - celsius[at]!, celsius[at + 1]! - celsius[at]!]
    const bend = (fallRight / right - fallLeft / left) / (right - left)
    const tilt = fallLeft / left - bend * left
    return bend < 0 ? celsius[at]! - (tilt * tilt) / (4 * bend) : celsius[at]!
  }
}

import { seriesOf } from './face.ts'
import { degreeAt } from './hydration.ts'
import type { CoreFace, HeatProblem, HeatRun, Peak } from './problem.ts'
import { breaksOf, jumpsAt } from './series.ts'
import { type Stack, strippedAt, strippings } from './stack.ts'

const FIRST_STEP = 0.01
const LONGEST_STEP = 1
/** A step this short that still fails its error is a defect. */
const SHORTEST_STEP = 1e-15
/** Two hours closer than this are one. */
const SAME_HOUR = 1e-9

/** While concrete flows a difference of core and face cracks nothing, h: common practice, no source. */
const FLOWING = 1

type Columns = Record<
  'core' | 'top' | 'bottom' | 'mean' | 'hottest' | 'coldest' | 'equivalentAge' | 'degree',
  Float64Array
>

/** Takes a march from 0 to the end, over every hour of break and every hour that is written down. */
export class Journey {
  private readonly times: Float64Array
  private readonly columns: Columns
  private written = 0
  private steps = 0
  private rejected = 0
  private length = FIRST_STEP
  private peak: Peak
  private corePeak: Peak
  private least: Peak
  private difference: CoreFace | null = null
  private frost: number | null
  /** Coldest at the step before. */
  private before: Peak

  constructor(
    private readonly problem: HeatProblem,
    /** What lies there now. */
    public stack: Stack,
  ) {
    const { hours, every, initial } = problem
    const count = Math.floor(hours / every + SAME_HOUR) + 1
    this.times = Float64Array.from({ length: count }, (_, index) => Math.min(index * every, hours))
    const column = (): Float64Array => new Float64Array(count)
    this.columns = {
      core: column(),
      top: column(),
      bottom: column(),
      mean: column(),
      hottest: column(),
      coldest: column(),
      equivalentAge: column(),
      degree: column(),
    }
    this.peak = { celsius: initial, hour: 0 }
    this.corePeak = this.peak
    this.least = this.peak
    this.frost = initial < 0 ? 0 : null
    this.before = this.peak
  }

  go(): void {
    const { problem } = this
    const series = [...seriesOf(problem.below), ...seriesOf(problem.above)]
    const breaks = [...new Set([0, ...series.flatMap(breaksOf), ...strippings(problem), problem.hours])]
      .filter((hour) => hour >= 0 && hour <= problem.hours)
      .sort((a, b) => a - b)
    this.stack.probe.asCast(problem.initial)
    this.write()
    for (const [index, from] of breaks.slice(0, -1).entries()) {
      const to = breaks[index + 1]!
      const before = this.stack
      this.stack = strippedAt(before, problem, from)
      const { below, above, march } = this.stack
      below.between(from, to)
      above.between(from, to)
      below.at(from)
      above.at(from)
      march.restart(below, above)
      if (this.stack !== before || series.some((each) => jumpsAt(each, from)))
        this.length = Math.min(this.length, FIRST_STEP)
      this.cross(from, to)
    }
  }

  found(): Omit<HeatRun, 'energy'> {
    const { columns, steps, rejected, peak, corePeak, least, difference, frost } = this
    return {
      times: Array.from(this.times),
      core: Array.from(columns.core),
      top: Array.from(columns.top),
      bottom: Array.from(columns.bottom),
      mean: Array.from(columns.mean),
      hottest: Array.from(columns.hottest),
      coldest: Array.from(columns.coldest),
      equivalentAge: Array.from(columns.equivalentAge),
      degree: Array.from(columns.degree),
      peak,
      corePeak,
      least,
      difference,
      frost,
      steps,
      rejected,
    }
  }

  /** From one hour of break to the next. */
  private cross(from: number, to: number): void {
    const { times } = this
    const { march, probe } = this.stack
    let t = from
    while (t < to) {
      const due = times[this.written] ?? Number.POSITIVE_INFINITY
      const target = due < to - SAME_HOUR ? due : to
      t = this.step(t, target)
      this.steps += 1
      probe.read(march)
      this.watch(t)
      while (this.written < times.length && times[this.written]! <= t + SAME_HOUR) this.write()
    }
  }

  /** One accepted step towards an hour, in as many even steps as the error asks for. @returns the hour reached */
  private step(t: number, target: number): number {
    const { march, below, above } = this.stack
    for (;;) {
      const left = Math.max(1, Math.ceil((target - t) / this.length - 1e-6))
      const h = (target - t) / left
      const error = march.attempt(t, h, below, above)
      const factor = Number.isFinite(error) ? 0.9 * Math.max(error, 1e-4) ** (-1 / 3) : 0.1
      if (error <= 1) {
        march.keep()
        // A step cut short by its target says nothing against the longer one.
        const next = h * Math.min(factor, 4)
        this.length = Math.min(factor < 1 ? next : Math.max(next, this.length), LONGEST_STEP)
        return left === 1 ? target : t + h
      }
      this.rejected += 1
      this.length = h * Math.max(factor, 0.1)
      if (!(this.length > SHORTEST_STEP))
        throw new Error(`heat: no step from ${t} h keeps its error, found ${error} at ${h} h`)
    }
  }

  private watch(t: number): void {
    const { hottest, coldest, core, top, bottom } = this.stack.probe
    if (hottest > this.peak.celsius) this.peak = { celsius: hottest, hour: t }
    if (coldest < this.least.celsius) this.least = { celsius: coldest, hour: t }
    if (core > this.corePeak.celsius) this.corePeak = { celsius: core, hour: t }
    // Straight over the step that crosses it.
    if (coldest < 0) this.frost ??= t - ((t - this.before.hour) * coldest) / (coldest - this.before.celsius)
    this.before = { celsius: coldest, hour: t }
    if (t < FLOWING) return
    const side = Math.abs(core - top) >= Math.abs(core - bottom) ? 'top' : 'bottom'
    const face = side === 'top' ? top : bottom
    if (this.difference === null || Math.abs(core - face) > Math.abs(this.difference.kelvin))
      this.difference = { kelvin: core - face, core, face, side, hour: t }
  }

  private write(): void {
    const { columns, written: at, problem } = this
    const { probe, grid, march } = this.stack
    columns.core[at] = probe.core
    columns.top[at] = probe.top
    columns.bottom[at] = probe.bottom
    columns.mean[at] = probe.mean
    columns.hottest[at] = probe.hottest
    columns.coldest[at] = probe.coldest
    columns.equivalentAge[at] = march.now.meanAge
    let sum = 0
    let depth = 0
    for (let i = grid.from; i < grid.to; i += 1) {
      sum += degreeAt(problem.hydration, march.now.age[i]!) * grid.width[i]!
      depth += grid.width[i]!
    }
    columns.degree[at] = sum / depth
    this.written += 1
  }
}

import { ICE_POINT } from '../age-method.ts'
import { PER_HOUR } from './grid.ts'
import { lineBetween, type Series } from './series.ts'

/** W/(m² K⁴), CODATA 2018. */
export const STEFAN_BOLTZMANN = 5.670374419e-8

/** What a side of the panel meets: air over a film, or a temperature that is held (a heated bed). */
export interface Face {
  /** W/m²K, radiation at the temperature of the air in it; null where `held` is given. */
  readonly film: Series | null
  /** Temperature of the outer side, °C: of a bed that holds it. */
  readonly held: Series | null
  /** Between outer side and concrete (or its layers), m²K/W. */
  readonly resistance: Series
  /** °C */
  readonly air: Series
  /** Taken in at the outer side, W/m²: sun times absorptivity, a heating mat; evaporation is negative. */
  readonly gain: readonly { readonly series: Series; readonly share: number }[]
  /** Sky that the outer side sees, °C, and its emissivity there; null: none but what the film holds. */
  readonly sky: { readonly temperature: Series; readonly emissivity: number } | null
}

/** Series of a face, in the order of the lines below. */
export function seriesOf(face: Face): Series[] {
  return [
    ...[face.film, face.held, face.resistance, face.air, face.sky?.temperature].filter(
      (series): series is Series => series !== null && series !== undefined,
    ),
    ...face.gain.map(({ series }) => series),
  ]
}

/**
 * The face between two hours of break, where each of its series is a straight line. `at` writes for an hour the heat that
 * comes in, kJ/(m² h): `drive − pull·T` with T the temperature of the outermost cell.
 */
export class FaceLines {
  drive = 0
  pull = 0
  private readonly line = new Float64Array(12)

  /** @param half from the middle of the outermost cell to its outer side, kJ/(m² h K) */
  constructor(
    private readonly face: Face,
    private readonly half: number,
  ) {}

  between(from: number, to: number): void {
    const { face, line } = this
    line.fill(0)
    const put = (at: number, series: Series, share = 1): void => {
      const [start, slope] = lineBetween(series, from, to)
      line[at] = (line[at] ?? 0) + share * start
      line[at + 1] = (line[at + 1] ?? 0) + share * slope
    }
    if (face.film !== null) put(0, face.film)
    put(2, face.resistance)
    put(4, face.air)
    for (const { series, share } of face.gain) put(6, series, share)
    if (face.sky !== null) put(8, face.sky.temperature)
    if (face.held !== null) put(10, face.held)
  }

  at(t: number): void {
    const { line, face } = this
    const inside = this.along(2, t) / PER_HOUR + 1 / this.half
    if (face.held !== null) {
      this.pull = 1 / inside
      this.drive = this.pull * this.along(10, t)
      return
    }
    const film = PER_HOUR * this.along(0, t)
    const air = this.along(4, t)
    let gain = this.along(6, t)
    if (face.sky !== null) {
      const sky = (line[8] as number) + (line[9] as number) * t
      gain += face.sky.emissivity * STEFAN_BOLTZMANN * ((sky + ICE_POINT) ** 4 - (air + ICE_POINT) ** 4)
    }
    // Outer side between film and what lies inside it, eliminated: holds for a film of 0 too, where all of the gain goes in.
    const share = 1 / (1 + film * inside)
    this.pull = film * share
    this.drive = (film * air + PER_HOUR * gain) * share
  }

  private along(at: number, t: number): number {
    return (this.line[at] as number) + (this.line[at + 1] as number) * t
  }
}

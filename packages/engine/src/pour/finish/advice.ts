import { unoRate } from '../drying.ts'
import type { AirThen } from './air.ts'

/** Something that slows drying, with what it does here. */
export interface DryingAdvice {
  readonly id: 'sheet' | 'wind-break' | 'shade' | 'fog' | 'film'
  readonly act: string
  /** Rate with it, kg/m²/h, by Uno. */
  readonly rate: number
  /** What it takes off the rate of now, kg/m²/h. */
  readonly less: number
  readonly note: string
}

export interface AdviceInput {
  readonly over: AirThen
  /** °C of the surface; `over` is the air half a metre over it. */
  readonly concrete: number
}

/** What each measure is taken to reach; each is told with the advice. */
export const WIND_BREAK = 3
export const SHADE = 5
export const FOG = 95
export const FILM_SHARE = 0.5

/**
 * What slows drying here, the most helpful first: each with the rate computed for it by Uno. Empty where nothing dries. What each measure
 * reaches is assumed (wind 3 km/h, surface 5 K cooler, humidity 95 %, film one half, sheet all): common practice, no source.
 */
export function dryingAdvice({ over, concrete }: AdviceInput): readonly DryingAdvice[] {
  const now = unoRate({ ...over, concrete })
  if (!(now > 0)) return []
  const measures: Omit<DryingAdvice, 'less'>[] = [
    {
      id: 'sheet',
      act: 'Sheet over it between passes',
      rate: 0,
      note: 'Nothing dries under a sheet that lies close. Not before the bull float is through; off for each pass.',
    },
    {
      id: 'wind-break',
      act: 'Wind break',
      rate: unoRate({ ...over, wind: Math.min(over.wind, WIND_BREAK), concrete }),
      note: `Computed for ${WIND_BREAK} km/h over the surface.`,
    },
    {
      id: 'shade',
      act: 'Shade, cooler surface',
      rate: unoRate({ ...over, concrete: concrete - SHADE }),
      note: `Computed for a surface ${SHADE} K cooler. It sets later too.`,
    },
    {
      id: 'fog',
      act: 'Fog over the panel',
      rate: unoRate({ ...over, humidity: Math.max(over.humidity, FOG), concrete }),
      note: `Computed for air of ${FOG} %. Mist that hangs in the air, never drops to be worked in.`,
    },
    {
      id: 'film',
      act: 'Evaporation retarder',
      rate: now * FILM_SHARE,
      note: 'Taken as one half; the product’s sheet decides. After screeding and after each pass; no finishing aid.',
    },
  ]
  return measures
    .map((measure) => {
      // A surface drier than the air is no measure's merit: below 0 nothing more is won.
      const rate = Math.max(0, measure.rate)
      return { ...measure, rate, less: now - rate }
    })
    .filter(({ less }) => less > 1e-9)
    .sort((a, b) => b.less - a.less)
}

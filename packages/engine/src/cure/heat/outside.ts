import { belowZero, notFinite } from '../../working/guard.ts'
import type { Source } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import { STEFAN_BOLTZMANN } from './face.ts'

const FILM: Source = {
  standard: 'McAdams, Heat Transmission, 1954',
  clause: 'film of air over a flat face',
  status: 'from memory',
}
const SKY: Source = {
  standard: 'Swinbank, Quarterly Journal of the Royal Meteorological Society 89, 1963',
  clause: 'clear sky',
  status: 'from memory',
}
const TURN = 5
const STRONGEST_WIND = 40

/**
 * Film of moving air over a flat face, W/m²K, without radiation; wind in m/s at the face, up to 40.
 *
 * Source: McAdams 1954 (from memory). Example: 5 m/s: 25.35; 10 m/s: 45.79.
 */
export function filmOfWind(wind: number): Worked<number> {
  const gaps = belowZero({ wind })
  if (gaps.length === 0 && wind > STRONGEST_WIND) gaps.push(`wind: at most ${STRONGEST_WIND} m/s`)
  if (gaps.length > 0) return unknown(...gaps)
  const calm = wind <= TURN
  const film = filmAt(wind)
  const formula = calm ? '5.6 + 3.95 v' : '7.6 v^0.78'
  return known(film, [
    { symbol: 'h', formula, given: { v: wind }, result: film, unit: 'W/m²K', source: FILM },
  ])
}

/** The bare arithmetic of `filmOfWind`. */
export function filmAt(wind: number): number {
  return wind <= TURN ? 5.6 + 3.95 * wind : 7.6 * wind ** 0.78
}

/**
 * Temperature of a clear sky, °C, by that of the air. Clouds bring it up to that of the air; they are not in it.
 *
 * Source: Swinbank 1963 (from memory). Example: air 20 °C: 3.9 °C.
 */
export function skyOfAir(air: number): Worked<number> {
  const gaps = notFinite({ air })
  if (gaps.length === 0 && !(air > -60 && air < 60)) gaps.push('air: from −60 to 60 °C')
  if (gaps.length > 0) return unknown(...gaps)
  const sky = 0.0552 * (air + 273.15) ** 1.5 - 273.15
  return known(sky, [
    {
      symbol: 'Tsky',
      formula: '0.0552 (Ta + 273.15)^1.5 − 273.15',
      given: { Ta: air },
      result: sky,
      unit: '°C',
      source: SKY,
    },
  ])
}

/**
 * What radiation adds to a film between a face and surroundings about as warm as the air, W/m²K: 4 ε σ T³.
 *
 * Source: Stefan and Boltzmann's law, its slope. Example: emissivity 0.9: 5.14 at 20 °C, 6.27 at 40 °C.
 */
export function radiativeFilm(celsius: number, emissivity: number): number {
  return 4 * emissivity * STEFAN_BOLTZMANN * (celsius + 273.15) ** 3
}

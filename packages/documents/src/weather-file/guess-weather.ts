import { decimalShown } from '../bar-list/number-text.ts'
import { cellText, columnIndex, columnLetter, type Table } from '../bar-list/table.ts'
import { guessMap } from '../logger-file/guess-map.ts'
import { WEATHER_MAP_FORMAT, type WeatherMap, type WindUnit } from './weather-map.ts'

const NAMES = {
  humidity: /hum|^rh\b|feucht|moist/i,
  wind: /wind|speed/i,
  sun: /sun|solar|irradi|global|ghi/i,
  sky: /sky/i,
  air: /air|temp|outside|°\s*[cf]\b|^t$|^t[ _]/i,
} as const
/** Columns that speak of something near to it and are none. */
const OTHER = /gust|direction|dir\b|feel|dew|chill|soil|water|min|max/i

const UNITS: readonly (readonly [WindUnit, RegExp])[] = [
  ['m/s', /m\s*\/\s*s|m s-1|mps/i],
  ['mph', /mph|miles/i],
  ['kn', /\bkn\b|knot|\bkt/i],
  ['km/h', /km\s*\/?\s*h|kph/i],
]

/**
 * A mapping that fits a weather file, to be looked at by a person; null where no column reads as times on a clock beside one of air
 * temperatures. What was taken without the head saying it is in `unsure`.
 */
export function guessWeather(
  table: Table,
): { readonly map: WeatherMap; readonly unsure: readonly string[] } | null {
  const guess = guessMap(table)
  if (guess === null) return null
  const { first, time, unit, channels } = guess.map
  const { as } = time
  if (as === 'hours') return null
  const head = table.rows.slice(0, first - 1)
  const named = (what: keyof typeof NAMES): string | null => columnOf(head, NAMES[what], time.columns)
  const [humidity, wind, sun, sky] = [named('humidity'), named('wind'), named('sun'), named('sky')]
  const taken = new Set([humidity, wind, sun, sky])
  const called = columnOf(head, NAMES.air, [...time.columns, ...[...taken].flatMap((each) => each ?? [])])
  const air = called ?? channels.find(({ column }) => !taken.has(column))?.column
  if (air === undefined) return null
  const words = head.flat().map(cellText).join(' ')
  const windUnit = UNITS.find(([, unitWords]) => unitWords.test(words))?.[0]
  return {
    map: {
      format: WEATHER_MAP_FORMAT,
      first,
      time: { columns: time.columns, as },
      decimal: table.decimal ?? decimalOf(table, first, air) ?? guess.map.decimal,
      unit,
      windUnit: windUnit ?? 'km/h',
      air,
      humidity,
      wind,
      sun,
      sky,
    },
    unsure: [
      ...guess.unsure,
      ...(called === null ? [`No column is called air: column ${air} is taken.`] : []),
      ...(wind !== null && windUnit === undefined
        ? ['The head does not say the unit of the wind: km/h is taken.']
        : []),
    ],
  }
}

/** First column whose head speaks of something, of those that are not taken yet. */
function columnOf(head: Table['rows'], words: RegExp, taken: readonly string[]): string | null {
  const wide = Math.max(0, ...head.map((row) => row.length))
  for (let index = 0; index < wide; index += 1) {
    const name = head
      .map((row) => cellText(row[index]))
      .filter((text) => text !== '')
      .join(' ')
    const column = columnLetter(index)
    if (words.test(name) && !OTHER.test(name) && !taken.includes(column)) return column
  }
  return null
}

/** The decimal sign that the air itself shows. */
function decimalOf(table: Table, first: number, air: string): WeatherMap['decimal'] | null {
  const index = columnIndex(air) ?? -1
  return decimalShown(table.rows.slice(first - 1, first + 199).map((row) => cellText(row[index])))
}

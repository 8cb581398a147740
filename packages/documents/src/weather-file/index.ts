export { guessWeather } from './guess-weather.ts'
export {
  faultsOf,
  type ReadWeatherFile,
  rangeText,
  WEATHER_RANGES,
  type WeatherFault,
  type WeatherFileRow,
  weatherOfFile,
} from './read-weather-file.ts'
export {
  parseWeatherMap,
  WEATHER_MAP_FORMAT,
  WEATHER_TIMES,
  type WeatherMap,
  WIND_UNITS,
  type WindUnit,
} from './weather-map.ts'

export { guessMap } from './guess-map.ts'
export {
  LOGGER_MAP_FORMAT,
  type LoggerMap,
  parseLoggerMap,
  readLoggerMap,
  TIME_FORMS,
  type TimeForm,
} from './logger-map.ts'
export { type LogInput, logOf, type ReadLog } from './read-log.ts'

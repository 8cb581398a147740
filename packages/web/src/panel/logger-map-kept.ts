import { type LoggerMap, parseLoggerMap } from '@castwright/documents/logger-file'
import { headOf, type KeptMaps, keptMaps } from '../record/kept-maps.ts'

const maps: KeptMaps<LoggerMap> = keptMaps('castwright.logger-map', parseLoggerMap)

export { headOf }
export const { kept: keptMap, keep: keepMap } = maps

export { inOrder, logFaults, usualInterval } from './log-faults.ts'
export { FAULT_KINDS, type FaultKind, type LogFault, type LogRow, type RawLog } from './raw-log.ts'
export { channelReadings } from './sound-readings.ts'

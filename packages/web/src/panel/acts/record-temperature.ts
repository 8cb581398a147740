import { type EntryAct, stamped } from './act.ts'

export interface TemperatureInput {
  readonly channel: string
  /** Hours from mixing, °C; hours rise. */
  readonly readings: readonly (readonly [hours: number, celsius: number])[]
  /** What was wrong with the file, and what was left out of it. */
  readonly reason?: string
}

/** Readings of a logger in this pour. */
export const recordTemperature: EntryAct<TemperatureInput> = {
  name: 'record-temperature',
  label: 'Record the log',
  draft: (place, { channel, readings, reason }) => ({
    ...stamped(place),
    kind: 'temperature',
    step: 'cure',
    value: { channel, readings: readings.map(([hours, celsius]) => [hours, celsius]) },
    unit: '°C',
    ...(reason === undefined ? {} : { reason }),
  }),
}

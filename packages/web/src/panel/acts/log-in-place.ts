import type { Asked } from '@castwright/engine/working'
import { type EntryAct, stamped } from './act.ts'
import type { TemperatureInput } from './record-temperature.ts'
import { judged } from './record-value.ts'

/** Id of the asked item that a log answers. */
export const LOG_ASKED = 'temperature-log'

export interface LogInPlaceInput extends TemperatureInput {
  readonly asked: Asked
}

/** Answers the card's question for a log with its first and last reading; the whole log is an entry of its own. */
export const logInPlace: EntryAct<LogInPlaceInput> = {
  name: 'log-in-place',
  label: 'Record the log',
  draft: (place, { asked, channel, readings }) => {
    const ends = [readings[0], readings.at(-1)].flatMap((reading) =>
      reading === undefined ? [] : [[reading[0], reading[1]]],
    )
    return {
      ...stamped(place),
      kind: 'value',
      step: asked.step,
      check: asked.id,
      value: ends,
      ...judged(asked, ends),
      reason: `first and last of ${readings.length} readings, channel ${channel}`,
    }
  },
}

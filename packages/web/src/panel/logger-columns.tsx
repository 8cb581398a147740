import { type LoggerMap, TIME_FORMS } from '@castwright/documents/logger-file'
import type { ReactElement } from 'react'
import { ColumnsField, NumberField, readNumber, SelectField } from '../look/index.ts'
import type { LoggerTable } from './temperature-log.ts'

const FORM_WORDS: Readonly<Record<LoggerMap['time']['as'], string>> = {
  instant: 'with its offset from UTC',
  'year first': 'yard’s time, year first',
  'day first': 'yard’s time, day first',
  'month first': 'yard’s time, month first',
  hours: 'hours from mixing',
}

/** Which column is what; kept on this device for the next file of the same logger. */
export function LoggerColumns({
  brought: { table, map, unsure },
  onMap,
}: {
  readonly brought: {
    readonly table: LoggerTable
    readonly map: LoggerMap
    readonly unsure: readonly string[]
  }
  readonly onMap: (map: LoggerMap) => void
}): ReactElement {
  return (
    <details open={unsure.length > 0}>
      <summary>Columns of {table.name}</summary>
      {unsure.map((word) => (
        <p key={word}>{word}</p>
      ))}
      <div className="fields">
        <NumberField
          label="First row with a reading"
          value={String(map.first)}
          onText={(text) => {
            const first = readNumber(text)
            if (first !== null && Number.isInteger(first) && first >= 1) onMap({ ...map, first })
          }}
        />
        <ColumnsField
          label="Columns of the time"
          note="One, or day and clock: A or A B."
          value={map.time.columns}
          onColumns={(columns) => {
            if (columns.length > 0) onMap({ ...map, time: { ...map.time, columns: columns.slice(0, 2) } })
          }}
        />
        <SelectField
          label="The time is"
          value={map.time.as}
          onChange={(event) =>
            onMap({ ...map, time: { ...map.time, as: event.currentTarget.value as LoggerMap['time']['as'] } })
          }
        >
          {TIME_FORMS.map((as) => (
            <option key={as} value={as}>
              {FORM_WORDS[as]}
            </option>
          ))}
        </SelectField>
        <SelectField
          label="Decimal sign"
          value={map.decimal}
          onChange={(event) => onMap({ ...map, decimal: event.currentTarget.value as LoggerMap['decimal'] })}
        >
          <option value="point">point</option>
          <option value="comma">comma</option>
        </SelectField>
        <SelectField
          label="Temperatures in"
          value={map.unit}
          onChange={(event) => onMap({ ...map, unit: event.currentTarget.value as LoggerMap['unit'] })}
        >
          <option value="C">°C</option>
          <option value="F">°F</option>
        </SelectField>
      </div>
    </details>
  )
}

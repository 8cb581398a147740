import { WEATHER_TIMES, type WeatherMap, WIND_UNITS } from '@castwright/documents/weather-file'
import type { ReactElement } from 'react'
import { ColumnsField, NumberField, readNumber, SelectField } from '../look/index.ts'

const TIME_WORDS: Readonly<Record<WeatherMap['time']['as'], string>> = {
  instant: 'with its offset from UTC',
  'year first': 'yard’s time, year first',
  'day first': 'yard’s time, day first',
  'month first': 'yard’s time, month first',
}
const QUANTITIES = [
  ['air', 'Air'],
  ['humidity', 'Humidity'],
  ['wind', 'Wind'],
  ['sun', 'Sun, W/m²'],
  ['sky', 'Sky temperature'],
] as const

/** Which column is what; kept on this device for the next file of the same source. */
export function WeatherColumns({
  map,
  unsure,
  onMap,
}: {
  readonly map: WeatherMap
  readonly unsure: readonly string[]
  readonly onMap: (map: WeatherMap) => void
}): ReactElement {
  return (
    <details open={unsure.length > 0} className="explain">
      <summary>Columns of the file</summary>
      <div className="explain-body">
        {unsure.map((word) => (
          <p key={word}>{word}</p>
        ))}
        <div className="weather-fields">
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
            onColumns={(columns) =>
              columns.length > 0
                ? onMap({ ...map, time: { ...map.time, columns: columns.slice(0, 2) } })
                : null
            }
          />
          <SelectField
            label="The time is"
            value={map.time.as}
            onChange={(event) =>
              onMap({
                ...map,
                time: { ...map.time, as: event.currentTarget.value as WeatherMap['time']['as'] },
              })
            }
          >
            {WEATHER_TIMES.map((as) => (
              <option key={as} value={as}>
                {TIME_WORDS[as]}
              </option>
            ))}
          </SelectField>
          {QUANTITIES.map(([what, word]) => (
            <ColumnsField
              key={what}
              label={`Column of ${word.toLowerCase()}`}
              note={what === 'air' ? undefined : 'Empty where there is none.'}
              value={map[what] === null ? [] : [map[what]]}
              onColumns={([column = null]) => {
                if (what === 'air') {
                  if (column !== null) onMap({ ...map, air: column })
                } else onMap({ ...map, [what]: column })
              }}
            />
          ))}
          <SelectField
            label="Wind in"
            value={map.windUnit}
            onChange={(event) =>
              onMap({ ...map, windUnit: event.currentTarget.value as WeatherMap['windUnit'] })
            }
          >
            {WIND_UNITS.map((unit) => (
              <option key={unit} value={unit}>
                {unit}
              </option>
            ))}
          </SelectField>
          <SelectField
            label="Temperatures in"
            value={map.unit}
            onChange={(event) => onMap({ ...map, unit: event.currentTarget.value as WeatherMap['unit'] })}
          >
            <option value="C">°C</option>
            <option value="F">°F</option>
          </SelectField>
          <SelectField
            label="Decimal sign"
            value={map.decimal}
            onChange={(event) =>
              onMap({ ...map, decimal: event.currentTarget.value as WeatherMap['decimal'] })
            }
          >
            <option value="point">point</option>
            <option value="comma">comma</option>
          </SelectField>
        </div>
      </div>
    </details>
  )
}

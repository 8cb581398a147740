import '../strength/strength.css'
import { LONGEST_STRETCH } from '@castwright/engine/cure/heat'
import type { ReactElement } from 'react'
import { whenText } from '../panel/when.ts'
import { type ChartLine, TimeChart } from '../strength/time-chart.tsx'

/** Weather by time: ms since 1970, °C, km/h, %. */
export interface WeatherPoint {
  readonly at: number
  readonly air: number | null
  readonly wind: number | null
  readonly humidity: number | null
}

const HOUR = 3_600_000

/** Air and wind, logged and foretold apart. */
export function WeatherCharts({
  logged,
  forecast,
  now,
  zone,
}: {
  readonly logged: readonly WeatherPoint[]
  readonly forecast: readonly WeatherPoint[]
  readonly now: Date
  readonly zone: string
}): ReactElement | null {
  const start = Math.min(...[...logged, ...forecast].map(({ at }) => at))
  if (!Number.isFinite(start)) return null
  const lines = (what: 'air' | 'wind'): ChartLine[] => [
    ...line(`${what}, logged`, 'main', logged, what, start),
    ...line(`${what}, forecast`, 'second', forecast, what, start),
  ]
  const when = (hour: number): string => whenText(new Date(start + hour * HOUR).toISOString(), zone, now)
  const end = Math.max(...[...logged, ...forecast].map(({ at }) => at))
  const inside = now.getTime() > start && now.getTime() < end
  const marks = inside ? [{ x: (now.getTime() - start) / HOUR, text: 'now', look: 'now' as const }] : []
  const [air, wind] = [lines('air'), lines('wind')]
  return (
    <div className="stack">
      {air.length === 0 ? null : (
        <TimeChart title="Air temperature" unit="°C" lines={air} marks={marks} xText={when} height={260} />
      )}
      {wind.length === 0 ? null : (
        <TimeChart title="Wind" unit="km/h" from={0} lines={wind} marks={marks} xText={when} height={190} />
      )}
    </div>
  )
}

function line(
  name: string,
  look: ChartLine['look'],
  points: readonly WeatherPoint[],
  what: 'air' | 'wind',
  start: number,
): ChartLine[] {
  const given = points.flatMap((point) => {
    const value = point[what]
    return value === null ? [] : [[(point.at - start) / HOUR, value] as const]
  })
  // Where no night is computed across, no line is drawn across either.
  const told = given.flatMap(([hour, value], index) => {
    const before = given[index - 1]?.[0] ?? hour
    const broken = hour - before > LONGEST_STRETCH
    return broken ? [[before, Number.NaN] as const, [hour, value] as const] : [[hour, value] as const]
  })
  return told.length < 2 ? [] : [{ name, look, points: told }]
}

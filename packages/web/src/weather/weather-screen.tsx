import './weather.css'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useMemo } from 'react'
import { Notice, Sheet, useTitle } from '../look/index.ts'
import { mayDo } from '../panel/entitled.ts'
import { whenText } from '../panel/when.ts'
import { useNow, usePerson, useYardState } from '../record/index.ts'
import { BringWeather } from './bring-weather.tsx'
import { TakeBack } from './take-back.tsx'
import { TypeWeather } from './type-weather.tsx'
import { WeatherCharts, type WeatherPoint } from './weather-charts.tsx'

const HOUR = 3_600_000
/** Hours back that are shown. */
const BACK = 24

/** The yard's weather: what was logged, what is foretold, and how more of either comes in. */
export function WeatherScreen(): ReactElement {
  useTitle('Weather')
  const state = useYardState()
  const { role } = usePerson()
  const now = useNow(60_000)
  const zone = state.yard.yard?.timezone ?? 'UTC'
  const { logged, forecast, loggedTo } = useMemo(() => {
    const from = now.getTime() - BACK * HOUR
    const to = state.weather.at(-1)
    const last = to === undefined ? null : Date.parse(to.at)
    const points = (readings: typeof state.weather, after: number): WeatherPoint[] =>
      readings
        .map(({ at, air, wind, humidity }) => ({ at: Date.parse(at), air, wind, humidity }))
        .filter(({ at }) => at >= after)
    return {
      logged: points(state.weather, from),
      forecast: points(state.forecast, Math.max(from, (last ?? from) + 1)),
      loggedTo: last,
    }
  }, [state, now])
  const when = (at: number): string => whenText(new Date(at).toISOString(), zone, now)
  const ahead = forecast.at(-1)
  const may = mayDo(role, 'weather') && state.yard.yard !== null
  return (
    <div className="room stack">
      <div className="row weather-head">
        <h1>Weather</h1>
        <nav aria-label="Where the weather is used" className="row">
          <Link className="button" to="/strength">
            Strength
          </Link>
          <Link className="button" to="/yard">
            Yard
          </Link>
        </nav>
      </div>
      <Sheet
        title="What is known"
        note={`On the yard’s clock, ${zone}. ${loggedTo === null ? 'Nothing is logged.' : `Logged to ${when(loggedTo)}.`} ${ahead === undefined ? 'No forecast after it.' : `Forecast to ${when(ahead.at)}.`}`}
      >
        {logged.length + forecast.length < 2 ? (
          <Notice kind="unknown" title="No weather of these hours">
            Without it no night is computed.
          </Notice>
        ) : (
          <WeatherCharts logged={logged} forecast={forecast} now={now} zone={zone} />
        )}
        {may ? <TakeBack /> : null}
      </Sheet>
      {may ? (
        <div className="weather-columns">
          <Sheet title="Bring in a file" note="A forecast, or the log of a station.">
            <BringWeather />
          </Sheet>
          <Sheet
            title="Type a forecast"
            note="A few times of tonight; the hours between are put in straight."
          >
            <TypeWeather />
          </Sheet>
        </div>
      ) : null}
    </div>
  )
}

import type { EntryDraft } from '../record/index.ts'

export interface WeatherInput {
  readonly yard: string
  /** What is still to come, as somebody foretold it. */
  readonly forecast: boolean
  /** ms since 1970; °C, %, km/h, W/m², °C. */
  readonly rows: readonly {
    readonly at: number
    readonly air: number | null
    readonly humidity: number | null
    readonly wind: number | null
    readonly sun?: number | null
    readonly sky?: number | null
  }[]
  /** Where it is from, and what was left out of it. */
  readonly reason: string | null
}

/** Weather of the yard, logged or foretold. */
export function weatherDraft({ yard, forecast, rows, reason }: WeatherInput): EntryDraft {
  return {
    kind: 'weather',
    subject: { kind: 'yard', id: yard },
    value: {
      ...(forecast ? { forecast } : {}),
      readings: rows.map(({ at, air, humidity, wind, sun = null, sky = null }) => ({
        at: new Date(at).toISOString(),
        air,
        humidity,
        wind,
        ...(sun === null ? {} : { sun }),
        ...(sky === null ? {} : { sky }),
      })),
    },
    ...(reason === null ? {} : { reason: reason.slice(0, 3900) }),
  }
}

import type { Drawing } from '@castwright/engine/panel'
import type { Yard } from '@castwright/engine/yard'
import { type Draft, panelSubject } from '@castwright/record'
import { DEMO_ZONE, dueDay } from './calendar.ts'
import { DEMO_JOB } from './drawings.ts'
import { at } from './local-time.ts'
import { personOf } from './people.ts'
import type { Act } from './telling.ts'
import { forecastHours, type WeatherHour, weatherHours } from './weather.ts'

const SECOND = 1000
const HOUR = 3600 * SECOND
const MONDAY = '2026-09-07'
const TUESDAY = '2026-09-08'
/** Panels whose lifting design the engineer has confirmed so far; the last day's are still to come. */
const CONFIRMED = 36

/** Gear with a date that is not part of the yard file. */
const TOOLS: readonly (readonly [mark: string, due: string, what: string])[] = [
  ['tape 10 m', '2027-03-01', 'steel tape, compared with the office tape'],
  ['cylinder press', '2027-01-15', 'calibrated by the laboratory'],
  ['thermometers', '2027-02-01', 'six logger probes, ice point checked'],
  ['slump cone', '2027-05-01', 'cone and plate measured'],
  ['bar scale', '2026-11-30', 'scale for bar samples'],
]

/** What an engineer entered where the code family has no confirmed value. */
const LIMITS: readonly (readonly [key: string, value: number, unit: string])[] = [
  ['cure.peakTemperature', 60, '°C'],
  ['quality.bow', 14, 'mm'],
  ['quality.warp', 9, 'mm'],
  ['lift.insertMargin', 2.5, ''],
  ['lift.factor:travel', 1.5, ''],
]

/** Yard, gear, limits, job, drawings and confirmed designs: what was there before the first pour. */
export function setUpActs({
  yard,
  drawings,
}: {
  readonly yard: Yard
  readonly drawings: readonly Drawing[]
}): Act[] {
  const [orla, ines] = [personOf('orla'), personOf('ines')]
  const act = (when: number, person: typeof orla, draft: Draft): Act => ({
    at: when,
    device: 'office',
    person,
    draft,
  })
  const [monday, tuesday] = [at(MONDAY, '15:00', DEMO_ZONE), at(TUESDAY, '07:00', DEMO_ZONE)]
  const yardSubject = { kind: 'yard', id: yard.name } as const
  return [
    act(monday, orla, { kind: 'yard', subject: yardSubject, value: jsonOf(yard) }),
    act(monday + 60 * SECOND, orla, {
      kind: 'job',
      subject: { kind: 'job', id: DEMO_JOB },
      value: {
        mark: DEMO_JOB,
        yard: yard.name,
        due: Object.fromEntries(drawings.map(({ mark }, index) => [mark, dueDay(index)])),
      },
    }),
    ...drawings.map((drawing, index) =>
      act(monday + (120 + 20 * index) * SECOND, orla, {
        kind: 'drawing',
        subject: panelSubject(DEMO_JOB, drawing.mark),
        revision: drawing.revision ?? 'A',
        value: jsonOf(drawing),
      }),
    ),
    ...gearOf(yard).map(([mark, due, what], index) =>
      act(tuesday + 40 * index * SECOND, orla, {
        kind: 'gear',
        subject: { kind: 'gear', id: mark },
        value: { due, what },
      }),
    ),
    ...LIMITS.map(([check, value, unit], index) =>
      act(tuesday + (1800 + 90 * index) * SECOND, ines, {
        kind: 'limit',
        subject: yardSubject,
        check,
        value: { value, unit, standard: 'Kettle Lane quality plan', edition: 'March 2026' },
      }),
    ),
    ...drawings.slice(0, CONFIRMED).map((drawing, index) =>
      act(tuesday + (3600 + 45 * index) * SECOND, ines, {
        kind: 'design',
        subject: panelSubject(DEMO_JOB, drawing.mark),
        revision: drawing.revision ?? 'A',
        value: { reference: drawing.lifting?.reference ?? '' },
      }),
    ),
  ]
}

/** The weather station's hours, brought in four times a day, and at noon the forecast for two days. */
export function weatherActs(until: number): Act[] {
  const acts: Act[] = []
  for (let end = at(TUESDAY, '12:00', DEMO_ZONE); end <= until; end += 6 * HOUR)
    acts.push(weatherAct(end + 90 * SECOND, weatherHours(end - 5 * HOUR, end, DEMO_ZONE), false))
  for (let noon = at(TUESDAY, '12:00', DEMO_ZONE); noon <= until; noon += 24 * HOUR)
    acts.push(weatherAct(noon + 600 * SECOND, forecastHours(noon + HOUR, noon + 48 * HOUR, DEMO_ZONE), true))
  return acts
}

function weatherAct(when: number, hours: readonly WeatherHour[], forecast: boolean): Act {
  return {
    at: when,
    device: 'office',
    person: personOf('tom'),
    draft: {
      kind: 'weather',
      subject: { kind: 'yard', id: 'Kettle Lane' },
      value: {
        ...(forecast ? { forecast } : {}),
        readings: hours.map(({ at: seen, ...rest }) => ({ at: new Date(seen).toISOString(), ...rest })),
      },
    },
  }
}

/** The same as an entry carries it: fields that are not given are not there. */
function jsonOf(value: Yard | Drawing): Draft['value'] {
  return JSON.parse(JSON.stringify(value)) as Draft['value']
}

function gearOf(yard: Yard): [mark: string, due: string, what: string][] {
  const dated = [...(yard.cranes ?? []), ...(yard.rigging ?? [])].flatMap(
    ({ mark, due }): [string, string, string][] =>
      due === undefined ? [] : [[mark, due, 'inspected by the lifting company']],
  )
  return [...dated, ...TOOLS.map(([mark, due, what]): [string, string, string] => [mark, due, what])]
}

import { SURFACE_IDS, type SurfaceKind } from '@castwright/engine/steps'
import { panelSubject } from '@castwright/record'
import { DEMO_ZONE } from './calendar.ts'
import { DEMO_JOB } from './drawings.ts'
import { at } from './local-time.ts'
import { personOf } from './people.ts'
import type { Act } from './telling.ts'
import { airAt } from './weather.ts'

const DAY = '2026-09-16'
const TABLET = 'tablet-beds-3-4'

/** What was read on fresh surfaces on the day of the clock: mark, time, what, value. */
const READ: readonly (readonly [
  mark: string,
  time: string,
  kind: SurfaceKind,
  value: number | true,
  unit: string,
])[] = [
  ['S06', '12:52', 'temperature', 16.6, '°C'],
  ['S06', '14:06', 'temperature', 15.2, '°C'],
  ['S06', '14:07', 'print', 9, 'mm'],
  ['S06', '14:38', 'sheen', true, ''],
]

/** Air read beside the panel, wind half a metre over it: time, %, km/h. */
const AIR: readonly (readonly [time: string, humidity: number, wind: number])[] = [
  ['12:54', 64, 11],
  ['14:08', 61, 13],
  ['15:02', 60, 12],
]

/** Readings of surfaces and of the air over them. */
export function surfaceActs(): Act[] {
  const lena = personOf('lena')
  return [
    ...READ.map(([mark, time, kind, value, unit]): Act => {
      const when = at(DAY, time, DEMO_ZONE)
      return {
        at: when,
        device: TABLET,
        person: lena,
        draft: {
          kind: 'value',
          subject: panelSubject(DEMO_JOB, mark),
          step: 'finish',
          check: `${SURFACE_IDS[kind]}@${new Date(when).toISOString()}`,
          value,
          revision: 'A',
          ...(unit === '' ? {} : { unit }),
        },
      }
    }),
    ...AIR.map(([time, humidity, wind]): Act => {
      const when = at(DAY, time, DEMO_ZONE)
      return {
        at: when + 20_000,
        device: TABLET,
        person: lena,
        draft: {
          kind: 'weather',
          subject: { kind: 'yard', id: 'Kettle Lane' },
          value: {
            readings: [
              {
                at: new Date(when).toISOString(),
                air: Math.round(airAt(when, DEMO_ZONE) * 10) / 10,
                humidity,
                wind,
                windHeight: 0.5,
              },
            ],
          },
        },
      }
    }),
  ]
}

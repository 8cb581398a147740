import { describe, expect, it } from 'vitest'
import { InputError } from '../../working/issue.ts'
import { readWeather, weatherGaps, weatherOf } from './weather.ts'

function issuesOf(read: () => unknown): string[] {
  try {
    read()
  } catch (error) {
    if (error instanceof InputError) return error.issues.map(({ path }) => path)
    throw error
  }
  return []
}

describe('weather', () => {
  it('is read by hours, columns in any order, with a byte-order mark, CRLF and empty cells', () => {
    const weather = readWeather('\uFEFFair,hours,wind\r\n10,0,2\r\n"9",1,\r\n\r\n8,2,3\r\n')
    expect(weather.air).toEqual([
      [0, 10],
      [1, 9],
      [2, 8],
    ])
    expect(weather.wind).toEqual([
      [0, 2],
      [2, 3],
    ])
    expect([weather.sun, weather.gaps]).toEqual([[], []])
  })

  it('is read by moments: hours from mixing, over a change of the clocks too', () => {
    const text = 'time,air\n2026-10-25T00:30+01:00,8\n2026-10-25T01:30+01:00,7\n2026-10-25T01:30Z,6\n'
    expect(readWeather(text, { mixed: '2026-10-24T23:30Z' }).air).toEqual([
      [0, 8],
      [1, 7],
      [2, 6],
    ])
  })

  it('refuses moments without a zone, and moments without the hour of mixing', () => {
    expect(
      issuesOf(() => readWeather('time,air\n2026-10-25T00:30,8\n', { mixed: '2026-10-24T23:30Z' })),
    ).toEqual(['row 2: time'])
    expect(issuesOf(() => readWeather('time,air\n2026-10-25T00:30Z,8\n'))).toEqual(['mixed'])
  })

  it.each([
    ['', 'row 1'],
    ['hours,temperature\n0,1', 'row 1'],
    ['hours,time,air\n0,,1', 'row 1'],
    ['hours,air,air\n0,1,1', 'row 1'],
    ['hours,air\n', 'rows'],
    ['hours,air\n0,1,2', 'row 2'],
    ['hours,air\nnoon,1', 'row 2: hours'],
    ['hours,air\n0,1\n0,2', 'row 3: hours'],
    ['hours,air\n0,1\n1,850', 'row 3: air'],
    ['hours,air,wind\n0,1,-3', 'row 2: wind'],
    ['hours,air,sun\n0,1,bright', 'row 2: sun'],
  ])('%j is refused at %s', (text, path) => {
    expect(issuesOf(() => readWeather(text))).toContain(path)
  })

  it('tells a hole and fills nothing', () => {
    const weather = weatherOf([
      { hours: -1, air: 10, sun: 0 },
      { hours: 1, air: 9 },
      { hours: 6.5, air: 4, sun: 100 },
      { hours: 8, air: 5, sun: 200 },
    ])
    expect(weather.gaps).toEqual([
      { column: 'air', from: 1, to: 6.5 },
      { column: 'sun', from: -1, to: 6.5 },
    ])
    expect(weatherGaps(weather, 'air', 12)).toEqual([
      'weather.air: nothing from 1 to 6.5 h',
      'weather.air: nothing after 8 h, the run goes on to 12 h',
    ])
    expect(weatherGaps(weather, 'air', 0.5)).toEqual([])
    expect(weatherGaps(weather, 'wind', 8)).toEqual(['weather.wind: no readings'])
  })

  it('takes three hours between readings as straight, not more', () => {
    expect(
      weatherOf([
        { hours: 0, air: 1 },
        { hours: 3, air: 2 },
      ]).gaps,
    ).toEqual([])
    expect(
      weatherOf([
        { hours: 0, air: 1 },
        { hours: 3.1, air: 2 },
      ]).gaps,
    ).toHaveLength(1)
    expect(
      weatherOf(
        [
          { hours: 0, air: 1 },
          { hours: 6, air: 2 },
        ],
        6,
      ).gaps,
    ).toEqual([])
  })

  it('names a typed row at fault', () => {
    expect(
      issuesOf(() =>
        weatherOf([
          { hours: 0, air: 1 },
          { hours: 1, air: Number.NaN },
        ]),
      ),
    ).toEqual(['row 2: air'])
  })
})

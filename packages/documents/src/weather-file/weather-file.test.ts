import { InputError } from '@castwright/engine/working'
import { describe, expect, it } from 'vitest'
import { readTable } from '../bar-list/read-table.ts'
import { issuePlace } from '../bar-list/row-issue.ts'
import { guessWeather } from './guess-weather.ts'
import { weatherOfFile } from './read-weather-file.ts'
import { parseWeatherMap } from './weather-map.ts'

async function read(text: string, zone = 'UTC') {
  const table = await readTable({ bytes: new TextEncoder().encode(text), name: 'weather.csv' })
  const guess = guessWeather(table)
  if (guess === null) throw new Error('nothing guessed')
  return { ...guess, ...weatherOfFile({ table, map: guess.map, zone }) }
}

const HEAD = 'time,air °C,humidity %,wind km/h\n'
const rowsOf = (count: number): string =>
  Array.from(
    { length: count },
    (_, hour) => `2026-09-16 ${String(hour).padStart(2, '0')}:00,${12 - hour / 4},80,${10 + hour}`,
  ).join('\n')

describe('a weather file', () => {
  it('is read by its head, in the yard’s time', async () => {
    const { rows, errors, faults, unsure } = await read(HEAD + rowsOf(6), 'Europe/Dublin')
    expect([errors, faults, unsure]).toEqual([[], [], []])
    expect(rows[0]).toEqual({
      row: 2,
      at: Date.parse('2026-09-15T23:00:00.000Z'),
      air: 12,
      humidity: 80,
      wind: 10,
      sun: null,
      sky: null,
    })
  })

  // International units by definition: 1 mph = 1.609344 km/h, 1 kn = 1.852 km/h, °C = (°F − 32) 5/9.
  it.each([
    ['wind m/s', 10, 36],
    ['wind mph', 10, 16.09344],
    ['wind kn', 10, 18.52],
  ])('takes %s into km/h', async (name, given, kmh) => {
    const text = `time,air,${name}\n2026-09-16T00:00Z,12,${given}\n2026-09-16T01:00Z,12.5,${given + 2}\n`
    const { rows } = await read(text)
    expect(rows[0]?.wind).toBeCloseTo(kmh, 9)
  })

  it('takes °F into °C, sun, sky and semicolons with decimal comma', async () => {
    const text =
      'Zeit;air °F;solar W/m²;sky °F\n16.09.2026 00:00;50,0;0;23,0\n16.09.2026 01:00;48,2;0;21,2\n16.09.2026 02:00;46,4;0;19,4\n'
    const { rows, errors } = await read(text)
    expect(errors).toEqual([])
    expect(rows[0]).toMatchObject({ sun: 0 })
    expect(rows[0]?.air).toBeCloseTo(10, 9)
    expect(rows[0]?.sky).toBeCloseTo(-5, 9)
  })

  it('does not take gusts, dew point or a direction for what they are near to', async () => {
    const text =
      'time,dew point,temperature,wind gust,wind direction,wind speed m/s\n2026-09-16T00:00Z,3,12,9,270,4\n2026-09-16T01:00Z,3.5,11,9.5,275,4.5\n'
    const { map } = await read(text)
    expect(map).toMatchObject({ air: 'C', wind: 'F', windUnit: 'm/s' })
  })

  it('says what it took without being told', async () => {
    const text = 'when,value,wind\n2026-09-16T00:00Z,12,4\n2026-09-16T01:00Z,11,5.5\n'
    const { unsure } = await read(text)
    expect(unsure.join(' ')).toContain('No column is called air')
    expect(unsure.join(' ')).toContain('unit of the wind')
  })

  it('names each row that cannot be, with what came and what was expected', async () => {
    const lines = rowsOf(12).split('\n')
    lines[3] = '2026-09-16 03:00,112,80,10'
    lines[5] = '2026-09-16 05:00,11,140,10'
    lines[7] = 'yesterday,11,80,10'
    lines[8] = '2026-09-16 08:00,warm,80,10'
    lines[9] = '2026-09-16 09:00,n/a,80,10'
    const { rows, errors, faults } = await read(HEAD + lines.join('\n'))
    expect(errors.map((issue) => `${issuePlace(issue)}: ${issue.found}, ${issue.expected}`)).toEqual([
      'row 5, column B (air): 112, −60 to 60 °C',
      'row 7, column C (humidity): 140, 0 to 100 %',
      'row 9, column A (time): "yesterday", a day and a time, year first',
      'row 10, column B (air): "warm", −60 to 60 °C',
    ])
    expect(rows).toHaveLength(8)
    expect(faults.map(({ text }) => text).join(' ')).toContain('air gives nothing')
  })

  it('finds gaps, a single reading that stands apart, and a clock that goes back', async () => {
    const lines = rowsOf(20).split('\n')
    lines[6] = '2026-09-16 06:00,31,80,10'
    const gone = [...lines.slice(0, 10), ...lines.slice(14)]
    const { faults } = await read(`${HEAD + gone.join('\n')}\n2026-09-16 18:00,9,80,10`)
    const text = faults.map((fault) => `row ${fault.row}: ${fault.text}`).join('\n')
    expect(text).toContain('row 8: air reads 31 °C')
    expect(text).toContain('No reading for 5.00 h')
    expect(text).toContain('The clock goes back by 1.00 h')
  })

  it('has no clock where it counts hours', async () => {
    const table = await readTable({
      bytes: new TextEncoder().encode('hours,air\n0,12\n1,11\n2,11.5\n'),
      name: 'w.csv',
    })
    expect(guessWeather(table)).toBeNull()
  })

  it('refuses a mapping with the field named', () => {
    expect(() => parseWeatherMap({ format: 'castwright.weather-map/1', air: '7' })).toThrow(InputError)
  })
})

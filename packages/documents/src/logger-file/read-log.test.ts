import { logFaults } from '@castwright/engine/cure/logger'
import { describe, expect, it } from 'vitest'
import { readTable } from '../bar-list/read-table.ts'
import { issuePlace } from '../bar-list/row-issue.ts'
import { guessMap } from './guess-map.ts'
import { parseLoggerMap } from './logger-map.ts'
import { logOf } from './read-log.ts'

const MIXED = '2026-09-15T13:00:00.000Z'

async function tableOf(text: string) {
  return readTable({ bytes: new TextEncoder().encode(text), name: 'night.csv' })
}

async function guessed(text: string, zone = 'UTC', mixed = MIXED) {
  const table = await tableOf(text)
  const guess = guessMap(table)
  if (guess === null) throw new Error('nothing guessed')
  return { ...guess, ...logOf({ table, map: guess.map, mixed, zone }) }
}

const FILES: readonly (readonly [name: string, text: string])[] = [
  [
    'plain, ISO with offset',
    'time,core,face\n2026-09-15T13:00:00Z,20.5,19\n2026-09-15T13:10:00Z,20.6,19.1\n2026-09-15T13:20:00Z,20.8,19.1\n',
  ],
  [
    'semicolons and decimal comma, day first, a head of several lines, CRLF and a byte-order mark',
    '\uFEFFLogger 7\r\nSerial;1234\r\nDatum;core (°C);face (°C)\r\n15.09.2026 13:00;20,5;19,0\r\n15.09.2026 13:10;20,6;19,1\r\n15.09.2026 13:20;20,8;19,1\r\n',
  ],
  [
    'tabs, day and clock in two columns, a running number, twelve-hour clock',
    'No\tDate\tTime\tcore\tface\n1\t9/15/2026\t1:00 PM\t20.5\t19\n2\t9/15/2026\t1:10 PM\t20.6\t19.1\n3\t9/15/2026\t1:20 PM\t20.8\t19.1\n',
  ],
  ['hours from mixing', 'hours,core,face\n0,20.5,19\n0.16666667,20.6,19.1\n0.33333333,20.8,19.1\n'],
]

describe('a logger’s file', () => {
  it.each(FILES)('%s: the same readings', async (_, text) => {
    const { log, errors } = await guessed(text)
    expect(errors).toEqual([])
    expect(log.channels).toEqual(['core', 'face'])
    expect(log.rows.map(({ celsius }) => celsius)).toEqual([
      [20.5, 19],
      [20.6, 19.1],
      [20.8, 19.1],
    ])
    expect(log.rows.map(({ hours }) => Math.round(hours * 60))).toEqual([0, 10, 20])
  })

  it('says where day and month cannot be told apart', async () => {
    const text = 'time,core\n03/04/2026 10:00,20\n03/04/2026 10:10,20.1\n03/04/2026 10:20,20.3\n'
    const { map, unsure } = await guessed(text, 'UTC', '2026-04-03T10:00:00.000Z')
    expect(map.time.as).toBe('day first')
    expect(unsure.join()).toContain('cannot be told apart')
  })

  it('reads °F where the head says so, and takes words for no reading as none', async () => {
    const { log } = await guessed(
      'time,core °F\n2026-09-15T13:00Z,68\n2026-09-15T13:10Z,OPEN\n2026-09-15T13:20Z,77\n',
    )
    expect(log.rows.map(({ celsius }) => celsius[0])).toEqual([20, null, 25])
  })

  it('names every row and column that cannot be read, and keeps the others', async () => {
    const text =
      'time,core,face\n2026-09-15T13:00:00Z,20,19\nlater,20,19\n2026-09-15T13:20:00Z,warm,19\n2026-09-15T13:30:00Z,21,19\n'
    const table = await tableOf(text)
    const map = parseLoggerMap({
      format: 'castwright.logger-map/1',
      first: 2,
      time: { columns: ['A'], as: 'instant' },
      decimal: 'point',
      unit: 'C',
      channels: [
        { column: 'B', name: 'core' },
        { column: 'C', name: 'face' },
      ],
    })
    const { log, errors } = logOf({ table, map, mixed: MIXED, zone: 'UTC' })
    expect(log.rows.map(({ row }) => row)).toEqual([2, 5])
    expect(errors.map((issue) => `${issuePlace(issue)}: ${issue.found}`)).toEqual([
      'row 3, column A (time): "later"',
      'row 4, column B (temperature): "warm"',
    ])
  })

  it('goes on through the hour that comes twice in autumn, and refuses the one that spring skips', async () => {
    const autumn =
      'time,core\n' +
      ['01:20', '01:40', '01:00', '01:20', '01:40', '02:00']
        .map((at, i) => `2026-10-25 ${at},${20 + i / 10}`)
        .join('\n')
    const { log } = await guessed(`${autumn}\n`, 'Europe/Dublin', '2026-10-25T00:20:00.000Z')
    expect(log.rows.map(({ hours }) => Math.round(hours * 60))).toEqual([0, 20, 40, 60, 80, 100])
    expect(logFaults(log)).toEqual([])
    const spring = await tableOf('time,core\n2026-03-29 00:50,20\n2026-03-29 01:10,20\n2026-03-29 02:10,20\n')
    const guess = guessMap(spring)
    if (guess === null) throw new Error('nothing guessed')
    const { errors } = logOf({
      table: spring,
      map: guess.map,
      mixed: '2026-03-29T00:00:00.000Z',
      zone: 'Europe/Dublin',
    })
    expect(errors.map(({ row }) => row)).toEqual([3])
  })

  it('guesses nothing where no column is a time', async () => {
    expect(guessMap(await tableOf('a,b\nx,1\ny,2\n'))).toBeNull()
    expect(guessMap(await tableOf('time,core\n'))).toBeNull()
  })

  it('reads a week of minutes in a moment', async () => {
    const start = Date.parse(MIXED)
    const rows = Array.from(
      { length: 10_080 },
      (_, i) => `${new Date(start + i * 60_000).toISOString()},${(20 + Math.sin(i / 500)).toFixed(2)}`,
    )
    const { log, errors } = await guessed(`time,core\n${rows.join('\n')}\n`)
    expect(errors).toEqual([])
    expect(log.rows).toHaveLength(10_080)
    expect(logFaults(log)).toEqual([])
  })
})

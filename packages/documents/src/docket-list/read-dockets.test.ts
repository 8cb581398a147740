import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readTable } from '../bar-list/read-table.ts'
import { issuePlace } from '../bar-list/row-issue.ts'
import { type ReadDocketsInput, readDockets } from './read-dockets.ts'

async function read(text: string, change: Partial<ReadDocketsInput> = {}) {
  const table = await readTable({ bytes: new TextEncoder().encode(text), name: 'day.csv' })
  return readDockets({ table, zone: 'Europe/Dublin', day: null, dates: 'day first', ...change })
}

const places = ({ errors }: Awaited<ReturnType<typeof read>>) =>
  errors.map((issue) => `${issuePlace(issue)}: ${issue.found}, ${issue.expected}`)

describe('a supplier’s list of dockets', () => {
  it.each([
    [
      'commas and an offset',
      'docket,panel,job,truck,mix,volume,batched\n7001,W1,J1,4,M40,3.2,2026-06-01T13:00+01:00\n',
    ],
    [
      'semicolons, decimal comma, day first, a title over the head, CRLF and a byte-order mark',
      '\uFEFFDeliveries of the day\r\n\r\nTicket No;Mark;Project;Vehicle;Mix code;Quantity (m³);Batch time\r\n7001;W1;J1;4;M40;3,2;01.06.2026 13:00\r\n',
    ],
    [
      'tabs, a column of days, units in the cells, other columns between',
      'Ticket\tRep\tPanel\tJob\tTruck\tMix\tVolume\tDate\tLoaded\n7001\tJ.\tW1\tJ1\t4\tM40\t3.2 m³\t2026-06-01\t13:00\n',
    ],
  ])('%s: the same load', async (_, text) => {
    const found = await read(text)
    expect(found.errors).toEqual([])
    expect(found.rows.map(({ panel, job, docket }) => ({ panel, job, ...docket }))).toEqual([
      {
        panel: 'W1',
        job: 'J1',
        number: '7001',
        truck: '4',
        mix: 'M40',
        volume: 3.2,
        batched: '2026-06-01T12:00:00.000Z',
      },
    ])
  })

  it('tells the columns that it does not know', async () => {
    expect((await read('docket,volume,price\n1,3,400\n')).unread).toEqual(['price'])
  })

  it('takes clocks alone for the day given, and one past midnight for the next', async () => {
    const found = await read('docket,batched,arrived,discharged\n1,23:30,23:55,00:20\n', {
      day: '2026-06-01',
    })
    expect(found.rows[0]?.docket).toEqual({
      number: '1',
      batched: '2026-06-01T22:30:00.000Z',
      arrived: '2026-06-01T22:55:00.000Z',
      discharged: '2026-06-01T23:20:00.000Z',
    })
  })

  it('reads the month first where the yard writes so', async () => {
    const text = 'docket,batched\n1,06/01/2026 1:00 PM\n'
    const found = await read(text, { dates: 'month first', zone: 'UTC' })
    expect(found.rows[0]?.docket.batched).toBe('2026-06-01T13:00:00.000Z')
  })

  it('names row and column of each thing that is wrong, and keeps nothing of that row', async () => {
    const text = [
      'docket,panel,volume,slump,batched,discharged,used',
      '7001,W1,3.2,95,2026-06-01 13:00,2026-06-01 13:40,',
      ',W1,3.2,95,2026-06-01 13:00,,',
      '7003,W1,three,95,2026-06-01 13:00,,',
      '7004,W1,-1,95,2026-06-01 13:00,,',
      '7005,W1,3,95,13:00,,',
      '7006,W1,3,95,2026-06-01 13:00,2026-06-01 12:00,',
      '7007,W1,3,95,,,3.5',
      '7001,W1,3.2,95,,,',
      '7008,W1,3,95,2026-03-29 01:30,,',
    ].join('\n')
    const found = await read(text)
    expect(found.rows.map(({ docket }) => docket.number)).toEqual(['7001'])
    expect(places(found)).toEqual([
      'row 3, column A (number): nothing, the number of the docket',
      'row 4, column C (volume): "three", a number',
      expect.stringMatching(/^row 5, column C \(volume\): "-1", /),
      'row 6, column E (batched): "13:00", a day beside the time',
      'row 7, column F (discharged): "2026-06-01 12:00", a time not before batched',
      expect.stringMatching(/^row 8, column G \(used\): "3.5", not more than the volume of the load/),
      'row 9, column A (number): "7001", a docket once; row 2 has it',
      'row 10, column E (batched): "2026-03-29 01:30", a day and a time',
    ])
  })

  it('takes one docket for two panels', async () => {
    const found = await read('docket,panel,volume,used\n1,W1,6,3\n1,W2,6,3\n')
    expect([found.rows.length, found.errors]).toEqual([2, []])
  })

  it('refuses a file without a head', async () => {
    await expect(read('1,2,3\n4,5,6\n')).rejects.toThrow(/day.csv.*no row of heads/s)
  })

  it('gives back what was written, whatever the order of the columns (seed 20261129)', async () => {
    const words = fc.record({
      truck: fc.stringMatching(/^[A-Z][A-Z0-9]{1,6}$/),
      volume: fc.integer({ min: 1, max: 1000 }).map((value) => value / 100),
      slump: fc.integer({ min: 0, max: 250 }),
      waterAdded: fc.integer({ min: 0, max: 50 }),
    })
    const heads = { truck: 'Truck', volume: 'Volume', slump: 'Slump', waterAdded: 'Water added' } as const
    await fc.assert(
      fc.asyncProperty(
        fc.array(words, { minLength: 1, maxLength: 20 }),
        fc.shuffledSubarray(Object.keys(heads) as (keyof typeof heads)[], { minLength: 4 }),
        async (all, order) => {
          const lines = all.map((row, at) => [at + 1, ...order.map((field) => row[field])].join(','))
          const found = await read(
            [`Docket,${order.map((field) => heads[field]).join(',')}`, ...lines].join('\n'),
          )
          expect(found.errors).toEqual([])
          expect(found.rows.map(({ docket: { number: _, ...rest } }) => rest)).toEqual(all)
        },
      ),
      { seed: 20261129, numRuns: 60 },
    )
  })
})

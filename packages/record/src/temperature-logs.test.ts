import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Entry, Person } from './entry.ts'
import { ExampleDevice, FLOOR, LEAD, PANEL } from './example-entries.ts'
import { fold } from './fold.ts'

const LOGGER: Person = { id: 'logger-1', name: 'Logger North', role: 'floor' }
const MIXED = '2026-03-02T08:00:00.000Z'

type Reading = readonly [hours: number, celsius: number]

function cast(device: ExampleDevice, at = MIXED): Entry {
  return device.make(FLOOR, { kind: 'cast', subject: PANEL, value: { at } })
}

function log(
  device: ExampleDevice,
  readings: readonly Reading[],
  { channel = 'core', by = LOGGER, mixed }: { channel?: string; by?: Person; mixed?: string } = {},
): Entry {
  const value = { channel, readings: readings.map(([h, c]) => [h, c]), ...(mixed ? { mixed } : {}) }
  return device.make(by, { kind: 'temperature', subject: PANEL, value })
}

const logsOf = (entries: readonly Entry[]) => fold(entries).panels.get('J1/W1')?.temperatures ?? []
const flagsOf = (entries: readonly Entry[]) => fold(entries).flags.map(({ kind, text }) => `${kind}: ${text}`)

describe('temperature entries of a panel', () => {
  it('of one channel by one person are one log that lists them all', () => {
    const device = new ExampleDevice('d1')
    const [first, second, third] = [
      log(device, [[2, 22]]),
      log(device, [
        [0, 20],
        [1, 21],
      ]),
      log(device, [[3, 23]]),
    ]
    expect(logsOf([first, second, third])).toEqual([
      {
        entry: third.id,
        entries: [first.id, second.id, third.id],
        channel: 'core',
        by: LOGGER,
        readings: [
          [0, 20],
          [1, 21],
          [2, 22],
          [3, 23],
        ],
      },
    ])
  })

  it('of another channel or another person are another log', () => {
    const device = new ExampleDevice('d1')
    const entries = [
      log(device, [[0, 20]]),
      log(device, [[0, 20]], { channel: 'face' }),
      log(device, [[0, 20]], { by: FLOOR }),
    ]
    expect(logsOf(entries).map(({ channel, by }) => [channel, by.id])).toEqual([
      ['core', LOGGER.id],
      ['face', LOGGER.id],
      ['core', FLOOR.id],
    ])
  })

  it('of one time stand as first recorded, and a flag says where they differ', () => {
    const device = new ExampleDevice('d1')
    const same = [log(device, [[1, 21]]), log(device, [[1, 21]])]
    expect(logsOf(same)[0]?.readings).toEqual([[1, 21]])
    expect(flagsOf(same)).toEqual([])
    const differ = [...same, log(device, [[1, 24]])]
    expect(logsOf(differ)[0]?.readings).toEqual([[1, 21]])
    expect(flagsOf(differ)).toEqual([
      'conflict: One time has two different readings of core by Logger North, first at 1.00 h; the first recorded stands.',
    ])
  })

  it('are taken back and corrected one by one', () => {
    const device = new ExampleDevice('d1')
    const entries = [log(device, [[0, 20]]), log(device, [[1, 99]]), log(device, [[2, 22]])]
    const about = entries[1]?.id as string
    const correct = (value: Entry['value']): Entry =>
      device.make(LEAD, { kind: 'correction', subject: PANEL, about, value, reason: 'probe pulled' })
    const back = correct(null)
    expect(logsOf([...entries, back])[0]).toMatchObject({
      entry: entries[2]?.id,
      entries: [entries[0]?.id, entries[2]?.id],
      readings: [
        [0, 20],
        [2, 22],
      ],
    })
    const better = correct({ channel: 'core', readings: [[1, 21]] })
    expect(logsOf([...entries, better])[0]).toMatchObject({
      entry: better.id,
      by: LOGGER,
      readings: [
        [0, 20],
        [1, 21],
        [2, 22],
      ],
    })
  })

  it('keep what no sensor reads apart', () => {
    const device = new ExampleDevice('d1')
    const entries = [
      log(device, [
        [0, 20],
        [1, -127],
        [2, 22],
      ]),
    ]
    expect(logsOf(entries)[0]).toMatchObject({
      readings: [
        [0, 20],
        [2, 22],
      ],
      broken: [[1, -127]],
    })
  })

  it('that name their mixing time follow it where the pour is corrected', () => {
    const device = new ExampleDevice('d1')
    const pour = cast(device)
    const before = log(
      device,
      [
        [0.25, 20],
        [1, 21],
      ],
      { mixed: MIXED },
    )
    const typed = log(device, [[1, 30]], { by: FLOOR })
    const value = { at: '2026-03-02T08:30:00.000Z' }
    const moved = device.make(FLOOR, {
      kind: 'correction',
      subject: PANEL,
      about: pour.id,
      value,
      reason: 'by the docket',
    })
    const after = log(
      device,
      [
        [0.5, 21],
        [1, 22],
      ],
      { mixed: value.at },
    )
    const [own, logger] = logsOf([pour, before, typed, moved, after])
    // 09:00 is half an hour after the corrected mixing; 08:15 lies before it. Hours without a mixing time stay.
    expect(logger?.readings).toEqual([
      [0.5, 21],
      [1, 22],
    ])
    expect(own?.readings).toEqual([[1, 30]])
    expect(flagsOf([pour, before, typed, moved, after])).toEqual([])
  })

  it('are the same log whatever pieces they came in and whatever order those arrived in', () => {
    const celsius = fc.array(fc.integer({ min: 5, max: 60 }), { minLength: 2, maxLength: 30 })
    fc.assert(
      fc.property(
        celsius,
        fc.infiniteStream(fc.nat(4)),
        fc.infiniteStream(fc.nat(1000)),
        (values, cut, mix) => {
          const device = new ExampleDevice('d1')
          const pour = cast(device)
          const all = values.map((value, index): Reading => [index / 3, value])
          const pieces: Reading[][] = [[], [], [], [], []]
          for (const reading of all) pieces[cut.next().value as number]?.push(reading)
          const entries = pieces
            .filter((piece) => piece.length > 0)
            .map((piece) => log(device, piece, { mixed: MIXED }))
          const turned = [pour, ...entries]
            .map((entry) => ({ entry, key: mix.next().value as number }))
            .sort((a, b) => a.key - b.key)
            .map(({ entry }) => entry)
          const [found, ...others] = logsOf(turned)
          expect(others).toEqual([])
          expect(found?.readings).toEqual(all)
          expect(found?.entries).toEqual(entries.map(({ id }) => id))
          expect(logsOf([pour, ...entries])).toEqual(logsOf(turned))
        },
      ),
    )
  })
})

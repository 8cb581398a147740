import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { logFaults } from './log-faults.ts'
import type { LogRow, RawLog } from './raw-log.ts'
import { channelReadings } from './sound-readings.ts'

/** A night as a logger sees it: the core warms by hydration and cools, the face follows the air; a reading every ten minutes. */
function night(change: (row: LogRow) => LogRow | null = (row) => row): RawLog {
  const rows = Array.from({ length: 145 }, (_, at): LogRow => {
    const hours = at / 6
    const core = 20 + 28 * Math.exp(-(((hours - 11) / 5) ** 2))
    const face = 14 + 14 * Math.exp(-(((hours - 10) / 5) ** 2)) + 2 * Math.cos(hours / 4)
    return { row: at + 2, hours, celsius: [Number(core.toFixed(1)), Number(face.toFixed(1))] }
  })
  return { channels: ['core', 'face'], rows: rows.flatMap((row) => change(row) ?? []) }
}

const kinds = (log: RawLog) => logFaults(log).map(({ kind, rows }) => [kind, ...rows])

function at(hours: number, set: (celsius: readonly (number | null)[]) => (number | null)[]) {
  return (row: LogRow): LogRow =>
    Math.abs(row.hours - hours) < 1e-9 ? { ...row, celsius: set(row.celsius) } : row
}

describe('what is wrong with a logger’s file', () => {
  it('is nothing in a quiet night', () => {
    expect(kinds(night())).toEqual([])
  })

  it('a pause, and a channel that gives nothing while the other reads', () => {
    expect(kinds(night((row) => (row.hours > 3 && row.hours < 5.2 ? null : row)))).toEqual([['gap', 20, 34]])
    const silent = night((row) =>
      row.hours >= 8 && row.hours <= 9 ? { ...row, celsius: [row.celsius[0] ?? null, null] } : row,
    )
    expect(logFaults(silent)).toMatchObject([{ kind: 'gap', channel: 1, rows: [50, 56] }])
  })

  it('a spike, also on the steep flank, and not the flank itself', () => {
    expect(kinds(night(at(8, ([core, face]) => [(core ?? 0) + 9, face ?? 0])))).toEqual([['spike', 50, 50]])
    const wide = night((row) =>
      row.hours > 4 && row.hours < 4.5 ? { ...row, celsius: [60, row.celsius[1] ?? 0] } : row,
    )
    expect(kinds(wide).map(([kind]) => kind)).toEqual(['spike', 'spike'])
  })

  it('a value that no sensor reads', () => {
    expect(kinds(night(at(2, ([, face]) => [-127, face ?? 0])))).toEqual([['range', 14, 14]])
  })

  it('a probe that was pulled: the step stays', () => {
    const pulled = night((row) => (row.hours > 12 ? { ...row, celsius: [12, row.celsius[1] ?? 0] } : row))
    const found = logFaults(pulled)
    expect(found.map(({ kind }) => kind)).toContain('jump')
    expect(found.map(({ kind }) => kind)).not.toContain('spike')
  })

  it('channels that change places, and change back', () => {
    const crossed = night((row) =>
      row.hours > 9 && row.hours < 14 ? { ...row, celsius: [...row.celsius].reverse() } : row,
    )
    expect(
      logFaults(crossed)
        .filter(({ kind }) => kind === 'swapped')
        .map(({ rows }) => rows),
    ).toEqual([
      [56, 57],
      [85, 86],
    ])
  })

  it('a clock put forward and back by an hour, and one that runs backwards', () => {
    const forward = night((row) => (row.hours > 7 ? { ...row, hours: row.hours + 1 } : row))
    expect(kinds(forward).map(([kind]) => kind)).toEqual(['clock', 'gap'])
    const back = night((row) => (row.hours > 7 ? { ...row, hours: row.hours - 1 } : row))
    expect(logFaults(back)).toMatchObject([{ kind: 'clock', text: expect.stringContaining('put back') }])
  })

  it('a channel that stands still while the other moves', () => {
    const stuck = night((row) =>
      row.hours > 4 && row.hours < 12 ? { ...row, celsius: [24.3, row.celsius[1] ?? 0] } : row,
    )
    expect(logFaults(stuck).map(({ kind }) => kind)).toContain('stands')
  })

  it('finds one spike anywhere and leaves the other readings as they are', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 6, max: 138 }),
        fc.double({ min: 8, max: 60, noNaN: true }),
        (place, height) => {
          const log = night((row) =>
            row.row === place
              ? { ...row, celsius: [(row.celsius[0] ?? 0) + height, row.celsius[1] ?? 0] }
              : row,
          )
          const faults = logFaults(log)
          expect(faults.some(({ kind, rows }) => kind === 'spike' && rows[0] === place)).toBe(true)
          const kept = channelReadings(log, 0, { faults, leaveOut: true })
          const whole = channelReadings(night(), 0, { faults: [], leaveOut: false })
          expect(kept).toEqual(whole.filter((_, index) => index !== place - 2))
        },
      ),
    )
  })

  it('is found in any order of the rows of the file', () => {
    const log = night(at(2, ([, face]) => [-127, face ?? 0]))
    const turned = { ...log, rows: [...log.rows].reverse() }
    expect(logFaults(turned).filter(({ kind }) => kind !== 'clock')).toEqual(logFaults(log))
  })

  it('says nothing of an empty log or of one row', () => {
    expect(logFaults({ channels: ['core'], rows: [] })).toEqual([])
    expect(logFaults({ channels: ['core'], rows: [{ row: 2, hours: 0, celsius: [20] }] })).toEqual([])
  })
})

import { describe, expect, it } from 'vitest'
import type { TemperatureLog } from './facts.ts'
import { faultsOfLog } from './faults-of-log.ts'

const LOGGER = { id: 'logger-1', name: 'Logger North', role: 'floor' } as const

/** A night of readings every ten minutes; the core warms and cools, the face less. */
function log(channel: string, change: Partial<TemperatureLog> = {}): TemperatureLog {
  const warm = channel === 'core' ? 28 : 14
  const readings = Array.from({ length: 145 }, (_, at) => {
    const hours = at / 6
    return [hours, Number((18 + warm * Math.exp(-(((hours - 11) / 5) ** 2))).toFixed(1))] as const
  })
  return { entry: channel, entries: [channel], channel, by: LOGGER, readings, ...change }
}

const kinds = (faults: ReturnType<typeof faultsOfLog>) =>
  faults.map(({ kind, hours: [from] }) => [kind, from])

describe('faults of a log of the record', () => {
  it('are none in a quiet night', () => {
    expect(faultsOfLog(log('core'), [log('core'), log('face')])).toEqual([])
  })

  it('are a value that no sensor reads, kept apart in the log, and a pause', () => {
    const core = log('core')
    const broken = log('core', {
      readings: core.readings.filter(([hours]) => hours !== 2 && !(hours > 5 && hours < 7)),
      broken: [[2, -127]],
    })
    expect(kinds(faultsOfLog(broken))).toEqual([
      ['range', 2],
      ['gap', 5],
    ])
  })

  it('see a channel of the same logger that was read beside it: one stops, two change places', () => {
    const [core, face] = [log('core'), log('face')]
    const silent = log('face', { readings: face.readings.filter(([hours]) => hours < 20) })
    expect(faultsOfLog(silent)).toEqual([])
    expect(kinds(faultsOfLog(silent, [core, silent]))).toEqual([['gap', 20]])
    expect(faultsOfLog(core, [core, silent])).toEqual([])
    const cross = (to: TemperatureLog, from: TemperatureLog) =>
      to.readings.map(
        ([hours, celsius], at) => [hours, hours > 9 ? (from.readings[at]?.[1] ?? 0) : celsius] as const,
      )
    const crossed = log('core', { readings: cross(core, face) })
    const other = log('face', { readings: cross(face, core) })
    expect(kinds(faultsOfLog(crossed, [crossed, other]))).toContainEqual(['swapped', 9])
  })

  it('do not hold a log against another person’s, or one read at other times', () => {
    const face = log('face')
    const stops = log('core', { readings: log('core').readings.filter(([hours]) => hours < 20) })
    const foreign = { ...face, by: { ...LOGGER, id: 'p1' } }
    const shifted = log('face', {
      readings: face.readings.map(([hours, celsius]) => [hours + 0.01, celsius]),
    })
    expect(faultsOfLog(stops, [stops, foreign, shifted])).toEqual([])
  })
})

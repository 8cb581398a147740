import { describe, expect, it } from 'vitest'
import { concreteLogs, curveLow } from './curve-low.ts'
import type { TemperatureLog } from './facts.ts'
import { strengthAtLift } from './strength-at-lift.ts'

const mix = {
  mark: 'M40',
  strength: 40,
  scatter: 0.08,
  curve: { form: 'hyperbolic', ultimate: 50, rate: 0.03, offset: 4 },
  reference: 20,
  activation: 40_000,
} as const

function log(
  channel: string,
  celsius: number,
  entries: readonly string[],
  hours = [0, 9, 18],
): TemperatureLog {
  return {
    entry: entries.at(-1) ?? '',
    entries,
    channel,
    by: { id: 'logger-1', name: 'Logger North', role: 'floor' },
    readings: hours.map((hour) => [hour, celsius] as const),
  }
}

describe('the curve along the logs of a pour', () => {
  it('rests on every entry of the coldest channel, and so does the strength at the lift', () => {
    const logs = [log('core', 30, ['c1', 'c2']), log('face', 12, ['f1', 'f2', 'f3']), log('air', 2, ['a1'])]
    const low = curveLow({ mix, logs, hour: 18 })
    expect(low?.rests).toEqual(['f1', 'f2', 'f3'])
    const by = { id: 'p1', name: 'Tom Reed', role: 'floor' } as const
    const cylinder = {
      entry: 's1',
      specimen: 'C1',
      kind: 'cylinder',
      age: 17,
      strength: 24,
      by,
      seen: '',
    } as const
    const strength = strengthAtLift({ specimens: [cylinder], hour: 18, scatter: 0.08, curveLow: low })
    expect(strength.known && strength.value.rests).toEqual(['s1', 'f1', 'f2', 'f3'])
  })

  it('leaves a channel that never read a temperature out while another one does', () => {
    const dead = { ...log('edge', 0, ['e1'], []), broken: [[1, -127]] as const }
    const core = log('core', 20, ['c1'])
    expect(concreteLogs([dead, core])).toEqual([core])
    expect(concreteLogs([dead])).toEqual([dead])
  })
})

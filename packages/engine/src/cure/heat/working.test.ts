import { describe, expect, it } from 'vitest'
import { replay } from '../../working/replay.ts'
import { runHeat } from './run.ts'
import { problemOf } from './testing.ts'
import { heatSteps } from './working.ts'

describe('the working of a run', () => {
  it('replays: each printed formula with its numbers gives its result', () => {
    const problem = problemOf({ air: 8, top: { film: 10, resistance: 0.4 }, bottom: { film: 6 } })
    const steps = heatSteps(problem, runHeat(problem))
    expect(steps.map(({ symbol }) => symbol)).toEqual([
      'a',
      'ΔTad',
      'U top',
      'U bottom',
      'Tmax',
      'Tcore',
      'ΔT',
      'E',
    ])
    for (const step of steps) {
      const value = replay(step)
      if (value !== null) expect(Math.abs(value - Number(step.result))).toBeLessThan(1e-6)
    }
  })

  it('has no U of a closed or a held face', () => {
    const problem = problemOf({ top: { film: 0 }, bottom: { temperature: 30 } })
    expect(heatSteps(problem, runHeat(problem)).filter(({ symbol }) => symbol.startsWith('U'))).toEqual([])
  })
})

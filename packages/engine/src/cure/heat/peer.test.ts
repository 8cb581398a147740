import { describe, expect, it } from 'vitest'
import { heatCases, methodOfLines } from './peer/index.ts'
import { runHeat } from './run.ts'

describe('against the method of lines (computed, second method: 100 spaces, Crank and Nicolson at 30 s)', () => {
  it.each(heatCases())('$name', ({ problem }) => {
    const run = runHeat(problem)
    const lines = methodOfLines(problem, 100, 30)
    expect(run.times).toHaveLength(lines.times.length)
    for (const column of ['core', 'top', 'bottom', 'mean', 'hottest'] as const) {
      const worst = Math.max(
        ...run[column].map((celsius, index) => Math.abs(celsius - lines[column][index]!)),
      )
      expect(worst, column).toBeLessThan(0.06)
    }
    const last = run.times.length - 1
    expect(Math.abs(run.equivalentAge[last]! / lines.equivalentAge[last]! - 1)).toBeLessThan(0.002)
    expect(Math.abs(run.degree[last]! - lines.degree[last]!)).toBeLessThan(0.001)
  })
})

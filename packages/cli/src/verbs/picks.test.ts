import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const ELL = {
  format: 'castwright.drawing/1',
  mark: 'L1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 1800],
    [4000, 1800],
    [4000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40, density: 2500 },
}

function picks(args: readonly string[], drawing: object = ELL) {
  return cli(['picks', 'W.json', ...args], { 'W.json': JSON.stringify(drawing) })
}

describe('castwright picks', () => {
  it('four inserts with loads, peak and what stands beside', async () => {
    const { code, json } = await picks(['--count', '4', '--json', '--explain'])
    expect(code).toBe(0)
    const found = json() as { inserts: { mark: string }[]; loads: number[]; peak: number; seconds: number }
    expect(found.inserts.map(({ mark }) => mark)).toEqual(['A', 'B', 'C', 'D'])
    expect(found.loads.reduce((sum, load) => sum + load, 0)).toBeCloseTo(5.85 * 9.80665, 4)
    expect(found.peak).toBeGreaterThan(0.3)
    expect(found.seconds).toBeGreaterThan(0)
    expect(json()).toMatchObject({ before: null })
  })

  it.each<[string, string[], RegExp]>([
    ['no count', [], /--count/],
    ['five', ['--count', '5'], /--count.*2, 4, 6, 8/],
    ['an edge distance that leaves no place', ['--count', '4', '--edge', '1500'], /edge/],
    ['another kind', ['--count', '4', '--kind', 'side'], /--kind/],
    ['a grid of three', ['--count', '4', '--grid', '1,2,3'], /--grid/],
    ['symmetry where there is none', ['--count', '4', '--symmetric'], /symmetric/],
  ])('refuses %s', async (_, args, message) => {
    const { code, out, err } = await picks(args)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err).toMatch(message)
  })

  it('reads as a table', async () => {
    const { out } = await picks(['--count', '2'])
    expect(out).toMatch(/Insert A at/)
    expect(out).toMatch(/Peak tension/)
  })
})

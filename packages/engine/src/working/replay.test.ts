import { describe, expect, it } from 'vitest'
import { replay } from './replay.ts'
import { GEOMETRY } from './source.ts'
import type { Step } from './worked.ts'

function step(formula: string, given: Step['given']): Step {
  return { symbol: 'x', formula, given, result: 0, unit: '', source: GEOMETRY }
}

describe('replay', () => {
  it.each<[string, Step['given'], number]>([
    ['π d² / 4', { d: 16 }, 201.06192982974676],
    ['A L ρ / 10⁹', { A: 201.06192982974676, L: 6000, ρ: 7850 }, 9.470016894981068],
    ['0.7 · 0.30 · fck^(2/3)', { fck: 30 }, 2.0275563],
    ['min(a, b) − max(1, c)', { a: 3, b: 2, c: 0.5 }, 1],
    ['W / (n cos(β°))', { W: 40, n: 4, β: 60 }, 20],
    ['√(a² + b²)', { a: 3, b: 4 }, 5],
    ['0.415 √f′c', { 'f′c': 16 }, 1.66],
    ['−a · 2', { a: 3 }, -6],
    ['x⁻¹', { x: 4 }, 0.25],
    ['exp(−E / R · (1/T − 1/Tr))', { E: 40000, R: 8.314, T: 293.15, Tr: 296.15 }, 0.84683],
  ])('%s', (formula, given, expected) => {
    expect(replay(step(formula, given))).toBeCloseTo(expected, 4)
  })

  it('does not replay what was read from a table', () => {
    expect(replay({ ...step('row 16 mm', {}), by: 'table' })).toBeNull()
  })

  it('refuses a formula that names what was not given', () => {
    expect(() => replay(step('a + b', { a: 1 }))).toThrow(/expected/)
  })
})

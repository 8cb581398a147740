import { describe, expect, it } from 'vitest'
import { codeFamily, FAMILIES } from '../codes/index.ts'
import { bendGauge } from './gauge.ts'

function disc(family: keyof typeof FAMILIES, size: string, role: 'main' | 'stirrup'): number | undefined {
  return bendGauge(codeFamily(family)).discs.find(({ uses }) =>
    uses.some((use) => use.size === size && use.role === role && !use.plain),
  )?.diameter
}

describe('discs of the bend gauge', () => {
  it('are the least bends of the family: NZS 3109:1997 table 3.1, EN 1992-1-1:2004 table 8.1N, ACI 318-19 table 25.3.1', () => {
    expect(disc('nz', '16 mm', 'main')).toBe(80)
    expect(disc('nz', '10 mm', 'stirrup')).toBe(40)
    expect(disc('eu', '16 mm', 'main')).toBe(64)
    expect(disc('eu', '20 mm', 'main')).toBe(140)
    expect(disc('us', 'No. 8', 'main')).toBeCloseTo(152.4, 3)
  })

  it.each(Object.values(FAMILIES))(
    '$id: every stocked size has a disc or is named as not known',
    (family) => {
      const { discs, unknown } = bendGauge(family)
      expect(discs.length).toBeGreaterThan(5)
      for (const { diameter, uses } of discs) {
        expect(diameter).toBeGreaterThan(0)
        expect(uses.length).toBeGreaterThan(0)
      }
      const told = new Set([
        ...discs.flatMap(({ uses }) => uses.map((use) => `${use.size}, ${use.role}`)),
        ...unknown,
      ])
      for (const role of ['main', 'stirrup']) {
        expect([...told].filter((words) => words.endsWith(role)).length).toBeGreaterThanOrEqual(9)
      }
      expect(new Set(discs.map(({ diameter }) => diameter)).size).toBe(discs.length)
    },
  )
})

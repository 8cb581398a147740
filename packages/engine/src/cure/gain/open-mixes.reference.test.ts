import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { withoutRepeats } from './aged-strength.ts'
import { alikeGroups, openMixes, PROPORTIONS } from './open-mixes.ts'

const CSV = readFileSync(fileURLToPath(new URL('./strength-by-age.csv', import.meta.url)), 'utf8')

// I-C. Yeh, "Concrete Compressive Strength", UCI Machine Learning Repository, 1998 (CC BY 4.0): counts of the part kept here,
// computed, second method: a spreadsheet count of the file.
describe('open strength tests', () => {
  const mixes = openMixes()
  const strengths = mixes.flatMap(({ tests }) => tests.map(({ strength }) => strength))

  it('holds 666 tests of 339 mixes, 69 of them at four ages or more', () => {
    expect(strengths).toHaveLength(666)
    expect(mixes).toHaveLength(339)
    expect(mixes.filter(({ tests }) => new Set(tests.map(({ days }) => days)).size >= 4)).toHaveLength(69)
  })

  it('has a mean of 36.492 and a standard deviation of 16.955 MPa', () => {
    const mean = strengths.reduce((sum, each) => sum + each, 0) / strengths.length
    const squares = strengths.reduce((sum, each) => sum + (each - mean) ** 2, 0)
    expect(mean).toBeCloseTo(36.492, 3)
    expect(Math.sqrt(squares / (strengths.length - 1))).toBeCloseTo(16.955, 3)
  })

  it('ships the rows of the file, each number as it stands there', () => {
    const rows = mixes.flatMap(({ mark, proportions, tests }) =>
      tests.map(({ days, strength }) => [
        mark,
        ...PROPORTIONS.map((name) => proportions[name]),
        days,
        strength,
      ]),
    )
    const listed = CSV.trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(',').map((field, at) => (at === 0 ? field : Number(field))))
    expect(rows).toEqual(listed)
  })

  it('counts a row that was copied once, and two results of one age twice', () => {
    const copied = mixes.find(({ mark }) => mark === 'M357')
    expect(copied?.tests).toHaveLength(20)
    expect(withoutRepeats(copied?.tests ?? []).map(({ days, strength }) => [days, strength])).toEqual([
      [3, 35.3],
      [7, 22.9],
      [7, 55.9],
      [28, 71.3],
      [56, 77.3],
      [91, 79.3],
    ])
  })

  it('puts mixes of nearly the same proportions in one group, and no others', () => {
    const groups = alikeGroups(mixes)
    expect(new Set(groups).size).toBeLessThan(mixes.length)
    for (const [i, a] of mixes.entries())
      for (const [j, b] of mixes.entries()) {
        const apart = Math.max(
          ...PROPORTIONS.map((name) => Math.abs(a.proportions[name] - b.proportions[name])),
        )
        if (apart < 3) expect(groups[i]).toBe(groups[j])
      }
    // M005 and M006 differ by rounding only; M004 has no fly ash.
    const groupOf = (mark: string) => groups[mixes.findIndex((mix) => mix.mark === mark)]
    expect(groupOf('M005')).toBe(groupOf('M006'))
    expect(groupOf('M004')).not.toBe(groupOf('M005'))
  })
})

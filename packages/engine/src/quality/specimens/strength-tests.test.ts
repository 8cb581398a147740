import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { emptyPanelFacts } from '../../steps/empty-facts.ts'
import type { PanelFacts, SpecimenResult, SpecimenSet } from '../../steps/facts.ts'
import { strengthTests } from './strength-tests.ts'

const BY = { id: 'p', name: 'Jo', role: 'floor' } as const

function result(
  specimen: string,
  age: number,
  strength: number,
  more: Partial<SpecimenResult> = {},
): SpecimenResult {
  return { entry: specimen, specimen, kind: 'cylinder', age, strength, by: BY, seen: '', ...more }
}

function pour(
  mark: string,
  day: string,
  specimens: readonly SpecimenResult[],
  sets: readonly SpecimenSet[] = [],
): PanelFacts {
  return {
    ...emptyPanelFacts({ job: 'J', mark }),
    cast: { entry: 'c', at: `${day}T06:00:00.000Z`, bed: null, mix: 'K40' },
    specimens,
    sets,
  }
}

const SET: SpecimenSet = {
  entry: 's',
  set: 'S1',
  kind: 'cylinder',
  made: '2026-09-01T06:30:00.000Z',
  tests: [{ age: 168, cured: 'standard', specimens: ['a', 'b'] }],
  by: BY,
  seen: '',
}

describe('results that are one test', () => {
  it('are those of one pour within two hours, cured alike and of one kind', () => {
    const tests = strengthTests([
      pour('W1', '2026-09-01', [
        result('a', 18, 20),
        result('b', 18.5, 22),
        result('c', 18, 30, { kind: 'cube' }),
        result('d', 18, 19, { cured: 'standard' }),
        result('e', 24, 26),
      ]),
    ])
    expect(tests.map(({ specimens }) => specimens)).toEqual([['c'], ['d'], ['a', 'b'], ['e']])
    expect(tests[2]).toMatchObject({ strength: 21, age: 18.25, strengths: [20, 22], cured: 'panel' })
  })

  it('are those planned for one age of a set, however far apart, and once for all its panels', () => {
    const cured = { cured: 'standard' } as const
    const tests = strengthTests([
      pour('W1', '2026-09-01', [result('a', 168, 40, cured), result('b', 180, 44, cured)], [SET]),
      pour('W2', '2026-09-01', [result('a', 167, 40, cured), result('b', 179, 44, cured)], [SET]),
    ])
    expect(tests).toMatchObject([{ panels: ['J/W1', 'J/W2'], specimens: ['a', 'b'], strength: 42 }])
  })

  it('count once where one specimen was entered for several panels without a set', () => {
    const same = [result('a', 18, 20)]
    expect(strengthTests([pour('W1', '2026-09-01', same), pour('W2', '2026-09-01', same)])).toHaveLength(1)
    expect(strengthTests([pour('W1', '2026-09-01', same), pour('W2', '2026-09-02', same)])).toHaveLength(2)
  })

  it('stand in the order of sampling, not of entry, and pours without a mix are left out', () => {
    const late = pour('W1', '2026-09-03', [result('x', 18, 20)])
    const bare = { ...pour('W3', '2026-09-01', [result('z', 18, 20)]), cast: null }
    const tests = strengthTests([late, bare, pour('W2', '2026-09-02', [result('y', 400, 20)])])
    expect(tests.map(({ specimens }) => specimens[0])).toEqual(['y', 'x'])
  })

  it('hold every specimen once', () => {
    const ages = fc.array(fc.double({ min: 1, max: 800, noNaN: true }), { maxLength: 20 })
    fc.assert(
      fc.property(ages, (drawn) => {
        const specimens = drawn.map((age, i) => result(`s${i}`, age, 20 + i))
        const found = strengthTests([pour('W1', '2026-09-01', specimens)])
        expect(found.flatMap((test) => test.specimens).sort()).toEqual(
          specimens.map(({ specimen }) => specimen).sort(),
        )
        for (const { strengths, strength } of found) {
          expect(strength).toBeGreaterThanOrEqual(Math.min(...strengths) - 1e-9)
          expect(strength).toBeLessThanOrEqual(Math.max(...strengths) + 1e-9)
        }
      }),
    )
  })
})

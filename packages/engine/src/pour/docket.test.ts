import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { type DocketInput, docketCheck } from './docket.ts'

const nz = codeFamily('nz')
const GOOD: DocketInput = {
  family: codeFamily('au'),
  ageMinutes: 60,
  slump: 100,
  ordered: [80, 120],
  temperature: 20,
  water: { added: 0, allowed: null, afterDischarge: false },
}

const verdicts = (input: DocketInput) =>
  Object.fromEntries(docketCheck(input).map(({ id, verdict }) => [id, verdict]))

describe('docket', () => {
  it('a good load meets every condition', () => {
    expect(new Set(Object.values(verdicts(GOOD)))).toEqual(new Set(['pass']))
  })

  it.each<[string, Partial<DocketInput>, string]>([
    ['docket-age', { ageMinutes: 90 }, 'pass'],
    ['docket-age', { ageMinutes: 91 }, 'fail'],
    ['docket-age', { ageMinutes: 75, statedMinutes: 60 }, 'fail'],
    ['docket-age', { ageMinutes: null }, 'unknown'],
    ['docket-age', { ageMinutes: -5 }, 'unknown'],
    ['docket-age', { family: codeFamily('us') }, 'unknown'],
    ['docket-age', { family: codeFamily('eu') }, 'unknown'],
    ['docket-age', { family: codeFamily('us'), statedMinutes: 90 }, 'pass'],
    ['docket-slump-low', { slump: 80 }, 'pass'],
    ['docket-slump-low', { slump: 79 }, 'fail'],
    ['docket-slump-high', { slump: 120 }, 'pass'],
    ['docket-slump-high', { slump: 121 }, 'fail'],
    ['docket-slump-high', { slump: undefined }, 'unknown'],
    ['docket-slump-high', { ordered: null }, 'unknown'],
    ['docket-slump-low', { ordered: [120, 80] }, 'unknown'],
    ['docket-slump-high', { family: nz, ordered: 100, slump: 130 }, 'pass'],
    ['docket-slump-high', { family: nz, ordered: 100, slump: 131 }, 'fail'],
    ['docket-slump-high', { family: nz, ordered: 100, sample: 'composite', slump: 121 }, 'fail'],
    ['docket-temperature-low', { temperature: 5 }, 'pass'],
    ['docket-temperature-low', { temperature: 4.9 }, 'fail'],
    ['docket-temperature-high', { temperature: 35.1 }, 'fail'],
    ['docket-temperature-high', { temperature: Number.NaN }, 'unknown'],
    ['docket-temperature-high', { family: nz }, 'unknown'],
    ['docket-water', { water: { added: 10, allowed: 15, afterDischarge: false } }, 'pass'],
    ['docket-water', { water: { added: 16, allowed: 15, afterDischarge: false } }, 'fail'],
    ['docket-water', { water: { added: 10, allowed: 15, afterDischarge: true } }, 'fail'],
    ['docket-water', { water: { added: 10, allowed: null, afterDischarge: false } }, 'unknown'],
    ['docket-water', { water: null }, 'unknown'],
  ])('%s with %o: %s', (id, change, expected) => {
    expect(verdicts({ ...GOOD, ...change })[id]).toBe(expected)
  })

  it('what is not known says its name', () => {
    const found = docketCheck({ family: codeFamily('us') })
    expect(found.every(({ verdict }) => verdict === 'unknown')).toBe(true)
    expect(found.flatMap(({ unknown }) => unknown ?? []).join('; ')).toMatch(
      /no default since 2021.*slump.*temperature.*water/,
    )
  })
})

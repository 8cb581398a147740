import { describe, expect, it } from 'vitest'
import { InputError } from '../../working/issue.ts'
import { replay } from '../../working/replay.ts'
import { type Gain, type GainInput, gainOf } from './gain.ts'
import { openMixes } from './open-mixes.ts'
import { readGainTests } from './read-gain.ts'

const MIX = { cement: 360, slag: 40, flyAsh: 60, water: 168, superplasticizer: 6.5, coarse: 940, fine: 780 }
const TESTS = [
  { age: 72, strength: 24.1 },
  { age: 168, strength: 33.6 },
]
const AT = 672

/** Known numbers, or a failed test. */
function knownOf(input: GainInput): Record<'strength' | 'low' | 'high', number> & Gain {
  const found = gainOf(input)
  const { strength, low, high } = found
  if (strength === null || low === null || high === null) throw new Error(found.unknown.join('; '))
  return { ...found, strength, low, high }
}

describe('strength at a later age from early tests', () => {
  it('lies in its band, and above the last early test at 28 days', () => {
    for (const mix of [undefined, MIX]) {
      const { strength, low, high } = knownOf({ tests: TESTS, at: AT, ...(mix === undefined ? {} : { mix }) })
      expect(low).toBeGreaterThan(0)
      expect(strength).toBeGreaterThan(low)
      expect(high).toBeGreaterThan(strength)
      expect(strength).toBeGreaterThan(33.6)
    }
  })

  it('has a narrower band with the mix given than without, and with more tests than with one', () => {
    const width = (input: GainInput) => {
      const { strength, low, high } = knownOf(input)
      return (high - low) / strength
    }
    expect(width({ tests: TESTS, mix: MIX, at: AT })).toBeLessThan(width({ tests: TESTS, at: AT }))
    expect(width({ tests: TESTS, at: AT })).toBeLessThan(width({ tests: TESTS.slice(0, 1), at: AT }))
  })

  it('says what it rests on', () => {
    expect(gainOf({ tests: TESTS.slice(0, 1), at: AT }).restsOn).toMatch(/^1 test of this mix; .*whatever/)
    expect(gainOf({ tests: TESTS, mix: MIX, at: AT }).restsOn).toMatch(
      /^2 tests of this mix; .*nearest in proportions/,
    )
  })

  it('does not depend on the order of tests, and counts a repeated row once', () => {
    const one = knownOf({ tests: TESTS, mix: MIX, at: AT })
    const other = knownOf({ tests: TESTS.toReversed(), mix: MIX, at: AT })
    expect(other.strength).toBeCloseTo(one.strength, 8)
    const repeated = knownOf({ tests: [...TESTS, ...TESTS.slice(1)], mix: MIX, at: AT })
    expect(repeated.strength).toBeCloseTo(one.strength, 8)
    expect(repeated.warnings).toEqual([expect.stringMatching(/repeat another/)])
  })

  it('counts a warm test as older, by the age method', () => {
    // 40 000 J/mol, reference 20 °C: an hour at 30 °C counts 1.718.
    const warm = knownOf({ tests: [{ age: 100, strength: 24, temperature: 30 }], at: AT })
    const older = knownOf({ tests: [{ age: 171.84, strength: 24 }], at: AT })
    expect(warm.strength).toBeCloseTo(older.strength, 2)
    expect(warm.assumed.map(({ field }) => field)).toEqual(['reference', 'activation', 'at'])
    expect(older.assumed.map(({ field }) => field)).toEqual(['reference', 'tests[].temperature', 'at'])
    const given = gainOf({
      tests: [{ age: 100, strength: 24, temperature: 20 }],
      at: AT,
      reference: 20,
      activation: 4e4,
    })
    expect(given.assumed.map(({ field }) => field)).toEqual(['at'])
  })

  it('names a slipped result, which draws the answer little', () => {
    const sound = [
      { age: 24, strength: 13 },
      { age: 72, strength: 24.1 },
      { age: 120, strength: 29.5 },
      { age: 168, strength: 33.6 },
    ]
    const clean = knownOf({ tests: sound, mix: MIX, at: AT })
    const slipped = knownOf({ tests: sound.with(2, { age: 120, strength: 9 }), mix: MIX, at: AT })
    expect(slipped.slipped).toEqual([2])
    expect(slipped.warnings.join()).toMatch(/tests\[2\]: 9 MPa at 5 days does not fit/)
    expect(Math.abs(slipped.strength - clean.strength)).toBeLessThan(2)
  })

  it('takes tests at one age, and a single test', () => {
    const same = knownOf({
      tests: [TESTS[0], { age: 72, strength: 26 }] as GainInput['tests'],
      mix: MIX,
      at: AT,
    })
    const single = knownOf({ tests: TESTS.slice(0, 1), mix: MIX, at: AT })
    expect(same.strength).toBeGreaterThan(single.strength)
    expect(same.high - same.low).toBeLessThan(single.high - single.low + 1)
  })

  it('widens the band where a lone test does not fit the mix, and says so', () => {
    const odd = gainOf({ tests: [{ age: 168, strength: 3 }], mix: MIX, at: AT })
    expect(odd.warnings.join()).toMatch(/do not fit what is known of such a mix/)
    expect(Math.log((odd.high ?? 0) / (odd.low ?? 1))).toBeGreaterThan(
      Math.log(
        (gainOf({ tests: TESTS.slice(1), mix: MIX, at: AT }).high ?? 0) /
          (gainOf({ tests: TESTS.slice(1), mix: MIX, at: AT }).low ?? 1),
      ),
    )
  })

  it('says what lies outside the open mixes with a wider band, and nothing far outside', () => {
    const near = gainOf({ tests: TESTS, mix: { ...MIX, cement: 560 }, at: AT })
    expect(near.unknown).toEqual([])
    expect(near.warnings.join()).toMatch(/mix\.cement: 560 is outside the open mixes, 122\.6 to 540/)
    const far = gainOf({ tests: TESTS, mix: { ...MIX, cement: 900 }, at: AT })
    expect([far.strength, far.low, far.high]).toEqual([null, null, null])
    expect(far.unknown).toEqual([expect.stringMatching(/^mix\.cement: 900 is far outside/)])
    expect(gainOf({ tests: TESTS, mix: { ...MIX, water: 400 }, at: AT }).unknown.join()).toMatch(/mix\.water/)
  })

  it('says nothing before a day, or after a year, but between tests of the mix', () => {
    const young = [
      { age: 14, strength: 12 },
      { age: 24, strength: 18 },
    ]
    expect(gainOf({ tests: young, at: 10 }).unknown).toEqual([expect.stringMatching(/^at: .*0\.4167 days/)])
    expect(gainOf({ tests: young, at: 366 * 24 }).strength).toBeNull()
    const between = knownOf({ tests: young, at: 18 })
    expect(between.strength).toBeGreaterThan(12)
    expect(between.strength).toBeLessThan(18)
    expect(between.warnings.join()).toMatch(/one test younger than 3 days/)
    expect(knownOf({ tests: TESTS, at: 365 * 24 }).warnings).toEqual([])
  })

  it('is not known at a temperature at which no age is counted', () => {
    const cold = gainOf({ tests: [{ age: 72, strength: 20, temperature: -60 }], at: AT, activation: 1e9 })
    expect(cold.unknown).toEqual([expect.stringMatching(/^tests\[0\]\.temperature/)])
    expect(gainOf({ tests: TESTS, at: Number.NaN }).unknown.join()).toMatch(/^at/)
  })

  it('shows steps that replay', () => {
    const { working, low } = knownOf({
      tests: [{ age: 60, strength: 20, temperature: 31 }],
      mix: MIX,
      at: AT,
    })
    let held = 0
    for (const step of working) {
      const value = replay(step)
      if (value === null) continue
      expect(value).toBeCloseTo(Number(step.result), 9)
      held += 1
    }
    expect(held).toBe(4)
    expect(working.find(({ symbol }) => symbol === 'Slow')?.result).toBe(low)
  })

  it('answers for every mix of the data with finite numbers', () => {
    for (const { proportions, tests } of openMixes().filter((_, at) => at % 11 === 0)) {
      const early = tests.slice(0, 1).map(({ days, strength }) => ({ age: days * 24, strength }))
      for (const at of [48, 672, 2160]) {
        const { strength, low, high } = knownOf({ tests: early, mix: proportions, at })
        expect([strength, low, high].every(Number.isFinite)).toBe(true)
        expect(low).toBeLessThan(high)
      }
    }
  })
})

describe('reading early tests', () => {
  it.each<[string, unknown, string]>([
    ['no tests', {}, 'tests'],
    ['an empty list', { tests: [] }, 'tests'],
    ['an age of 0', { tests: [{ age: 0, strength: 20 }] }, 'tests[0].age'],
    ['a negative strength', { tests: [TESTS[0], { age: 72, strength: -1 }] }, 'tests[1].strength'],
    ['a strength in psi', { tests: [{ age: 72, strength: 3000 }] }, 'tests[0].strength'],
    ['a strength as text', { tests: [{ age: 72, strength: '20' }] }, 'tests[0].strength'],
    [
      'an impossible temperature',
      { tests: [{ age: 72, strength: 20, temperature: 400 }] },
      'tests[0].temperature',
    ],
    ['a mix in part', { tests: TESTS, mix: { cement: 300 } }, 'mix.slag'],
    ['no cement', { tests: TESTS, mix: { ...MIX, cement: 0 } }, 'mix.cement'],
    ['no water', { tests: TESTS, mix: { ...MIX, water: 0 } }, 'mix.water'],
    ['negative slag', { tests: TESTS, mix: { ...MIX, slag: -4 } }, 'mix.slag'],
    ['a field of another name', { tests: TESTS, mix: { ...MIX, sand: 4 } }, 'mix.sand'],
    ['an activation of 0', { tests: TESTS, activation: 0 }, 'activation'],
  ])('refuses %s', (_, value, path) => {
    let issues: readonly { path: string }[] = []
    try {
      readGainTests(value)
    } catch (error) {
      if (error instanceof InputError) issues = error.issues
    }
    expect(issues.map((issue) => issue.path)).toContain(path)
  })
})

import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const EARLY = {
  tests: [
    { age: 72, strength: 24.1 },
    { age: 168, strength: 33.6 },
  ],
}
const MIX = { cement: 360, slag: 40, flyAsh: 60, water: 168, superplasticizer: 6.5, coarse: 940, fine: 780 }

function gain(value: unknown, args: readonly string[]) {
  const text = typeof value === 'string' ? value : JSON.stringify(value)
  return cli(['gain', 'tests.json', ...args], { 'tests.json': text })
}

describe('castwright gain', () => {
  it('gives strength and band at an age in days or hours', async () => {
    const days = await gain({ ...EARLY, mix: MIX }, ['--at', '28d', '--json'])
    const hours = await gain({ ...EARLY, mix: MIX }, ['--at', '672h', '--json'])
    expect(days.code).toBe(0)
    expect(days.json()).toEqual(hours.json())
    const { strength, low, high, band, restsOn } = days.json() as Record<string, number | string>
    expect(Number(low)).toBeLessThan(Number(strength))
    expect(Number(strength)).toBeLessThan(Number(high))
    expect([band, restsOn]).toEqual([0.9, expect.stringMatching(/open tests/)])
  })

  it('answers without the mix, and from one test', async () => {
    const ran = await gain({ tests: EARLY.tests.slice(0, 1) }, ['--at=28d', '--json'])
    expect(ran.code).toBe(0)
    expect(ran.json().assumed).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ field: 'tests[].temperature', value: 20, unit: '°C' }),
      ]),
    )
  })

  it('is not known far outside the open tests: exit 1, null beside what is missing', async () => {
    const young = await gain(EARLY, ['--at', '8h', '--json'])
    expect(young.code).toBe(1)
    expect(young.json()).toMatchObject({
      strength: null,
      low: null,
      high: null,
      unknown: [expect.stringMatching(/^at/)],
    })
    const far = await gain({ ...EARLY, mix: { ...MIX, cement: 1200 } }, ['--at', '28d', '--json'])
    expect(far.code).toBe(1)
    expect(far.json().unknown).toEqual([expect.stringMatching(/^mix\.cement/)])
  })

  it('prints a table, warnings and the working when asked', async () => {
    const ran = await gain({ tests: [{ age: 30, strength: 16, temperature: 25 }] }, [
      '--at',
      '28d',
      '--explain',
    ])
    expect(ran.out).toMatch(/Band, 90 %\s+[\d.]+ MPa to [\d.]+ MPa/)
    expect(ran.out).toMatch(/one test younger than 3 days/)
    expect(ran.out).toMatch(/exp\(μ − z σ\)/)
  })

  it('helps, and its example runs as printed', async () => {
    expect((await cli(['gain', '--help'])).out).toMatch(/TESTS\.json/)
    expect((await cli(['gain', 'docs/examples/gain-early.json', '--at', '28d'])).code).toBe(0)
    expect((await cli(['gain', 'docs/examples/gain-tests-only.json', '--at', '28d'])).code).toBe(0)
  })

  it.each<[string, unknown, string[], RegExp]>([
    ['no age', EARLY, [], /--at/],
    ['an age without unit', EARLY, ['--at', '28'], /--at: found "28", expected an age above 0/],
    ['an age of 0', EARLY, ['--at', '0d'], /--at/],
    ['a negative age', EARLY, ['--at=-3d'], /--at/],
    ['no tests', { tests: [] }, ['--at', '28d'], /tests\.json: tests/],
    [
      'a strength of 0',
      { tests: [{ age: 72, strength: 0 }] },
      ['--at', '28d'],
      /tests\[0\]\.strength: found 0/,
    ],
    ['proportions in part', { ...EARLY, mix: { cement: 300 } }, ['--at', '28d'], /mix\.slag/],
    ['text that is not JSON', 'tests', ['--at', '28d'], /not JSON/],
  ])('refuses %s', async (_, value, args, message) => {
    const ran = await gain(value, [...args, '--json'])
    expect(ran.code).toBe(2)
    expect(ran.err).toMatch(message)
    expect(ran.out).toBe('')
  })
})

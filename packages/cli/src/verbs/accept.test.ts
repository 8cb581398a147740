import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

function accept(value: unknown, args: readonly string[]) {
  const text = typeof value === 'string' ? value : JSON.stringify(value)
  return cli(['accept', 'results.json', ...args], { 'results.json': text })
}

const RUN = [31.2, 27.0, 25.8, 29.4, 30.1, 26.2, 28.9, 24.1, 33.0, 29.5].map((value) => [value, value])

describe('castwright accept', () => {
  it('us: the lowest mean of three and the lowest test, exit 1 on a fail', async () => {
    const ran = await accept({ specified: 28, results: RUN }, ['--code', 'us', '--json'])
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({
      verdict: 'fail',
      rules: [
        { demand: expect.closeTo(26.4, 9), limit: 28, verdict: 'fail', source: { standard: 'ACI 318-19' } },
        { demand: 24.1, limit: 24.5, verdict: 'fail' },
      ],
    })
  })

  it('us: a mean of exactly what is specified passes, exit 0', async () => {
    const ran = await accept({ specified: 28, results: RUN.slice(0, 3) }, ['--code', 'us', '--json'])
    expect([ran.code, ran.json().verdict]).toEqual([0, 'pass'])
  })

  it('eu: initial production by groups', async () => {
    const ran = await accept({ specified: 35, results: [[38], [42.5], [41.1]] }, ['--code', 'eu', '--json'])
    expect(ran.code).toBe(0)
    expect(ran.json().rules).toMatchObject([
      { demand: expect.closeTo(40.5333, 4), limit: 39 },
      { demand: 38, limit: 31 },
    ])
  })

  it('fewer than three: not known, named, exit 1', async () => {
    for (const code of ['us', 'eu']) {
      const ran = await accept({ specified: 30, results: [[40, 41]] }, ['--code', code, '--json'])
      expect(ran.code).toBe(1)
      expect(ran.json()).toMatchObject({ verdict: 'unknown', unknown: [expect.stringMatching(/three/)] })
    }
  })

  it('other families: not known, with the reason', async () => {
    const ran = await accept({ specified: 30, results: RUN }, ['--code', 'nz', '--json'])
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({ verdict: 'unknown', unknown: [expect.stringMatching(/NZS 3104/)] })
  })

  it('prints a table, and the working when asked', async () => {
    const ran = await accept({ specified: 28, results: RUN }, ['--code', 'us', '--explain'])
    expect(ran.out).toMatch(/every mean of three consecutive tests\s+26\.4\s+28\s+fail/)
    expect(ran.out).toMatch(/\(a \+ b \+ c\) \/ 3/)
  })

  it('helps, and its example runs as printed', async () => {
    expect((await cli(['accept', '--help'])).out).toMatch(/RESULTS\.json/)
    expect((await cli(['accept', 'docs/examples/results.json', '--code', 'eu'])).code).toBe(0)
  })

  it.each<[string, unknown, string[], RegExp]>([
    ['no code', { specified: 28, results: RUN }, [], /--code/],
    ['an unknown code', { specified: 28, results: RUN }, ['--code', 'uk'], /--code: found "uk"/],
    ['nothing specified', { results: RUN }, ['--code', 'us'], /results\.json: specified/],
    ['a specified strength of 0', { specified: 0, results: RUN }, ['--code', 'us'], /specified: found 0/],
    ['no results', { specified: 28, results: [] }, ['--code', 'us'], /results: .*at least 1/],
    ['a test of no cylinder', { specified: 28, results: [[30], []] }, ['--code', 'us'], /results\[1\]/],
    [
      'a negative result',
      { specified: 28, results: [[30, -2]] },
      ['--code', 'us'],
      /results\[0\]\[1\]: found -2/,
    ],
    ['a sigma of 0', { specified: 28, results: RUN, sigma: 0 }, ['--code', 'eu'], /sigma: found 0/],
    ['text that is not JSON', 'specified 28', ['--code', 'us'], /not JSON/],
  ])('refuses %s', async (_, value, args, message) => {
    const ran = await accept(value, [...args, '--json'])
    expect(ran.code).toBe(2)
    expect(ran.err).toMatch(message)
    expect(ran.out).toBe('')
  })
})

import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const LOG = [
  'hours,celsius',
  ...['0,18', '1,18.5', '2,20', '3,23', '4,28', '6,38', '8,46', '10,52', '12,55', '14,54', '16,50', '18,45'],
].join('\r\n')
const MIX = JSON.stringify({
  curve: { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 },
  scatter: 0.07,
})
const EC2 = JSON.stringify({ curve: { form: 'ec2', mean28: 48, s: 0.2 }, scatter: 0.07 })
const FILES = { 'log.csv': `\uFEFF${LOG}`, 'mix.json': MIX, 'ec2.json': EC2 }

function strength(args: readonly string[], files: Record<string, string> = {}) {
  return cli(['strength', 'log.csv', '--mix', 'mix.json', ...args], { ...FILES, ...files })
}

describe('castwright strength', () => {
  it('gives maturity, age and strength with its band (second method: adaptive quadrature)', async () => {
    const ran = await strength(['--json'])
    expect(ran.code).toBe(0)
    expect(ran.json()).toMatchObject({
      maturity: expect.closeTo(747.5, 9),
      equivalentAge: expect.closeTo(63.765, 3),
      strength: expect.closeTo(37.5482, 3),
      low: expect.closeTo(33.2249, 3),
      high: expect.closeTo(41.8715, 3),
    })
  })

  it('refuses a curve whose numbers would overflow', async () => {
    const steep = { curve: { form: 'hyperbolic', ultimate: 55, rate: 1e308, offset: 4 }, scatter: 0.07 }
    const ran = await strength(['--json'], { 'mix.json': JSON.stringify(steep) })
    expect([ran.code, ran.out]).toEqual([2, ''])
    expect(ran.err).toContain('curve.rate')
  })

  it('lists what it assumed', async () => {
    const { assumed } = (await strength(['--json'])).json() as { assumed: { field: string; value: number }[] }
    expect(assumed.map(({ field, value }) => [field, value])).toEqual([
      ['datum', 0],
      ['reference', 20],
      ['activation', 40_000],
    ])
  })

  it('takes the activation energy as given', async () => {
    const ran = await strength(['--json', '--activation', '33500', '--datum', '-10', '--reference', '20'])
    expect(ran.json()).toMatchObject({ equivalentAge: expect.closeTo(50.9527, 3) })
    expect(ran.json()).not.toHaveProperty('assumed')
  })

  it.each([
    ['--datum', '-11'],
    ['--datum=-11', undefined],
  ])('takes a datum below 0 as %s %s', async (option, value) => {
    const ran = await strength(['--json', option, ...(value === undefined ? [] : [value])])
    expect(ran.json()).toMatchObject({ maturity: expect.closeTo(945.5, 9) })
  })

  it('by nurse-saul: age is maturity over reference less datum', async () => {
    const ran = await strength(['--json', '--method', 'nurse-saul', '--datum', '0'])
    expect(ran.json()).toMatchObject({
      equivalentAge: expect.closeTo(37.375, 9),
      strength: expect.closeTo(30.017, 3),
    })
  })

  it('by ec2', async () => {
    const ran = await strength(['--json', '--method', 'ec2', '--mix', 'ec2.json'])
    expect(ran.json()).toMatchObject({
      equivalentAge: expect.closeTo(50.4922, 3),
      strength: expect.closeTo(28.2635, 3),
    })
  })

  it('knows no band without scatter: null, named, exit 1', async () => {
    const bare = JSON.stringify({ curve: { form: 'exponential', ultimate: 60, tau: 20, shape: 0.9 } })
    const ran = await strength(['--json'], { 'mix.json': bare })
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({ strength: expect.closeTo(42.1879, 3), low: null, high: null })
    expect((ran.json() as { unknown: string[] }).unknown.join()).toMatch(/scatter/)
  })

  it('reads tests instead of a curve', async () => {
    const tests = [12, 18, 24, 48, 72, 168].map((age, index) => ({
      age,
      strength: [11.1, 18.6, 22.5, 34.3, 38.6, 47.4][index],
    }))
    const ran = await strength(['--json'], { 'mix.json': JSON.stringify({ tests }) })
    const found = ran.json() as { strength: number; low: number; high: number }
    expect(ran.code).toBe(0)
    expect(found.strength).toBeGreaterThan(34.3)
    expect(found.strength).toBeLessThan(38.6)
    expect(found.low).toBeLessThan(found.strength)
  })

  it('reads the log from standard input', async () => {
    const ran = await cli(['strength', '-', '--mix', 'mix.json', '--json'], { ...FILES, '-': LOG })
    expect(ran.code).toBe(0)
  })

  it('prints a table, and the working when asked', async () => {
    const plain = await strength([])
    expect(plain.out).toMatch(/Maturity\s+747\.5 °C·h/)
    expect(plain.out).toMatch(/Assumed/)
    const explained = await strength(['--explain'])
    expect(explained.out).toMatch(/Su k max\(te − t0, 0\)/)
    expect(explained.out).toMatch(/ASTM C1074/)
    const both = (await strength(['--explain', '--json'])).json() as { working: unknown[] }
    expect(both.working.length).toBeGreaterThan(20)
  })

  it('helps', async () => {
    const ran = await cli(['strength', '--help'])
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/--activation <energy>.*J\/mol/)
  })

  it('its example runs as printed', async () => {
    const ran = await cli([
      'strength',
      'docs/examples/night.csv',
      '--mix',
      'docs/examples/mix.json',
      '--json',
    ])
    expect(ran.code).toBe(0)
  })

  it.each<[string, string[], Record<string, string>, RegExp]>([
    ['no mix', [], {}, /option --mix: found nothing/],
    [
      'a log with a word',
      ['--mix', 'mix.json'],
      { 'log.csv': 'hours,celsius\n0,18\n1,hot' },
      /log\.csv: row 3: celsius: found hot/,
    ],
    [
      'a log that runs back',
      ['--mix', 'mix.json'],
      { 'log.csv': 'hours,celsius\n1,18\n0,18' },
      /row 3: hours/,
    ],
    ['another header', ['--mix', 'mix.json'], { 'log.csv': 'time,temp\n0,18\n1,18' }, /row 1/],
    ['one reading', ['--mix', 'mix.json'], { 'log.csv': 'hours,celsius\n0,18' }, /rows/],
    [
      'a mix without curve or tests',
      ['--mix', 'mix.json'],
      { 'mix.json': '{}' },
      /mix\.json: found neither curve nor tests/,
    ],
    [
      'a mix of an unknown form',
      ['--mix', 'mix.json'],
      { 'mix.json': '{"curve":{"form":"linear"}}' },
      /mix\.json: curve/,
    ],
    [
      'a scatter of 0',
      ['--mix', 'mix.json'],
      { 'mix.json': '{"curve":{"form":"ec2","mean28":48,"s":0.2},"scatter":0}' },
      /scatter: found 0/,
    ],
    [
      'a mix that is not JSON',
      ['--mix', 'mix.json'],
      { 'mix.json': '{' },
      /mix\.json: found text that is not JSON/,
    ],
    ['an activation of 0', ['--mix', 'mix.json', '--activation', '0'], {}, /--activation: found "0"/],
    ['an unknown method', ['--mix', 'mix.json', '--method', 'magic'], {}, /--method: found "magic"/],
    [
      'a datum at the reference',
      ['--mix', 'mix.json', '--method', 'nurse-saul', '--datum', '20'],
      {},
      /--datum/,
    ],
    [
      'an activation that ec2 cannot use',
      ['--mix', 'mix.json', '--method', 'ec2', '--activation', '40000'],
      {},
      /--activation/,
    ],
    [
      'a reference that ec2 cannot use',
      ['--mix', 'mix.json', '--method', 'ec2', '--reference', '23'],
      {},
      /--reference/,
    ],
    ['a mix file that is not there', ['--mix', 'nowhere.json'], {}, /nowhere\.json/],
  ])('refuses %s', async (_, args, files, message) => {
    const ran = await cli(['strength', 'log.csv', ...args, '--json'], { ...FILES, ...files })
    expect(ran.code).toBe(2)
    expect(ran.err).toMatch(message)
    expect(ran.out).toBe('')
  })
})

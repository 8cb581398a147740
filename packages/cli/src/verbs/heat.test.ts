import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const CONCRETE = {
  conductivity: 2.2,
  heatCapacity: 2400,
  binder: 400,
  heat: 450,
  ultimate: 0.7,
  tau: 14,
  beta: 0.9,
  activation: 40_000,
  reference: 23,
}
const CASE = {
  thickness: 150,
  initial: 20,
  concrete: CONCRETE,
  top: { film: 10 },
  bottom: { film: 10 },
  air: 15,
  hours: 12,
  every: 3,
}
const COLUMNS = ['times', 'core', 'top', 'bottom', 'mean', 'equivalentAge', 'degree', 'hottest']

function heat(part: object, args: readonly string[] = [], files: Readonly<Record<string, string>> = {}) {
  const text = JSON.stringify({ ...CASE, ...part })
  return cli(['heat', '-', '--json', ...args], { '-': text, ...files })
}

describe('castwright heat', () => {
  it('gives one value a time in each column', async () => {
    const { code, json } = await heat({})
    expect(code).toBe(0)
    const found = json()
    expect(found.times).toEqual([0, 3, 6, 9, 12])
    for (const column of COLUMNS) expect(found[column], column).toHaveLength(5)
    expect(found.assumed).toEqual([
      { field: 'top.resistance', value: 0, unit: 'm²K/W', why: 'not given: nothing on that face' },
      { field: 'bottom.resistance', value: 0, unit: 'm²K/W', why: 'not given: nothing on that face' },
    ])
  })

  it('closed concrete of round numbers at 24 h: 61.926 °C, age 73.473 h (computed, second method: Runge-Kutta)', async () => {
    const { json } = await heat({ top: { film: 0 }, bottom: { film: 0 }, hours: 24, every: 24 })
    const { core, equivalentAge } = json() as { core: number[]; equivalentAge: number[] }
    expect(Math.abs(core[1]! - 61.926)).toBeLessThan(0.02)
    expect(Math.abs(equivalentAge[1]! - 73.473)).toBeLessThan(0.05)
  })

  it('takes a binder of 0: 45 °C in air of 15 °C, 30.39 and 28.10 °C after 4 h (Carslaw and Jaeger 1959, 3.11, from memory)', async () => {
    const { code, json } = await heat({
      concrete: { ...CONCRETE, binder: 0 },
      initial: 45,
      hours: 4,
      every: 4,
    })
    expect(code).toBe(0)
    const { core, top } = json() as { core: number[]; top: number[] }
    expect(Math.abs(core[1]! - 30.39)).toBeLessThan(0.02)
    expect(Math.abs(top[1]! - 28.1)).toBeLessThan(0.02)
  })

  it('judges only when a family is asked for', async () => {
    const cold = { air: -12, initial: 6, hours: 24 }
    expect((await heat(cold)).code).toBe(0)
    const mix = JSON.stringify({
      curve: { form: 'hyperbolic', ultimate: 50, rate: 0.03, offset: 5 },
      scatter: 0.08,
    })
    const judged = await heat(cold, ['--code', 'us', '--mix', 'mix.json'], { 'mix.json': mix })
    expect(judged.code).toBe(1)
    const checks = judged.json().checks as { id: string; verdict: string }[]
    expect(checks.find(({ id }) => id === 'night-frost')?.verdict).toBe('fail')
    expect((await heat({ air: 18, initial: 18 }, ['--code', 'us'])).code).toBe(0)
  })

  it('takes weather in place of the air; a hole in it is not filled', async () => {
    const whole = 'hours,air\n0,15\n3,15\n6,15\n9,15\n12,15\n'
    const found = await heat({ air: undefined }, ['--weather', 'w.csv'], { 'w.csv': whole })
    expect(found.code).toBe(0)
    const plain = (await heat({})).json().core as number[]
    expect((found.json().core as number[]).at(-1)).toBeCloseTo(plain.at(-1)!, 3)
    const hole = await heat({ air: undefined }, ['--weather', 'w.csv'], {
      'w.csv': 'hours,air\n0,15\n9,15\n12,15\n',
    })
    expect(hole.code).toBe(1)
    expect(hole.json()).toMatchObject({
      core: null,
      hottest: null,
      unknown: ['weather.air: nothing from 0 to 9 h'],
    })
  })

  it.each([
    ['thickness', { thickness: -1 }],
    ['concrete.beta', { concrete: { ...CONCRETE, beta: 'x' } }],
    [
      'air',
      {
        air: [
          [0, 5],
          [6, 5],
        ],
      },
    ],
    ['top.film', { top: { resistance: 1 } }],
    ['every', { every: 0 }],
  ])('names %s that is wrong', async (path, part) => {
    const { code, err, out } = await heat(part)
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain(`standard input: ${path}: found`)
  })

  it('refuses options that need another', async () => {
    expect((await heat({}, ['--mixed', '2026-01-01T10:00Z'])).code).toBe(2)
    expect((await heat({}, ['--mix', 'mix.json'], { 'mix.json': '{}' })).code).toBe(2)
    expect((await heat({}, ['--weather', 'w.csv'], { 'w.csv': 'hours,air\n0,1\n12,1\n' })).code).toBe(2)
  })

  it('explains', async () => {
    const { json } = await heat({}, ['--explain'])
    expect((json().working as { symbol: string }[]).map(({ symbol }) => symbol)).toContain('ΔTad')
  })
})

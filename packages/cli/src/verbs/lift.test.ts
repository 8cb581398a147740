import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const ELL = {
  format: 'castwright.drawing/1',
  mark: 'L1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 1800],
    [4000, 1800],
    [4000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40, density: 2500 },
  inserts: [
    { mark: 'A', at: [1200, 600], kind: 'face' },
    { mark: 'B', at: [1200, 2400], kind: 'face' },
    { mark: 'C', at: [4600, 900], kind: 'face' },
  ],
}
const RECTANGLE = {
  ...ELL,
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  rigging: 'R4',
  inserts: [
    { mark: 'A', at: [1243, 621], kind: 'face' },
    { mark: 'B', at: [4757, 621], kind: 'face' },
    { mark: 'C', at: [4757, 2379], kind: 'face' },
    { mark: 'D', at: [1243, 2379], kind: 'face' },
  ],
}
const YARD = {
  format: 'castwright.yard/1',
  name: 'Kettle Lane',
  code: 'eu',
  timezone: 'Europe/Dublin',
  rigging: [{ mark: 'R4', legs: 4, length: 4000, equalised: true, rated: 8000 }],
}

function lift(drawing: unknown, args: readonly string[] = [], yard: unknown = YARD) {
  const text = typeof drawing === 'string' ? drawing : JSON.stringify(drawing)
  return cli(['lift', 'W.json', ...args], { 'W.json': text, 'Y.json': JSON.stringify(yard) })
}

describe('castwright lift', () => {
  it('three inserts of an ell: mass, centre of gravity and loads by statics', async () => {
    const { code, json } = await lift(ELL, ['--json'])
    // 5850 kg weigh 57.369 kN; shares 12.353, 20.471, 25.676 of 58.5 kN, worked by hand.
    expect(code).toBe(1)
    const found = json() as { mass: number; weight: number; centre: number[]; inserts: { load: number }[] }
    expect(found.mass).toBeCloseTo(5850, 9)
    expect(found.weight).toBeCloseTo(57.3689, 4)
    expect(found.centre[0]).toBeCloseTo(2692.3077, 3)
    for (const [index, share] of [12.353, 20.471, 25.676].entries()) {
      expect(found.inserts[index]?.load).toBeCloseTo((share * 57.3689) / 58.5, 2)
    }
    expect(found).toMatchObject({ peak: { at: null, stress: null }, probes: [] })
    expect(json().unknown).toEqual(['peak: not computed yet: needs plate bending'])
    expect((json().assumed as { field: string }[]).map(({ field }) => field)).toEqual([
      'factor',
      'modulus',
      'poisson',
      'rigging',
    ])
  })

  it('the factor is in the loads and not in the weight', async () => {
    const [plain, heavy] = [await lift(ELL, ['--json']), await lift(ELL, ['--json', '--factor', '1.3'])].map(
      (ran) => ran.json() as { weight: number; inserts: { load: number }[] },
    )
    expect(heavy?.weight).toBe(plain?.weight)
    expect(heavy?.inserts[0]?.load).toBeCloseTo(1.3 * (plain?.inserts[0]?.load ?? 0), 9)
  })

  it('four rigid inserts: loads are null and said to be unknown', async () => {
    const { json } = await lift(RECTANGLE, ['--json'])
    expect((json().inserts as { load: null }[]).map(({ load }) => load)).toEqual([null, null, null, null])
    expect(json().unknown).toContain('loads on 4 rigid supports: not computed yet: needs plate bending')
  })

  it('four equalised legs of the yard’s rigging: a quarter each', async () => {
    const { json } = await lift(RECTANGLE, ['--json', '--yard', 'Y.json'])
    const loads = (json().inserts as { load: number }[]).map(({ load }) => load)
    expect(loads).toHaveLength(4)
    for (const load of loads) expect(load).toBeCloseTo((6750 * 9.80665) / 4000, 9)
  })

  it('probes are null until the plate is computed', async () => {
    const { json } = await lift(ELL, ['--json', '--probe', '1000,1000', '--probe', '0,0'])
    const none = { deflection: null, mx: null, my: null, mxy: null, stress: null }
    expect(json().probes).toEqual([
      { at: [1000, 1000], ...none },
      { at: [0, 0], ...none },
    ])
  })

  it('a support that would push down is shown and fails', async () => {
    const inserts = [
      [3000, 400],
      [5500, 400],
      [3800, 1500],
    ].map((at, k) => ({ mark: `${k}`, at, kind: 'face' }))
    const { code, json } = await lift({ ...ELL, inserts }, ['--json'])
    expect(code).toBe(1)
    expect(json()).toMatchObject({ verdict: 'fail' })
    expect(Math.min(...(json().inserts as { load: number }[]).map(({ load }) => load))).toBeLessThan(0)
  })

  it('without inserts says that proposals come with the picks', async () => {
    const { inserts: _, ...bare } = ELL
    const { code, json } = await lift(bare, ['--json'])
    expect(code).toBe(1)
    expect(json().inserts).toEqual([])
    expect((json().unknown as string[]).join()).toMatch(/proposals come with the picks/)
  })

  it('reads as a table, and explains', async () => {
    const { out } = await lift(ELL, ['--explain'])
    expect(out).toMatch(/Mass +5850 kg/)
    expect(out).toMatch(/Not known: peak/)
    expect(out).toMatch(/R A .*statics/)
    const { json } = await lift(ELL, ['--explain', '--json'])
    expect((json().working as unknown[]).length).toBe(8)
  })

  it('helps', async () => {
    const { code, out } = await cli(['lift', '--help'])
    expect(code).toBe(0)
    expect(out).toMatch(/castwright lift docs\/examples\/ell\.json/)
  })

  const inserts = (...at: number[][]) => ({
    ...ELL,
    inserts: at.map((point, k) => ({ mark: `${k}`, at: point, kind: 'face' })),
  })
  it.each<[string, unknown, string[], RegExp]>([
    [
      'two inserts',
      inserts([1200, 600], [1200, 2400]),
      [],
      /W\.json: inserts: found 2 inserts, expected three or more/,
    ],
    ['no insert at all in the list', inserts(), [], /found 0 inserts/],
    ['inserts in one line', inserts([1000, 600], [2000, 600], [3000, 600]), [], /in one line/],
    [
      'an insert in the notch',
      inserts([1200, 600], [1200, 2400], [5000, 2500]),
      [],
      /inserts\[2\]\.at: found \[5000, 2500\]/,
    ],
    [
      'a probe in the notch',
      ELL,
      ['--probe', '5000,2500'],
      /probe\[0\]: found 5000,2500, expected a point of the concrete/,
    ],
    ['half a probe', ELL, ['--probe', '5000'], /--probe.*two numbers/],
    ['a probe in words', ELL, ['--probe', 'x,y'], /--probe/],
    ['an empty probe', ELL, ['--probe', ','], /--probe/],
    ['a factor of nothing', ELL, ['--factor', '0'], /--factor.*above 0/],
    ['a modulus below nothing', ELL, ['--modulus', '-1'], /--modulus/],
    ['a Poisson’s ratio of a half', ELL, ['--poisson', '0.5'], /--poisson/],
    ['another stage', ELL, ['--stage', 'upright'], /--stage.*one of flat/],
    ['a thickness of nothing', { ...ELL, thickness: 0 }, [], /W\.json: thickness/],
    ['no JSON', '{', [], /W\.json.*not JSON/],
    ['a yard that is none', ELL, ['--yard', 'W.json'], /W\.json: format/],
    ['a yard that is not there', ELL, ['--yard', 'none.json'], /none\.json/],
  ])('refuses %s', async (_, drawing, args, message) => {
    const { code, out, err } = await lift(drawing, args)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err).toMatch(message)
  })
})

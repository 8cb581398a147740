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
  it('three inserts of an ell: mass, centre of gravity, loads by statics and plate alike', async () => {
    const { code, json } = await lift(ELL, ['--json'])
    // 5850 kg weigh 57.369 kN; shares 12.353, 20.471, 25.676 of 58.5 kN, worked by hand.
    expect(code).toBe(0)
    const found = json() as { mass: number; weight: number; centre: number[]; inserts: { load: number }[] }
    expect(found.mass).toBeCloseTo(5850, 9)
    expect(found.weight).toBeCloseTo(57.3689, 4)
    expect(found.centre[0]).toBeCloseTo(2692.3077, 3)
    for (const [index, share] of [12.353, 20.471, 25.676].entries()) {
      expect(found.inserts[index]?.load).toBeCloseTo((share * 57.3689) / 58.5, 2)
    }
    expect(found).toMatchObject({ verdict: 'pass', proposed: false, probes: [], unknown: [] })
    expect((json().assumed as { field: string }[]).map(({ field }) => field)).toEqual([
      'factor',
      'modulus',
      'poisson',
      'rigging',
    ])
  })

  it('the same ell bends as three meshes of another solver say (computed, second method), at 24.52 of 25 kN/m³', async () => {
    const probes = ['--probe', '3000,1500', '--probe', '4000,3000', '--modulus', '25000']
    const { json } = await lift(ELL, ['--json', ...probes])
    const [span, tip] = json().probes as { deflection: number; mx: number; my: number; averaged: boolean }[]
    const share = 0.980665
    expect(Math.abs(span!.deflection / (0.6446 * share) - 1)).toBeLessThan(0.01)
    expect(Math.abs(tip!.deflection / (1.4501 * share) - 1)).toBeLessThan(0.01)
    expect(Math.abs(span!.mx / (2.851 * share) - 1)).toBeLessThan(0.01)
    expect(Math.abs(span!.my - 0.347 * share)).toBeLessThan(0.01 * 2.851)
    expect(span!.averaged).toBe(false)
  })

  it('the factor is in the loads and not in the weight', async () => {
    const [plain, heavy] = [await lift(ELL, ['--json']), await lift(ELL, ['--json', '--factor', '1.3'])].map(
      (ran) => ran.json() as { weight: number; inserts: { load: number }[] },
    )
    expect(heavy?.weight).toBe(plain?.weight)
    expect(heavy?.inserts[0]?.load).toBeCloseTo(1.3 * (plain?.inserts[0]?.load ?? 0), 9)
  })

  it('four rigid inserts: the peak stands at one, of the moments of its disc (computed, second method)', async () => {
    const { code, json } = await lift(RECTANGLE, ['--json', '--modulus', '25000'])
    expect(code).toBe(0)
    for (const { load } of json().inserts as { load: number }[])
      expect(load).toBeCloseTo(16.875 * 0.980665, 2)
    const peak = json().peak as Record<'stress' | 'error' | 'mx' | 'my', number> & { of: string }
    expect(peak.of).toBe('support')
    expect(Math.abs(peak.mx / (-5.087 * 0.980665) - 1)).toBeLessThan(0.01)
    expect(Math.abs(peak.my / (-3.805 * 0.980665) - 1)).toBeLessThan(0.01)
    // 6 · 5.087 / 0.150² kN/m² and a little for the twist
    expect(Math.abs(peak.stress / (1.3565 * 0.980665) - 1)).toBeLessThan(0.015)
    expect(peak.error).toBeLessThan(0.02 * peak.stress)
    expect(json().averages).toHaveLength(4)
  })

  it('four equalised legs of the yard’s rigging: a quarter each', async () => {
    const { json } = await lift(RECTANGLE, ['--json', '--yard', 'Y.json'])
    const loads = (json().inserts as { load: number }[]).map(({ load }) => load)
    expect(loads).toHaveLength(4)
    for (const load of loads) expect(load).toBeCloseTo((6750 * 9.80665) / 4000, 9)
  })

  it('a rigging with fewer equalised legs than inserts: loads, peak and probes are null and said to be unknown', async () => {
    const yard = { ...YARD, rigging: [{ ...YARD.rigging[0], legs: 2 }] }
    const args = ['--json', '--yard', 'Y.json', '--probe', '1000,1000']
    const { code, json } = await lift(RECTANGLE, args, yard)
    expect(code).toBe(1)
    expect((json().inserts as { load: null }[]).map(({ load }) => load)).toEqual([null, null, null, null])
    expect(json()).toMatchObject({ verdict: 'unknown', peak: { at: null, stress: null }, averages: [] })
    const none = { deflection: null, mx: null, my: null, mxy: null, stress: null, averaged: false }
    expect(json().probes).toEqual([{ at: [1000, 1000], ...none }])
    expect(json().unknown).toEqual([
      'loads: rigging R4 equalises 2 legs, the panel has 4 inserts',
      'peak',
      'probes',
    ])
  })

  it('a probe on a support or at a re-entrant corner reads the disc there', async () => {
    const args = ['--json', '--probe', '1200,600', '--probe', '4000,1800', '--probe', '1200,680']
    const { json } = await lift(ELL, args)
    const averages = json().averages as { at: number[]; mx: number; stress: number }[]
    const [pick, corner, beside] = json().probes as { mx: number; stress: number; averaged: boolean }[]
    expect(pick).toMatchObject({ averaged: true, mx: averages[0]!.mx, stress: averages[0]!.stress })
    expect(corner).toMatchObject({ averaged: true, mx: averages[3]!.mx })
    expect(averages[3]!.at).toEqual([4000, 1800])
    expect(beside!.averaged).toBe(false)
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

  it('without inserts proposes four and says so', async () => {
    const { inserts: _, ...bare } = ELL
    const { code, json } = await lift(bare, ['--json'])
    expect(code).toBe(0)
    expect(json().proposed).toBe(true)
    const loads = (json().inserts as { load: number }[]).map(({ load }) => load)
    expect(loads).toHaveLength(4)
    expect(loads.reduce((sum, load) => sum + load, 0)).toBeCloseTo(57.3689, 3)
    expect((json().assumed as { field: string }[]).map(({ field }) => field)).toContain('inserts')
    expect((await lift(bare)).out).toMatch(/Proposed insert A .*\n[\s\S]*no inserts: these are proposed/)
  })

  it('reads as a table, and explains', async () => {
    const { out } = await lift(ELL, ['--explain', '--probe', '3000,1500'])
    expect(out).toMatch(/Mass +5850 kg/)
    expect(out).toMatch(/Peak tension at .* MPa, /)
    expect(out).toMatch(/Its error, estimated by a second mesh/)
    expect(out).toMatch(/Probe at +deflection mm/)
    expect(out).toMatch(/R A .*statics/)
    const { json } = await lift(ELL, ['--explain', '--json'])
    const symbols = (json().working as { symbol: string }[]).map(({ symbol }) => symbol)
    for (const symbol of ['q', 'D', 'unknowns', 'Σ R', 'Σ R x / Σ R', 'm1', 'σ peak', 'error of peak'])
      expect(symbols).toContain(symbol)
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
      'two inserts at one point',
      inserts([1200, 600], [1200, 2400], [4600, 900], [1200, 600]),
      [],
      /inserts\[3\]\.at: found 3 at the point of 0, expected a point of its own/,
    ],
    [
      'a face insert on an edge',
      inserts([1200, 600], [1200, 2400], [6000, 900]),
      [],
      /inserts\[2\]\.at: found \[6000, 900\] for face insert/,
    ],
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

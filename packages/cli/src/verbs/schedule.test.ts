import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const PLAIN = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  code: 'nz',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40, aggregate: 19 },
  cover: { mould: 30, top: 30, edge: 40 },
  steel: [
    { layer: 'mould', direction: 'x', diameter: 12, grade: '500E', spacing: 200 },
    { layer: 'mould', direction: 'y', diameter: 12, grade: '500E', spacing: 200 },
  ],
}
const YARD = {
  format: 'castwright.yard/1',
  name: 'Kettle Lane',
  code: 'nz',
  timezone: 'Pacific/Fiji',
  stock: [{ diameter: 12, grade: '500E', lengths: [4000] }],
}

function schedule(drawing: unknown, args: readonly string[] = []) {
  const text = typeof drawing === 'string' ? drawing : JSON.stringify(drawing)
  return cli(['schedule', 'W.json', ...args], { 'W.json': text, 'Y.json': JSON.stringify(YARD) })
}

describe('castwright schedule', () => {
  it('6 × 3 m at 200 both ways: 16 + 31 bars, 164.5 kg, 293 ties, 1.6 kg of wire', async () => {
    const { code, json } = await schedule(PLAIN, ['--json'])
    expect(code).toBe(0)
    expect(json()).toMatchObject({
      bars: [
        {
          mark: 'MX1',
          shape: 'straight',
          diameter: 12,
          grade: '500E',
          count: 16,
          cutLength: 5920,
          legs: [5920],
        },
        { mark: 'MY1', count: 31, cutLength: 2920 },
      ],
      laps: [],
      ties: 293,
    })
    expect(json().mass).toBeCloseTo(164.46, 2)
    expect(json().wire).toBeCloseTo(1.6446, 4)
  })

  it('with a yard of 4 m bars the long ones are lapped and the laps listed', async () => {
    const { code, json } = await schedule({ ...PLAIN, lap: { length: 600 } }, ['--yard', 'Y.json', '--json'])
    expect(code).toBe(0)
    const laps = json().laps as { mark: string; length: number }[]
    expect(laps).toHaveLength(16)
    expect(laps[0]).toMatchObject({ mark: 'mould-x', length: 600 })
  })

  it('without cover nothing is laid out: masses are null and the field is named', async () => {
    const { cover: _, ...bare } = PLAIN
    const { code, json } = await schedule(bare, ['--json'])
    expect(code).toBe(1)
    expect(json()).toMatchObject({ mass: null, ties: null, wire: null })
    expect((json().unknown as string[]).join()).toContain('cover.edge')
  })

  it('reads standard input and explains bent bars', async () => {
    const wall = readFileSync(new URL('../../../../docs/examples/wall.json', import.meta.url), 'utf8')
    const { code, out } = await cli(['schedule', '-', '--code', 'nz', '--explain'], { '-': wall })
    expect(code).toBe(0)
    expect(out).toMatch(/U1 +U +10 500E +12/)
    expect(out).toMatch(/Δ1/)
    expect((await cli(['schedule', '--help'])).out).toMatch(/--yard/)
  })

  it('a job: each panel as its drawing alone, and the mass of all', async () => {
    const job = {
      format: 'castwright.job/1',
      mark: 'Hall',
      yard: 'Kettle Lane',
      drawings: [PLAIN, { ...PLAIN, mark: 'W2' }],
    }
    const { code, json } = await schedule(job, ['--json'])
    expect(code).toBe(0)
    const one = (await schedule(PLAIN, ['--json'])).json()
    const { assumed: _, ...alone } = one
    expect(json().panels).toEqual([alone, { ...alone, mark: 'W2' }])
    expect(json().mass).toBeCloseTo(2 * 164.46, 1)
    const { cover: _cover, ...bare } = PLAIN
    const unknown = await schedule({ ...job, drawings: [PLAIN, { ...bare, mark: 'W3' }] }, ['--json'])
    expect(unknown.code).toBe(1)
    expect(unknown.json().mass).toBeNull()
    expect((unknown.json().unknown as string[]).join()).toMatch(/W3: .*cover.edge/)
    const bad = await schedule({ ...job, drawings: [PLAIN, { ...PLAIN, thickness: 0 }] })
    expect(bad.code).toBe(2)
    expect(bad.err).toContain('W.json: drawings[1]: thickness')
  })

  it.each([
    ['{', [], 'JSON'],
    [{ ...PLAIN, thickness: 0 }, [], 'thickness'],
    [{ ...PLAIN, steel: [{ ...PLAIN.steel[0], spacing: -5 }] }, [], 'steel[0]'],
    [{ ...PLAIN, outline: PLAIN.outline.slice(0, 2) }, [], 'outline'],
    [{ ...PLAIN, code: undefined }, [], 'code'],
    [{ ...PLAIN, steel: [{ bar: 'T1', diameter: 16, grade: '500E' }] }, [], 'steel[0]'],
    [PLAIN, ['--yard', 'none.json'], 'none.json'],
  ])('refuses bad input %#', async (drawing, args, field) => {
    const { code, err, out } = await schedule(drawing, args)
    expect(code).toBe(2)
    expect(err).toContain(field)
    expect(out).toBe('')
  })
})

import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  openings: [
    {
      mark: 'D1',
      outline: [
        [900, 0],
        [1900, 0],
        [1900, 2100],
        [900, 2100],
      ],
    },
  ],
  concrete: { strength: 40, density: 2500, aggregate: 19 },
  cover: { mould: 30, top: 30, edge: 30 },
  steel: [
    { layer: 'mould', direction: 'x', diameter: 12, grade: '500E', spacing: 200 },
    {
      bar: 'trimmer',
      diameter: 16,
      grade: '500E',
      path: [
        [700, 2200],
        [2100, 2200],
      ],
      layer: 'mould',
    },
  ],
  lap: { length: 1200 },
  inserts: [{ mark: 'A', at: [1242, 621], kind: 'face' }],
  lifting: { strength: 15, load: 25, reference: 'lifting design LD-3', by: 'designer' },
}
const YARD = {
  format: 'castwright.yard/1',
  name: 'Kettle Lane',
  code: 'nz',
  timezone: 'Pacific/Fiji',
  beds: [{ mark: '1', length: 12_000, width: 4000, face: 'steel' }],
}

function planned(drawing: unknown, args: readonly string[] = [], yard: unknown = YARD) {
  const text = typeof drawing === 'string' ? drawing : JSON.stringify(drawing)
  return cli(['plan', 'W1.json', ...args], { 'W1.json': text, 'Y.json': JSON.stringify(yard), '-': text })
}

describe('castwright plan', () => {
  it('mass, volume and centre by hand: 15.9 m², 2.385 m³, 5962.5 kg', async () => {
    const { code, json } = await planned(DRAWING, ['--json', '--code', 'nz'])
    expect(code).toBe(1)
    const found = json() as { mark: string; mass: number; volume: number; centre: [number, number] }
    expect(found.mark).toBe('W1')
    expect(found.volume).toBeCloseTo(2.385, 12)
    expect(found.mass).toBeCloseTo(5962.5, 9)
    expect(found.centre[0]).toBeCloseTo((18 * 3000 - 2.1 * 1400) / 15.9, 6)
    expect(found.centre[1]).toBeCloseTo((18 * 1500 - 2.1 * 1050) / 15.9, 6)
  })

  it('has every field of the contract', async () => {
    const found = (await planned(DRAWING, ['--json', '--code', 'nz'])).json()
    for (const field of [
      'checks',
      'toRecord',
      'steel',
      'mould',
      'pour',
      'cure',
      'lift',
      'quality',
      'assumed',
    ]) {
      expect(found).toHaveProperty(field)
    }
    expect(found.cure).toMatchObject({ curve: expect.any(Array) })
    for (const field of ['wanted', 'hour', 'hourLow']) expect(found.cure).toHaveProperty(field)
    for (const check of found.checks as Record<string, unknown>[]) {
      for (const field of ['id', 'step', 'verdict', 'demand', 'limit', 'unit', 'source'])
        expect(check).toHaveProperty(field)
    }
    for (const asked of found.toRecord as Record<string, unknown>[]) {
      for (const field of ['id', 'step', 'limit', 'unit', 'source']) expect(asked).toHaveProperty(field)
    }
  })

  it('an insert in the door fails at set, and lifts nothing', async () => {
    const { checks } = (await planned(DRAWING, ['--json', '--code', 'nz'])).json() as {
      checks: { id: string; verdict: string }[]
    }
    expect(checks.find(({ id }) => id === 'insert-position')?.verdict).toBe('fail')
    expect(checks.find(({ id }) => id === 'lift-peak:release')?.verdict).toBe('unknown')
  })

  it('takes the code of the drawing, else of the yard; --code outranks both', async () => {
    const family = async (drawing: object, args: string[]) =>
      (await planned(drawing, ['--json', ...args])).json().family
    expect(await family(DRAWING, ['--yard', 'Y.json'])).toBe('nz')
    expect(await family({ ...DRAWING, code: 'au' }, ['--yard', 'Y.json'])).toBe('au')
    expect(await family({ ...DRAWING, code: 'au' }, ['--yard', 'Y.json', '--code', 'us'])).toBe('us')
  })

  it('reads standard input', async () => {
    const { code } = await cli(['plan', '-', '--code', 'eu', '--json'], { '-': JSON.stringify(DRAWING) })
    expect(code).toBe(1)
  })

  it('reads as a table, and explains', async () => {
    const { out } = await planned(DRAWING, ['--code', 'eu', '--explain'])
    expect(out).toMatch(/Mass +5962\.5 kg/)
    expect(out).toMatch(/strip .*Tension of the panel, leaves the mould/)
    expect(out).toMatch(/V ρ/)
    const { json } = await planned(DRAWING, ['--code', 'eu', '--explain', '--json'])
    expect((json().working as unknown[]).length).toBeGreaterThan(5)
  })

  it.each<[string, unknown, string[], unknown, RegExp]>([
    ['no code anywhere', DRAWING, [], YARD, /--code/],
    ['an unknown code', DRAWING, ['--code', 'uk'], YARD, /--code.*nz, au, eu, us/],
    [
      'an outline that crosses itself',
      {
        ...DRAWING,
        outline: [
          [0, 0],
          [6000, 3000],
          [6000, 0],
          [0, 3000],
        ],
      },
      ['--code', 'eu'],
      YARD,
      /W1\.json: outline\[2\]/,
    ],
    [
      'an opening that cuts it in two',
      {
        ...DRAWING,
        openings: [
          {
            mark: 'X',
            outline: [
              [2000, -1],
              [3000, -1],
              [3000, 3001],
              [2000, 3001],
            ],
          },
        ],
      },
      ['--code', 'eu'],
      YARD,
      /W1\.json: openings: found 2 separate pieces/,
    ],
    [
      'a strength of nothing',
      { ...DRAWING, concrete: { strength: 0 } },
      ['--code', 'eu'],
      YARD,
      /concrete\.strength/,
    ],
    ['no JSON', 'outline', ['--code', 'eu'], YARD, /W1\.json.*not JSON/],
    ['an unknown field', { ...DRAWING, colour: 1 }, ['--code', 'eu'], YARD, /colour/],
    [
      'a yard in an unknown zone',
      DRAWING,
      ['--yard', 'Y.json'],
      { ...YARD, timezone: 'Mars/Base' },
      /Y\.json: timezone/,
    ],
    ['a yard that is a drawing', DRAWING, ['--yard', 'W1.json'], YARD, /W1\.json: format/],
  ])('refuses %s', async (_, drawing, args, yard, message) => {
    const { code, out, err } = await planned(drawing, args, yard)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err).toMatch(message)
  })
})

import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'P1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 200,
  concrete: { strength: 40 },
}
const SHEARED = [
  [0, 0, 0],
  [6000, 0, 0],
  [6005, 3000, 0],
  [5, 3000, 0],
]

interface Found {
  deviations: { what: string; value: number | null; limit: number | null; verdict: string }[]
}

function measure(value: object, args: readonly string[] = ['--code', 'eu']) {
  return cli(['asbuilt', 'm.json', ...args], { 'm.json': JSON.stringify(value) })
}

async function deviation(what: string, value: object, args?: readonly string[]) {
  const ran = await measure({ drawing: DRAWING, ...value }, [...(args ?? ['--code', 'eu']), '--json'])
  return (ran.json() as unknown as Found).deviations.find((found) => found.what === what)
}

describe('castwright asbuilt', () => {
  it('names all seven, in order', async () => {
    const ran = await measure({ drawing: DRAWING }, ['--code', 'eu', '--json'])
    expect((ran.json() as unknown as Found).deviations.map(({ what }) => what)).toEqual([
      'length',
      'width',
      'thickness',
      'squareness',
      'bow',
      'warp',
      'flatness',
    ])
    expect(ran.code).toBe(1)
  })

  it('a panel sheared by 5 mm: diagonals differ by 8.944, within class B of EN 14992', async () => {
    expect(await deviation('squareness', { corners: SHEARED })).toMatchObject({
      value: expect.closeTo(8.944, 3),
      limit: 18,
      verdict: 'pass',
    })
  })

  it('warp and bow of a panel: limits in us, none confirmed in eu', async () => {
    const corners = [
      [0, 0, 0],
      [6000, 0, 2],
      [6000, 3000, 5],
      [0, 3000, -1],
      [3000, 0, 5],
    ]
    expect(await deviation('warp', { corners })).toMatchObject({
      value: expect.closeTo(4, 4),
      limit: null,
      verdict: 'unknown',
    })
    expect(await deviation('warp', { corners }, ['--code', 'us'])).toMatchObject({
      limit: expect.closeTo(15.625, 6),
      verdict: 'pass',
    })
    expect(await deviation('bow', { corners }, ['--code', 'us'])).toMatchObject({
      value: expect.closeTo(4, 4),
      limit: expect.closeTo(16.667, 2),
    })
  })

  it('everything measured and within: exit 0', async () => {
    const corners = [
      [0, 0, 0],
      [6001, 0, 0],
      [6001, 3000, 1],
      [0, 3000, 0],
      [3000, 0, 1],
    ]
    const all = {
      drawing: DRAWING,
      corners,
      thickness: [200, 201, 200, 199],
      gaps: [1, 2],
      edges: [[0, 2, 1]],
    }
    const ran = await measure(all, ['--code', 'us', '--json'])
    // The diagonals have no confirmed limit in us, so even here one is not known.
    expect(
      (ran.json() as unknown as Found).deviations
        .filter(({ verdict }) => verdict !== 'pass')
        .map(({ what }) => what),
    ).toEqual(['squareness'])
    expect(ran.code).toBe(1)
  })

  it('takes the family from the drawing where none is given', async () => {
    const ran = await measure({ drawing: { ...DRAWING, code: 'eu' }, thickness: [212] }, ['--json'])
    expect((ran.json() as unknown as Found).deviations[2]).toMatchObject({
      value: 12,
      limit: 11,
      verdict: 'fail',
    })
  })

  it('prints a table, and the working when asked', async () => {
    const ran = await measure({ drawing: DRAWING, corners: SHEARED }, ['--code', 'eu', '--explain'])
    expect(ran.out).toMatch(/squareness\s+8\.944\s+-18 to 18\s+pass/)
    expect(ran.out).toMatch(/Not known: bow/)
    expect(ran.out).toMatch(/abs\(d1 − d2 − \(n1 − n2\)\)/)
  })

  it('helps, and its example runs as printed', async () => {
    expect((await cli(['asbuilt', '--help'])).out).toMatch(/MEASURED\.json/)
    expect((await cli(['asbuilt', 'docs/examples/measured.json', '--code', 'eu'])).code).toBe(1)
  })

  it.each<[string, object, string[], RegExp]>([
    ['no code anywhere', { drawing: DRAWING }, [], /--code/],
    ['no drawing', { corners: SHEARED }, ['--code', 'eu'], /m\.json: drawing/],
    [
      'a drawing of no thickness',
      { drawing: { ...DRAWING, thickness: -1 } },
      ['--code', 'eu'],
      /drawing\.thickness: found -1/,
    ],
    ['three corners', { drawing: DRAWING, corners: SHEARED.slice(0, 3) }, ['--code', 'eu'], /corners/],
    [
      'corners exchanged',
      { drawing: DRAWING, corners: [0, 1, 3, 2].map((i) => SHEARED[i]) },
      ['--code', 'eu'],
      /corners/,
    ],
    [
      'a side too few',
      { drawing: DRAWING, sides: [6000, 3000, 6000] },
      ['--code', 'eu'],
      /sides: found 3 sides/,
    ],
    [
      'a diagonal that is text',
      { drawing: DRAWING, diagonals: ['6708', 6708] },
      ['--code', 'eu'],
      /diagonals\[0\]/,
    ],
    [
      'a thickness of 0',
      { drawing: DRAWING, thickness: [200, 0] },
      ['--code', 'eu'],
      /thickness\[1\]: found 0/,
    ],
  ])('refuses %s', async (_, value, args, message) => {
    const ran = await measure(value, [...args, '--json'])
    expect(ran.code).toBe(2)
    expect(ran.err).toMatch(message)
    expect(ran.out).toBe('')
  })
})

import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { panelOf, parseDrawing } from '../../panel/index.ts'
import { parseYard } from '../../yard/index.ts'
import { planSteel } from '../plan-steel.ts'
import type { SteelPlan } from '../steel-plan.ts'

const BAR = { diameter: 10, grade: 'B500B' }
const MATS = (['mould', 'top'] as const).flatMap((layer) =>
  (['x', 'y'] as const).map((direction) => ({
    layer,
    direction,
    diameter: 12,
    grade: 'B500B',
    spacing: 200,
  })),
)

const drawing = (steel: readonly unknown[], more: Record<string, unknown> = {}) => ({
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 180,
  openings: [
    {
      mark: 'D1',
      outline: [
        [2400, 900],
        [3400, 900],
        [3400, 2100],
        [2400, 2100],
      ],
    },
  ],
  concrete: { strength: 40, aggregate: 16 },
  cover: { mould: 30, top: 35, edge: 30 },
  steel: [...MATS, ...steel],
  ...more,
})

const YARD = {
  format: 'castwright.yard/1',
  name: 'Kettle Lane',
  code: 'eu',
  timezone: 'UTC',
  stock: [8, 10, 12, 16].map((diameter) => ({ diameter, grade: 'B500B', lengths: [12_000] })),
}

function plan(
  steel: readonly unknown[],
  more: Record<string, unknown> = {},
  yard: unknown = YARD,
): SteelPlan {
  return planSteel({
    panel: panelOf(parseDrawing(drawing(steel, more))),
    yard: parseYard(yard),
    family: codeFamily('eu'),
  })
}

function check(found: SteelPlan, id: string) {
  const one = found.checks.find((each) => each.id === id)
  if (one === undefined) throw new Error(`no check ${id} among ${found.checks.map((each) => each.id).join()}`)
  return one
}

const used = (found: SteelPlan, use: string) => found.placed.filter((bar) => bar.use === use)

describe('U-bars at edges', () => {
  const u = { edge: 'outer', form: 'u', ...BAR, spacing: 200, leg: 400 }

  it('the height is the thickness less the covers of the mats that the legs lie beside', () => {
    const found = plan([{ ...u, edge: 'left' }])
    const [bar] = used(found, 'edge')
    // Legs along x: beside the first mat of each layer. 180 − 30 − 35 = 115 outside.
    expect(found.bars.find(({ mark }) => mark === 'EU1')).toMatchObject({ legs: [400, 115, 400], inside: 40 })
    expect(bar?.centreline).toEqual([
      [430, bar?.path[0]?.[1], 35],
      [35, bar?.path[0]?.[1], 35],
      [35, bar?.path[0]?.[1], 140],
      [430, bar?.path[0]?.[1], 140],
    ])
    // Beside the second mats, 12 mm further in at both faces: 91.
    expect(plan([{ ...u, edge: 'bottom' }]).bars.find(({ mark }) => mark === 'EU1')?.legs[1]).toBe(91)
  })

  it('stand all round at no more than the spacing, touch nothing, and the outermost rows lie inside them', () => {
    const found = plan([{ ...u, edge: 'all' }])
    expect(check(found, 'spacing:edge-1').verdict).toBe('pass')
    expect(check(found, 'same-place')).toMatchObject({ demand: 0, verdict: 'pass' })
    expect(check(found, 'room:edge-1').verdict).toBe('pass')
    const rows = found.placed.filter(({ mark }) => mark.startsWith('MX')).map(({ path }) => path[0]?.[1] ?? 0)
    expect(Math.min(...rows)).toBe(30 + 10 + 6)
    expect(Math.max(...rows)).toBe(3000 - 30 - 10 - 6)
    expect(check(found, 'spacing:mould-x').verdict).toBe('pass')
  })

  it('bars close to each other stand close to each other', () => {
    const ties = {
      ties: [
        [400, 2600],
        [600, 2600],
      ],
      spacing: 14,
      diameter: 8,
      grade: 'B500B',
      width: 150,
    }
    const bare = drawing([ties])
    const panel = panelOf(parseDrawing({ ...bare, steel: [ties] }))
    const found = planSteel({ panel, yard: parseYard(YARD), family: codeFamily('eu') })
    expect(used(found, 'tie').length).toBe(Math.ceil(200 / 14) + 1)
    expect(check(found, 'spacing:ties-1').verdict).toBe('pass')
  })

  it('a panel too thin for its bend is told', () => {
    const thin = plan([{ ...u, edge: 'bottom', inside: 80 }])
    expect(check(thin, 'fit:edge-1')).toMatchObject({ demand: 91, limit: 100, verdict: 'fail' })
    expect(check(plan([{ ...u, inside: 30 }]), 'bend:edge-1')).toMatchObject({ limit: 40, verdict: 'fail' })
  })

  it('legs that would leave the concrete are left out and told', () => {
    const found = plan([{ ...u, edge: 'top', leg: 1000 }])
    // Over the opening only 900 mm of concrete are left: those bars have no room, the others have.
    expect(check(found, 'room:edge-1').verdict).toBe('fail')
    expect(
      used(found, 'edge').every(({ path }) => (path[1]?.[0] ?? 0) < 2400 || (path[1]?.[0] ?? 0) > 3400),
    ).toBe(true)
  })

  it('without covers nothing is laid and the fields are named', () => {
    const found = plan([u], { cover: { edge: 30, mould: 30 } })
    expect(found.unknown.join()).toContain('edge-1: cover.top')
    expect(found.mass).toBeNull()
    expect(plan([u], { cover: { mould: 30, top: 30 } }).unknown.join()).toContain('edge-1: cover.edge')
  })

  it('a hook runs from its layer to the cover of the other face', () => {
    const found = plan([{ ...u, edge: 'left', form: 'hook', layer: 'top', mark: 'H' }])
    expect(found.bars.find(({ mark }) => mark === 'H')).toMatchObject({ shape: 'L', legs: [400, 115] })
    const [bar] = used(found, 'edge')
    expect(bar?.centreline?.map(([, , z]) => z)).toEqual([140, 140, 30])
  })
})

describe('trimmers', () => {
  const trim = { trim: 'D1', layer: 'both', diameter: 12, grade: 'B500B', count: 2, beyond: 500 }

  it('lie beside every side, past the corners, at the height of the mat that runs the same way', () => {
    const found = plan([trim])
    expect(used(found, 'trimmer').length).toBe(16)
    expect(found.bars.find(({ mark }) => mark === 'MR1')).toMatchObject({ count: 4, cutLength: 2000 })
    expect(check(found, 'same-place').verdict).toBe('pass')
    // The first at edge cover + half a bar; the clear distance of the code to the next: 16 + 5 = 21 (EN 1992-1-1 8.2).
    const left = used(found, 'trimmer').filter(
      ({ path }) => path[0]?.[0] === path[1]?.[0] && (path[0]?.[0] ?? 0) < 2400,
    )
    expect([...new Set(left.map(({ path }) => path[0]?.[0]))].sort()).toEqual([2400 - 36 - 33, 2400 - 36])
    expect(found.assumed.some(({ field }) => field === 'steel.trimmers-1.apart')).toBe(true)
  })

  it('without the aggregate their distance is not known, unless it is drawn', () => {
    const bare = { concrete: { strength: 40 } }
    const found = plan([trim], bare)
    expect(used(found, 'trimmer')).toEqual([])
    expect(found.unknown.join()).toContain('trimmers-1: concrete.aggregate')
    expect(found.mass).toBeNull()
    expect(used(plan([{ ...trim, apart: 60 }], bare), 'trimmer').length).toBe(16)
    expect(check(plan([{ ...trim, apart: 60 }], bare), 'clear:trimmers-1').verdict).toBe('unknown')
    expect(check(plan([{ ...trim, apart: 30 }]), 'clear:trimmers-1')).toMatchObject({
      demand: 18,
      verdict: 'fail',
    })
  })

  it('cut at the edge cover they are told, and fail where the anchorage is lost', () => {
    const far = plan([{ ...trim, beyond: 900 }])
    expect(check(far, 'beyond:trimmers-1').verdict).toBe('fail')
    expect(check(far, 'beyond:trimmers-1').demand).toBeCloseTo(900 - 30 - 6, 6)
    expect(check(far, 'anchor:trimmers-1').verdict).toBe('pass')
    expect(check(plan([{ ...trim, beyond: 150 }]), 'anchor:trimmers-1').verdict).toBe('fail')
  })

  it('of a door they end at the edge of the panel without being told there, and sides too short for a bar are told', () => {
    const door = {
      mark: 'D1',
      outline: [
        [2400, 0],
        [3400, 0],
        [3400, 2100],
        [2400, 2100],
      ],
    }
    const found = plan([trim], { openings: [door] })
    expect(check(found, 'anchor:trimmers-1')).toMatchObject({ demand: 500, verdict: 'pass' })
    expect(check(found, 'beyond:trimmers-1').verdict).toBe('pass')
    const jamb = used(found, 'trimmer').find(({ path }) => path[0]?.[0] === path[1]?.[0])
    expect(Math.min(jamb?.path[0]?.[1] ?? 0, jamb?.path[1]?.[1] ?? 0)).toBeCloseTo(36, 6)
    const slit = {
      mark: 'D1',
      outline: [
        [2400, 900],
        [2480, 900],
        [2480, 2100],
        [2400, 2100],
      ],
    }
    expect(check(plan([trim], { openings: [slit] }), 'room:trimmers-1-sides').demand).toBe(2)
  })

  it('inside U-bars of the opening they keep clear of the webs', () => {
    const found = plan([{ edge: 'openings', form: 'u', ...BAR, spacing: 200, leg: 300 }, trim])
    expect(check(found, 'same-place')).toMatchObject({ demand: 0 })
    const xs = used(found, 'trimmer').map(({ path }) =>
      path[0]?.[0] === path[1]?.[0] ? (path[0]?.[0] ?? 0) : 0,
    )
    // Over the legs beside the first mat: where these run straight, inside the bend of 40.
    expect(xs).toContain(2400 - 30 - 10 - 20)
  })

  it('diagonals stand square to the corner’s half angle, over the mats', () => {
    const found = plan([{ ...trim, diagonals: { diameter: 12, grade: 'B500B', length: 1000, count: 1 } }])
    const diagonals = used(found, 'diagonal')
    expect(diagonals.length).toBe(8)
    for (const { path, height, layer } of diagonals) {
      const [a, b] = path as [[number, number], [number, number]]
      expect(Math.abs(b[0] - a[0])).toBeCloseTo(1000 / Math.SQRT2, 6)
      expect(layer === 'mould' ? height : 180 - (height ?? 0)).toBeGreaterThanOrEqual(
        (layer === 'mould' ? 30 : 35) + 24 + 6,
      )
    }
    expect(check(found, 'same-place').verdict).toBe('pass')
  })
})

describe('starters and ties', () => {
  it('starters out of an edge are embedded and project as drawn', () => {
    const found = plan([
      {
        starters: 'top',
        layer: 'mould',
        diameter: 12,
        grade: 'B500B',
        spacing: 300,
        embed: 600,
        project: 700,
      },
    ])
    expect(found.bars.find(({ mark }) => mark === 'ST1')?.cutLength).toBe(1300)
    for (const { path } of used(found, 'starter')) expect(path.map(([, y]) => y)).toEqual([2400, 3700])
    expect(check(found, 'anchor:starters-1').verdict).toBe('pass')
    expect(check(found, 'same-place').verdict).toBe('pass')
  })

  it('starters on a line stand in the top face; too deep fails at the mould face', () => {
    const line = {
      starters: [
        [500, 500],
        [2000, 500],
      ],
      diameter: 12,
      grade: 'B500B',
      spacing: 300,
      embed: 120,
      project: 500,
    }
    const found = plan([line])
    expect(used(found, 'starter')[0]?.centreline?.map(([, , z]) => z)).toEqual([60, 680])
    expect(check(found, 'face:starters-1').verdict).toBe('pass')
    expect(check(plan([{ ...line, embed: 160 }]), 'face:starters-1').verdict).toBe('fail')
  })

  it('ties close round the thickness; their cut length counts the hooks', () => {
    const found = plan([
      {
        ties: [
          [400, 2600],
          [2000, 2600],
        ],
        spacing: 200,
        diameter: 8,
        grade: 'B500B',
        width: 200,
        inside: 32,
      },
    ])
    // Width along y: beside the second mats. 180 − 42 − 47 = 91 outside. End leg P of a link under 150°: 115 (BS 8666:2005 Table 2).
    const hook = 115
    const tie = found.bars.find(({ mark }) => mark === 'SL1')
    expect(tie).toMatchObject({ shape: 'closed', legs: [hook, 200, 91, 200, 91, hook] })
    // Computed, second method: straights and arcs. Sides less the bends at their ends, three right angles, two of 135°.
    const straights = 2 * (115 - 24) + (200 - 48) * 2 + (91 - 48) * 2
    const arcs = (3 * Math.PI * 20) / 2 + 2 * ((135 * Math.PI) / 180) * 20
    expect(tie?.cutLength).toBeCloseTo(straights + arcs, 6)
    expect(check(found, 'same-place').verdict).toBe('pass')
    expect(used(found, 'tie').every(({ centreline }) => centreline?.length === 5)).toBe(true)
  })

  it('one tie at each point, its width along the direction drawn', () => {
    const found = plan([
      {
        ties: [
          [1000, 1000],
          [5000, 1000],
        ],
        across: 'x',
        diameter: 8,
        grade: 'B500B',
        width: 150,
      },
    ])
    expect(used(found, 'tie').length).toBe(2)
    for (const { path } of used(found, 'tie'))
      expect(Math.abs((path[1]?.[0] ?? 0) - (path[0]?.[0] ?? 0))).toBeCloseTo(142, 6)
  })
})

describe('which bar lies over which', () => {
  it('listed bars that cross each other lie one over the other', () => {
    const bar = (mark: string, path: unknown) => ({ bar: mark, ...BAR, layer: 'mould', path })
    const found = plan([
      bar('A', [
        [200, 400],
        [1800, 400],
      ]),
      bar('B', [
        [1000, 200],
        [1000, 2000],
      ]),
    ])
    expect(used(found, 'listed').map(({ height }) => height)).toEqual([30 + 24 + 5, 30 + 24 + 15])
    expect(check(found, 'same-place').verdict).toBe('pass')
  })

  it('the pieces of a listed bar longer than the stock lie side by side', () => {
    const bar = {
      bar: 'A',
      ...BAR,
      layer: 'mould',
      path: [
        [100, 40],
        [5900, 40],
      ],
    }
    const short = { ...YARD, stock: [{ diameter: 10, grade: 'B500B', lengths: [4000] }] }
    const found = plan([bar], { lap: { length: 500 } }, short)
    expect(used(found, 'listed').map(({ path }) => path[0]?.[1])).toEqual([40, 50])
    expect(found.checks.filter(({ id }) => id === 'same-place')).toEqual([])
    expect(found.laps.find(({ mark }) => mark === 'A')).toMatchObject({
      bars: ['A/1#1', 'A/2#1'],
      by: 'drawing',
    })
  })

  it('where heights are not known it is not said that nothing clashes', () => {
    const bar = (mark: string, path: unknown) => ({ bar: mark, ...BAR, layer: 'mould', path })
    const bars = [
      bar('A', [
        [200, 400],
        [1800, 400],
      ]),
      bar('B', [
        [1000, 200],
        [1000, 2000],
      ]),
    ]
    const found = plan(bars, { cover: { edge: 30, top: 30 } })
    expect(check(found, 'same-place')).toMatchObject({ verdict: 'unknown' })
    expect(check(found, 'same-place').unknown?.join()).toContain('cover.mould')
  })

  it('a line that is named like a listed bar or a mat keeps checks of its own', () => {
    const listed = { bar: 'U', ...BAR, legs: [400, 100, 400] }
    const u = { edge: 'bottom', form: 'u', ...BAR, spacing: 200, leg: 400 }
    const found = plan([listed, { ...u, mark: 'U' }, { ...u, edge: 'top', mark: 'mould-x' }])
    const ids = found.checks.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids).toContain('spacing:U-2')
    expect(ids).toContain('spacing:mould-x-2')
    expect(new Set(found.bars.map(({ mark }) => mark)).size).toBe(found.bars.length)
  })

  it('mats of two layers that a thin panel leaves no room for are told', () => {
    const found = plan([], { thickness: 105 })
    expect(check(found, 'same-place')).toMatchObject({ verdict: 'fail' })
    expect(check(found, 'same-place').note).toMatch(/and \d+ more/)
  })
})

describe('inserts kept clear', () => {
  const kind = { mark: 'F1', kind: 'face', rated: 20, ratedStrength: 25, leastStrength: 15 }
  const yard = (clear?: number) => ({
    ...YARD,
    insertKinds: [{ ...kind, ...(clear === undefined ? {} : { clear }) }],
  })
  const inserts = [{ mark: 'I1', at: [1436, 1500], kind: 'face', type: 'F1' }]

  it('rows move aside within the spacing of the drawing', () => {
    const found = plan([], { inserts }, yard(40))
    expect(check(found, 'insert:I1')).toMatchObject({ verdict: 'pass', limit: 40 })
    for (const id of ['spacing:mould-x', 'spacing:mould-y', 'spacing:top-y'])
      expect(check(found, id).verdict).toBe('pass')
  })

  it('U-bars stand aside of an insert at their edge', () => {
    const u = { edge: 'top', form: 'u', ...BAR, spacing: 200, leg: 400 }
    const at = (used(plan([u]), 'edge')[10]?.path[0] ?? [0])[0] as number
    const edge = [{ mark: 'I1', at: [at, 2950], kind: 'face', type: 'F1' }]
    const near = (found: SteelPlan) =>
      Math.min(...used(found, 'edge').map(({ path }) => Math.abs((path[0]?.[0] ?? 0) - at)))
    expect(near(plan([u], { inserts: edge }, yard(20)))).toBeGreaterThanOrEqual(25)
    expect(check(plan([u], { inserts: edge }, yard(20)), 'spacing:edge-1').verdict).toBe('pass')
  })

  it('what cannot move is named; without a distance of the kind it is not known', () => {
    const wide = plan([], { inserts }, yard(150))
    expect(check(wide, 'insert:I1')).toMatchObject({ verdict: 'fail' })
    expect(check(wide, 'insert:I1').note).toMatch(/MX|MY|TX|TY/)
    const noEdge = plan([], { inserts, cover: { mould: 30, top: 30 } }, yard(20))
    expect(check(noEdge, 'insert:I1').unknown).toEqual(['cover.edge: cover at edges and openings, mm'])
    expect(check(plan([], { inserts }, yard()), 'insert:I1').unknown?.join()).toContain(
      'insertKinds.F1.clear',
    )
  })
})

describe('the drawing in docs/examples', () => {
  it('of a wall with every kind of bar passes every check of its layout', () => {
    const text = readFileSync(new URL('../../../../../docs/examples/cage.json', import.meta.url), 'utf8')
    const panel = panelOf(parseDrawing(JSON.parse(text)))
    const found = planSteel({ panel, yard: parseYard(YARD), family: codeFamily('eu') })
    const others = found.checks.filter(({ verdict }) => verdict !== 'pass')
    expect(others.map(({ id, demand, limit }) => `${id} ${demand} ${limit}`)).toEqual([])
    expect(found.unknown).toEqual([])
    expect(new Set(found.placed.map(({ use }) => use))).toEqual(
      new Set(['mat', 'edge', 'trimmer', 'diagonal', 'starter', 'tie']),
    )
  })
})

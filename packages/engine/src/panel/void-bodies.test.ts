import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../working/issue.ts'
import { replay } from '../working/replay.ts'
import { parseDrawing } from './drawing.ts'
import { netSection } from './net-section.ts'
import { panelOf } from './panel.ts'
import type { Point, Ring } from './point.ts'
import { starRing } from './random-shapes.ts'
import { regionArea, subtract } from './region.ts'

const seed = 20261129

function box(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

const WALL = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: box(0, 0, 6000, 3000),
  thickness: 200,
  openings: [{ mark: 'D1', outline: box(900, 0, 1000, 2100) }],
  concrete: { strength: 40, density: 2500 },
}
const FOAM = { mark: 'V1', outline: box(2500, 1000, 1000, 600), depth: 100, above: 50, density: 20 }
const DUCT = {
  mark: 'P1',
  line: [
    [0, 2500],
    [6000, 2500],
  ],
  diameter: 100,
  height: 100,
  mass: 1,
}

const panel = (change: object) => panelOf(parseDrawing({ ...WALL, ...change }))

function issuesOf(change: object): [string, string][] {
  try {
    panel(change)
    return []
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return error.issues.map(({ path, found }) => [path, found])
  }
}

describe('void formers and ducts in a panel', () => {
  it('an old drawing reads as before', () => {
    const found = panel({})
    expect(found.bodies).toEqual([])
    expect(found.centreHeight).toBe(100)
    expect(found.working.map(({ symbol }) => symbol)).toEqual(['A', 'V', 'm', 'W'])
  })

  // Computed, second method: sums by hand.
  it('take their volume off, and move the centre of gravity away from them', () => {
    const found = panel({ openings: [], voids: [FOAM], ducts: [DUCT] })
    const duct = (Math.PI * 0.01 * 6) / 4
    expect(found.volume).toBeCloseTo(3.6 - 0.06 - duct, 9)
    expect(found.mass).toBeCloseTo((3.6 - 0.06 - duct) * 2500 + 0.06 * 20 + 6, 6)
    const taken: [number, number, number, number][] = [
      [3.6 * 2500, 3000, 1500, 100],
      [0.06 * (20 - 2500), 3000, 1300, 100],
      [6 - duct * 2500, 3000, 2500, 100],
    ]
    const y = taken.reduce((sum, [m, , at]) => sum + m * at, 0) / found.mass
    expect(found.centre[0]).toBeCloseTo(3000, 6)
    expect(found.centre[1]).toBeCloseTo(y, 6)
    expect(found.centreHeight).toBeCloseTo(100, 9)
  })

  it('a recess former on the bed stays there: it weighs nothing in the panel, and lifts the centre', () => {
    const found = panel({ openings: [], voids: [{ ...FOAM, above: 0, mass: 40, density: undefined }] })
    expect(found.mass).toBeCloseTo((3.6 - 0.06) * 2500, 9)
    expect(found.centreHeight).toBeCloseTo((3.6 * 100 - 0.06 * 50) / (3.6 - 0.06), 9)
  })

  it('lists the masses that nobody gave', () => {
    const { density: _, ...bare } = FOAM
    expect(
      panel({ voids: [bare], ducts: [{ ...DUCT, mass: undefined }] }).assumed.map(({ field }) => field),
    ).toEqual(['mass of void former V1', 'mass of duct P1'])
    expect(panel({ voids: [FOAM], ducts: [DUCT] }).assumed).toEqual([])
  })

  it('prints steps that replay', () => {
    const steps = panel({ voids: [FOAM], ducts: [DUCT] }).working
    expect(steps.map(({ symbol }) => symbol)).toEqual([
      'A',
      'V V1',
      'V P1',
      'V',
      'm',
      'W',
      'x centre',
      'y centre',
    ])
    for (const step of steps) {
      const found = replay(step)
      if (found === null) continue
      expect(Math.abs(found - Number(step.result))).toBeLessThanOrEqual(1e-9 * Math.abs(Number(step.result)))
    }
  })

  it.each<[string, object, string, string]>([
    [
      'outside the concrete',
      { voids: [{ ...FOAM, outline: box(5500, 1000, 1000, 600) }] },
      'voids[0].outline',
      'void former V1 outside the concrete',
    ],
    [
      'across an opening',
      { voids: [{ ...FOAM, outline: box(1500, 1000, 1000, 600) }] },
      'voids[0].outline',
      'void former V1 across opening D1',
    ],
    [
      'in an opening',
      { voids: [{ ...FOAM, outline: box(1000, 1000, 300, 300) }] },
      'voids[0].outline',
      'void former V1 across opening D1',
    ],
    ['no concrete above', { voids: [{ ...FOAM, depth: 150 }] }, 'voids[0].depth', '150 on 50 in 200 mm'],
    [
      'in each other',
      { voids: [FOAM, { ...FOAM, mark: 'V2', outline: box(3400, 1500, 500, 500) }] },
      'voids[1].outline',
      'void former V2 in V1',
    ],
    [
      'an outline that crosses itself',
      {
        voids: [
          {
            ...FOAM,
            outline: [
              [2500, 1000],
              [3500, 1600],
              [3500, 1000],
              [2500, 1600],
            ],
          },
        ],
      },
      'voids[0].outline[2]',
      '[3500, 1000]: the edge from here meets the edge from corner 0',
    ],
    ['mass and density', { voids: [{ ...FOAM, mass: 2 }] }, 'voids[0].density', '20 beside a mass'],
    ['one mark for two', { voids: [FOAM], ducts: [{ ...DUCT, mark: 'V1' }] }, 'ducts[0].mark', '"V1"'],
    ['a section that no void leaves', { voids: [{ ...FOAM, section: 0.95 }] }, 'voids[0].section', '0.95'],
    [
      'a duct out of the thickness',
      { ducts: [{ ...DUCT, height: 50 }] },
      'ducts[0].height',
      '50 of a duct of 100 mm in 200 mm',
    ],
    [
      'a duct thicker than the panel',
      { ducts: [{ ...DUCT, diameter: 220 }] },
      'ducts[0].height',
      '100 of a duct of 220 mm in 200 mm',
    ],
    [
      'a duct through an opening',
      {
        ducts: [
          {
            ...DUCT,
            line: [
              [0, 1500],
              [6000, 1500],
            ],
          },
        ],
      },
      'ducts[0].line',
      'duct P1 across opening D1',
    ],
    [
      'a duct that grazes an opening',
      {
        ducts: [
          {
            ...DUCT,
            line: [
              [0, 2140],
              [6000, 2140],
            ],
          },
        ],
      },
      'ducts[0].line',
      'duct P1 across opening D1',
    ],
    [
      'a duct past the edge',
      {
        ducts: [
          {
            ...DUCT,
            line: [
              [0, 2500],
              [6500, 2500],
            ],
          },
        ],
      },
      'ducts[0].line',
      'duct P1 outside the concrete',
    ],
    [
      'a duct half out of the edge',
      {
        ducts: [
          {
            ...DUCT,
            line: [
              [0, 2980],
              [6000, 2980],
            ],
          },
        ],
      },
      'ducts[0].line',
      'duct P1 outside the concrete',
    ],
    [
      'a duct through a void',
      {
        voids: [FOAM],
        ducts: [
          {
            ...DUCT,
            line: [
              [0, 2500],
              [3000, 2500],
              [3000, 1300],
            ],
          },
        ],
      },
      'ducts[0].line',
      'duct P1 through void former V1',
    ],
    [
      'ducts through each other',
      {
        ducts: [
          DUCT,
          {
            ...DUCT,
            mark: 'P2',
            line: [
              [4000, 500],
              [4000, 3000],
            ],
          },
        ],
      },
      'ducts[1].line',
      'duct P2 in P1',
    ],
    [
      'a duct that meets itself',
      {
        ducts: [
          {
            ...DUCT,
            line: [
              [2500, 500],
              [5000, 500],
              [5000, 1500],
              [4000, 1500],
              [4000, 0],
            ],
          },
        ],
      },
      'ducts[0].line[3]',
      'a line nearer than 100 mm to its part 1',
    ],
    [
      'a duct that folds back',
      {
        ducts: [
          {
            ...DUCT,
            line: [
              [2500, 500],
              [5000, 500],
              [3000, 500],
            ],
          },
        ],
      },
      'ducts[0].line[2]',
      'a line that folds back',
    ],
    [
      'a point twice',
      {
        ducts: [
          {
            ...DUCT,
            line: [
              [2500, 500],
              [2500, 500],
              [3000, 500],
            ],
          },
        ],
      },
      'ducts[0].line[1]',
      'the point before it again',
    ],
  ])('refuses %s', (_, change, path, found) => {
    expect(issuesOf(change)).toContainEqual([path, found])
  })

  it('takes what is possible: voids over each other, touching, ducts over ducts, ending askew at an edge, bent round an opening', () => {
    const flat = { ...FOAM, depth: 40 }
    expect(
      issuesOf({
        voids: [
          flat,
          { ...flat, mark: 'V2', above: 110 },
          { ...flat, mark: 'V3', outline: box(3500, 1000, 400, 600) },
        ],
      }),
    ).toEqual([])
    expect(
      issuesOf({
        ducts: [
          { ...DUCT, diameter: 50, height: 60 },
          {
            ...DUCT,
            mark: 'P2',
            diameter: 50,
            height: 140,
            line: [
              [4000, 0],
              [4000, 3000],
            ],
          },
        ],
      }),
    ).toEqual([])
    expect(
      issuesOf({
        ducts: [
          {
            ...DUCT,
            line: [
              [4000, 0],
              [5000, 1500],
              [6000, 2600],
            ],
          },
        ],
      }),
    ).toEqual([])
    const arc = Array.from(
      { length: 19 },
      (_, i): Point => [4000 + 600 * Math.cos((i * Math.PI) / 18), 1500 + 600 * Math.sin((i * Math.PI) / 18)],
    )
    expect(issuesOf({ ducts: [{ ...DUCT, line: arc }] })).toEqual([])
    const round = [
      [400, 0],
      [400, 2500],
      [2300, 2500],
      [2300, 300],
    ]
    expect(issuesOf({ ducts: [{ ...DUCT, line: round }] })).toEqual([])
  })

  // Computed, second method: the panel in layers, each clipped on its own.
  it(`any voids: volume is that of the layers, each clipped by itself (seed ${seed})`, () => {
    const former = fc.record({
      ring: starRing({ least: 60, most: 420 }),
      above: fc.integer({ min: 0, max: 90 }),
      depth: fc.integer({ min: 5, max: 100 }),
    })
    fc.assert(
      fc.property(fc.array(former, { minLength: 1, maxLength: 6 }), (formers) => {
        const outline = box(0, 0, 6000, 3000)
        const voids = formers.map(({ ring, above, depth }, i) => ({
          mark: `V${i}`,
          above,
          depth,
          outline: ring.map(([x, y]) => [500 + (i % 6) * 1000 + x, 1500 + y]),
        }))
        const found = panelOf(parseDrawing({ ...WALL, openings: [], voids }))
        const levels = [
          ...new Set([0, 200, ...voids.flatMap(({ above, depth }) => [above, above + depth])]),
        ].sort((a, b) => a - b)
        const layers = levels.slice(1).reduce((sum, to, i) => {
          const from = levels[i]!
          const there = voids.filter(({ above, depth }) => above < to && above + depth > from)
          const region = subtract(
            outline,
            there.map((one) => one.outline as unknown as Ring),
          )
          return sum + regionArea(region) * (to - from)
        }, 0)
        expect(Math.abs(found.volume * 1e9 - layers)).toBeLessThanOrEqual(1e-6 * layers)
      }),
      { seed, numRuns: 150 },
    )
  })

  // Computed, second method: the chord of the duct at each height, by the midpoint rule.
  it('a duct: volume is the sum of its chords', () => {
    const found = panel({
      openings: [],
      ducts: [
        {
          ...DUCT,
          line: [
            [0, 1500],
            [6000, 1500],
          ],
        },
      ],
    })
    let sum = 0
    const steps = 20_000
    for (let i = 0; i < steps; i += 1) {
      const z = -50 + (100 * (i + 0.5)) / steps
      sum += 2 * Math.sqrt(2500 - z * z) * (100 / steps)
    }
    expect(found.volume).toBeCloseTo(3.6 - (sum * 6000) / 1e9, 6)
  })
})

describe('section across a slot', () => {
  // Computed, second method: the strip in a thousand layers.
  it.each([
    [150, 50, 100],
    [200, 0, 80],
    [200, 30, 120],
    [260, 90, 170],
  ])('%i mm, slot from %i to %i', (thickness, from, to) => {
    const layers = 20_000
    const h = thickness / layers
    const zs = Array.from({ length: layers }, (_, i) => (i + 0.5) * h).filter((z) => z < from || z > to)
    const area = zs.length * h
    const centre = zs.reduce((sum, z) => sum + z * h, 0) / area
    const inertia = zs.reduce((sum, z) => sum + h * (z - centre) ** 2, 0)
    const far = Math.max(centre - Math.min(...zs), Math.max(...zs) - centre)
    const found = netSection({ thickness, from, to })
    expect(found?.area).toBeCloseTo(area, 1)
    expect((found?.inertia ?? 0) / inertia).toBeCloseTo(1, 3)
    expect((found?.modulus ?? 0) / (inertia / far)).toBeCloseTo(1, 3)
  })

  it('is nothing where nothing is left, or where the slot is none', () => {
    expect(netSection({ thickness: 150, from: 0, to: 150 })).toBeNull()
    expect(netSection({ thickness: 150, from: 60, to: 60 })).toBeNull()
    expect(netSection({ thickness: Number.NaN, from: 0, to: 60 })).toBeNull()
    expect(netSection({ thickness: 150, from: 50, to: 100 })?.share).toBeCloseTo(26 / 27, 12)
  })
})

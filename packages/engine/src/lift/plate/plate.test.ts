import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point, Ring } from '../../panel/point.ts'
import { area, counterClockwise } from '../../panel/polygon.ts'
import { starRing } from '../../panel/random-shapes.ts'
import type { Piece } from '../../panel/region.ts'
import { InputError } from '../../working/issue.ts'
import { doubleArea, quintic, shapeAt, stiffnessInto } from './element.ts'
import {
  candidate,
  inConcrete,
  type LiftedPlateInput,
  liftedPlate,
  loadCase,
  type PlateModel,
  type PlateSupport,
  plateOf,
  solvePlate,
  supported,
} from './index.ts'
import { addForce } from './model.ts'

const SEED = 20261125

const OUTLINE: Ring = [
  [0, 0],
  [6000, 0],
  [6000, 3000],
  [0, 3000],
]
const HOLE: Ring = [
  [3000, 600],
  [3000, 2100],
  [4200, 2100],
  [4200, 600],
]
const PLAIN: Piece = { outline: OUTLINE, holes: [] }
const OPEN: Piece = { outline: OUTLINE, holes: [HOLE] }
const PICKS: readonly Point[] = [
  [1243, 621],
  [4757, 621],
  [1243, 2379],
  [4757, 2379],
]

const COMMON = { piece: OPEN, thickness: 150, modulus: 25_000, poisson: 0.2 } as const

/** A unit force at a point by the element's own shape. */
function pointLoads(model: PlateModel, at: Point): Float64Array {
  const loads = new Float64Array(model.unitLoad.length)
  addForce(model, loads, at, 1)
  return loads
}

function lift(change: Partial<LiftedPlateInput> = {}) {
  return liftedPlate({
    piece: OPEN,
    thickness: 150,
    modulus: 25_000,
    poisson: 0.2,
    pressure: 3.75e-3,
    supports: PICKS.map((at) => ({ at })),
    ...change,
  })
}

const triangle = fc
  .tuple(...Array.from({ length: 6 }, () => fc.double({ min: -500, max: 500, noNaN: true })))
  .map((c) => c as unknown as readonly [number, number, number, number, number, number])
  .filter((c) => doubleArea(c) > 2e4)

describe('quintic triangle', () => {
  it(`holds every quartic exactly on any triangle (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        triangle,
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 0, max: 4 }),
        (corners, a, b) => {
          if (a + b > 4) return
          const [p, q] = [(x: number) => (x / 500) ** a, (y: number) => (y / 500) ** b]
          const d = (n: number, x: number, times: number): number =>
            times === 0
              ? (x / 500) ** n
              : times === 1
                ? n === 0
                  ? 0
                  : (n / 500) * (x / 500) ** (n - 1)
                : n < 2
                  ? 0
                  : ((n * (n - 1)) / 250_000) * (x / 500) ** (n - 2)
          const unknowns = [0, 1, 2].flatMap((v) => {
            const [x, y] = [corners[2 * v]!, corners[2 * v + 1]!]
            return [
              p(x) * q(y),
              d(a, x, 1) * q(y),
              p(x) * d(b, y, 1),
              d(a, x, 2) * q(y),
              d(a, x, 1) * d(b, y, 1),
              p(x) * d(b, y, 2),
            ]
          })
          const [x, y] = [
            0.5 * corners[0] + 0.3 * corners[2] + 0.2 * corners[4],
            0.5 * corners[1] + 0.3 * corners[3] + 0.2 * corners[5],
          ]
          const shape = shapeAt(corners, quintic(corners, unknowns), x, y)
          expect(Math.abs(shape.w - p(x) * q(y))).toBeLessThan(1e-8)
          expect(Math.abs(shape.xx - d(a, x, 2) * q(y))).toBeLessThan(1e-9)
          expect(Math.abs(shape.xy - d(a, x, 1) * d(b, y, 1))).toBeLessThan(1e-9)
        },
      ),
      { numRuns: 100, seed: SEED },
    )
  })

  it(`three rigid motions cost no energy; nothing else is free (seed ${SEED})`, () => {
    fc.assert(
      fc.property(triangle, (corners) => {
        const k = new Float64Array(324)
        stiffnessInto(k, 0, corners, { rigidity: 1, poisson: 0.2 })
        const size = Math.max(...k.map(Math.abs))
        for (const motion of [
          (_x: number, _y: number) => [1, 0, 0, 0, 0, 0],
          (x: number, _y: number) => [x / 500, 1 / 500, 0, 0, 0, 0],
          (_x: number, y: number) => [y / 500, 0, 1 / 500, 0, 0, 0],
        ]) {
          const u = [0, 1, 2].flatMap((v) => motion(corners[2 * v]!, corners[2 * v + 1]!))
          for (let i = 0; i < 18; i += 1) {
            const force = u.reduce((sum, value, j) => sum + value * k[18 * i + j]!, 0)
            expect(Math.abs(force)).toBeLessThan(1e-9 * size)
          }
        }
      }),
      { numRuns: 50, seed: SEED },
    )
  })
})

describe('patch tests on an irregular mesh', () => {
  const square: Piece = {
    outline: [
      [0, 0],
      [1000, 0],
      [1000, 1000],
      [0, 1000],
    ],
    holes: [],
  }
  it.each([
    [0.2, 0.625],
    [0.3, 5 / 7],
  ])(
    'three corners held, a force at the fourth, ν %d: P a² / 2 D (1 − ν), |mxy| = P / 2 everywhere',
    (poisson, coefficient) => {
      const model = plateOf({
        piece: square,
        thickness: 40,
        modulus: 30_000,
        poisson,
        supports: [
          [310, 420],
          [730, 190],
        ],
      })
      const load = loadCase(model, { pressure: 0, forces: [{ at: [1000, 1000], force: 100 }] })
      const { reactions, field } = supported({
        model,
        load,
        supports: [{ at: [0, 0] }, { at: [1000, 0] }, { at: [0, 1000] }],
      })
      expect(reactions[0]).toBeCloseTo(-100, 6)
      const w = field.at([1000, 1000])!.deflection
      expect((w * model.bending.rigidity) / (100 * 1e6) / coefficient).toBeCloseTo(1, 8)
      for (const at of [
        [500, 500],
        [30, 960],
        [611, 213],
      ] as const) {
        const { mx, my, mxy } = field.at(at)!
        expect(Math.abs(mx) + Math.abs(my)).toBeLessThan(1e-6)
        expect(mxy).toBeCloseTo(-50, 6)
      }
    },
  )
})

describe('laws', () => {
  const base = lift()

  it('loads in balance; each reaction along with the load', () => {
    const whole = 3.75e-3 * (18e6 - 1.8e6)
    expect(base.reactions.reduce((a, b) => a + b, 0) / whole).toBeCloseTo(1, 9)
    const twice = lift({ pressure: 7.5e-3 })
    for (const [i, r] of twice.reactions.entries()) expect(r / base.reactions[i]!).toBeCloseTo(2, 9)
    expect(twice.peak.stress / base.peak.stress).toBeCloseTo(2, 9)
  })

  it('deflection goes with the fourth power of the lengths and, at the same load, down with the third of the thickness', () => {
    const scaled = (length: number, thickness: number) =>
      lift({
        piece: {
          outline: OUTLINE.map(([x, y]) => [length * x, length * y]),
          holes: [HOLE.map(([x, y]) => [length * x, length * y])],
        },
        thickness: 150 * thickness,
        supports: PICKS.map(([x, y]) => ({ at: [length * x, length * y] })),
      })
    const w = scaled(1.5, 1.2)
    const share = w.field.at([1.5 * 6000, 0])!.deflection / base.field.at([6000, 0])!.deflection
    expect(Math.abs(share / (1.5 ** 4 / 1.2 ** 3) - 1)).toBeLessThan(5e-3)
    for (const [i, r] of w.reactions.entries()) expect(r / base.reactions[i]! / 1.5 ** 2).toBeCloseTo(1, 3)
  })

  it('deflection goes with 1/E; loads and moments do not know it', () => {
    const stiff = lift({ modulus: 50_000 })
    for (const [i, r] of stiff.reactions.entries()) expect(r / base.reactions[i]!).toBeCloseTo(1, 8)
    expect(stiff.peak.stress / base.peak.stress).toBeCloseTo(1, 8)
    expect(base.field.at([6000, 0])!.deflection / stiff.field.at([6000, 0])!.deflection).toBeCloseTo(2, 7)
  })

  it('all lengths doubled at the same load: moments four times, deflection in the same plate of twice the thickness twice', () => {
    const larger = lift({
      piece: {
        outline: OUTLINE.map(([x, y]) => [2 * x, 2 * y]),
        holes: [HOLE.map(([x, y]) => [2 * x, 2 * y])],
      },
      thickness: 300,
      supports: PICKS.map(([x, y]) => ({ at: [2 * x, 2 * y] })),
    })
    expect(larger.peak.stress / base.peak.stress).toBeCloseTo(1, 6)
    expect(larger.field.at([0, 0])!.deflection / base.field.at([0, 0])!.deflection).toBeCloseTo(2, 6)
  })

  it('superposition: own weight and a cast-in load together are the sum', () => {
    const forces = [{ at: [500, 1500] as Point, force: 2000 }]
    const both = lift({ forces })
    const alone = lift({ forces, pressure: 0 })
    for (const [i, r] of both.reactions.entries()) {
      expect(r).toBeCloseTo(base.reactions[i]! + alone.reactions[i]!, 5)
    }
  })

  it('a mirrored panel has mirrored loads; a plain one the same at each pick', () => {
    const mirrored = lift({
      piece: { outline: OUTLINE, holes: [HOLE.map(([x, y]): Point => [6000 - x, y]).reverse()] },
      supports: PICKS.map(([x, y]) => ({ at: [6000 - x, y] })),
    })
    for (const [i, r] of mirrored.reactions.entries()) expect(r / base.reactions[i]!).toBeCloseTo(1, 3)
    expect(mirrored.peak.stress / base.peak.stress).toBeCloseTo(1, 2)
    const plain = lift({ piece: PLAIN })
    for (const r of plain.reactions) expect(r / plain.reactions[0]!).toBeCloseTo(1, 3)
  })

  it(`the drawing turned and moved: same loads, deflections and stress (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.integer({ min: -9000, max: 9000 }),
        (angle, shift) => {
          const turned = ([x, y]: Point): Point => [
            shift + x * Math.cos(angle) - y * Math.sin(angle),
            x * Math.sin(angle) + y * Math.cos(angle) - shift,
          ]
          const found = lift({
            piece: { outline: OUTLINE.map(turned), holes: [HOLE.map(turned)] },
            supports: PICKS.map((at) => ({ at: turned(at) })),
          })
          for (const [i, r] of found.reactions.entries())
            expect(Math.abs(r / base.reactions[i]! - 1)).toBeLessThan(1e-3)
          const [w, expected] = [turned([6000, 0]), [6000, 0] as Point].map(
            (at, i) => (i === 0 ? found : base).field.at(at)?.deflection,
          )
          if (w !== undefined) expect(Math.abs(w / expected! - 1)).toBeLessThan(0.01)
          expect(Math.abs(found.peak.stress / base.peak.stress - 1)).toBeLessThan(0.01)
        },
      ),
      { numRuns: 4, seed: SEED },
    )
  })

  it('refined, the energy of a smooth case converges at the sixth power: halved sides, less than 1/25 of the error', () => {
    const square: Ring = [
      [0, 0],
      [1000, 0],
      [1000, 1000],
      [0, 1000],
    ]
    const error = (fineness: number): number => {
      const model = plateOf({
        piece: { outline: square, holes: [] },
        thickness: 700,
        modulus: 30_000,
        poisson: 0.3,
        supports: [],
        edges: square.map((from, i) => ({ from, to: square[(i + 1) % 4]!, kind: 'simple' })),
        fineness,
      })
      const { loads, bent } = loadCase(model, { pressure: 1 })
      const work = loads.reduce((sum, value, i) => sum + value * bent[i]!, 0)
      // Navier: Σ over odd m, n of 64 / π⁸ m² n² (m² + n²)²
      let exact = 0
      for (let m = 1; m < 400; m += 2) {
        for (let n = 1; n < 400; n += 2) exact += 64 / (Math.PI ** 8 * (m * n) ** 2 * (m * m + n * n) ** 2)
      }
      return Math.abs((work * model.bending.rigidity) / 1e18 / exact - 1)
    }
    expect(error(1)).toBeLessThan(5e-4)
    expect(error(0.5)).toBeLessThan(error(1) / 25)
  })
})

describe('supports', () => {
  it('a dragged insert is interpolated: the same factor, nearly the loads of its own mesh', () => {
    const { model } = lift()
    const load = loadCase(model, { pressure: 3.75e-3 })
    const moved: readonly PlateSupport[] = PICKS.map(([x, y], i) => ({
      at: i === 0 ? [x + 137, y + 61] : [x, y],
    }))
    const kept = PICKS.slice(1).map((at) => candidate(model, at))
    const { reactions } = supported({
      model,
      load,
      supports: moved,
      candidates: [candidate(model, moved[0]!.at), ...kept],
    })
    const own = lift({ supports: moved }).reactions
    for (const [i, r] of reactions.entries()) expect(Math.abs(r / own[i]! - 1)).toBeLessThan(0.005)
  })

  it('a force on the move is the same whether solved for or added up from kept solutions', () => {
    const { model } = lift()
    const load = loadCase(model, { pressure: 3.75e-3 })
    const kept = PICKS.slice(1).map((at) => candidate(model, at))
    const at = (step: number): Point => [2000 + 0.5 * step, 1500 + 0.3 * step]
    const own = plateOf({ ...COMMON, supports: PICKS })
    for (let step = 0; step < 8; step += 1) {
      const moved = candidate(model, at(step))
      const fresh = solvePlate(own, pointLoads(own, at(step)))
      const most = Math.max(...fresh.map(Math.abs))
      for (const [i, value] of fresh.entries())
        expect(Math.abs(moved.bent[i]! - value)).toBeLessThan(1e-7 * most)
      const supports = [at(step), ...PICKS.slice(1)].map((point) => ({ at: point }))
      const { reactions } = supported({ model, load, supports, candidates: [moved, ...kept] })
      expect(reactions.reduce((a, b) => a + b, 0) / (3.75e-3 * 16.2e6)).toBeCloseTo(1, 9)
    }
  })

  it('four soft equal legs share as springs under a rigid panel', () => {
    const soft = lift({ supports: PICKS.map((at) => ({ at, stiffness: 1 })) }).reactions
    const [n, x, y, ex, ey] = [60_750, 1757, 879, -200 / 3, 50 / 3]
    for (const [i, r] of soft.entries()) {
      const [dx, dy] = [PICKS[i]![0] - 3000, PICKS[i]![1] - 1500]
      const share = (n / 4) * (1 + (ex * Math.sign(dx)) / x + (ey * Math.sign(dy)) / y)
      expect(Math.abs(r / share - 1)).toBeLessThan(2e-3)
    }
  })

  it('a leg 10 mm long on 3015 N/mm legs moves 6.295 kN within the pairs (computed, second method: twist mode of the panel)', () => {
    const legs = PICKS.map((at, i) => ({ at, stiffness: 3015, ...(i === 0 ? { longer: 10 } : {}) }))
    const { reactions } = lift({ piece: PLAIN, supports: legs })
    expect(Math.abs((16_875 - reactions[0]!) / 6295 - 1)).toBeLessThan(0.01)
    expect(Math.abs((reactions[1]! - 16_875) / 6295 - 1)).toBeLessThan(0.01)
  })

  it('a support that would have to push down has a negative load', () => {
    const supports = [...PICKS, [3000, 2900] as Point, [5900, 2900] as Point].map((at) => ({ at }))
    expect(
      Math.min(
        ...lift({ supports, pressure: 3.75e-3, forces: [{ at: [100, 1500], force: 40_000 }] }).reactions,
      ),
    ).toBeLessThan(0)
  })

  it.each<[string, readonly Point[]]>([
    ['in the opening', [[3600, 1500], ...PICKS]],
    ['off the panel', [[-5, 1500], ...PICKS]],
    [
      'three in one line',
      [
        [1000, 600],
        [2000, 600],
        [5000, 600],
      ],
    ],
    ['two', PICKS.slice(0, 2)],
    ['none', []],
    ['two at one point', [PICKS[0]!, ...PICKS]],
    ['not a number', [[Number.NaN, 5], ...PICKS]],
  ])('%s: refused', (_, points) => {
    expect(() => lift({ supports: points.map((at) => ({ at })) })).toThrow(InputError)
  })

  it.each([
    { thickness: 0 },
    { thickness: Number.NaN },
    { modulus: -1 },
    { poisson: 0.5 },
    { pressure: Number.NaN },
  ])('refuses %o', (change) => {
    expect(() => lift(change)).toThrow(InputError)
  })

  it('equalised legs a little off the centre of gravity differ along x and y as balance asks; far off they do not hang level: refused', () => {
    const supports = PICKS.map((at) => ({ at, equalised: 'all' }))
    const [n, x, y, ex, ey] = [60_750, 1757, 879, -200 / 3, 50 / 3]
    for (const [i, r] of lift({ supports }).reactions.entries()) {
      const [dx, dy] = [PICKS[i]![0] - 3000, PICKS[i]![1] - 1500]
      const share = (n / 4) * (1 + (ex * Math.sign(dx)) / x + (ey * Math.sign(dy)) / y)
      expect(r / share).toBeCloseTo(1, 3)
    }
    const off = supports.map(({ at: [sx, sy], equalised }) => ({ at: [sx + 200, sy] as Point, equalised }))
    expect(() => lift({ supports: off })).toThrow(InputError)
    for (const r of lift({ supports, piece: PLAIN }).reactions) expect(r).toBeCloseTo(16_875, 3)
  })

  it('an insert within a millimetre of an edge stands on it', () => {
    expect(inConcrete(PLAIN, [3000, 0.4])).toEqual([3000, 0])
    expect(inConcrete(PLAIN, [3000, -0.4])).toEqual([3000, 0])
    expect(inConcrete(PLAIN, [3000, 1.4])).toEqual([3000, 1.4])
    expect(inConcrete(PLAIN, [3000, -1.4])).toBeNull()
    expect(inConcrete(OPEN, [3600, 1500])).toBeNull()
  })
})

describe('hard drawings', () => {
  it('three hundred openings: loads in balance, each span and pick with a number', () => {
    const holes = Array.from({ length: 300 }, (_, i): Ring => {
      const [x, y] = [150 + 390 * (i % 30), 150 + 290 * Math.floor(i / 30)]
      return [
        [x, y],
        [x, y + 150],
        [x + 200, y + 150],
        [x + 200, y],
      ]
    })
    const outline: Ring = [
      [0, 0],
      [12_000, 0],
      [12_000, 3050],
      [0, 3050],
    ]
    const supports = [2000, 9800].flatMap((x) => [660, 2400].map((y) => ({ at: [x + 60, y + 15] as Point })))
    const placed = supports.map(({ at: [x, y] }) => ({
      at: [x - (x % 390) + 60, y - (y % 290) + 80] as Point,
    }))
    const { reactions, peak } = lift({ piece: { outline, holes }, thickness: 100, supports: placed })
    const whole = 3.75e-3 * (12_000 * 3050 - 300 * 30_000)
    expect(reactions.reduce((a, b) => a + b, 0) / whole).toBeCloseTo(1, 8)
    expect(peak.stress).toBeGreaterThan(0)
  }, 30_000)

  it(`any star-shaped outline on the middles of three sides: loads in balance or an honest refusal (seed ${SEED})`, () => {
    fc.assert(
      fc.property(starRing(), (ring) => {
        const outline = counterClockwise(ring)
        const n = outline.length
        const middles = [0, Math.floor(n / 3), Math.floor((2 * n) / 3)].map((i): Point => {
          const [a, b] = [outline[i]!, outline[(i + 1) % n]!]
          return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
        })
        try {
          const { reactions } = lift({
            piece: { outline, holes: [] },
            supports: middles.map((at) => ({ at })),
          })
          const whole = 3.75e-3 * area(outline)
          expect(Math.abs(reactions.reduce((a, b) => a + b, 0) / whole - 1)).toBeLessThan(1e-7)
        } catch (fault) {
          if (!(fault instanceof InputError)) throw fault
        }
      }),
      { numRuns: 25, seed: SEED },
    )
  }, 30_000)
})

describe('averages', () => {
  const { field, corners, peak, peakError } = lift({ estimate: true })

  it('the disc mean equals the mean of points where the field is smooth', () => {
    const at: Point = [2200, 1500]
    let [sum, count] = [0, 0]
    for (let i = 0; i < 40; i += 1) {
      for (let j = 0; j < 24; j += 1) {
        const [r, a] = [75 * Math.sqrt((i + 0.5) / 40), ((j + 0.5) * Math.PI) / 12]
        sum += field.at([at[0] + r * Math.cos(a), at[1] + r * Math.sin(a)])!.mx
        count += 1
      }
    }
    expect(field.discMean(at, 75)!.mx / (sum / count)).toBeCloseTo(1, 4)
  })

  it('a disc over an edge counts the concrete only; one in the opening has none', () => {
    expect(field.discMean([6000, 1500], 75)).not.toBeNull()
    const half = field.discMean([3600, 0], 75)!
    expect(Math.abs(half.mx / field.at([3600, 30])!.mx - 1)).toBeLessThan(0.05)
    expect(field.discMean([3600, 1500], 75)).toBeNull()
  })

  it('each corner of the opening has its own average, within 2 % of a mesh of half the size', () => {
    expect(corners).toHaveLength(4)
    const fine = lift({ fineness: 0.5 }).corners
    const most = Math.max(...fine.map(({ stress }) => stress))
    for (const [i, corner] of corners.entries()) {
      expect(Math.abs(corner.stress - fine[i]!.stress)).toBeLessThan(0.02 * most)
    }
  })

  it('the peak is at least each average and each probe, and its error is small and known', () => {
    expect(peak.of).toBe('support')
    for (const at of [
      [3000, 0],
      [3600, 0],
      [100, 100],
    ] as const) {
      expect(field.at(at)!.stress).toBeLessThanOrEqual(peak.stress)
    }
    expect(peakError).not.toBeNull()
    expect(peakError!).toBeLessThan(0.02 * peak.stress)
  })

  it('the strip along a width runs to the edges that are there', () => {
    expect(field.runAt([3600, 300], [0, 1])!.map(Math.round)).toEqual([-300, 300])
    const wide = field.lineMean([3600, 300], [0, 1], 1e5)!
    const all = field.lineMean([3600, 300], [0, 1], 600)!
    expect(wide.mx).toBeCloseTo(all.mx, 6)
  })
})

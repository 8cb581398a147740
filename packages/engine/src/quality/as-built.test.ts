import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { replay } from '../working/replay.ts'
import { asBuilt } from './as-built.ts'
import { cross, dot, type Point3, unit } from './frame.ts'
import { parseMeasured } from './measured.ts'

const SEED = 77_120
const eu = codeFamily('eu')
const us = codeFamily('us')

const RECTANGLE = [
  [0, 0],
  [6000, 0],
  [6000, 3000],
  [0, 3000],
]
const GABLE = [
  [0, 0],
  [7000, 0],
  [7000, 2400],
  [3500, 3600],
  [0, 2400],
]
const NOTCHED = [
  [0, 0],
  [6000, 0],
  [6000, 3000],
  [3500, 3000],
  [3500, 2600],
  [2500, 2600],
  [2500, 3000],
  [0, 3000],
]

function drawing(outline: number[][] = RECTANGLE) {
  return { format: 'castwright.drawing/1', mark: 'P1', outline, thickness: 160, concrete: { strength: 40 } }
}

function flat(outline: number[][]): Point3[] {
  return outline.map(([x = 0, y = 0]) => [x, y, 0] as const)
}

function found(change: Record<string, unknown>, outline = RECTANGLE, family = eu) {
  const measured = parseMeasured({ drawing: drawing(outline), ...change })
  const { deviations, verdict, assumed } = asBuilt({ measured, family })
  return { verdict, assumed, of: (what: string) => deviations.find((each) => each.what === what) }
}

describe('as built', () => {
  it('is not known where nothing was measured', () => {
    const { verdict, of } = found({})
    expect(verdict).toBe('unknown')
    for (const what of ['length', 'width', 'thickness', 'squareness', 'bow', 'warp', 'flatness'])
      expect(of(what)).toMatchObject({ value: null, verdict: 'unknown', unknown: [expect.any(String)] })
  })

  it('keeps the worst side, with its sign and the limit on its side', () => {
    const { of } = found({ sides: [6010, 3001, 5985, 2998] })
    expect(of('length')).toMatchObject({ value: -15, limit: -16, verdict: 'pass' })
    expect(of('width')).toMatchObject({ value: -2, limit: -13, verdict: 'pass' })
  })

  it.each([
    [16, 'pass'],
    [16.01, 'fail'],
    [-16, 'pass'],
    [-16.01, 'fail'],
  ])('a length off by %f: %s', (off, verdict) => {
    expect(found({ sides: [6000 + off, 3000, 6000, 3000] }).of('length')?.verdict).toBe(verdict)
  })

  it.each([
    [[155], 'pass'],
    [[154.5], 'fail'],
    [[170.2, 160], 'pass'],
    [[171], 'fail'],
  ])('thickness %j of 160 (−5.4, +10.2): %s', (thickness, verdict) => {
    expect(found({ thickness }).of('thickness')?.verdict).toBe(verdict)
  })

  it('says when thickness was read at fewer than four places', () => {
    expect(found({ thickness: [160, 160, 160] }).of('thickness')?.note).toMatch(/four/)
    expect(found({ thickness: [160, 160, 160, 160] }).of('thickness')?.note).toBeUndefined()
  })

  it('says that equal diagonals alone do not prove square', () => {
    expect(found({ diagonals: [6708, 6708] }).of('squareness')?.note).toMatch(/sides/)
    expect(
      found({ diagonals: [6708, 6708], sides: [6000, 3000, 6000, 3000] }).of('squareness')?.note,
    ).toBeUndefined()
  })

  it('takes off the difference that the drawing gives the diagonals', () => {
    const raking = [
      [0, 0],
      [5000, 0],
      [5000, 2000],
      [0, 3000],
    ]
    const corners = flat(raking)
    expect(found({ corners }, raking).of('squareness')?.value).toBeCloseTo(0, 9)
  })

  it('bow and warp of a wall panel have no confirmed limit in eu: shown, never passed', () => {
    const corners = [...flat(RECTANGLE), [3000, 0, 2]]
    const { of } = found({ corners })
    expect(of('bow')).toMatchObject({ value: expect.closeTo(2, 9), limit: null, verdict: 'unknown' })
    expect(of('warp')).toMatchObject({ value: 0, verdict: 'unknown' })
  })

  it('in us they have: the edge that the point lies on gives the limit', () => {
    const long = found({ corners: [...flat(RECTANGLE), [3000, 3000, -16.6]] }, RECTANGLE, us).of('bow')
    expect(long).toMatchObject({ verdict: 'pass', limit: expect.closeTo(-16.667, 3) })
    const short = found({ corners: [...flat(RECTANGLE), [6000, 1500, 16.6]] }, RECTANGLE, us).of('bow')
    expect(short).toMatchObject({ verdict: 'fail', limit: expect.closeTo(8.333, 3) })
  })

  it('takes an edge of no stated length as the longest, and lists that', () => {
    const { assumed } = found({ edges: [[0, 3, 0]] })
    expect(assumed).toEqual([expect.objectContaining({ field: 'edges', value: 6000 })])
    expect(found({ edges: [[0, 3, 0, 3000]] }).assumed).toEqual([])
  })

  it('an entered limit stands in where the family has none', () => {
    const measured = parseMeasured({ drawing: drawing(), edges: [[0, 5, 0, 6000]] })
    const limits = {
      'quality.bow': {
        entry: 'e1',
        value: 6,
        unit: 'mm',
        standard: 'yard standard',
        edition: '2026',
        by: { id: 'i', name: 'I. Engineer', role: 'engineer' },
      },
    } as const
    const bow = asBuilt({ measured, family: eu, limits }).deviations.find(({ what }) => what === 'bow')
    expect(bow).toMatchObject({ verdict: 'pass', limit: 6, source: { status: 'entered' } })
  })

  it('an outline with notches is squared by the corners of its box, a gable not at all', () => {
    expect(found({ corners: flat(NOTCHED) }, NOTCHED).of('squareness')?.value).toBe(0)
    expect(found({ corners: flat(GABLE) }, GABLE).of('squareness')).toMatchObject({
      value: null,
      unknown: [expect.stringMatching(/no four corners/)],
    })
  })

  it('a gable twisted about its middle has the warp of its box', () => {
    const twisted = flat(GABLE).map(([x, y]): Point3 => [x, y, (8 * (x - 3500) * (y - 1800)) / (7000 * 3600)])
    expect(found({ corners: twisted }, GABLE).of('warp')?.value).toBeCloseTo(8, 4)
  })

  it('its working gives its own numbers again', () => {
    const measured = parseMeasured({
      drawing: drawing(),
      corners: [...flat(RECTANGLE).map(([x, y], i): Point3 => [x + i, y - i, i * i]), [3000, 0, 4]],
      sides: [6001, 3002, 5999, 3001],
      diagonals: [6710, 6705],
      thickness: [161, 158],
      edges: [[1, 5, 2]],
      gaps: [2, 3],
    })
    for (const family of [eu, us]) {
      const steps = asBuilt({ measured, family }).deviations.flatMap(({ working }) => working)
      expect(steps.length).toBeGreaterThan(10)
      for (const step of steps) {
        const value = replay(step)
        if (value !== null) expect(value, step.formula).toBeCloseTo(Number(step.result), 9)
      }
    }
  })
})

describe('what was measured is refused', () => {
  it.each([
    ['without a drawing', { drawing: undefined }, /drawing/],
    ['with a bad drawing', { drawing: { ...drawing(), thickness: 0 } }, /drawing\.thickness: found 0/],
    ['with three corners', { corners: flat(RECTANGLE).slice(0, 3) }, /corners: .*at least 4/],
    ['with corners in 2D', { corners: RECTANGLE }, /corners\[0\]/],
    [
      'with corners out of order',
      { corners: [0, 2, 1, 3].map((i) => flat(RECTANGLE)[i]) },
      /corners: found corners that enclose 0.00 m²/,
    ],
    [
      'with corners that begin at another',
      { corners: [1, 2, 3, 0].map((i) => flat(RECTANGLE)[i]) },
      /corners\[1\]: found 3000 mm/,
    ],
    ['with a point beside the panel', { corners: [...flat(RECTANGLE), [9000, 0, 0]] }, /corners\[4\]/],
    ['with five sides', { sides: [6000, 3000, 6000, 3000, 1] }, /sides: found 5 sides/],
    ['with sides out of order', { sides: [3000, 6000, 3000, 6000] }, /sides\[0\]: found 3000/],
    ['with one diagonal', { diagonals: [6708] }, /diagonals/],
    ['with a thickness of 0', { thickness: [0] }, /thickness\[0\]: found 0/],
    ['with a negative gap', { gaps: [-1] }, /gaps\[0\]: found -1/],
    ['with a field of no name', { diagonal: [1, 2] }, /diagonal: .*no field of this name/],
    ['with a bow of two readings', { edges: [[1, 2]] }, /edges\[0\]/],
  ])('%s', (_, change, message) => {
    expect(() => parseMeasured({ drawing: drawing(), ...change }, 'm.json')).toThrow(message)
  })

  it('with fewer corners than the outline has', () => {
    expect(() => parseMeasured({ drawing: drawing(GABLE), corners: flat(GABLE).slice(0, 4) })).toThrow(
      /corners: found 4 points, expected the 5 corners/,
    )
  })

  it('with further points on an outline that spans no surface', () => {
    const corners = [...flat(GABLE), [3500, 0, 1]]
    expect(() => parseMeasured({ drawing: drawing(GABLE), corners })).toThrow(/corners\[5\]/)
  })
})

const angle = fc.double({ min: -3, max: 3, noNaN: true })
const shift = fc.double({ min: -20_000, max: 20_000, noNaN: true })
const height = fc.double({ min: -20, max: 20, noNaN: true })

/** A turn about an axis in space, then a shift. */
function moved(point: Point3, axis: Point3, by: number, to: Point3): Point3 {
  const k = unit(axis)
  const [c, s] = [Math.cos(by), Math.sin(by)]
  const turned = cross(k, point)
  const along = dot(k, point) * (1 - c)
  return [0, 1, 2].map(
    (i) => (point[i] ?? 0) * c + (turned[i] ?? 0) * s + (k[i] ?? 0) * along + (to[i] ?? 0),
  ) as unknown as Point3
}

describe(`whatever the panel and however it stands (seed ${SEED})`, () => {
  it('turning and shifting change no deviation', () => {
    fc.assert(
      fc.property(
        fc.array(height, { minLength: 5, maxLength: 5 }),
        fc.tuple(angle, angle, fc.double({ min: 0.1, max: 1, noNaN: true })),
        angle,
        fc.tuple(shift, shift, shift),
        (heights, axis, by, to) => {
          const points: Point3[] = [...flat(RECTANGLE), [2600, 0, 0] as const].map(([x, y], i) => [
            x,
            y,
            heights[i] ?? 0,
          ])
          const turned = points.map((point) => moved(point, axis, by, to))
          const [here, there] = [found({ corners: points }), found({ corners: turned })]
          for (const what of ['length', 'width', 'squareness', 'bow', 'warp'])
            expect(there.of(what)?.value).toBeCloseTo(here.of(what)?.value ?? Number.NaN, 5)
        },
      ),
      { seed: SEED },
    )
  })

  it('a sheared rectangle: difference of diagonals 4 a e over their sum', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 60, noNaN: true }), (shear) => {
        const corners: Point3[] = [
          [0, 0, 0],
          [6000, 0, 0],
          [6000 + shear, 3000, 0],
          [shear, 3000, 0],
        ]
        const sum = Math.hypot(6000 + shear, 3000) + Math.hypot(6000 - shear, 3000)
        expect(found({ corners }).of('squareness')?.value).toBeCloseTo((4 * 6000 * shear) / sum, 6)
      }),
      { seed: SEED },
    )
  })

  it('a plane has neither warp nor bow', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        (a, b) => {
          const lean = (x: number, y: number): Point3 => [
            x / Math.hypot(1, a),
            y / Math.hypot(1, b),
            (a * x) / Math.hypot(1, a) + (b * y) / Math.hypot(1, b),
          ]
          const corners = [...RECTANGLE, [3000, 0]].map(([x = 0, y = 0]) => lean(x, y))
          const { of } = found({ corners })
          expect(of('warp')?.value).toBeCloseTo(0, 6)
          expect(of('bow')?.value).toBeCloseTo(0, 6)
        },
      ),
      { seed: SEED },
    )
  })
})

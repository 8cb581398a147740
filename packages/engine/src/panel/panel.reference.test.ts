import { describe, expect, it } from 'vitest'
import { parseDrawing } from './drawing.ts'
import { GRAVITY, type Panel, panelOf } from './panel.ts'
import type { Point, Ring } from './point.ts'

/**
 * Check values of mass and centre of gravity. Source of all: computed, second method: sums of rectangles and triangles by
 * hand; standard gravity 9.80665 m/s² (3rd CGPM, 1901). Metres in the tables, as worked by hand.
 */
function panel(corners: Ring, { thickness = 150, density = 2500, openings = [] as Ring[] } = {}): Panel {
  const mm = (ring: Ring) => ring.map(([x, y]) => [x * 1000, y * 1000])
  return panelOf(
    parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'P',
      outline: mm(corners),
      thickness,
      concrete: { strength: 40, density },
      openings: openings.map((ring, index) => ({ mark: `O${index}`, outline: mm(ring) })),
    }),
  )
}

const RECTANGLE: Ring = [
  [0, 0],
  [6, 0],
  [6, 3],
  [0, 3],
]
const WINDOW: Ring = [
  [3.6, 0.6],
  [4.8, 0.6],
  [4.8, 2.1],
  [3.6, 2.1],
]
const DOOR: Ring = [
  [0.9, 0],
  [1.9, 0],
  [1.9, 2.1],
  [0.9, 2.1],
]

describe('mass and weight of 6.0 × 3.0 × 0.150 m', () => {
  it('is 2.700 m³', () => expect(panel(RECTANGLE).volume).toBeCloseTo(2.7, 12))
  it('is 6480 kg at 2400 kg/m³', () => expect(panel(RECTANGLE, { density: 2400 }).mass).toBeCloseTo(6480, 9))
  it('is 6750 kg at 2500 kg/m³', () => expect(panel(RECTANGLE).mass).toBeCloseTo(6750, 9))
  it('weighs 66.195 kN at 2500 kg/m³', () => expect(panel(RECTANGLE).weight).toBeCloseTo(66.195, 3))
  it('weighs 67.500 kN at 25 kN/m³ = 2549.3 kg/m³', () => {
    expect(25_000 / GRAVITY).toBeCloseTo(2549.3, 1)
    expect(panel(RECTANGLE, { density: 25_000 / GRAVITY }).weight).toBeCloseTo(67.5, 9)
  })
})

describe('area and centre of gravity', () => {
  it.each<[string, Ring, Ring[], number, Point]>([
    ['rectangle', RECTANGLE, [], 18, [3, 1.5]],
    ['window 1.2 × 1.5 in the middle of (4.2, 1.35)', RECTANGLE, [WINDOW], 16.2, [2.8667, 1.5167]],
    [
      'ell, 2.0 × 1.2 off the top right',
      [
        [0, 0],
        [6, 0],
        [6, 1.8],
        [4, 1.8],
        [4, 3],
        [0, 3],
      ],
      [],
      15.6,
      [2.6923, 1.3615],
    ],
    [
      'the same ell as a notch',
      RECTANGLE,
      [
        [
          [4, 1.8],
          [7, 1.8],
          [7, 4],
          [4, 4],
        ],
      ],
      15.6,
      [2.6923, 1.3615],
    ],
    [
      'gable, eaves 3, apex 4.5',
      [
        [0, 0],
        [6, 0],
        [6, 3],
        [3, 4.5],
        [0, 3],
      ],
      [],
      22.5,
      [3, 1.9],
    ],
    [
      'skew gable, apex at 2',
      [
        [0, 0],
        [6, 0],
        [6, 3],
        [2, 4.5],
        [0, 3],
      ],
      [],
      22.5,
      [2.9333, 1.9],
    ],
    [
      'trapezium',
      [
        [0, 0],
        [6, 0],
        [5, 3],
        [1.5, 3],
      ],
      [],
      14.25,
      [3.114, 1.3684],
    ],
    [
      'door 1.0 × 2.1 at the foot',
      RECTANGLE,
      [DOOR],
      15.9,
      [(18 * 3 - 2.1 * 1.4) / 15.9, (18 * 1.5 - 2.1 * 1.05) / 15.9],
    ],
    [
      'right triangle',
      [
        [0, 0],
        [3, 0],
        [0, 3],
      ],
      [],
      4.5,
      [1, 1],
    ],
    [
      'two windows that overlap',
      RECTANGLE,
      [
        WINDOW,
        [
          [4.2, 0.6],
          [5.4, 0.6],
          [5.4, 2.1],
          [4.2, 2.1],
        ],
      ],
      15.3,
      [(54 - 2.7 * 4.5) / 15.3, (27 - 2.7 * 1.35) / 15.3],
    ],
  ])('%s', (_, corners, openings, area, [x, y]) => {
    const found = panel(corners, { openings })
    expect(found.faceArea).toBeCloseTo(area, 6)
    expect(found.centre[0] / 1000).toBeCloseTo(x, 4)
    expect(found.centre[1] / 1000).toBeCloseTo(y, 4)
  })

  it('with the window: 6075 kg', () =>
    expect(panel(RECTANGLE, { openings: [WINDOW] }).mass).toBeCloseTo(6075, 6))
  it('ell: 5850 kg', () =>
    expect(
      panel([
        [0, 0],
        [6, 0],
        [6, 1.8],
        [4, 1.8],
        [4, 3],
        [0, 3],
      ]).mass,
    ).toBeCloseTo(5850, 6))
})

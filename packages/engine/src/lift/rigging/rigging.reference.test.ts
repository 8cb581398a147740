import { describe, expect, it } from 'vitest'
import { severalCranes } from '../../codes/au/qld-mobile-crane-code/several-cranes.ts'
import { liftFactor } from '../../codes/eu/cen-tr15728-2016/lift-factor.ts'
import { modeFactor } from '../../codes/eu/en818-4-1996/mode-factor.ts'
import { HARDWARE_MARGIN, INSERT_MARGIN, TILT_UP_MARGIN } from '../../codes/us/osha-1926-704/insert-margin.ts'
import type { Point } from '../../panel/point.ts'
import type { Worked } from '../../working/worked.ts'
import type { YardRigging } from '../../yard/yard.ts'
import { craneRating } from '../crane-rating.ts'
import { hookMass } from '../hook-mass.ts'
import { plateOf } from '../plate/lifted-plate.ts'
import { loadCase, supported } from '../plate/supports.ts'
import { craneLoad } from './crane-load.ts'
import { pickCompliance } from './pick-compliance.ts'
import { rigged } from './rigged.ts'
import type { LegPick, RiggedInput } from './rigging-types.ts'
import { turning, turningForce, twoHooks } from './turning.ts'
import { nullMode } from './twist-mode.ts'

/**
 * Check values of rigging. Where a standard is named in the title, its number is the check; the others are statics: computed, second method:
 * worked by hand from the equations of equilibrium, in Python. Panel: 6.0 × 3.0 × 0.150 m, 67.5 kN, picks ±1757 and ±879 mm.
 */
const [HALF, SIDE] = [1757, 879]
const CORNERS: readonly Point[] = [
  [-HALF, -SIDE],
  [HALF, -SIDE],
  [HALF, SIDE],
  [-HALF, SIDE],
]

function value<T>(found: Worked<T>): T {
  if (!found.known) throw new Error(found.gaps.join('; '))
  return found.value
}

function face(points: readonly Point[]): LegPick[] {
  return points.map((at, i) => ({ mark: 'ABCDEFGH'[i]!, at, kind: 'face' }))
}

function legs(change: Partial<YardRigging> = {}): YardRigging {
  return { mark: 'R4', legs: 4, length: 4000, rated: 8000, ...change }
}

function flat(change: Partial<RiggedInput> = {}): RiggedInput {
  return {
    rigging: legs(),
    picks: face(CORNERS),
    centre: [0, 0],
    thickness: 150,
    load: 67.5,
    hang: 'flat',
    angle: 0,
    ...change,
  }
}

/** So long that its legs are plumb. */
const PLUMB = 1e7

describe('angle and legs', () => {
  it.each([
    [0, 1, 0],
    [15, 1.0353, 0.2679],
    [30, 1.1547, 0.5774],
    [45, Math.SQRT2, 1],
    [60, 2, 1.7321],
  ])('%f° from the vertical: %f times along the leg, %f times level', (angle, along, level) => {
    const reach = Math.hypot(HALF, SIDE)
    const length = angle === 0 ? PLUMB : reach / Math.sin((angle * Math.PI) / 180)
    const [a] = value(rigged(flat({ rigging: legs({ length, equalised: true }) }))).picks
    expect(a!.load / a!.vertical).toBeCloseTo(along, 4)
    expect(a!.pull / a!.vertical).toBeCloseTo(level, 3)
  })

  it.each([
    [4000, 29.42, 19.37, 3484.3],
    [3000, 40.91, 22.33, 2267.2],
    [6000, 19.11, 17.86, 5669.2],
  ])('legs of %f mm on the diagonal of the picks: %f°, %f kN', (length, angle, tension, height) => {
    const found = value(rigged(flat({ rigging: legs({ length, equalised: true }) })))
    expect(found.angle).toBeCloseTo(angle, 2)
    expect(found.picks[0]!.load).toBeCloseTo(tension, 2)
    expect(found.hookHeight).toBeCloseTo(height, 1)
  })

  it('two legs of unlike length: 24 and 16 kN, 26.62 and 19.72 along them, 11.52 level on both', () => {
    const found = value(
      rigged(
        flat({
          rigging: legs({ legs: 2, length: Math.hypot(1800, 2500) }),
          picks: face([
            [-1200, 0],
            [1800, 0],
          ]),
          load: 40,
        }),
      ),
    )
    expect(found.hookHeight).toBeCloseTo(2500, 6)
    expect(found.picks.map(({ vertical }) => vertical)).toEqual([
      expect.closeTo(24, 9),
      expect.closeTo(16, 9),
    ])
    expect(found.picks[0]!.load).toBeCloseTo(26.6216, 4)
    expect(found.picks[1]!.load).toBeCloseTo(19.7157, 4)
    for (const { pull } of found.picks) expect(pull).toBeCloseTo(11.52, 9)
  })

  it('spreader under top slings at 30°: 19.49 kN; beam hung at its middle, 3.5 m: 59.06 kN·m', () => {
    const spreader = legs({ spreader: 3500, top: 3500, equalised: true })
    const found = value(rigged(flat({ rigging: spreader }))).beam
    expect(found?.topAngle).toBeCloseTo(30, 9)
    expect(found?.compression).toBeCloseTo(19.4856, 4)
    const beam = value(rigged(flat({ rigging: { ...spreader, top: 'middle' } }))).beam
    expect(beam?.moment).toBeCloseTo(59.0625, 9)
  })

  it('legs at 29.42°: 9.515 kN level, 0.7136 kN·m into the panel: 0.1269 MPa less 0.0423 on a strip of 1.5 m', () => {
    const [a] = value(rigged(flat({ rigging: legs({ equalised: true }) }))).picks
    expect(a!.pull).toBeCloseTo(9.515, 3)
    expect(a!.moment).toBeCloseTo(0.7136, 4)
    expect((6e6 * a!.moment) / (1500 * 150 ** 2)).toBeCloseTo(0.1269, 4)
    expect((1000 * a!.pull) / (1500 * 150)).toBeCloseTo(0.0423, 4)
  })

  it.each([
    [2, 45, 1.4],
    [2, 45.01, 1],
    [2, 60, 1],
    [3, 45, 2.1],
    [4, 45, 2.1],
    [4, 45.01, 1.5],
    [4, 60, 1.5],
  ])('EN 818-4, %i legs at %f°: %f', (count, angle, factor) => {
    expect(value(modeFactor({ legs: count, angle }))).toBe(factor)
  })

  it('EN 818-4: 2.1 is three legs at 45°; the table ends at 60° and at four legs', () => {
    expect(3 * Math.cos(Math.PI / 4)).toBeCloseTo(2.1, 1)
    expect(modeFactor({ legs: 4, angle: 60.1 }).known).toBe(false)
    expect(modeFactor({ legs: 8, angle: 30 }).known).toBe(false)
    expect(modeFactor({ legs: 1, angle: 0 }).known).toBe(false)
  })
})

describe('legs that count', () => {
  const at30 = Math.hypot(HALF, SIDE) / 0.5
  it.each([
    ['CEN/TR 15728:2016, release off oiled steel, four equalised', 85.5, true, 24.68],
    ['CEN/TR 15728:2016, release off oiled steel, two of four', 85.5, false, 49.36],
    ['CEN/TR 15728:2016, crane, four equalised', 87.75, true, 25.33],
    ['CEN/TR 15728:2016, crane, two of four', 87.75, false, 50.66],
  ])('%s', (_, load, equalised, expected) => {
    const found = value(rigged(flat({ load, rigging: legs({ length: at30, equalised }) })))
    expect(found.picks[0]!.load).toBeCloseTo(expected, 2)
    expect(found.counted).toBe(equalised ? 4 : 2)
  })

  it('CEN/TR 15728:2016 and 29 CFR 1926.704: 25.33 kN; 50.66 (2), 101.32 (4), 126.66 (5)', () => {
    const stage = { stage: 'handling', face: null, weight: 67.5, faceArea: 18 } as const
    const load = 67.5 * value(liftFactor(stage))
    const [a] = value(rigged(flat({ load, rigging: legs({ length: at30, equalised: true }) }))).picks
    expect(a!.load * TILT_UP_MARGIN.value).toBeCloseTo(50.66, 2)
    expect(a!.load * INSERT_MARGIN.value).toBeCloseTo(101.32, 2)
    expect(a!.load * HARDWARE_MARGIN.value).toBeCloseTo(126.66, 2)
  })

  it('inserts count two of four legs, slings three: 33.75 kN and 22.5 kN plumb', () => {
    const found = value(rigged(flat({ rigging: legs({ length: PLUMB }) })))
    expect(found.picks.map(({ vertical }) => vertical)).toEqual(CORNERS.map(() => expect.closeTo(33.75, 9)))
    expect(found.picks[0]!.from).toBe('two of 4 legs count')
    expect(found.determinate).toBe(false)
    expect(found.slingsCounted).toBe(3)
    expect(found.legTension).toBeCloseTo(22.5, 4)
    expect(found.legRating).toBeCloseTo(67.5 / 2.1, 9)
  })

  it('two running slings on the diagonals count two; along the sides all four', () => {
    const crossing: [number, number][] = [
      [1, 3],
      [2, 4],
    ]
    const diagonal = value(rigged(flat({ rigging: legs({ pairs: crossing }) })))
    expect(diagonal.picks.map(({ vertical }) => vertical)).toEqual(
      CORNERS.map(() => expect.closeTo(33.75, 9)),
    )
    const along: [number, number][] = [
      [1, 2],
      [3, 4],
    ]
    const sides = value(rigged(flat({ rigging: legs({ pairs: along }) })))
    expect(sides.picks.map(({ vertical }) => vertical)).toEqual(CORNERS.map(() => expect.closeTo(16.875, 9)))
    expect(sides.determinate).toBe(true)
  })
})

describe('sharing', () => {
  it('three picks under a panel with a corner out: 12.353, 20.471, 25.676 kN', () => {
    const centre: Point = [(18 * 3000 - 2.4 * 5000) / 15.6, (18 * 1500 - 2.4 * 2400) / 15.6]
    const picks = face([
      [1200, 600],
      [1200, 2400],
      [4600, 900],
    ])
    const found = value(rigged(flat({ rigging: legs({ legs: 3 }), picks, centre, load: 58.5 })))
    const expected = [12.353, 20.471, 25.676]
    for (const [i, { share }] of found.picks.entries()) expect(share).toBeCloseTo(expected[i]!, 3)
    expect(found.determinate).toBe(true)
  })

  it('four legs that stretch under a panel that does not bend: 15.476, 16.052, 14.323, 14.899 kN', () => {
    const centre: Point = [-200 / 3, 50 / 3]
    // Corner A is at low x and low y; the sheet's order goes by rows.
    const rigging = legs({ length: PLUMB, stiffness: 3, error: 0 })
    const found = value(rigged(flat({ rigging, centre, load: 60.75 })))
    const expected = [15.4758, 14.3233, 14.8992, 16.0517]
    for (const [i, { uneven }] of found.picks.entries()) expect(uneven?.most).toBeCloseTo(expected[i]!, 3)
  })
})

describe('legs of uneven length', () => {
  const model = plateOf({
    piece: {
      outline: [
        [-3000, -1500],
        [3000, -1500],
        [3000, 1500],
        [-3000, 1500],
      ],
      holes: [],
    },
    thickness: 150,
    modulus: 25_000,
    poisson: 0.2,
    supports: CORNERS,
  })
  const compliance = pickCompliance({ model, points: CORNERS })
  const shares = supported({
    model,
    load: loadCase(model, { pressure: 3.75e-3 }),
    supports: CORNERS.map((at) => ({ at })),
  }).reactions.map((reaction) => reaction / 1000)
  const rope = { length: PLUMB, stiffness: 3.015, counted: 4 }

  it('twist of the plate between picks at 0.207: κ 0.4966 for sides 2 to 1', () => {
    const mode = nullMode(CORNERS)!
    const twist = mode.reduce(
      (all, v, i) => all + mode.reduce((sum, w, j) => sum + v * w * compliance[i]![j]!, 0),
      0,
    )
    const rigidity = (25e3 * 150 ** 3) / (12 * 0.96)
    const kappa = (twist * 2 * 0.8 * rigidity) / (3514 * 1758 * 1000)
    expect(kappa / 0.4966).toBeCloseTo(1, 2)
  })

  it.each([
    ['a square', 3000, 0.4675, 0.2762],
    ['sides 1.5 to 1', 4500, 0.479, 0.2812],
    ['sides 2 to 1', 6000, 0.4966, 0.2873],
  ])(
    'twist of %s under loads in turn at 0.2071: κ and the twisting moment in the middle',
    (_, length, kappa, twisting) => {
      const [x, y] = [length * (0.5 - 0.207107), 3000 * (0.5 - 0.207107)]
      const points: readonly Point[] = [
        [-x, -y],
        [x, -y],
        [x, y],
        [-x, y],
      ]
      const outline: readonly Point[] = [
        [-length / 2, -1500],
        [length / 2, -1500],
        [length / 2, 1500],
        [-length / 2, 1500],
      ]
      const plate = plateOf({
        piece: { outline, holes: [] },
        thickness: 150,
        modulus: 25_000,
        poisson: 0.2,
        supports: points,
      })
      const give = pickCompliance({ model: plate, points })
      const mode = nullMode(points)!
      const twist = mode.reduce(
        (all, v, i) => all + mode.reduce((sum, w, j) => sum + v * w * give[i]![j]!, 0),
        0,
      )
      const rigidity = (25e3 * 150 ** 3) / (12 * 0.96)
      expect((twist * 1.6 * rigidity) / (4 * x * y * 1000) / kappa).toBeCloseTo(1, 2)
      const forces = points.map((at, i) => ({ at, force: 1000 * mode[i]! }))
      const load = loadCase(plate, { pressure: 0, forces })
      const { field } = supported({ model: plate, load, supports: points.slice(0, 3).map((at) => ({ at })) })
      expect(Math.abs(field.at([0, 0])!.mxy) / 1000 / twisting).toBeCloseTo(1, 2)
    },
  )

  it.each([
    [2.5, 3.148],
    [5, 6.295],
    [10, 12.59],
  ])('%f mm between any two legs, twice that between the diagonals: ±%f kN', (error, swing) => {
    const found = value(rigged(flat({ rigging: legs({ ...rope, error }), shares, compliance })))
    for (const { uneven } of found.picks) {
      expect((uneven!.most - 16.875) / swing).toBeCloseTo(1, 2)
      expect((16.875 - uneven!.least) / swing).toBeCloseTo(1, 2)
    }
    expect(found.picks[0]!.from).toBe(`legs uneven by ${error} mm`)
  })

  it('a diagonal goes slack at 26.81 mm, 22.39 mm under a panel that does not bend; then the other has 33.75 kN each', () => {
    const bends = value(rigged(flat({ rigging: legs({ ...rope, error: 5 }), shares, compliance })))
    expect((2 * bends.slackError!) / 26.81).toBeCloseTo(1, 2)
    const rigid = value(rigged(flat({ rigging: legs({ ...rope, error: 5 }) })))
    expect(2 * rigid.slackError!).toBeCloseTo(22.388, 3)
    const slack = value(rigged(flat({ rigging: legs({ ...rope, error: 14 }), shares, compliance })))
    for (const { uneven } of slack.picks) {
      expect(uneven!.most).toBeCloseTo(33.75, 6)
      expect(uneven!.least).toBeCloseTo(0, 6)
    }
  })

  it('inclined legs give by 1 / (k cos² β) and are off by e / cos β: ±5.711 kN at 29.42°', () => {
    const found = value(
      rigged(flat({ rigging: legs({ stiffness: 3.015, error: 5, counted: 4 }), shares, compliance })),
    )
    expect((found.picks[0]!.uneven!.most - 16.875) / 5.7107).toBeCloseTo(1, 2)
  })
})

describe('tilt and hang', () => {
  it.each([
    [50, 3000, 0.9316],
    [100, 3000, 1.8626],
    [50, 4000, 0.703],
  ])('centre of gravity %f mm off, hook %f mm up, 75 mm below the picks: %f°', (off, height, angle) => {
    const reach = Math.hypot(HALF + off, SIDE)
    const found = value(
      rigged(flat({ rigging: legs({ length: Math.hypot(reach, height) }), centre: [off, 0] })),
    )
    expect(found.tilt.off).toBeCloseTo(off, 6)
    expect(found.tilt.angle).toBeCloseTo(angle, 3)
  })

  it('50 mm off: 97.5 mm out of level over 6 m', () => {
    const length = Math.hypot(HALF + 50, SIDE, 3000)
    const { tilt } = value(rigged(flat({ rigging: legs({ length }), centre: [50, 0] })))
    expect(6000 * Math.tan((tilt.angle! * Math.PI) / 180)).toBeCloseTo(97.56, 2)
  })

  it.each([
    [600, 7.125],
    [1242, 3.4557],
  ])('face inserts %f mm above the centre of gravity of 150 mm: %f° out of plumb', (above, plumb) => {
    const picks = face([
      [-1000, above],
      [1000, above],
    ])
    const found = value(rigged(flat({ rigging: legs({ legs: 2 }), picks, hang: 'row', angle: 90 })))
    expect(found.plumb).toBeCloseTo(plumb, 3)
    const [a] = found.picks
    expect(a!.tension / a!.vertical).toBeCloseTo(Math.sin((plumb * Math.PI) / 180), 4)
  })
})

describe('turning from flat', () => {
  const place = { load: 1, thickness: 150, centre: 3000, pick: 4242.6, on: 'face' } as const

  it.each([
    [0, Math.SQRT1_2, Math.SQRT1_2, 0],
    [15, 0.7091, 0.6849, 0.1835],
    [30, 0.7114, 0.6161, 0.3557],
    [45, 0.7147, 0.5054, 0.5054],
    [60, 0.7206, 0.3603, 0.6241],
    [75, 0.7386, 0.1912, 0.7134],
    [85, 0.8476, 0.0739, 0.8443],
  ])('picked on its face, %i°: %f W, %f across, %f along', (angle, force, normal, along) => {
    const found = value(turningForce({ ...place, angle }))
    expect(found.force).toBeCloseTo(force, 4)
    expect(found.normal).toBeCloseTo(normal, 4)
    expect(found.along).toBeCloseTo(along, 4)
  })

  it('the centre of gravity comes over the edge at 88.57°; the hook has all from 86.55°', () => {
    const found = value(turning(place))
    expect(found.balance).toBeCloseTo(88.57, 2)
    expect(found.leaves).toBeCloseTo(86.546, 3)
    expect(found.worst.force.force).toBe(1)
    expect(found.worst.along).toMatchObject({ angle: 90, along: 1 })
    expect(found.worst.normal.angle).toBeLessThan(1)
    expect(found.worst.normal.normal).toBeCloseTo(Math.SQRT1_2, 4)
  })

  it('a thin panel takes H / 2s at every angle', () => {
    for (const angle of [0, 20, 50, 80]) {
      expect(value(turningForce({ ...place, thickness: 1e-6, angle })).force).toBeCloseTo(3000 / 4242.6, 6)
    }
  })

  it('pitched about its long edge by two edge inserts: 16.875 kN across each', () => {
    const edge = { load: 67.5, thickness: 150, centre: 1500, pick: 3000, on: 'edge' } as const
    const start = value(turningForce({ ...edge, angle: 0 }))
    expect(start.force).toBeCloseTo(33.75, 9)
    const picks: LegPick[] = [
      { mark: 'A', at: [1250, 3000], kind: 'edge' },
      { mark: 'B', at: [4750, 3000], kind: 'edge' },
    ]
    const rigging = legs({ legs: 2, length: PLUMB })
    const found = value(
      rigged({
        rigging,
        picks,
        centre: [3000, 1500],
        thickness: 150,
        load: start.force,
        hang: 'row',
        angle: 0,
      }),
    )
    for (const { shear, tension } of found.picks) {
      expect(shear).toBeCloseTo(16.875, 4)
      expect(tension).toBeCloseTo(0, 9)
    }
  })

  it.each([
    [0, 0.375],
    [30, 0.3806],
    [60, 0.3915],
    [75, 0.4094],
    [90, 1],
  ])('two hooks, %i°: the head line has %f W', (angle, head) => {
    const found = value(twoHooks({ load: 1, thickness: 150, centre: 3000, head: 6000, foot: 1200, angle }))
    expect(found.head).toBeCloseTo(head, 4)
    expect(found.head + found.foot).toBeCloseTo(1, 12)
  })
})

describe('cranes', () => {
  it('Queensland, Mobile crane code of practice 14.3: two cranes, 3375 kg each: 4050 kg', () => {
    expect(value(severalCranes({ share: 3375, cranes: 2 }))).toBeCloseTo(4050, 9)
    expect(value(severalCranes({ share: 1000, cranes: 3 }))).toBeCloseTo(1330, 9)
    expect(value(severalCranes({ share: 1000, cranes: 4 }))).toBeCloseTo(1500, 9)
    expect(value(severalCranes({ share: 1000, cranes: 6 }))).toBeCloseTo(1500, 9)
  })

  it('block, slings and beam count as load: 7807.5 kg, 78.08 % of 10 t', () => {
    const panel = value(hookMass({ mass: 6750 }))
    const all = value(craneLoad({ panel, block: 450, slings: 150, beam: 120 }))
    expect(all).toBeCloseTo(7807.5, 9)
    const crane = { mark: 'C1', chart: [[8000, 10_000]] as [number, number][] }
    expect((100 * all) / value(craneRating({ crane, radius: 8000 }))).toBeCloseTo(78.075, 9)
  })
})

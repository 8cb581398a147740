import { describe, expect, it } from 'vitest'
import { liftFactor as australia } from '../codes/au/as3850-2003/lift-factor.ts'
import { liftFactor as europe } from '../codes/eu/cen-tr15728-2016/lift-factor.ts'
import { liftTension as europeTension } from '../codes/eu/en1992-1-1-2004/lift-tension.ts'
import { HARDWARE_MARGIN, INSERT_MARGIN, TILT_UP_MARGIN } from '../codes/us/osha-1926-704/insert-margin.ts'
import { bendingFactor } from '../codes/us/pci-handbook-7/bending-factor.ts'
import { liftTension as usTension } from '../codes/us/pci-handbook-7/lift-tension.ts'
import type { Point } from '../panel/point.ts'
import type { Worked } from '../working/worked.ts'
import { craneRating } from './crane-rating.ts'
import { hookMass } from './hook-mass.ts'
import { leastStrengthFor, ratedLoad } from './rated-load.ts'
import { casting, SMOOTH_FACE } from './reference-panels.ts'
import { legPull, legTension, slingAngle, tilt } from './sling.ts'
import { type Support, supportLoads } from './supports.ts'

/**
 * Check values of lifting. Where a standard is named in the title, its number is the check; everything else is statics:
 * computed, second method: worked by hand with the equations of equilibrium. Panel: 6.0 × 3.0 × 0.150 m, 67.5 kN.
 */
function value<T>(found: Worked<T>): T {
  if (!found.known) throw new Error(found.gaps.join('; '))
  return found.value
}

const PANEL = { weight: 67.5, faceArea: 18 }

describe('release and dynamic factors', () => {
  it.each([
    ['smooth', 85.5],
    ['planed', 103.5],
    ['rough', 121.5],
  ] as const)('CEN/TR 15728:2016, adhesion to a %s face: %f kN', (face, load) => {
    expect(67.5 * value(europe({ stage: 'release', face, ...PANEL }))).toBeCloseTo(load, 9)
  })

  it.each([
    [0.1, 1.4],
    [0.12, 1.3333],
    [0.15, 1.2667],
    [0.2, 1.2],
    [0.25, 1.16],
  ])('adhesion of 1 kN/m² as a factor on weight, %f m thick: %f', (thickness, factor) => {
    expect(
      value(europe({ stage: 'release', face: 'smooth', weight: 25 * thickness, faceArea: 1 })),
    ).toBeCloseTo(factor, 4)
  })

  it('CEN/TR 15728:2016, crane, 1.3: 87.75 kN', () => {
    expect(67.5 * value(europe({ stage: 'handling', face: null, ...PANEL }))).toBeCloseTo(87.75, 9)
  })

  it.each([
    ['smooth', 81],
    ['concrete', 101.25],
  ] as const)('AS 3850:2003 3.5.2, off a %s face: %f kN', (face, load) => {
    expect(67.5 * value(australia({ stage: 'release', face, ...PANEL }))).toBeCloseTo(load, 9)
  })

  it('PCI Design Handbook, 7th edition, Table 8.3.1: 1.3 stripped flat, 1.2 in the yard', () => {
    expect(value(bendingFactor({ stage: 'release', face: 'smooth', ...PANEL }))).toBe(1.3)
    expect(value(bendingFactor({ stage: 'handling', face: null, ...PANEL }))).toBe(1.2)
  })
})

describe('load on one insert', () => {
  const share = 67.5 / 4

  it('four equalised, 30°, release with 1 kN/m²: 24.68 kN', () => {
    const factor = value(europe({ stage: 'release', face: 'smooth', ...PANEL }))
    expect(legTension(share * factor, 30)).toBeCloseTo(24.68, 2)
  })
  it('two of four counted: 49.36 kN', () => {
    expect(legTension((67.5 / 2) * SMOOTH_FACE, 30)).toBeCloseTo(49.36, 2)
  })
  it('hanging from the crane, 1.3: 25.33 kN', () => expect(legTension(share * 1.3, 30)).toBeCloseTo(25.33, 2))
  it.each([
    ['29 CFR 1926.704(b)', TILT_UP_MARGIN, 50.66],
    ['29 CFR 1926.704(c)', INSERT_MARGIN, 101.32],
    ['29 CFR 1926.704(d)', HARDWARE_MARGIN, 126.66],
  ] as const)('%s: failure load wanted of it', (_, margin, load) => {
    expect(legTension(share * 1.3, 30) * margin.value).toBeCloseTo(load, 2)
  })
})

describe('sling legs', () => {
  it.each([
    [0, 1, 0],
    [15, 1.0353, 0.2679],
    [30, 1.1547, 0.5774],
    [45, Math.SQRT2, 1],
    [60, 2, 1.7321],
  ])('at %i° from the vertical: tension %f, pull %f of the share', (angle, tension, pull) => {
    expect(legTension(1, angle)).toBeCloseTo(tension, 4)
    expect(legPull(1, angle)).toBeCloseTo(pull, 4)
  })

  const picks: Point[] = [
    [-1757, -879],
    [1757, -879],
    [1757, 879],
    [-1757, 879],
  ]
  it.each([
    [4000, 29.42, 19.37],
    [3000, 40.91, 22.33],
    [6000, 19.11, 17.86],
  ])('four legs of %i mm, on the diagonal: %f°, %f kN', (length, angle, tension) => {
    const sling = value(
      slingAngle({ rigging: { mark: 'R', legs: 4, length, rated: 1 }, hook: [0, 0], picks }),
    )
    expect(sling.angle).toBeCloseTo(angle, 2)
    expect(legTension(67.5 / 4, sling.angle)).toBeCloseTo(tension, 2)
  })

  it('height of the hook with legs of 4 m: 3484.3 mm', () => {
    const sling = value(
      slingAngle({ rigging: { mark: 'R', legs: 4, length: 4000, rated: 1 }, hook: [0, 0], picks }),
    )
    expect(sling.height).toBeCloseTo(3484.3, 1)
    expect(sling.reach).toBeCloseTo(1964.6, 1)
  })

  it('pull of a leg at 29.42°: 9.515 kN', () => {
    const sling = value(
      slingAngle({ rigging: { mark: 'R', legs: 4, length: 4000, rated: 1 }, hook: [0, 0], picks }),
    )
    expect(legPull(67.5 / 4, sling.angle)).toBeCloseTo(9.515, 3)
  })

  it.each([
    [1200, 24, 26.62],
    [1800, 16, 19.72],
  ])(
    'unequal legs, hook 2.5 m up, pick %i mm out: %f kN, %f kN along the leg, 11.52 kN level',
    (out, load, tension) => {
      const angle = (Math.atan(out / 2500) * 180) / Math.PI
      expect(legTension(load, angle)).toBeCloseTo(tension, 2)
      expect(legPull(load, angle)).toBeCloseTo(11.52, 2)
    },
  )

  it.each([
    [50, 3000, 75, 0.9316],
    [100, 3000, 75, 1.863],
    [50, 4000, 75, 0.703],
  ])('hook %i mm off, %i mm up: tilt', (off, height, depth, angle) => {
    expect(value(tilt({ centre: [0, 0], hook: [off, 0], height, depth }))).toBeCloseTo(angle, 3)
  })
})

describe('sharing', () => {
  const on = (...at: Point[]): Support[] =>
    at.map((point, index) => ({ mark: `${index + 1}`, at: point, kind: 'face' }))

  it('two picks 1.2 m and 1.8 m from the centre of gravity, 40 kN: 24 and 16 kN', () => {
    const loads = value(
      supportLoads({ weight: 40, centre: [0, 0], supports: on([-1200, 0], [1800, 0]), equalised: false }),
    )
    expect(loads[0]).toBeCloseTo(24, 9)
    expect(loads[1]).toBeCloseTo(16, 9)
  })

  it('three picks of an ell, 58.5 kN: 12.353, 20.471, 25.676 kN', () => {
    const loads = value(
      supportLoads({
        weight: 58.5,
        centre: [2692.3077, 1361.5385],
        supports: on([1200, 600], [1200, 2400], [4600, 900]),
        equalised: false,
      }),
    )
    expect(loads.map((load) => Number(load.toFixed(3)))).toEqual([12.353, 20.471, 25.676])
  })

  it('four equalised: 16.875 kN each', () => {
    const supports = on([1243, 621], [4757, 621], [4757, 2379], [1243, 2379])
    expect(value(supportLoads({ weight: 67.5, centre: [3000, 1500], supports, equalised: true }))).toEqual([
      16.875, 16.875, 16.875, 16.875,
    ])
  })
})

describe('rated load and strength', () => {
  const insert = { mark: 'F', rated: 50, ratedStrength: 15, leastStrength: 8 }

  it.each([
    [8, 36.51],
    [10, 40.82],
    [12, 44.72],
    [15, 50],
    [20, 50],
    [25, 50],
  ])('50 kN at 15 MPa, at %i MPa: %f kN', (strength, load) => {
    expect(value(ratedLoad({ insert, strength }))).toBeCloseTo(load, 2)
  })
  it('45 kN of 50 at 15 MPa wants 12.15 MPa', () => {
    expect(value(leastStrengthFor({ insert, load: 45 }))).toBeCloseTo(12.15, 9)
  })
  it('60 kN of 50: no strength will do', () =>
    expect(leastStrengthFor({ insert, load: 60 }).known).toBe(false))

  it.each([
    [15, 1.607],
    [20, 1.856],
    [30, 2.273],
  ])('PCI Design Handbook, 7th edition, 5 √f in psi, %i MPa: %f MPa', (strength, tension) => {
    expect(value(usTension({ strength }))).toBeCloseTo(tension, 3)
  })
  it.each([
    [10, 0.942],
    [15, 1.235],
    [20, 1.496],
    [25, 1.736],
    [30, 1.96],
  ])('EN 1992-1-1:2004 3.1.8, 0.7 / 1.5 of it, 150 mm, %i MPa: %f MPa', (strength, tension) => {
    expect(value(europeTension({ strength, thickness: 150 }))).toBeCloseTo(tension, 3)
  })
  it('EN 1992-1-1:2004 Table 3.1 and 3.1.8, 40 MPa: mean tension 3.509, in bending at 150 mm 5.088 MPa', () => {
    const found = europeTension({ strength: 40, thickness: 150 })
    const step = (symbol: string) =>
      found.known ? found.working.find((line) => line.symbol === symbol) : undefined
    expect(step('fctm')?.result).toBeCloseTo(3.509, 3)
    expect(step('fctm,fl')?.result).toBeCloseTo(5.088, 3)
  })
})

describe('crane', () => {
  it('6750 kg, 5 % more, with 720 kg below the hook: 78.1 % of 10 t', () => {
    const total = value(hookMass({ mass: casting().mass })) + 450 + 150 + 120
    const rating = value(craneRating({ crane: { mark: 'C', chart: [[6000, 10_000]] }, radius: 6000 }))
    expect(total / rating).toBeCloseTo(0.7808, 4)
  })
})

// Check values of the mould room with their published sources. "computed": closed form, recomputed apart from this code.
import { describe, expect, it } from 'vitest'
import { fastPour, largestRise, slowPour, unitWeightCoefficient } from './aci347.ts'
import { dinPressure } from './din18218.ts'
import { type PressureInput, pressure } from './pressure.ts'
import { BOW_COEFFICIENT, railBow, sideForm, sideThrust, spacingForBow } from './side-form.ts'

const close = (found: number | null, expected: number, tolerance: number) => {
  expect(found).not.toBeNull()
  expect(Math.abs((found as number) - expected)).toBeLessThanOrEqual(tolerance)
}

const maximum = (input: PressureInput) => pressure(input).maximum

describe('ACI 347R-14 4.2.2.1 (from memory), wall unless said, 20 °C, 2400 kg/m³', () => {
  const wall = { method: 'aci347', rate: 1.5, temperature: 20, height: 3000, kind: 'wall' } as const
  it.each<[string, PressureInput, number]>([
    ['1.5 m/h, 3 m: 38.35', wall, 38.35],
    ['3.0 m/h, 3 m: 57.15', { ...wall, rate: 3 }, 57.15],
    ['1.5 m/h, 5 m: 47.46', { ...wall, height: 5000 }, 47.46],
    ['retarder, Cc 1.2: 46.02', { ...wall, cc: 1.2 }, 46.02],
    ['column, 3 m/h, 2 m: full head 47.09', { ...wall, kind: 'column', rate: 3, height: 2000 }, 47.09],
    ['0.5 m/h, 30 °C: floor 30', { ...wall, rate: 0.5, temperature: 30 }, 30],
    ['flat panel 150 mm: full head 3.532', { ...wall, height: 150 }, 3.532],
    ['faster than 4.5 m/h: full head 70.6', { ...wall, rate: 4.6 }, 70.608],
  ])('%s kPa', (_, input, expected) => close(maximum(input), expected, input.height === 150 ? 0.005 : 0.05))

  it('the column formula before the head caps it gives 69.50 kPa', () =>
    close(slowPour(3, 20, 1, 1), 69.5, 0.005))

  it('US form, 5 ft/h and 70 °F gives 792.9 psf, the SI form the same within 1 %', () => {
    const psf = 150 + (9000 * 5) / 70
    close(psf, 792.9, 0.05)
    expect(slowPour(5 * 0.3048, (70 - 32) / 1.8, 1, 1) / (psf * 0.04788)).toBeCloseTo(1, 2)
  })

  it('US form, 10 ft/h and 70 °F gives 1170.0 psf, the SI form the same within 1 %', () => {
    const psf = 150 + 43400 / 70 + (2800 * 10) / 70
    close(psf, 1170, 0.05)
    expect(fastPour(10 * 0.3048, (70 - 32) / 1.8, 1, 1) / (psf * 0.04788)).toBeCloseTo(1, 2)
  })

  it('largest rise for 40 kPa is 1.579 m/h', () =>
    close(largestRise({ pressure: 40, temperature: 20, cw: 1, cc: 1 }), 1.579, 0.002))

  it.each([
    [1300, 0.8],
    [2000, 0.931],
    [2239, 0.9825],
    [2240, 1],
    [2400, 1],
    [2500, 1.0776],
  ])('Cw at %d kg/m³ is %d', (density, cw) => close(unitWeightCoefficient(density), cw, 5e-5 + 1e-9))
})

describe('CIRIA Report 108 (formula seen; values computed, second method: by hand)', () => {
  const base = {
    method: 'ciria108',
    weight: 25,
    height: 3000,
    rate: 2,
    temperature: 10,
    c1: 1,
    c2: 0.3,
  } as const
  it.each<[string, PressureInput, number]>([
    [
      'D 25, H 9.05, R 1, T 12.5, C1 1.5, C2 0.45: 86.82',
      { ...base, height: 9050, rate: 1, temperature: 12.5, c1: 1.5, c2: 0.45 },
      86.82,
    ],
    ['H 3, R 2, T 10: 53.46', base, 53.46],
    ['T 20: 44.80', { ...base, temperature: 20 }, 44.8],
    ['T 5: 63.11', { ...base, temperature: 5 }, 63.11],
    ['H 0.15: full head 3.75', { ...base, height: 150 }, 3.75],
  ])('%s kPa', (_, input, expected) => close(maximum(input), expected, 0.02))
})

describe('DIN 18218:2010 (from memory), 25 kN/m³', () => {
  const base = { method: 'din18218', height: 3000, rate: 2, weight: 25, flow: 'F3' } as const
  it.each<[string, PressureInput, number]>([
    ['F3, 2 m/h, 5 h: 46.0', { ...base, setting: 5 }, 46],
    ['F3, 2 m/h, 10 h: 63.7', { ...base, setting: 10 }, 63.7],
  ])('%s kPa', (_, input, expected) => close(maximum(input), expected, 0.1))

  it.each([
    ['F1', 1, 5, 26],
    ['F2', 3, 7, 54.194],
    ['F4', 2, 5, 51],
    ['F5', 1, 5, 55],
    ['F6', 0.1, 5, 30],
    ['SCC', 2, 10, 157],
  ] as const)('%s, %d m/h, %d h: %d kPa before the head caps it', (flow, rate, setting, expected) =>
    close(dinPressure(flow, rate, setting), expected, 1e-9),
  )
})

describe('side form of a flat mould (statics, computed; second method: by hand)', () => {
  it.each([
    [100, 0.125, 0.00417],
    [150, 0.28125, 0.01406],
    [200, 0.5, 0.03333],
    [250, 0.78125, 0.0651],
    [300, 1.125, 0.1125],
  ])('%d mm at 25 kN/m³: %d kN/m and %d kN·m/m', (thickness, thrust, overturning) => {
    const found = sideForm({ thickness, modulus: 8000, inertia: 1e6, spacing: 1000, spans: 1, weight: 25 })
    expect(found.known).toBe(true)
    if (!found.known) return
    close(found.value.thrust, thrust, 1e-9)
    close(found.value.overturning, overturning, 5e-6)
  })

  const rail = { modulus: 8000, inertia: (150 * 45 ** 3) / 12 }
  const thrust = sideThrust(150, 25)
  it('timber rail 150 × 45, 1000 mm, one span: 0.402 mm', () =>
    close(railBow(1, thrust, rail, 1000), 0.402, 0.0005))
  it('the same at 1500 mm: 2.035 mm', () => close(railBow(1, thrust, rail, 1500), 2.035, 0.001))
  it('the same at 1000 mm, three spans: 0.212 mm', () =>
    close(railBow(3, thrust, rail, 1000), 0.2125, 0.0002))
  it('longest spacing for 1.5 mm: 1390 mm', () => close(spacingForBow(1, thrust, rail, 1.5), 1390, 0.5))

  // The same closed form the other way round: the spacing at which the bow is its n-th part.
  it.each([
    [360, 1905],
    [300, 2024],
    [270, 2097],
  ])('bow of a %i-th of the spacing at %i mm', (part, spacing) =>
    close(railBow(1, thrust, rail, spacing), spacing / part, 0.02),
  )

  it('four spans bow less than three: 0.006460 w L⁴ / E I (three-moment equation, by hand)', () => {
    // End span with M = −3/28 w L² over its inner support: y = (w x / 24)(L³ − 2 L x² + x³) − (3/28)(x / 6)(L² − x²), w = L = E I = 1
    const bow = (x: number): number =>
      (x / 24) * (1 - 2 * x ** 2 + x ** 3) - ((3 / 28) * (x * (1 - x ** 2))) / 6
    const most = Math.max(...Array.from({ length: 2001 }, (_, k) => bow(k / 2000)))
    close(most, 0.00646, 1e-5)
    expect(most).toBeLessThan(BOW_COEFFICIENT[3])
  })

  it.each([
    [1, 0.013021],
    [2, 0.005416],
    [3, 0.006884],
  ] as const)('%d equal spans: largest deflection %d w L⁴ / E I (three-moment equation)', (spans, expected) =>
    close(BOW_COEFFICIENT[spans], expected, 1e-6),
  )

  it('200 mm, E 8000, I 1 139 000, 1200 mm, three spans: 0.783 mm, 1412 mm at 1.5 mm', () => {
    const found = sideForm({ thickness: 200, modulus: 8000, inertia: 1_139_000, spacing: 1200, spans: 3 })
    if (!found.known) throw new Error('not known')
    close(found.value.bow, 0.78331, 1e-5)
    close(found.value.spacingAtLimit, 1411.63, 0.01)
  })
})

import { describe, expect, it } from 'vitest'
import { halfSpaceReached, slabLeft } from './peer/index.ts'
import { at, CONCRETE, heatOf, WITHOUT_HEAT } from './testing.ts'

const CLOSED = { film: 0 }
const INFINITE = Number.POSITIVE_INFINITY

describe('adiabatic rise (Schindler and Folliard 2005, degree of three parameters, from memory; computed, second method: Runge-Kutta to 1e-10)', () => {
  const run = heatOf({ top: CLOSED, bottom: CLOSED, hours: 2400, every: 6 })

  it.each([
    [6, 25.108],
    [12, 41.598],
    [24, 61.926],
    [48, 68.927],
    [72, 70.391],
  ])('at %i h: %d °C', (hour, celsius) => {
    expect(Math.abs(at(run, 'core', hour) - celsius)).toBeLessThan(0.02)
    expect(at(run, 'mean', hour)).toBeCloseTo(at(run, 'core', hour), 6)
  })

  it.each([
    [6, 5.47],
    [12, 15.971],
    [24, 73.473],
    [48, 266.71],
    [72, 486.92],
  ])('equivalent age at %i h: %d h', (hour, age) => {
    expect(Math.abs(at(run, 'equivalentAge', hour) / age - 1)).toBeLessThan(0.001)
  })

  it('ends at 20 + 52.5 °C: all heat of the binder in the concrete (statics of the balance)', () => {
    const left = 52.5 * (1 - at(run, 'degree', 2400) / CONCRETE.ultimate)
    expect(at(run, 'core', 2400)).toBeCloseTo(72.5 - left, 3)
    expect(at(run, 'core', 2400)).toBeGreaterThan(72.2)
  })

  it('of a composed cement, 480.66 J/g, αu 0.6943, τ 15.062 h, β 0.6451, 46 585 J/mol (computed, second method: Runge-Kutta)', () => {
    const concrete = {
      ...CONCRETE,
      heat: 480.66,
      ultimate: 0.6943,
      tau: 15.062,
      beta: 0.6451,
      activation: 46_585,
    }
    const its = heatOf({ concrete, top: CLOSED, bottom: CLOSED, hours: 72, every: 6 })
    for (const [hour, celsius] of [
      [6, 29.42],
      [12, 44.79],
      [24, 61.18],
      [48, 68.92],
      [72, 71.08],
    ] as const)
      expect(Math.abs(at(its, 'core', hour) - celsius)).toBeLessThan(0.03)
  })
})

describe('plate with both faces held (Carslaw and Jaeger 1959, section 3.3, from memory; computed, second method: Fourier series)', () => {
  it.each([
    [150, 1, 0.2994],
    [150, 2, 0.0704],
    [200, 2, 0.24984],
  ])('%i mm after %i h: %d of the first difference in the middle', (thickness, hours, left) => {
    const held = { temperature: 0 }
    const run = heatOf({ concrete: WITHOUT_HEAT, thickness, initial: 1, top: held, bottom: held, hours: 3 })
    expect(Math.abs(at(run, 'core', hours) - left)).toBeLessThan(0.0006)
    const slab = { ...CONCRETE, thickness }
    expect(Math.abs(slabLeft(slab, INFINITE, hours, 0) - left)).toBeLessThan(1e-5)
  })
})

describe('plate in air (Carslaw and Jaeger 1959, section 3.11, from memory; computed, second methods: series and explicit differences)', () => {
  const run = heatOf({ concrete: WITHOUT_HEAT, initial: 45, air: 15, hours: 12 })

  it.each([
    [1, 41.34, 37.43],
    [2, 37.02, 33.74],
    [4, 30.39, 28.1],
    [12, 18.67, 18.12],
  ])(
    '150 mm, 45 °C in air of 15 °C, after %i h: %d °C in the middle, %d °C at the face',
    (hour, core, face) => {
      expect(Math.abs(at(run, 'core', hour) - core)).toBeLessThan(0.03)
      expect(Math.abs(at(run, 'top', hour) - face)).toBeLessThan(0.03)
      expect(at(run, 'bottom', hour)).toBeCloseTo(at(run, 'top', hour), 6)
    },
  )

  it.each([
    [100, 5],
    [200, 10],
    [400, 25],
    [1000, 50],
  ])('%i mm with a film of %i, each hour against the series', (thickness, film) => {
    const faces = { film }
    const its = heatOf({
      concrete: WITHOUT_HEAT,
      thickness,
      initial: 45,
      air: 15,
      top: faces,
      bottom: faces,
      hours: 24,
    })
    const slab = { ...CONCRETE, thickness }
    for (let hour = 1; hour <= 24; hour += 1) {
      expect(Math.abs(at(its, 'core', hour) - 15 - 30 * slabLeft(slab, film, hour, 0))).toBeLessThan(0.05)
      expect(Math.abs(at(its, 'top', hour) - 15 - 30 * slabLeft(slab, film, hour, 1))).toBeLessThan(0.05)
    }
  })
})

describe('half space (Carslaw and Jaeger 1959, sections 2.5 and 2.7, from memory; computed, second method: erfc)', () => {
  // The plate goes on upward as a layer of the same concrete: mid-depth then lies in a half space.
  const deep = (thickness: number, bottom: unknown) =>
    heatOf({
      concrete: WITHOUT_HEAT,
      thickness,
      initial: 0,
      air: 1,
      hours: 4,
      bottom,
      top: { film: 0, layers: [{ thickness: 1500, conductivity: 2.2, heatCapacity: 2400 }] },
    })

  it.each([
    [50, 1, 0.53825],
    [100, 4, 0.53825],
    [100, 1, 0.21835],
  ])('face held, %i mm deep after %i h: %d', (depth, hour, reached) => {
    expect(Math.abs(at(deep(2 * depth, { temperature: 1 }), 'core', hour) - reached)).toBeLessThan(0.002)
    expect(Math.abs(halfSpaceReached({ ...CONCRETE, thickness: 0 }, depth, hour) - reached)).toBeLessThan(
      1e-5,
    )
  })

  it('film of 10, after 1 h: 0.10187 at 50 mm, 0.23784 at the face', () => {
    const run = deep(100, { film: 10 })
    expect(Math.abs(at(run, 'core', 1) - 0.10187)).toBeLessThan(0.001)
    expect(Math.abs(at(run, 'bottom', 1) - 0.23784)).toBeLessThan(0.001)
  })
})

describe('steady flow (sum of resistances, EN ISO 6946 (from memory); computed by hand)', () => {
  it.each([
    ['steel 5 mm', { thickness: 5, conductivity: 50, heatCapacity: 3600 }, 9.99],
    ['ply 17 mm', { thickness: 17, conductivity: 0.13, heatCapacity: 900 }, 4.33],
    ['foam 50 mm', { thickness: 50, conductivity: 0.038, heatCapacity: 30 }, 0.706],
  ])('%s under a film of 10 lets %d W/m²K through', (_, layer, u) => {
    const top = { film: 10, layers: [layer] }
    const run = heatOf({ concrete: WITHOUT_HEAT, top, bottom: { temperature: 40 }, hours: 400, every: 200 })
    // 2.2 W/mK over 0.15 m in series with the layer and its film.
    const flow = 20 / (0.15 / 2.2 + 1 / u)
    expect(Math.abs(at(run, 'top', 400) - (40 - (flow * 0.15) / 2.2))).toBeLessThan(0.02)
    expect(Math.abs(at(run, 'core', 400) - (40 - (flow * 0.075) / 2.2))).toBeLessThan(0.02)
  })

  it('even heat in a plate: core over face q L²/2k, face over air q L/h (computed by hand)', () => {
    // So slow a binder that its heat is even for days: q from the degree itself.
    const concrete = { ...CONCRETE, tau: 3000, beta: 1, activation: 0, binder: 600, heat: 1000 }
    const run = heatOf({ concrete, hours: 1500, every: 1500 })
    const te = 1500
    const q = (600 * 1000 * 1000 * 0.7 * Math.exp(-3000 / te) * 3000) / te ** 2 / 3600
    expect(at(run, 'core', 1500) - at(run, 'top', 1500)).toBeCloseTo((q * 0.075 ** 2) / 2 / 2.2, 2)
    expect(at(run, 'top', 1500) - 20).toBeCloseTo((q * 0.075) / 10, 1)
  })
})

describe('a daily wave at the face (Carslaw and Jaeger 1959, section 2.6, from memory; computed, second method: exp(−z/d) cos(ωt − z/d), d = √(2α/ω))', () => {
  it('reaches 150 mm with 0.389 of its swing, 3.6 h later; d 159 mm', () => {
    const omega = (2 * Math.PI) / 24
    const depth = Math.sqrt((2 * (2.2 / 2.4e6) * 3600) / omega)
    expect(depth * 1000).toBeCloseTo(159, 0)
    expect(Math.exp(-0.15 / depth)).toBeCloseTo(0.389, 3)
    expect(0.15 / depth / omega).toBeCloseTo(3.6, 1)
    const hours = 480
    const wave = Array.from({ length: 4 * hours + 1 }, (_, at) => [at / 4, Math.cos((omega * at) / 4)])
    const run = heatOf({
      concrete: WITHOUT_HEAT,
      thickness: 300,
      initial: 0,
      bottom: { temperature: wave },
      top: { film: 0, layers: [{ thickness: 1500, conductivity: 2.2, heatCapacity: 2400 }] },
      hours,
      every: 0.5,
    })
    // The last day: what the start left is gone.
    const day = run.times.flatMap((time, index) =>
      time >= hours - 24 ? [[time, run.core[index] ?? 0] as const] : [],
    )
    const crest = day.reduce((best, next) => (next[1] > best[1] ? next : best))
    expect(Math.abs(crest[1] - 0.389)).toBeLessThan(0.004)
    expect(Math.abs((crest[0] % 24) - 3.6)).toBeLessThan(0.3)
  })
})

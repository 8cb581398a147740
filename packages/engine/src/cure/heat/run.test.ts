import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FaceLines } from './face.ts'
import { gridOf } from './grid.ts'
import { parseHeatCase } from './heat-case.ts'
import { HeatMarch } from './march.ts'
import { slabLeft } from './peer/index.ts'
import { refuseOpen, runHeat } from './run.ts'
import { CONCRETE, caseOf, heatOf, problemOf, SEED, WITHOUT_HEAT } from './testing.ts'

/** Core after so many even steps: no error control. */
function evenSteps(part: Readonly<Record<string, unknown>>, cells: number, steps: number): number {
  const problem = problemOf(part)
  const grid = gridOf({ concrete: problem.concrete, cells, under: [], over: [] })
  const tolerance = { kelvin: 1, age: 1 }
  const march = new HeatMarch(
    grid,
    problem.hydration,
    new Float64Array(cells).fill(problem.initial),
    tolerance,
  )
  const below = new FaceLines(problem.below, grid.half[0]!)
  const above = new FaceLines(problem.above, grid.half[cells - 1]!)
  for (const face of [below, above]) {
    face.between(0, problem.hours)
    face.at(0)
  }
  march.restart(below, above)
  const h = problem.hours / steps
  for (let step = 0; step < steps; step += 1) {
    march.attempt(step * h, h, below, above)
    march.keep()
  }
  return march.now.celsius[(cells - 1) / 2]!
}

describe('order of the scheme', () => {
  it('in space: twice the cells, a quarter of the error', () => {
    const faces = { film: 25 }
    const part = {
      concrete: WITHOUT_HEAT,
      initial: 60,
      air: 0,
      thickness: 300,
      top: faces,
      bottom: faces,
      hours: 6,
    }
    const exact = 60 * slabLeft({ ...CONCRETE, thickness: 300 }, 25, 6, 0)
    const errors = [11, 21, 41].map((cells) => Math.abs(evenSteps(part, cells, 3000) - exact))
    expect(errors[0]! / errors[1]!).toBeGreaterThan(3)
    expect(errors[0]! / errors[1]!).toBeLessThan(4.6)
    expect(errors[1]! / errors[2]!).toBeGreaterThan(3.2)
    expect(errors[1]! / errors[2]!).toBeLessThan(4.6)
  })

  it('in time: half the step, a quarter of the error, with hydration', () => {
    const part = { top: { film: 5 }, bottom: { film: 0 }, air: 10, hours: 24 }
    const fine = evenSteps(part, 21, 6000)
    const errors = [60, 120, 240].map((steps) => Math.abs(evenSteps(part, 21, steps) - fine))
    for (const [coarse, half] of [
      [errors[0]!, errors[1]!],
      [errors[1]!, errors[2]!],
    ] as const) {
      expect(coarse / half).toBeGreaterThan(3.2)
      expect(coarse / half).toBeLessThan(4.8)
    }
  })
})

describe('what always holds', () => {
  const face = fc.record({
    film: fc.double({ min: 0, max: 40, noNaN: true }),
    resistance: fc.double({ min: 0, max: 2, noNaN: true }),
  })
  const part = fc.record({
    thickness: fc.integer({ min: 40, max: 600 }),
    initial: fc.integer({ min: 2, max: 35 }),
    air: fc.integer({ min: -15, max: 40 }),
    binder: fc.integer({ min: 0, max: 550 }),
    tau: fc.double({ min: 3, max: 40, noNaN: true }),
    beta: fc.double({ min: 0.4, max: 2.5, noNaN: true }),
    top: face,
    bottom: face,
  })
  const random = { seed: SEED, numRuns: 60 }

  it(`heat in is heat kept less heat given off, to rounding (seed ${SEED})`, () => {
    fc.assert(
      fc.property(part, ({ binder, tau, beta, ...rest }) => {
        const { energy } = heatOf({ ...rest, concrete: { ...CONCRETE, binder, tau, beta } })
        expect(energy.share).toBeLessThan(1e-7)
        const sum = energy.stored - energy.hydration - energy.inBelow - energy.inAbove
        expect(sum).toBeCloseTo(energy.residual, 9)
      }),
      random,
    )
  })

  it(`turned over, the panel is the same panel (seed ${SEED})`, () => {
    fc.assert(
      fc.property(part, ({ binder, tau, beta, ...rest }) => {
        const concrete = { ...CONCRETE, binder, tau, beta }
        const run = heatOf({ ...rest, concrete })
        const turned = heatOf({ ...rest, concrete, top: rest.bottom, bottom: rest.top })
        for (const [index, celsius] of run.top.entries()) {
          expect(turned.bottom[index]).toBeCloseTo(celsius, 4)
          expect(turned.core[index]).toBeCloseTo(run.core[index]!, 4)
        }
      }),
      random,
    )
  })

  it(`without heat of its own nothing gets hotter or colder than what it began with or met (seed ${SEED})`, () => {
    fc.assert(
      fc.property(part, ({ binder: _, tau, beta, ...rest }) => {
        const run = heatOf({ ...rest, concrete: { ...WITHOUT_HEAT, tau, beta } })
        expect(Math.max(...run.hottest)).toBeLessThan(Math.max(rest.initial, rest.air) + 0.01)
        expect(Math.min(...run.coldest)).toBeGreaterThan(Math.min(rest.initial, rest.air) - 0.01)
      }),
      random,
    )
  })

  it(`hottest and coldest hold all the others; hydration goes one way and stays under its end (seed ${SEED})`, () => {
    fc.assert(
      fc.property(part, ({ binder, tau, beta, ...rest }) => {
        const run = heatOf({ ...rest, concrete: { ...CONCRETE, binder, tau, beta } })
        for (const [index, most] of run.hottest.entries())
          for (const column of [run.core, run.top, run.bottom, run.mean]) {
            expect(column[index]!).toBeLessThanOrEqual(most + 1e-9)
            expect(column[index]!).toBeGreaterThanOrEqual(run.coldest[index]! - 1e-9)
          }
        for (const [index, degree] of run.degree.entries()) {
          expect(degree).toBeLessThanOrEqual(CONCRETE.ultimate)
          expect(degree).toBeGreaterThanOrEqual(index === 0 ? 0 : run.degree[index - 1]!)
        }
      }),
      random,
    )
  })
})

describe('a run', () => {
  it('writes down 0, every, 2·every and so on, as cast at 0', () => {
    const run = heatOf({ hours: 1, every: 0.3 })
    expect(run.times.map((time) => Number(time.toFixed(9)))).toEqual([0, 0.3, 0.6, 0.9])
    for (const column of [run.core, run.top, run.bottom, run.mean, run.hottest]) expect(column[0]).toBe(20)
    expect([run.equivalentAge[0], run.degree[0]]).toEqual([0, 0])
    expect(heatOf({ hours: 24, every: 0.1 }).times).toHaveLength(241)
  })

  it('does not depend on how often it is written down', () => {
    const often = heatOf({ every: 0.05, air: 5 })
    const seldom = heatOf({ every: 12, air: 5 })
    expect(often.core.at(-1)).toBeCloseTo(seldom.core.at(-1)!, 1)
    expect(Math.abs(often.core.at(-1)! - seldom.core.at(-1)!)).toBeLessThan(0.02)
  })

  it('meets a cover that comes off at its hour: nothing before, at once after', () => {
    const covered = {
      film: 25,
      resistance: [
        [0, 0.6],
        [5.5, 0],
      ],
    }
    const run = heatOf({ concrete: WITHOUT_HEAT, initial: 40, air: 5, top: covered, hours: 6, every: 0.25 })
    const still = heatOf({
      concrete: WITHOUT_HEAT,
      initial: 40,
      air: 5,
      top: { film: 25, resistance: 0.6 },
      hours: 6,
      every: 0.25,
    })
    for (const [index, time] of run.times.entries())
      if (time <= 5.5) expect(run.top[index]).toBeCloseTo(still.top[index]!, 2)
    expect(run.top[23]! - still.top[23]!).toBeLessThan(-3)
  })

  it('takes a layer off at its hour: foam that stores next to nothing is a resistance until then', () => {
    const foam = { thickness: 40, conductivity: 0.05, heatCapacity: 5 }
    const part = { air: 4, hours: 10, every: 0.25, bottom: { film: 6 } }
    const layer = heatOf({ ...part, top: { film: 20, layers: [{ ...foam, until: 5.5 }] } })
    const cover = heatOf({
      ...part,
      top: {
        film: 20,
        resistance: [
          [0, 0.8],
          [5.5, 0],
        ],
      },
    })
    for (const [index, celsius] of layer.top.entries())
      expect(Math.abs(celsius - cover.top[index]!)).toBeLessThan(0.05)
    expect(layer.energy.share).toBeLessThan(1e-9)
  })

  it('lets the heat of a layer go with it, and what lies outside it too', () => {
    const steel = { thickness: 20, conductivity: 50, heatCapacity: 3600, initial: 60 }
    const part = { concrete: WITHOUT_HEAT, air: 20, hours: 6, every: 1, top: { film: 10 } }
    const off = heatOf({
      ...part,
      bottom: {
        film: 0,
        layers: [
          { ...steel, until: 1 },
          { ...steel, until: 4 },
        ],
      },
    })
    const { energy } = off
    expect(energy.share).toBeLessThan(1e-9)
    expect(energy.takenOff).toBeLessThan(-100)
    const on = heatOf({ ...part, bottom: { film: 0, layers: [steel, steel] } })
    expect(off.bottom[1]).toBeCloseTo(on.bottom[1]!, 3)
    expect(off.mean[6]!).toBeLessThan(on.mean[6]! - 2)
  })

  it('keeps what lies still: all as warm as the air, no heat of its own', () => {
    const run = heatOf({ concrete: WITHOUT_HEAT })
    for (const celsius of run.hottest) expect(celsius).toBeCloseTo(20, 9)
    expect(run.energy.residual).toBeCloseTo(0, 6)
  })

  it('counts the age of the mean temperature by hand: 30 °C held, 40 000 J/mol at 20 °C, 10 h are 17.18 h (Arrhenius)', () => {
    const concrete = { ...WITHOUT_HEAT, reference: 20 }
    const run = heatOf({ concrete, initial: 30, air: 30, hours: 10, every: 10 })
    expect(run.equivalentAge[1]).toBeCloseTo(17.18, 2)
  })

  it('takes a gain at a side without film whole: 100 W/m² warm 150 mm by 1 K an hour', () => {
    const top = { film: 0, gain: 100 }
    const run = heatOf({ concrete: WITHOUT_HEAT, top, bottom: { film: 0 }, hours: 10, every: 10 })
    expect(run.mean[1]! - 20).toBeCloseTo(10, 6)
  })

  it('loses to a clear sky what the fourth powers say (computed by hand: ε σ (T⁴ − Tsky⁴))', () => {
    const part = { concrete: WITHOUT_HEAT, bottom: { film: 0 }, air: 20, hours: 400, every: 400 }
    const run = heatOf({ ...part, top: { film: 10, sky: 3.9, emissivity: 0.9 } })
    const loss = 0.9 * 5.670374419e-8 * (293.15 ** 4 - 277.05 ** 4)
    expect(run.top[1]).toBeCloseTo(20 - loss / 10, 3)
  })

  it('leaves the first hour out of the difference of core and face, but not out of the coldest: a cold mould meets the skin', () => {
    const steel = { thickness: 8, conductivity: 50, heatCapacity: 3600, initial: 0 }
    const part = { concrete: WITHOUT_HEAT, air: 20, bottom: { film: 0, layers: [steel] } }
    const run = heatOf(part)
    expect(run.difference?.hour).toBeGreaterThanOrEqual(1)
    expect(Math.abs(run.difference?.kelvin ?? 99)).toBeLessThan(2)
    // Two bodies in touch meet by their effusivities, √(k ρc) (Carslaw and Jaeger 1959, section 2.15, from memory).
    const [concrete, mould] = [Math.sqrt(2.2 * 2400), Math.sqrt(50 * 3600)]
    expect(run.least.celsius).toBeCloseTo((20 * concrete) / (concrete + mould), 0)
    expect(heatOf({ ...part, hours: 0.5, every: 0.5 }).difference).toBeNull()
  })

  it('says when the first of it is below 0 °C: one lump cools as exp(−t / τ)', () => {
    const face = { film: 5 }
    const part = {
      concrete: { ...WITHOUT_HEAT, conductivity: 20 },
      initial: 5,
      air: -20,
      top: face,
      bottom: face,
    }
    const { frost } = heatOf({ ...part, hours: 6, every: 6 })
    const tau = (2400 * 0.15) / (10 * 3.6)
    expect(Math.abs(frost! - tau * Math.log(25 / 20))).toBeLessThan(0.12)
    expect(heatOf({ air: 5 }).frost).toBeNull()
  })

  it('refuses a run whose balance does not close', () => {
    const { energy } = heatOf()
    expect(() => refuseOpen(energy)).not.toThrow()
    expect(() => refuseOpen({ ...energy, residual: 1, share: 1e-5 })).toThrow(
      'energy balance: 1 kJ/m² left over',
    )
    expect(() => refuseOpen({ ...energy, share: Number.NaN })).toThrow()
    const problem = parseHeatCase(caseOf()).problem
    const broken = { ...problem, hydration: { ...problem.hydration, binder: Number.NaN } }
    expect(() => runHeat(broken)).toThrow()
  })
})

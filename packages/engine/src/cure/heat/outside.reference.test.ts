import { describe, expect, it } from 'vitest'
import { replay } from '../../working/replay.ts'
import { binderHydration } from './binder.ts'
import { filmOfWind, radiativeFilm, skyOfAir } from './outside.ts'

const CEMENT = {
  c3s: 0.55,
  c2s: 0.18,
  c3a: 0.08,
  c4af: 0.1,
  so3: 0.03,
  freeLime: 0.01,
  magnesia: 0.02,
  blaine: 380,
  waterBinder: 0.4,
  slag: 0,
  flyAsh: 0,
  flyAshLime: 0,
}

describe('binder by its composition (Schindler and Folliard 2005, from memory; computed by hand)', () => {
  it('Portland cement: 480.66 J/g, αu 0.6943, τ 15.062 h, β 0.6451, 46 585 J/mol', () => {
    const found = binderHydration(CEMENT)
    if (!found.known) throw new Error(found.gaps.join())
    expect(found.value.heat).toBeCloseTo(480.66, 2)
    expect(found.value.ultimate).toBeCloseTo(0.6943, 4)
    expect(found.value.tau / 15.062).toBeCloseTo(1, 3)
    expect(found.value.beta / 0.6451).toBeCloseTo(1, 3)
    expect(found.value.activation / 46_585).toBeCloseTo(1, 3)
    for (const step of found.working) expect(replay(step)! / Number(step.result)).toBeCloseTo(1, 9)
  })

  it('with 30 % slag: 474.76 J/g, αu 0.7843, τ 29.03 h, β 0.5313', () => {
    const found = binderHydration({ ...CEMENT, slag: 0.3 })
    if (!found.known) throw new Error(found.gaps.join())
    expect(found.value.heat).toBeCloseTo(474.76, 2)
    expect(found.value.ultimate).toBeCloseTo(0.7843, 4)
    expect(found.value.tau / 29.03).toBeCloseTo(1, 3)
    expect(found.value.beta / 0.5313).toBeCloseTo(1, 3)
    for (const step of found.working) expect(replay(step)! / Number(step.result)).toBeCloseTo(1, 9)
  })

  it('with fly ash the printed formulas replay too', () => {
    const found = binderHydration({ ...CEMENT, flyAsh: 0.25, flyAshLime: 0.1, slag: 0.1 })
    if (!found.known) throw new Error(found.gaps.join())
    for (const step of found.working) expect(replay(step)! / Number(step.result)).toBeCloseTo(1, 9)
    expect(found.value.heat).toBeCloseTo(480.66 * 0.65 + 46.1 + 1800 * 0.025, 1)
  })

  it('is not known where a part is missing or the shares are over 1', () => {
    expect(binderHydration({ ...CEMENT, c3a: Number.NaN })).toMatchObject({ gaps: ['c3a: a number above 0'] })
    expect(binderHydration({ ...CEMENT, slag: 0.7, flyAsh: 0.4 }).known).toBe(false)
  })
})

describe('film by the wind (McAdams 1954, from memory; computed by hand)', () => {
  it.each([
    [0, 5.6],
    [2, 13.5],
    [5, 25.35],
    [10, 45.79],
  ])('%i m/s: %d W/m²K', (wind, film) => {
    const found = filmOfWind(wind)
    if (!found.known) throw new Error(found.gaps.join())
    expect(Math.abs(found.value - film)).toBeLessThan(0.01)
    for (const step of found.working) expect(replay(step)).toBeCloseTo(Number(step.result), 9)
  })

  it('is not known of a storm or of nothing', () => {
    expect(filmOfWind(41).known).toBe(false)
    expect(filmOfWind(-1).known).toBe(false)
    expect(filmOfWind(Number.NaN).known).toBe(false)
  })
})

describe('radiation', () => {
  it('a clear sky over air of 20 °C: 3.9 °C (Swinbank 1963, from memory); a face of 30 °C and emissivity 0.9 loses 130 W/m² to it', () => {
    const sky = skyOfAir(20)
    if (!sky.known) throw new Error(sky.gaps.join())
    expect(sky.value).toBeCloseTo(3.9, 1)
    expect(0.9 * 5.670374419e-8 * (303.15 ** 4 - (sky.value + 273.15) ** 4)).toBeCloseTo(130, -1)
    for (const step of sky.working) expect(replay(step)).toBeCloseTo(Number(step.result), 9)
  })

  it.each([
    [20, 5.14],
    [40, 6.27],
  ])(
    'adds to the film at %i °C and emissivity 0.9: %d W/m²K (slope of Stefan and Boltzmann, computed by hand)',
    (celsius, film) => {
      expect(Math.abs(radiativeFilm(celsius, 0.9) - film)).toBeLessThan(0.01)
    },
  )
})

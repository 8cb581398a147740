import { describe, expect, it } from 'vitest'
import { InputError } from '../../working/issue.ts'
import { parseHeatCase } from './heat-case.ts'
import { runHeat } from './run.ts'
import { caseOf } from './testing.ts'
import { weatherOf } from './weather.ts'
import { weatheredCase } from './weather-case.ts'

const ROWS = Array.from({ length: 25 }, (_, hours) => ({ hours, air: 12, wind: 2, sun: hours < 3 ? 300 : 0 }))
const NO_AIR = caseOf({ air: undefined })

describe('weather put into a case', () => {
  it('gives its air, and the film of the top where none is given', () => {
    const { value, gaps, assumed } = weatheredCase({ ...NO_AIR, top: {} }, weatherOf(ROWS))
    expect(gaps).toEqual([])
    expect(assumed.map(({ field }) => field)).toEqual(['top.film'])
    const run = runHeat(parseHeatCase(value).problem)
    const same = runHeat(parseHeatCase(caseOf({ air: 12, top: { film: 13.5 } })).problem)
    expect(run.top.at(-1)).toBeCloseTo(same.top.at(-1)!, 3)
  })

  it('keeps a film that is given, and takes the sun by the absorptivity', () => {
    const { value, assumed } = weatheredCase(
      { ...NO_AIR, top: { film: 10, absorptivity: 0.6 } },
      weatherOf(ROWS),
    )
    expect(assumed).toEqual([])
    const run = runHeat(parseHeatCase(value).problem)
    const dark = runHeat(parseHeatCase(caseOf({ air: 12 })).problem)
    expect(run.top[2]!).toBeGreaterThan(dark.top[2]! + 2)
  })

  it('is a gap where the absorptivity asks for a sun that the file does not have', () => {
    const weather = weatherOf(ROWS.map(({ hours, air }) => ({ hours, air })))
    expect(weatheredCase({ ...NO_AIR, top: { film: 10, absorptivity: 0.6 } }, weather).gaps).toEqual([
      'weather.sun: no readings',
    ])
  })

  it('refuses a case with air of its own', () => {
    expect(() => weatheredCase(caseOf(), weatherOf(ROWS))).toThrow(InputError)
  })
})

import { describe, expect, it } from 'vitest'
import type { Load } from '../../pour/loads/load.ts'
import { recorded, signed } from '../../steps/example-facts.ts'
import { type NightCase, nightCase } from './night-case.ts'
import { hourAfter, nightInput, pour, weather, YARD } from './testing.ts'

function caseOf(part: Parameters<typeof nightInput>[0] = {}): NightCase {
  const made = nightCase(nightInput(part))
  if (!made.known) throw new Error(made.gaps.join('; '))
  return made.value
}

function gapsOf(part: Parameters<typeof nightInput>[0]): readonly string[] {
  const made = nightCase(nightInput(part))
  return made.known ? [] : made.gaps
}

const fields = ({ assumed }: NightCase): string[] => assumed.map(({ field }) => field)

describe('a night put together from the record', () => {
  it('takes what is recorded: mix, bed, temperature at the truck, hour of the cover', () => {
    const made = caseOf()
    expect(made.input).toMatchObject({ thickness: 180, initial: 19, hours: 25.5 })
    expect(made.input.top.covers).toEqual([
      [0, 0],
      [5.5, 0.4],
      [17.5, 0],
    ])
    expect(made.cover).toMatchObject({ on: { by: 'recorded' }, off: { hour: 17.5, by: 'planned' } })
    expect(made.loggedTo).toBe(4)
    expect(made.wanted).toBe(15)
  })

  it('lists what was assumed: hour of uncovering, sun left out, a clear sky, emissivity', () => {
    expect(fields(caseOf())).toEqual(['cover off', 'weather.sun', 'top.emissivity', 'weather.sky'])
    const told = weather(0, 40, { sun: 0, sky: 5 })
    expect(fields(caseOf({ weather: [], forecast: told }))).toEqual([
      'cover off',
      'top.emissivity',
      'top.absorptivity',
    ])
  })

  it('names what is missing, and makes nothing up', () => {
    expect(gapsOf({ facts: pour({ cast: null }) })[0]).toMatch(/^cast/)
    expect(gapsOf({ facts: pour({ cast: { entry: 'c', at: hourAfter(0), bed: '1', mix: 'X' } }) })).toEqual([
      'mix: the yard lists no X',
    ])
    expect(gapsOf({ weather: [], forecast: [] })).toEqual([
      'weather.air: no log and no forecast of these hours',
    ])
    expect(gapsOf({ weather: [], forecast: weather(2, 40) })).toEqual([
      'weather.air: nothing before 2 h from mixing',
    ])
    const empty = pour()
    const bare = { ...empty, steps: { ...empty.steps, deliver: { ...empty.steps.deliver, values: {} } } }
    expect(gapsOf({ facts: bare })[0]).toMatch(/^initial/)
  })

  it('does not take a heated bed for a cold one where its heating is not given', () => {
    const facts = pour({ cast: { entry: 'c', at: hourAfter(0), bed: '2', mix: 'M' } })
    expect(gapsOf({ facts })[0]).toMatch(/^bed 2: is heated/)
  })

  it('runs as far as the weather goes, and to a hole in it; says so', () => {
    const short = caseOf({ forecast: weather(0, 12) })
    expect(short.input.hours).toBe(12)
    expect(fields(short)).toContain('hours')
    const holed = caseOf({ forecast: [...weather(0, 9), ...weather(14, 40)] })
    expect(holed.input.hours).toBe(9)
    expect(gapsOf({ weather: weather(-1, 0), forecast: weather(6, 40) })[0]).toMatch(/more than 3 h/)
  })

  it('ends at the first lift once that was opened', () => {
    const facts = pour()
    const strip = { ...facts.steps.strip, opening: { ...signed('o', { seen: hourAfter(20.1) }), rests: [] } }
    expect(caseOf({ facts: { ...facts, steps: { ...facts.steps, strip } } }).input.hours).toBe(20.25)
  })

  it('says that void formers are left out', () => {
    const drawing = { voids: [{}] } as unknown as NonNullable<ReturnType<typeof pour>['drawing']>
    expect(fields(caseOf({ facts: pour({ drawing }) }))).toContain('thickness')
  })

  it('takes a roof for still air, and neither sky nor wind', () => {
    const yard = { ...YARD, beds: [{ ...YARD.beds[0], roofed: true }] }
    const made = caseOf({ yard: { yard, limits: {} } })
    expect(made.input.top.film).toBe(7)
    expect(made.input.weather).toMatchObject({ sky: [], sun: [], wind: [] })
  })

  it('takes a film for a forecast without wind, and says so', () => {
    const made = caseOf({ weather: [], forecast: weather(-1, 40, { wind: null }) })
    expect(made.input.top.film).toBe(15)
    expect(fields(made)).toContain('top.film')
  })
})

describe('the temperature as placed', () => {
  const load = (temperature: number, sentBack = false) =>
    ({ temperature, decision: sentBack ? { decision: 'send-back' } : null }) as unknown as Load
  const placed = (dockets: readonly Load[]) => caseOf({ facts: pour({ dockets }) })

  it('is the coldest of truck and dockets, and says so', () => {
    const made = placed([load(17), load(21)])
    expect(made.input.initial).toBe(17)
    expect(fields(made)).toContain('initial')
    expect(fields(placed([load(19)]))).not.toContain('initial')
  })

  it('is not that of a load that was sent back, and beside it not that of the card', () => {
    expect(placed([load(20), load(12, true)]).input.initial).toBe(20)
    expect(gapsOf({ facts: pour({ dockets: [load(12, true)] }) })[0]).toMatch(/^initial/)
    expect(placed([load(200)]).input.initial).toBe(19)
  })
})

describe('hours of the cover', () => {
  const withValues = (finish: object, cure: object = {}) => {
    const facts = pour()
    return {
      ...facts,
      steps: {
        ...facts.steps,
        finish: { ...facts.steps.finish, values: finish },
        cure: { ...facts.steps.cure, values: cure },
      },
    } as typeof facts
  }

  it('planned half an hour after the finish, and never before now', () => {
    expect(caseOf({ facts: withValues({}), now: hourAfter(2) }).cover.on).toEqual({
      hour: 5.5,
      by: 'planned',
    })
    expect(caseOf({ facts: withValues({}), now: hourAfter(9) }).cover.on).toEqual({ hour: 9, by: 'planned' })
  })

  it('recorded as not laid: the panel lies bare', () => {
    const made = caseOf({ facts: withValues({ 'cover-on': recorded(false) }) })
    expect(made.input.top.covers).toEqual([])
    expect(fields(made)).toContain('cover')
  })

  it('off when the difference to the air was recorded', () => {
    const off = { 'cover-off': recorded(6, { seen: hourAfter(16) }) }
    const made = caseOf({ facts: withValues({ 'cover-on': recorded(true, { seen: hourAfter(6) }) }, off) })
    expect(made.cover.off).toEqual({ hour: 16, by: 'recorded' })
  })
})

import { describe, expect, it } from 'vitest'
import { replay } from '../working/replay.ts'
import type { Mix, Yard } from '../yard/yard.ts'
import { emptyPanelFacts } from './empty-facts.ts'
import { recorded } from './example-facts.ts'
import type { PanelFacts, Recorded, TemperatureLog } from './facts.ts'
import { type FinishNow, type FinishNowInput, finishNow } from './finish-now.ts'

const MIXED = '2026-06-01T08:00:00.000Z'
const at = (hour: number): string => new Date(Date.parse(MIXED) + hour * 3_600_000).toISOString()
const mix: Mix = {
  mark: 'M40',
  strength: 40,
  reference: 20,
  initialSet: 4.5,
  activation: 40_000,
  bleeds: 'plain',
}
const yardOf = (change: Partial<Mix> = {}, bed: object = {}): Yard => ({
  format: 'castwright.yard/1',
  name: 'T',
  code: 'eu',
  timezone: 'UTC',
  mixes: [{ ...mix, ...change }],
  beds: [{ mark: 'B1', length: 9000, width: 3000, ...bed }],
})
const PLANNED = { opens: 2.475, closes: 4.5 }
const weather = (air: number, humidity = 70, wind = 10, hours = 12) =>
  Array.from({ length: hours + 2 }, (_, hour) => ({ at: at(hour - 1), air, humidity, wind }))

function facts(
  values: Partial<Record<'deliver' | 'place' | 'finish', Record<string, Recorded>>> = {},
  temperatures: readonly TemperatureLog[] = [],
): PanelFacts {
  const empty = emptyPanelFacts({ job: 'J', mark: 'P' })
  const steps = { ...empty.steps }
  for (const [step, own] of Object.entries(values) as ['finish', Record<string, Recorded>][])
    steps[step] = { ...steps[step], values: own }
  return { ...empty, cast: { entry: 'c', at: MIXED, bed: 'B1', mix: 'M40' }, steps, temperatures }
}

const seen = (value: unknown, hour: number): Recorded => recorded(value, { seen: at(hour) })
const truck = (celsius: number) => ({ deliver: { 'concrete-temperature': seen(celsius, 0.4) } })

function now(change: Partial<FinishNowInput> = {}, hour = 1.5): FinishNow {
  return finishNow({
    plan: { thickness: 180, pour: { mix: 'M40', finish: PLANNED } },
    facts: facts(truck(20)),
    yard: yardOf(),
    weather: weather(20),
    forecast: [],
    now: at(hour),
    ...change,
  })
}

function log(channel: string, celsius: number, hours: readonly number[]): TemperatureLog {
  return {
    entry: channel,
    entries: [channel],
    channel,
    by: { id: 'p', name: 'P', role: 'floor' },
    readings: hours.map((hour) => [hour, celsius] as const),
  }
}

describe('a surface as it stands now', () => {
  it('at the reference all the time sets when the mix’s test says, with the band of a batch', () => {
    const found = now()
    expect(found.basis).toBe('readings')
    expect(found.initialSet?.hour).toBeCloseTo(4.5, 6)
    expect(found.initialSet?.low).toBeCloseTo(4.05, 6)
    expect(found.initialSet?.high).toBeCloseTo(4.95, 6)
    expect(found.windows.map(({ id }) => id)).toEqual(['screed', 'wait', 'pass:1', 'pass:2', 'close'])
    // Second pass half an hour after the first at 20 °C (rule of the trade, 20 to 40 min).
    const [first, second] = found.windows.filter(({ id }) => id.startsWith('pass'))
    expect((second?.from ?? 0) - (first?.from ?? 0)).toBeCloseTo(0.5, 6)
  })

  it('shifts by what was measured at the truck: 12 °C sets 1.58 times later (computed, second method: python)', () => {
    const found = now({ facts: facts(truck(12)), weather: weather(12) })
    expect(found.initialSet?.hour).toBeCloseTo(4.5 * 1.5848, 2)
    expect(found.shift).toBeGreaterThanOrEqual(Math.floor((0.55 * 4.5 * 1.5848 - 2.475) * 60))
    expect(found.celsius).toBeCloseTo(12, 6)
  })

  it('takes the temperature of a load on its docket, not that of one that was sent back', () => {
    const load = (number: string, celsius: number, change: object = {}): PanelFacts['dockets'][number] => ({
      number,
      temperature: celsius,
      arrived: at(0.4),
      entry: number,
      entries: [number],
      by: { id: 'p', name: 'P', role: 'floor' },
      seen: at(0.5),
      said: {},
      differs: [],
      decision: null,
      ...change,
    })
    const back = { decision: { decision: 'send-back' } } as object
    const first = { ...facts(truck(31)), dockets: [load('1', 31, back), load('2', 14)] }
    expect(now({ facts: first }).reading).toMatchObject({ celsius: 14, from: 'truck' })
    const none = { ...facts(truck(31)), dockets: [load('1', 31, back)] }
    expect(now({ facts: none }).basis).toBe('air')
  })

  it('goes on from the last reading towards the air, and a reading of the surface counts from then on', () => {
    const cooling = now({ facts: facts(truck(20)), weather: weather(5) })
    const warm = now({ facts: facts(truck(20)), weather: weather(20) })
    expect(cooling.initialSet?.hour).toBeGreaterThan(warm.initialSet?.hour ?? 99)
    const read = now({
      facts: facts({ ...truck(20), finish: { [`surface-temperature@${at(1)}`]: seen(11, 1) } }),
    })
    expect(read.reading).toMatchObject({ hour: 1, celsius: 11, from: 'surface' })
    expect(read.initialSet?.hour).toBeGreaterThan(4.6)
  })

  it('takes the log, the channel at the surface before one in the middle', () => {
    const found = now({
      facts: facts(truck(20), [log('core', 30, [1, 2, 3]), log('top face', 14, [1, 2, 3])]),
    })
    expect(found.reading).toMatchObject({ hour: 3, celsius: 14, from: 'log' })
  })

  it('leaves out what no fresh concrete reads and what came before mixing', () => {
    const found = now({
      facts: facts({
        ...truck(20),
        finish: {
          [`surface-temperature@${at(1)}`]: seen(180, 1),
          [`surface-temperature@${at(-1)}`]: seen(12, -1),
        },
      }),
    })
    expect(found.reading).toMatchObject({ celsius: 20, from: 'truck' })
  })

  it('without any reading goes by the air, without air by the plan, and says so', () => {
    const air = now({ facts: facts(), weather: weather(9) })
    expect(air.basis).toBe('air')
    expect(air.assumed.map(({ why }) => why).join()).toContain('air at mixing')
    const plan = now({ facts: facts(), weather: [] })
    expect(plan.basis).toBe('plan')
    expect(plan.shift).toBe(0)
    expect(plan.drying).toBeNull()
    expect(plan.unknown.join()).toContain('no humidity within 3 h')
  })

  it('a boot print outranks the clock: at a print of 6 mm floating is open, and the rest runs as much faster', () => {
    const found = now(
      {
        facts: facts({ ...truck(20), finish: { 'boot-print': seen(6, 2), 'sheen-gone': seen(true, 1.9) } }),
      },
      2,
    )
    expect(found.finish?.opens).toBeCloseTo(2, 6)
    expect(found.sign).toMatchObject({ what: 'boot print', value: 6, share: 0.55 })
    expect(found.sign?.computed).toBeCloseTo(2 / 4.5, 3)
    // Share 0.55 after 2 h where 2/4.5 was computed: what is left takes 0.45 × 4.5 × (0.4444 / 0.55) = 1.636 h (by hand).
    expect(found.initialSet?.hour).toBeCloseTo(3.636, 2)
    expect(found.shiftBySign).toBeLessThan(0)
    expect(found.sheenSeen).toBe(true)
  })

  it('a heel that leaves no mark shuts the window then', () => {
    const found = now({ facts: facts({ ...truck(20), finish: { 'boot-print': seen(0, 3) } }) }, 3)
    expect(found.initialSet?.hour).toBeCloseTo(3, 6)
  })

  it('of several signs the last counts, and a penetration reading is one', () => {
    const finish = {
      [`boot-print@${at(1)}`]: seen(20, 1),
      [`penetration@${at(2.5)}`]: seen(3.5, 2.5),
    }
    expect(now({ facts: facts({ ...truck(20), finish }) }).initialSet?.hour).toBeCloseTo(2.5, 6)
  })

  it('every time lies in its band, whatever was read', () => {
    const signs = [
      {},
      { 'boot-print': seen(9, 1.4) },
      { penetration: seen(1.5, 2) },
      { 'sheen-gone': seen(true, 2) },
    ]
    for (const celsius of [6, 14, 20, 31])
      for (const finish of signs) {
        const found = now({ facts: facts({ ...truck(celsius), finish }), weather: weather(celsius - 4) }, 2.2)
        expect(found.windows.length).toBe(5)
        for (const { low, from, high } of found.windows) {
          expect(low).toBeLessThanOrEqual(from + 1e-9)
          expect(high).toBeGreaterThanOrEqual(from - 1e-9)
        }
        const { hour, low, high } = found.initialSet ?? { hour: 0, low: 0, high: 0 }
        expect(low < hour && hour < high).toBe(true)
      }
  })

  it('the forecast counts from where the log ends', () => {
    const log = weather(20, 70, 10, 1)
    const forecast = weather(2, 70, 10, 12)
    const held = now({ weather: log, forecast: [] })
    const told = now({ weather: log, forecast })
    expect(told.initialSet?.hour).toBeGreaterThan(held.initialSet?.hour ?? 99)
    expect(told.drying?.rate).toBeGreaterThan(0)
  })

  it('a reading of the air counts for three hours, then drying is not known', () => {
    const log = weather(20, 70, 10, 1)
    expect(now({ weather: log }, 3.9).drying).not.toBeNull()
    expect(now({ weather: log }, 4.1).drying).toBeNull()
  })

  it('wind of a station is brought down, wind read at the panel is not, and a shed has its own', () => {
    const rate = (change: object, bed: object = {}) =>
      now({
        weather: weather(20).map((reading) => ({ ...reading, ...change })),
        yard: yardOf({}, bed),
      }).drying?.check.working[0]?.given.V
    expect(rate({ wind: 20 })).toBeCloseTo(9.686, 3)
    expect(rate({ wind: 20, windHeight: 0.5 })).toBeCloseTo(20, 6)
    expect(rate({ wind: 20 }, { roofed: true })).toBe(5)
    expect(rate({ wind: 2, windHeight: 0.5 }, { roofed: true })).toBeCloseTo(2, 6)
  })

  it('a reading of the wind alone counts, though it says nothing of the air', () => {
    const alone = { at: at(1.5), air: null, humidity: null, wind: 30, windHeight: 0.5 }
    const found = now({ weather: [...weather(20, 70, 10, 1), alone] })
    expect(found.drying?.check.working[0]?.given.V).toBeCloseTo(30, 9)
    expect(found.drying?.check.working[0]?.given.Ta).toBe(20)
  })

  it('the line of drying goes by how the mix bleeds; a mix that says nothing gets the careful one, told as assumed', () => {
    const limits = (['plain', 'little', 'hardly', undefined] as const).map(
      (bleeds) => now({ yard: yardOf({ bleeds }) }).drying?.limit,
    )
    expect(limits).toEqual([1, 0.5, 0.25, 0.5])
    const found = now({ yard: yardOf({ bleeds: undefined }) })
    expect(found.assumed.map(({ field }) => field)).toContain('bleeding of the mix')
  })

  it('judges drying with the formulas’ scatter: near the line is neither', () => {
    const against = (humidity: number, wind: number) =>
      now({
        facts: facts(truck(28)),
        weather: weather(25, humidity, wind).map((reading) => ({ ...reading, windHeight: 0.5 })),
      }).drying?.against
    expect([against(80, 5), against(50, 20), against(20, 45)]).toEqual(['under', 'near', 'over'])
  })

  it('where water condenses the sheen stays, and the sign says to draw it off', () => {
    const found = now({ weather: weather(24, 95, 5), facts: facts(truck(12)) })
    expect(found.sheen).toBe('stays')
    expect(found.advice).toEqual([])
    expect(found.windows.find(({ id }) => id === 'wait')?.sign).toContain('draw the water off')
  })

  it('names weather that no instrument gives and goes on without it', () => {
    const broken = weather(20).map((reading, index) =>
      index === 4 ? { ...reading, humidity: 140 } : reading,
    )
    const found = now({ weather: broken })
    expect(found.weatherFaults).toEqual([
      { path: `weather of ${at(3)}: humidity`, found: '140 %', expected: '0 to 100 %' },
    ])
    expect(found.drying).not.toBeNull()
  })

  it.each<[string, Partial<FinishNowInput>, string]>([
    ['not mixed yet', { facts: { ...facts(), cast: null } }, 'when it was mixed'],
    ['no such mix', { yard: { ...yardOf(), mixes: [] } }, 'yard: mix M40'],
    ['no initial set', { yard: yardOf({ initialSet: undefined }) }, 'initial set'],
    ['no reference', { yard: yardOf({ reference: undefined }) }, 'temperature of its initial set'],
  ])('%s: not known, with the gap named', (_, change, gap) => {
    const found = now(change)
    expect(found.windows).toEqual([])
    expect(found.initialSet).toBeNull()
    expect(found.unknown.join()).toContain(gap)
  })

  it('the plan’s window stays where nothing better can be said of the mix that it was planned for', () => {
    expect(now({ facts: { ...facts(), cast: null } }).finish).toEqual(PLANNED)
    expect(now({ yard: yardOf({ reference: undefined }) }).finish).toEqual(PLANNED)
    const other = { entry: 'c', at: MIXED, bed: 'B1', mix: 'M50' }
    expect(now({ facts: { ...facts(), cast: other } }).finish).toBeNull()
  })

  it('below 0 °C before initial set nothing is said of setting', () => {
    const found = now({ facts: facts(truck(3)), weather: weather(-8) })
    expect(found.windows).toEqual([])
    expect(found.unknown.join()).toMatch(/below 0 °C/)
  })

  it('what takes longer than three days is not known', () => {
    const found = now({ facts: facts(truck(1)), weather: weather(1), yard: yardOf({ initialSet: 40 }) })
    expect(found.unknown.join()).toMatch(/not within 72 h/)
  })

  it('every step of its working replays', () => {
    const { working } = now({ facts: facts({ ...truck(17), finish: { 'boot-print': seen(9, 1.4) } }) })
    let replayed = 0
    for (const step of working) {
      const again = replay(step)
      if (again === null) continue
      replayed += 1
      expect(again).toBeCloseTo(step.result as number, 9)
    }
    expect(replayed).toBeGreaterThanOrEqual(4)
  })

  it('names air that is too cold for the formulas of drying, and has no rate in it', () => {
    // Below −18 °C Uno's (air + 18)^2.5 is no number.
    const found = now({ weather: weather(-20) })
    expect(found.drying).toBeNull()
    expect(found.unknown).toEqual(['air: the formulas are used from −10 to 60 °C'])
    expect(found.water.length).toBeGreaterThan(0)
    expect(
      found.water.every(({ rate, other, dried }) => rate === null && other === null && dried === null),
    ).toBe(true)
    expect(found.sheen).toBe('not known')
  })

  it('takes a mixing time of a wrong century for no hour of placing, and is quick about it', () => {
    const began = performance.now()
    const cast = { entry: 'c', at: '0026-06-01T08:00:00.000Z', bed: 'B1', mix: 'M40' }
    const values = { place: { vibrated: seen(true, 0.6) }, finish: { 'boot-print': seen(3, 3) } }
    const found = now({ facts: { ...facts(values), cast } })
    expect(found.sign).toBeNull()
    expect(found.windows[0]?.from).toBe(0.5)
    expect(performance.now() - began).toBeLessThan(2000)
  })
})

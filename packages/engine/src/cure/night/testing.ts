import type { Plan } from '../../plan.ts'
import { emptyPanelFacts } from '../../steps/empty-facts.ts'
import { recorded } from '../../steps/example-facts.ts'
import type { PanelFacts } from '../../steps/facts.ts'
import type { Yard } from '../../yard/yard.ts'
import { CONCRETE } from '../heat/testing.ts'
import type { YardWeather } from '../heat/yard-weather.ts'
import type { NightCaseInput } from './night-case.ts'

/** A panel's night by hand: cast at noon, logged weather for four hours, then a forecast. */
export const MIXED = '2026-09-16T12:00:00.000Z'

export const YARD = {
  format: 'castwright.yard/1',
  name: 'T',
  code: 'us',
  timezone: 'UTC',
  beds: [
    {
      mark: '1',
      length: 9000,
      width: 3000,
      under: { layers: [{ thickness: 6, conductivity: 50, heatCapacity: 3600 }], film: 8 },
    },
    { mark: '2', length: 9000, width: 3000, heated: true },
  ],
  covers: [{ mark: 'mat', resistance: 0.4 }],
  covering: { cover: 'mat', off: '05:30' },
  mixes: [
    {
      mark: 'M',
      strength: 40,
      curve: { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 },
      scatter: 0.06,
      reference: 20,
      activation: 40_000,
      heat: CONCRETE,
    },
  ],
} as const satisfies Yard

export const PLAN = {
  family: 'us',
  thickness: 180,
  cure: { hour: 15, hourLow: 17, wanted: { strength: 15 } },
  pour: { finish: { opens: 3, closes: 5 } },
} as unknown as Plan

export function hourAfter(hours: number): string {
  return new Date(Date.parse(MIXED) + hours * 3_600_000).toISOString()
}

export function weather(from: number, to: number, part: Partial<YardWeather> = {}): YardWeather[] {
  return Array.from({ length: to - from + 1 }, (_, at) => ({
    at: hourAfter(from + at),
    air: 16 - 0.5 * (from + at),
    humidity: 80,
    wind: 10,
    ...part,
  }))
}

export function pour(part: Partial<PanelFacts> = {}): PanelFacts {
  const empty = emptyPanelFacts({ job: 'J', mark: 'P' })
  return {
    ...empty,
    revision: 'A',
    cast: { entry: 'c', at: MIXED, bed: '1', mix: 'M' },
    steps: {
      ...empty.steps,
      deliver: { ...empty.steps.deliver, values: { 'concrete-temperature': recorded(19) } },
      finish: {
        ...empty.steps.finish,
        values: { 'cover-on': recorded(true, { seen: hourAfter(5.5) }) },
      },
    },
    ...part,
  }
}

export function nightInput(part: Partial<NightCaseInput> = {}): NightCaseInput {
  return {
    plan: PLAN,
    facts: pour(),
    yard: { yard: YARD, limits: {} },
    weather: weather(-1, 4),
    forecast: weather(0, 40),
    now: hourAfter(6),
    ...part,
  }
}

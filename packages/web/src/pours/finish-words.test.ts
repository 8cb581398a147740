import type { FinishNow } from '@castwright/engine/steps'
import { describe, expect, it } from 'vitest'
import { basisText, dryingText, minutesText, shiftText, windowAt } from './finish-words.ts'

const clock = (hour: number): string => `${String(Math.floor(hour)).padStart(2, '0')}:30`
const FOUND = {
  basis: 'readings',
  celsius: 12.2,
  reference: 20,
  windows: [{ id: 'screed', from: 0.5, to: 1 }],
  finish: { opens: 3, closes: 6 },
  shift: 40,
  shiftBySign: null,
  sheen: 1.2,
  sheenSeen: false,
  sign: null,
} as unknown as FinishNow

describe('how a window stands to the planned one', () => {
  it.each<[string, Partial<FinishNow>, string]>([
    ['colder', {}, 'Shifted 40 min later than planned because the concrete is 12 °C (planned 20 °C).'],
    [
      'warmer',
      { shift: -75, celsius: 27 },
      'Shifted 1 h 15 min earlier than planned because the concrete is 27 °C (planned 20 °C).',
    ],
    ['hardly', { shift: 3 }, 'As planned, within 5 min.'],
    [
      'by the sheen',
      { sheen: 3, celsius: 20 },
      'Shifted 40 min later than planned because the sheen goes only at 03:30.',
    ],
    [
      'wet',
      { sheen: 4, shift: 2 },
      'As planned, within 5 min. The sheen is expected to stay until 04:30: draw the water off before the pan.',
    ],
    [
      'wet to the end',
      { sheen: 'stays', shift: 2 },
      'As planned, within 5 min. The sheen is not expected to go by itself: draw the water off before the pan.',
    ],
    ['nothing measured', { basis: 'plan' }, 'Planned: nothing is measured yet, and no air is on record.'],
    ['no readings', { windows: [] }, 'Planned: no readings yet.'],
    ['not known', { finish: null }, 'No window: not known.'],
    [
      'by the air',
      { basis: 'air' },
      'Shifted 40 min later than planned because the concrete is 12 °C as the air, not measured (planned 20 °C).',
    ],
  ])('%s', (_, change, text) => {
    expect(shiftText({ ...FOUND, ...change }, clock)).toBe(text)
  })

  it('says that a sign counts before the computed time, and by how much', () => {
    const sign = { what: 'boot print', value: 6, hour: 2 } as FinishNow['sign']
    expect(shiftText({ ...FOUND, sign, shiftBySign: -20 }, clock)).toContain(
      'The boot print of 6 mm seen at 02:30 counts before the computed time: it sets 20 min earlier.',
    )
    expect(shiftText({ ...FOUND, sign, shiftBySign: 2 }, clock)).toContain('agrees with the computed time.')
  })
})

it('hours and minutes', () => {
  expect([minutesText(40), minutesText(60), minutesText(-88)]).toEqual(['40 min', '1 h', '1 h 28 min'])
})

it('what the times rest on', () => {
  const reading = { hour: 2, celsius: 12.2, from: 'surface' } as const
  expect(basisText({ ...FOUND, reading }, clock)).toBe(
    'by readings, the last 12.2 °C on the surface at 02:30',
  )
  expect(basisText({ ...FOUND, basis: 'air' }, clock)).toBe('by the air: the concrete is not measured')
  expect(basisText({ ...FOUND, windows: [] }, clock)).toBe('planned')
})

it('the window of an hour: its beginning belongs to it, its end to the next', () => {
  const windows = [
    { id: 'screed', from: 0.5, to: 1 },
    { id: 'wait', from: 1, to: 3 },
  ] as unknown as FinishNow['windows']
  expect(windowAt(windows, 1)?.id).toBe('wait')
  expect(windowAt(windows, 0.2)).toBeNull()
  expect(windowAt(windows, 3)).toBeNull()
})

describe('drying in words', () => {
  const drying = (change: object) =>
    ({ rate: 0.62, low: 0.36, high: 0.87, limit: 1, against: 'under', ...change }) as NonNullable<
      FinishNow['drying']
    >
  it('never says more than the formulas know', () => {
    expect(dryingText(drying({}))).toBe('From 0.4 to 0.9 kg/m²/h: under the line of this mix, 1.0.')
    expect(dryingText(drying({ against: 'near', limit: 0.5 }))).toContain('lies inside that')
    expect(dryingText(drying({ against: 'over', limit: 0.25 }))).toContain('Act now')
    expect(dryingText(drying({ low: 0.02 }))).toContain('under 0.1')
    expect(dryingText(drying({ rate: -0.2 }))).toContain('condenses')
  })
})
